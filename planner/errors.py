"""What the planner refuses, each with its figures and what to do instead. Caught in views and commands.

Takes figures by keyword; the sentence is the exception's text. Faults of answers and problem files live beside
their readers (season, sizing). RunStopped and RunTakenOver are no refusals: they end a worker's work on a run.
"""

from apiary.errors import Refused

__all__ = [
    "AlreadyApproved",
    "AlreadyChecking",
    "AlreadyOver",
    "BooksMoved",
    "DayBeforeSeason",
    "DayToCome",
    "FreeOffers",
    "NoColonies",
    "NoMediumSet",
    "NoOffers",
    "NoOrderFound",
    "NoShed",
    "NoSuchSeason",
    "NotDone",
    "NothingSupposed",
    "NothingToOrder",
    "NothingToTakeOver",
    "OfferGone",
    "OnlyChecks",
    "Overtaken",
    "Refused",
    "RunStopped",
    "RunTakenOver",
    "SeasonOver",
    "SetWithoutGear",
    "Supposed",
    "TooManyBeside",
    "UnknownSetting",
    "UnknownSupplier",
]


class NoShed(Refused):
    sentence = "No yard is marked as the shed, where an order arrives: load your sheet first, or mark one of your yards."


class NoColonies(Refused):
    sentence = "No living colony is in the books on {day}: enter your yards and colonies first, or choose another day."


class NoOffers(Refused):
    sentence = "No supplier's price holds on {day} or later: load a price list first, there is nothing to order from."


class FreeOffers(Refused):
    sentence = (
        "A price of 0 stands on the price list for {offers}: any number of it would be ordered. "
        "Enter its price, or let it hold no longer; gear given to you is stock, so count it in where it lies."
    )


class SetWithoutGear(Refused):
    sentence = (
        "Colonies stand in {sets}, but no gear set says what that is made of: add a gear set for it, "
        "then plan again."
    )


class NoSuchSeason(Refused):
    sentence = "There is no season called {name!r}. The seasons are: {known}."


class NoOrderFound(Refused):
    """The solver came back without an order."""

    sentence = "{what}: {reason}"
    WHAT = {
        "infeasible": "No order can give what the season must have",
        "unbounded": "The prices contradict each other, so that buying would earn money without end",
        "time_limit": "No order was found in the time given",
    }

    def __init__(self, *, status, reason):
        what = self.WHAT.get(status, f"The solver stopped ({status})")
        default = (
            "allow more seconds or fewer seasons" if status == "time_limit" else "the solver gave no reason"
        )
        super().__init__(what=what, reason=reason or default, status=status)


class NotDone(Refused):
    sentence = "Run {run} is {status}: only a run that is done has an order."


class AlreadyApproved(Refused):
    sentence = "Run {run} was approved on {day}: its orders stand on the Orders page. Nothing was ordered a second time."


class Overtaken(Refused):
    sentence = (
        "Since run {run} was asked for, run {other} of the same season was approved. "
        "Start a new run: it counts what is on order already."
    )


class NothingToOrder(Refused):
    sentence = "Run {run} buys nothing, so there is no order to approve."


class NoOrdersMade(Refused):
    sentence = (
        "Run {run} has no purchase orders to send: approve the order first, or open them on the Orders page."
    )


class OfferGone(Refused):
    sentence = "No longer on a price list: {offers}. Start a new run with the prices of today."


class AlreadyOver(Refused):
    sentence = "Run {run} is {status} already: there is nothing to stop."


class UnknownSetting(Refused):
    sentence = (
        "Run {run} asks for the solver “{solver}”, which this version of the planner does not know: "
        "stop the planner, start its newest version, then work the order out again."
    )


class DayBeforeSeason(Refused):
    sentence = "{day} lies before {season} begins, on {starts_on}: plan from that day or a later one."


class DayToCome(Refused):
    sentence = (
        "{day} is still to come, and nobody knows its books: plan from today, {today}, or an earlier day."
    )


class SeasonOver(Refused):
    sentence = "{season} ended on {last}, before {day}: begin a new season to plan the year ahead."


class Supposed(Refused):
    sentence = (
        "Run {run} is a what-if ({what}): nothing is ordered on what is only supposed. "
        "Take its answers over into the season, work the order out again, and approve that run."
    )


class NothingSupposed(Refused):
    sentence = "Nothing is changed against run {run}: change the budget, an answer, a price or the hives."


class NothingToTakeOver(Refused):
    sentence = (
        "Run {run} supposes only prices, suppliers or hives. They are no answers of the season: load the price list "
        "that really holds, then work the order out again."
    )


class AlreadyChecking(Refused):
    sentence = "Run {other} is checking the beliefs of run {run} just now: wait until it is done, or stop it."


class BooksMoved(Refused):
    sentence = (
        "The books or prices of {day} are no longer those run {run} was worked out from (an order placed that day "
        "counts too), so its beliefs cannot be checked. Work the order out again and check that run."
    )


class OnlyChecks(Refused):
    sentence = (
        "Run {run} only checks the beliefs of run {parent} and has no order of its own: open run {parent}."
    )


class NoMediumSet(Refused):
    sentence = "No hive set of mediums alone has its gear told: add one first."


class UnknownSupplier(Refused):
    sentence = "No supplier is called {supplier!r}. The suppliers are: {known}."


class TooManyBeside(Refused):
    sentence = "{count} runs do not fit side by side: choose two to four."


class RunTakenOver(Exception):
    """Another worker took this run up after its lease ran out: what this one found is dropped."""


class RunStopped(Exception):
    """The keeper asked for this run to be stopped."""
