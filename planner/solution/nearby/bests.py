"""The best order under a budget, and those under several budgets, each looked for in its share of the time.

Takes what looks for one (a sweep by shared cuts, or a solve each) and rising budgets; gives what was found in time.
"""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Best:
    """The best order found under a budget and a bound over all of them; without `packs` none was found."""

    packs: dict | None
    objective: float | None
    bound: float | None


def bests(engine, budgets, closely, *, after=0):
    """({budget: Best}, {budget: objective in fractions}) of rising budgets, looked at `closely` where named; each has
    its share of the engine's time, as have as many `after` them."""
    found: dict = {}
    for done, budget in enumerate(budgets):
        if engine.clock.is_over():
            break
        share = engine.clock.left() / (len(budgets) + after - done)  # what one leaves, the next ones have
        best = engine.best(budget, share, closely=budget in closely)
        if best.bound is not None:
            found[budget] = best
    fractions = engine.in_fractions(list(found)) if found else []
    return found, dict(zip(found, fractions, strict=True))
