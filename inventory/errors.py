"""What the ledger refuses. Each exception carries its figures and says what, where and what to do.

Takes figures by keyword; gives one clear sentence. `AppendOnly` is a bug, never caught; the rest are `Refused`.
"""

from apiary.errors import (
    ColonyEnded,
    ColonyNotStarted,
    FutureDay,
    Refused,
    Several,
    UnknownWord,
    refuse,
)

__all__ = [
    "AlreadyReversed",
    "AppendOnly",
    "BackBeforeLent",
    "BeforeOrdered",
    "CannotBeReversed",
    "ColonyAlive",
    "ColonyEnded",
    "ColonyNotStarted",
    "DoesNotFit",
    "DrawnTwice",
    "DueBeforeLent",
    "FedTwice",
    "FutureDay",
    "HeldBack",
    "KeyTaken",
    "LaterWork",
    "LoanCameBack",
    "MoreThanLent",
    "MoreThanOwed",
    "NoBorrower",
    "NotAColony",
    "NotAQuantity",
    "NotAStore",
    "NotEnough",
    "NotForHive",
    "NotFoundation",
    "NotLent",
    "NotOnOrder",
    "NotWhole",
    "NothingGiven",
    "OrderClosed",
    "OtherSupplier",
    "ReferenceTaken",
    "Refused",
    "ReversedTooEarly",
    "SamePlace",
    "Several",
    "TooManyPacks",
    "UnknownCondition",
    "UnknownPart",
    "UnknownRecipe",
    "UnknownWord",
    "refuse",
]


class AppendOnly(RuntimeError):
    """Somebody tried to edit or remove a row of the books: a bug. A mistake is reversed by another act."""


class NotEnough(Refused):
    sentence = (
        "{location}: {wanted} of {part} wanted, but on {day} the book says {booked}. "
        "Count what is there, or give another day or place."
    )


class UnknownPart(Refused):
    sentence = "{part!r} is not in the catalogue: choose a part that is, or add it first."


class UnknownRecipe(Refused):
    sentence = "{recipe!r} is not a recipe of the workbench: choose one that is, or add it first."


class UnknownCondition(Refused):
    sentence = "{part}: {condition!r} is not a condition: choose sound, to mend or held back."


class NotWhole(Refused):
    sentence = (
        "{part}: {quantity!r} is not a number of pieces: give a whole number from {lowest} to {highest}."
    )


class NothingGiven(Refused):
    sentence = "Nothing was given to {act}: name at least one part and how many."


class SamePlace(Refused):
    sentence = "{location} is both ends of this move: choose another place to move to."


class NotAStore(Refused):
    sentence = "{location} is not a store: choose the store of a yard or the shed."


class NotAColony(Refused):
    sentence = "{location} is not a colony: choose the colony the gear stands on."


class DoesNotFit(Refused):
    sentence = (
        "{part} does not fit colony {onto}: it is {width} frames wide and the hive takes {wanted_width}. "
        "Widths never mix: choose gear for {wanted_width} frames."
    )


class NotForHive(Refused):
    sentence = "{part} cannot stand on colony {onto}: {why}."


class HeldBack(Refused):
    sentence = (
        "{part} is held back and cannot be {act} at {location}: disease is suspected. "
        "Keep it apart until the inspector has released it."
    )


class NotFoundation(Refused):
    sentence = "{part} cannot be drawn: only a frame with foundation becomes drawn comb."


class ColonyAlive(Refused):
    sentence = "Colony {colony} had not ended on {day}: take its gear off instead, or declare first what became of it."


class KeyTaken(Refused):
    sentence = (
        "This form was sent before as another act ({earlier}): open the page again and fill it in anew."
    )


class AlreadyReversed(Refused):
    sentence = "{act} was reversed already: it can be reversed once only."


class CannotBeReversed(Refused):
    sentence = "{act} is itself a reversal: do the act again instead."


class ReversedTooEarly(Refused):
    sentence = "{act} cannot be reversed on {day}: it was done on {act_day}. Give that day or a later one."


class NotOnOrder(Refused):
    sentence = "{part} is not on order {reference}: book it as opening stock or by a count."


class MoreThanOwed(Refused):
    sentence = (
        "Order {reference}: {came} of {part} came, but {owed} are owed. "
        "Count again, or say that more came than was ordered."
    )


class OrderClosed(Refused):
    sentence = "Order {reference} is {status}: nothing is owed on it."


class BeforeOrdered(Refused):
    sentence = "Order {reference} was placed on {placed_on}, after {day}: give the day it came."


class OtherSupplier(Refused):
    sentence = "{offer} is sold by {seller}, not by {supplier}: one order goes to one supplier."


class ReferenceTaken(Refused):
    sentence = "There is an order {reference} already: give this one a reference of its own."


class TooManyPacks(Refused):
    sentence = "{offer}: {packs} packs wanted, but an order takes at most {max_packs}."


class LaterWork(Refused):
    sentence = "{act} cannot be undone: {later} was booked on colony {colony} after it. Undo that first."


class NotAQuantity(Refused):
    sentence = "{colony}: {quantity!r} is not an amount of feed: give a whole number, zero or more."


class FedTwice(Refused):
    sentence = "Colony {colony} stands twice in this feeding: tell one amount for it."


class DrawnTwice(Refused):
    sentence = "Colony {colony} stands twice among those that drew comb: tell its frames once."


class NoBorrower(Refused):
    sentence = "Who has it? Write the name of the person the gear is lent to, in at most {longest} letters."


class DueBeforeLent(Refused):
    sentence = "Due back on {due_on}, but lent on {day}: give the same day or a later one."


class NotLent(Refused):
    sentence = "The loan to {to} was taken back as a mistake: nothing of it is out. Open what is lent and choose again."


class BackBeforeLent(Refused):
    sentence = "{to} was lent this on {lent_on}: it cannot be back on {day}. Give that day or a later one."


class MoreThanLent(Refused):
    sentence = (
        "{to} has {out} of {part} out on {day}, not {wanted}: count again, "
        "or book what is beyond it by a count of the store."
    )


class LoanCameBack(Refused):
    sentence = (
        "{act} cannot be undone: some of it was booked as back or lost since. Undo that first, then the loan."
    )
