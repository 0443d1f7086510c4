"""What is refused about orders that were placed: closing, claiming, invoices, parts that came instead.

Takes figures by keyword; gives one clear sentence each.
"""

from inventory.errors import Refused


class UnknownLine(Refused):
    sentence = "That is not a line of {reference}: open the order again and choose among its lines."


class LineClosed(Refused):
    sentence = "{line} of order {reference} is closed already: nothing more is owed on it."


class NothingOwed(Refused):
    sentence = "{line} of order {reference} came in full: there is nothing to close."


class NoReason(Refused):
    sentence = "Order {reference}: write what the supplier says, so that it can be told later why the rest did not come."


class LineOpen(Refused):
    sentence = "{line} of order {reference} was opened again already."


class ClosedBefore(Refused):
    sentence = "{line} was closed on {closed_on}, after {day}: give that day or a later one."


class NotReceipt(Refused):
    sentence = "{act} is no receipt that stands, or it came after that day: choose a receipt of the order, and its day or later."


class TooManyClaimed(Refused):
    sentence = "{pieces!r} of {part} claimed, but {broken} came broken and were not claimed yet: count again."


class ClaimAnswered(Refused):
    sentence = "The claim for {part} was answered already: {answer}."


class NotAnAnswer(Refused):
    sentence = "{answer!r} is no answer to a claim: choose credited, replaced or refused."


class AnsweredBefore(Refused):
    sentence = "Claimed on {claimed_on}, so it cannot be answered on {day}: give the same day or a later one."


class NotPrice(Refused):
    sentence = "{cents!r} is no {what} in whole cents: give zero or more; a credit is more than zero."


class SamePart(Refused):
    sentence = "{part} is what was ordered: book it as come, not as a part that came instead."


class OtherWidth(Refused):
    sentence = (
        "{part} is {width} frames wide, {ordered} {wanted_width}: widths never mix, so it cannot do the work of what "
        "was ordered. Send it back, or say that it stays all the same."
    )


class OrderedToo(Refused):
    sentence = "{part} is on the same line of order {reference}: book it as come; only a part not ordered comes instead."


class MoreSettled(Refused):
    sentence = "Order {reference}: {settles} of {part} said to be settled by another part, but {owed} are owed. Count again."
