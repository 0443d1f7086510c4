"""What working a deadout, releasing held gear and moth care refuse. Each carries its figures and says what to do.

Takes figures by keyword; gives one clear sentence, told by views as all `Refused` are.
"""

from apiary.errors import Refused


class WorkedAlready(Refused):
    sentence = (
        "Colony {colony} was worked as a deadout already, found on {found_on}: a hive is taken apart once. "
        "Undo that act first if it was a mistake."
    )


class NotADeadout(Refused):
    sentence = "Colony {colony} is written down as {ended_why}, not as dead: salvage its gear instead."


class BroodNotSpokenOf(Refused):
    sentence = (
        "Colony {colony}: say whether someone who knows foulbrood looked at the brood. "
        "Where nobody did, every comb is held back."
    )


class BroodNotSeen(Refused):
    sentence = (
        "{part} of {colony}: nobody who knows foulbrood has looked at the brood, so no comb leaves the hive "
        "but to be held back or burnt."
    )


class PoisonedComb(Refused):
    sentence = (
        "{part} of {colony}: pesticide stays in comb and stored pollen, so it is held back or burnt, never used again "
        "unseen."
    )


class FoulbroodSuspected(Refused):
    sentence = (
        "{part} of {colony}: foulbrood is suspected, so nothing goes back into stock or on a heap. Hold it back "
        "closed, call the inspector, and burn only as local rules say."
    )


class UnderCase(Refused):
    sentence = (
        "Colony {colony} cannot be {act}: {why}. Bees, combs and boxes of it stay where they are until the inspector "
        "has written that it is no foulbrood."
    )


class KeeperReleases(Refused):
    sentence = (
        "Only the keeper may release held-back gear or write down the inspector's word: nothing was changed."
    )


class NoWrittenWord(Refused):
    sentence = "Nothing is released without a written word: name who wrote it, the day, and what it says."


class WordTooEarly(Refused):
    sentence = "The word is dated {written_on}, before {colony} was found on {found_on}: give the day that stands on it."


class NotHeldForIt(Refused):
    sentence = (
        "{part} at {location}: {wanted} are to be released, but {held} are held back {case}. "
        "Release what is held for it."
    )


class CombNeverReleased(Refused):
    sentence = (
        "{part} at {location} may be comb of {colony}, where foulbrood was confirmed: it is never released. "
        "Burn it as the inspector and local rules say."
    )


class CombWaits(Refused):
    sentence = (
        "{part} at {location} may have been on {colony}, where foulbrood is suspected: frames and combs wait until "
        "the inspector has written that it is none."
    )


class NotTreated(Refused):
    sentence = "{part} at {location}: {why}. It is released once the inspector writes that it is clear or was treated."


class MixedHeld(Refused):
    sentence = (
        "{part} at {location} lay together with pieces held back for something graver ({why}) and cannot be told "
        "apart from them: release all of it by the graver word, or none."
    )


class CaseTold(Refused):
    sentence = (
        "The word on {colony} was told already: foulbrood is {case}. Undo that act first if it was a mistake."
    )


class NoCareNeeded(Refused):
    sentence = "Colony {colony}: {why}"


class NotColdEnough(Refused):
    sentence = (
        "{degrees} °C is too warm to rely on against wax moth: {warmest} °C or colder, and count the time from when "
        "the core of the combs is cold."
    )


class TooShort(Refused):
    sentence = (
        "{given} hours at {degrees} °C are too short against wax moth: leave the combs {hours} hours from when their "
        "core is cold."
    )


class KeeperUndoes(Refused):
    sentence = "{act} held gear back or told an inspector's word: only the keeper may take that back. Nothing was changed."
