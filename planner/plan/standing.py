"""How good the order is known to be, said plainly: proven, within a gap, out of time, or not at all.

Takes the facts of a plan and the rivals it was judged against; gives a Standing and the report's headline.
"""

from decimal import Decimal

import numpy as np

from planner.plan.records import Standing
from planner.plan.words import cents, day_words, listed, percent, sum_words

BAD_YEARS = 0.05  # the worst season in twenty
NOTHING_LEFT = (
    "Nothing is left to be ordered this season: what you have, and what is on the way, covers the rest of it."
)


def standing_of(facts, rivals=(), without_budget=None):
    plan = facts.plan
    found = plan.is_order
    worth = cents(mean_worth(plan, facts.problem)) if found else None
    return Standing(
        status=plan.status,
        said=_said(plan),
        worth=worth,
        bad_year=cents(bad_year(plan, facts.problem)) if found else None,
        gap_share=plan.gap,
        seconds=plan.seconds,
        solver=plan.solver,
        seasons=len(facts.problem.scenarios),
        rivals=tuple(rivals),
        sentences=_sentences(facts, rivals, without_budget) if found else (),
    )


def mean_worth(plan, problem):
    """Worth in the mean season: the objective itself, unless bad years have a weight in it."""
    if not problem.bad_years.weight:
        return plan.objective
    chance = {scenario.code: scenario.probability for scenario in problem.scenarios}
    return sum(chance[scenario.code] * scenario.objective for scenario in plan.scenarios)


def bad_year(plan, problem, share=BAD_YEARS):
    """Mean worth of the worst share of seasons."""
    chance = {scenario.code: scenario.probability for scenario in problem.scenarios}
    worths = np.array([scenario.objective for scenario in plan.scenarios])
    chances = np.array([chance[scenario.code] for scenario in plan.scenarios])
    order = np.argsort(worths)
    taken = np.clip(share - (np.cumsum(chances[order]) - chances[order]), 0, chances[order])
    return float(taken @ worths[order] / taken.sum())


def _said(plan):
    gap = gap_words(plan.gap)
    if plan.status == "optimal":
        return "Proven best: no order from these prices is worth more in these seasons."
    if plan.status == "within_gap":
        return f"Proven to {gap}: no order from these prices is worth more than that above this one."
    if plan.status == "time_limit" and not plan.is_order:
        return "Time ran out and no order was found. Give it more seconds, or fewer seasons."
    if plan.status == "time_limit":
        known = (
            f"a better one could be worth up to {gap} more"
            if gap
            else "how much better one could be is not known"
        )
        return (
            f"Time ran out: this is the best order found so far; {known}. Give it more seconds to be surer."
        )
    reason = f" {plan.reason}" if plan.reason else ""
    if plan.status == "infeasible":
        return f"No order can do what must be done.{reason}"
    return f"No order was worked out: the prices let money be made without end.{reason}"


def gap_words(gap):
    if gap is None:
        return ""
    return percent(gap, 2) if gap >= 0.0001 else f"less than {percent(0.0001, 2)}"


def _sentences(facts, rivals, without_budget):
    """What the order gains over its rivals, and what the budget holds back."""
    money, said = facts.money, []
    ours = {line.offer: line.packs for line in facts.plan.here_and_now if line.packs}
    for rival in rivals:
        if rival.packs == ours:
            continue
        more = "more than" if rival.gain >= 0 else "less than"
        gain = sum_words(abs(rival.gain), money)
        said.append(f"Worth {gain} a season {more} {rival.name} ({rival.how}).")
    if said:
        seasons = len(facts.problem.scenarios)
        said.append(
            f"Judged on the same {seasons} seasons it was planned with, so a little too kindly to this order."
        )
    if without_budget is not None:
        said.append(_held_back(facts, without_budget))
    return tuple(said)


def _held_back(facts, without_budget):
    """What the budget costs, against the best order without one."""
    money = facts.money
    lost = sum_words(max(Decimal(0), without_budget.worth - cents(facts.plan.objective)), money)
    spend = sum_words(without_budget.spend, money)
    if facts.problem.budget == 0:
        return (
            f"Buying nothing costs about {lost} a season: that much more the best order without a budget is "
            f"worth, which spends {spend}."
        )
    budget = sum_words(facts.problem.budget or 0, money)
    return f"Without the budget of {budget} the best order spends {spend} and is worth {lost} a season more."


def headline(facts, orders, standing):
    """The order in one or two sentences."""
    if standing.worth is None:
        return standing.said
    spend = sum((order.total for order in orders), Decimal(0))
    if not orders:
        return _nothing(facts, standing)
    lines = sum(len(order.lines) for order in orders)
    first = min(order.order_by for order in orders)
    names = listed(order.name for order in orders)
    budget = ""
    if facts.problem.budget is not None:
        left = cents(facts.problem.budget) - spend
        under = sum_words(left, facts.money, cents_too=True)
        budget = f", {under} under the budget" if left else ", the whole budget"
    total = sum_words(spend, facts.money, cents_too=True)
    return (
        f"{lines} line{'' if lines == 1 else 's'} from {names} for {total}, shipping included{budget}. "
        f"Order by {day_words(first)}."
    )


def _nothing(facts, standing):
    if facts.problem.budget == 0:
        return " ".join(["Nothing to order: the budget is 0.", *standing.sentences[-1:]])
    if standing.status == "time_limit":
        return "No order worth more than buying nothing was found in the time given."
    if not any(scenario.uses for scenario in facts.problem.scenarios):
        return (
            NOTHING_LEFT
            if facts.assumptions.began_before
            else "Nothing to order: by these answers no colony is there to need anything."
        )
    if not any(offer.when == "now" for offer in facts.problem.offers):
        return "Nothing can be ordered now: no offer of what the season asks for is open. Load a price list that is."
    if facts.assumptions.began_before:
        return NOTHING_LEFT
    return "Nothing to order: what you have covers what the season would pay for."
