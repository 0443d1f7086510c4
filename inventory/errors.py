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
    "AlreadyAnswered",
    "AlreadyReversed",
    "AppendOnly",
    "BackBeforeLent",
    "BeforeOrdered",
    "BookMoved",
    "CannotBeReversed",
    "ColonyAlive",
    "ColonyEnded",
    "ColonyNotStarted",
    "CountBelowLater",
    "CountClosed",
    "CountOfSeveral",
    "DoesNotFit",
    "DrawnTwice",
    "DueBeforeLent",
    "FedTwice",
    "FutureDay",
    "HeldBack",
    "HeldCountedFree",
    "KeyTaken",
    "LaterWork",
    "LoanCameBack",
    "MoreThanLent",
    "MoreThanOwed",
    "NoBorrower",
    "NoBoxFits",
    "NotAColony",
    "NotAQuantity",
    "NotAStore",
    "NotEnough",
    "NotForHive",
    "NotFoundGear",
    "NotFoundation",
    "NotInWholes",
    "NotLent",
    "NotOnOrder",
    "NotWhole",
    "NothingGiven",
    "OffACase",
    "OrderClosed",
    "OtherSupplier",
    "ReferenceTaken",
    "Refused",
    "ReversedTooEarly",
    "SamePlace",
    "Several",
    "TooManyPacks",
    "UnknownBox",
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
    """`why` tells what it is held back for, where the books know more than that disease is suspected."""

    sentence = (
        "{part} is held back and cannot be {act} at {location}: {why}. "
        "Keep it apart until the inspector has released it."
    )

    def __init__(self, *, why="disease is suspected", **figures):
        super().__init__(why=why, **figures)


class HeldCountedFree(Refused):
    sentence = (
        "{part} at {location}: {fewer} fewer held back and {more} more free to use were counted, but a count lets "
        "nothing go ({why}). Held-back gear is released by the inspector's written word alone: count it as held back."
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


class OffACase(Refused):
    sentence = (
        "{act} cannot be undone: it set gear on colony {colony}, and {why}. Take the gear off instead: it comes off "
        "held back. If it never stood there, the keeper says so where the act is reversed in the books."
    )


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


class CountClosed(Refused):
    sentence = "The count of {count} is {status}: nothing more is entered in it. Begin a new one."


class CountOfSeveral(Refused):
    sentence = "{location} is a colony: only the count of a yard takes the boxes of its colonies with it."


class BookMoved(Refused):
    sentence = "{location}: the book changed while you looked. Nothing was posted: look at the differences once more."


class CountBelowLater(Refused):
    sentence = (
        "{location}: {counted} of {part} counted, but by {later} the book has taken away more than that. "
        "Count what is there today, or book first what came in between."
    )


class NotFoundGear(Refused):
    sentence = (
        "{part}, {day}: this was not booked as found, or its act was reversed. Nothing is to be answered."
    )


class AlreadyAnswered(Refused):
    sentence = (
        "Where {quantity} of {part} at {location} came from was said already. Reverse that answer first."
    )


class UnknownBox(Refused):
    sentence = "{box!r} is not a box of your gear sets: choose one of {boxes}, or add its gear set first."


class NoBoxFits(Refused):
    sentence = (
        "Colony {colony} ({hive_set}) takes none of these boxes: their width is another, or it is a nuc. "
        "Choose a box for its hive, or leave it out."
    )


class NotInWholes(Refused):
    sentence = "{part}: one making makes {makes}, so {quantity} cannot be made: give a multiple of {makes}."
