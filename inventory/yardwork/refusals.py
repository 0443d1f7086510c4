"""What is refused when bees and their gear change hands or places. Each carries its figures and says what to do.

Takes figures by keyword; gives one clear sentence.
"""

from apiary.errors import Refused


class NoColony(Refused):
    sentence = "No colony was chosen to {act}: choose at least one."


class TooManyTags(Refused):
    sentence = "{tags} tags for {splits} splits of {mother}: leave some out, or split more."


class NoOutfit(Refused):
    sentence = (
        "The catalogue has no {piece} for the set {hive_set}: name the set's gear in a gear set, "
        "or choose another set."
    )


class NoBoxForFrames(Refused):
    sentence = (
        "{depth} frames do not hang in {hive_set}, which has no {depth} box: depths never mix. "
        "Choose another set."
    )


class NoRoomForFrames(Refused):
    sentence = (
        "{wanted} {depth} frames do not go into {hive_set}: it takes {room}. Take fewer, or another set."
    )


class NotANuc(Refused):
    sentence = "Colony {colony} stands in {hive_set}, not in a nuc box: there is nothing to hive."


class StillANuc(Refused):
    sentence = "{hive_set} is a nuc too: choose the full set colony {colony} is to stand in."


class UnitedWithItself(Refused):
    sentence = "Colony {colony} cannot be united with itself: choose the one it goes to."


class ApartInYards(Refused):
    sentence = (
        "Colony {colony} stands in {yard}, {into} in {other_yard} on {day}: "
        "move one to the other's yard first, then unite."
    )


class WorkedLater(Refused):
    sentence = (
        "Colony {colony} cannot be {act} on {day}: its gear was still worked on {later_day}. "
        "Give that day or a later one, or undo that first."
    )


class ElsewhereThatDay(Refused):
    sentence = "Colony {colony} did not stand in {yard} on {day}, but in {other_yard}: leave it out, or move it first."


class NoBuyer(Refused):
    sentence = "Say who bought {colonies}: a name of 1 to 80 letters."


class NotMoney(Refused):
    sentence = "{cents!r} is not a {what}: give zero or more, in whole cents."


class NoDayBack(Refused):
    sentence = "Say by when {buyer} brings it back: nothing can be waited for without a day."


class BackTooEarly(Refused):
    sentence = "{day} is before the sale to {buyer} on {sold_on}: give that day or a later one."


class SaleUndone(Refused):
    sentence = "The sale to {buyer} was undone: nothing comes back of it. Book the pieces by a count instead."


class SaleSettled(Refused):
    sentence = "Nothing is waited for from {buyer} any more: book pieces that come all the same by a count."


class RefundTooMuch(Refused):
    sentence = (
        "{refund} of the deposit of {buyer} cannot be given back: {left} of it is left. Give back less."
    )


class BroughtBack(Refused):
    sentence = "{act} cannot be undone: {buyer} has brought something back since, on {day}. Undo that first."
