"""Other orders judged on the very seasons this one was planned with: a rule of thumb at the same money, and nothing.

Takes the operation, the assumptions, a sizing problem and its plan; gives rivals with their spend and worth, and
the best order were there no budget. Quick, but kind to the order: contest.py judges on fresh seasons.
"""

from dataclasses import dataclass, replace
from decimal import Decimal

from planner.plan.records import Rival
from planner.plan.standing import bad_year
from planner.plan.words import cents
from planner.solution import solve_apart
from planner.trial.thumb import rule_of_thumb

RULE = "a rule of thumb"
RULE_HOW = "full hives up to the target, a super a colony, less what lies in store, cut alike to the budget"
NOTHING = "buying nothing now"
NOTHING_HOW = "what is missing bought in season or gone without"


@dataclass(frozen=True, kw_only=True)
class WithoutBudget:
    """The best order were there no budget."""

    spend: Decimal
    worth: Decimal


def rivals(operation, assumptions, problem, plan, *, solve=solve_apart, seconds=60.0):
    """The rule of thumb's order and no order, each with the season's recourse left to do its best."""
    ours = cents(plan.objective)
    orders = [
        (RULE, RULE_HOW, rule_of_thumb(operation, assumptions, problem)),
        (NOTHING, NOTHING_HOW, {}),
    ]
    judged = []
    for name, how, packs in orders:
        other = solve(problem, packs=packs, prices=False, seconds=seconds)
        if not other.is_order:
            continue
        worth = cents(other.objective)
        judged.append(
            Rival(
                name=name,
                how=how,
                spend=cents(other.spend),
                worth=worth,
                gain=ours - worth,
                bad_year=cents(bad_year(other, problem)),
                packs={offer: count for (offer, _period), count in packs.items()},
            )
        )
    return tuple(judged)


def without_budget(problem, *, solve=solve_apart, gap=0.001, seconds=60.0):
    """What the best order would spend and be worth were there no budget; None where it is not found."""
    free = solve(replace(problem, budget=None), prices=False, gap=gap, seconds=seconds)
    if not free.is_order:
        return None
    return WithoutBudget(spend=cents(free.spend), worth=cents(free.objective))
