"""What the planner refuses, each with its figures and what to do instead. Caught in views and commands.

Takes plain values; the sentence is the exception's text. Faults of answers and problem files live beside
their readers (season, sizing).
"""


class Refused(Exception):
    """The planner will not do this; the text says why and what would help."""


class NoShed(Refused):
    def __init__(self):
        super().__init__(
            "No yard is marked as the shed: mark one, so that the order has a place to arrive at."
        )


class NoColonies(Refused):
    def __init__(self, day):
        self.day = day
        super().__init__(
            f"No living colony is in the books on {day:%d %B %Y}: enter your yards and colonies first, "
            "or choose another day."
        )


class NoOffers(Refused):
    def __init__(self, day):
        self.day = day
        super().__init__(
            f"No supplier's price holds on {day:%d %B %Y} or later: load a price list first, "
            "there is nothing to order from."
        )


class SetWithoutGear(Refused):
    def __init__(self, names):
        self.names = tuple(names)
        super().__init__(
            f"Colonies stand in {', '.join(self.names)}, but no gear set says what that is made of: "
            "add a gear set for it, then plan again."
        )


class NoSuchSeason(Refused):
    def __init__(self, name, names):
        self.name = name
        known = f"The seasons are: {', '.join(names)}." if names else "There is no season yet."
        super().__init__(f"There is no season called {name!r}. {known}")


class NoOrderFound(Refused):
    """The solver came back without an order."""

    def __init__(self, status, reason):
        self.status = status
        sentence = {
            "infeasible": "No order can satisfy what must be bought",
            "unbounded": "The prices contradict each other, so that buying would earn money without end",
            "time_limit": "No order was found in the time given: allow more seconds or fewer seasons",
        }.get(status, f"The solver stopped with {status}")
        super().__init__(f"{sentence}: {reason}" if reason else f"{sentence}.")


class NotDone(Refused):
    def __init__(self, run):
        super().__init__(
            f"Run {run.pk} is {run.get_status_display()}: only a run that is done can be approved."
        )


class AlreadyApproved(Refused):
    def __init__(self, run):
        super().__init__(
            f"Run {run.pk} was approved on {run.approved_at:%d %B %Y}: its orders stand on the Orders page. "
            "Nothing was ordered a second time."
        )


class Overtaken(Refused):
    def __init__(self, run, other):
        super().__init__(
            f"Since run {run.pk} was asked for, run {other.pk} of the same season was approved. "
            "Start a new run: it counts what is on order already."
        )


class NothingToOrder(Refused):
    def __init__(self, run):
        super().__init__(f"Run {run.pk} buys nothing, so there is no order to approve.")


class OfferGone(Refused):
    def __init__(self, codes):
        self.codes = tuple(codes)
        super().__init__(
            f"No longer on a price list: {', '.join(self.codes)}. Start a new run with the prices of today."
        )


class AlreadyOver(Refused):
    def __init__(self, run):
        super().__init__(f"Run {run.pk} is {run.get_status_display()} already: there is nothing to stop.")


class RunTakenOver(Exception):
    """Another worker took this run up after its lease ran out: what this one found is dropped."""


class RunStopped(Exception):
    """The keeper asked for this run to be stopped."""
