"""What other budgets would do, for the report: the next hundred, the bend of the curve, what to drop with less.

Takes the study of an order (its neighbours, solved) and the facts of the plan; gives a BudgetSection. Solves nothing.
A bigger budget never earns less along the curve: the order of a smaller one still fits into it. Points the study calls
poor are left out and named.
"""

from dataclasses import replace
from decimal import Decimal

from planner.plan.budget_records import BudgetPoint, BudgetSection, LessBudget, PacksChanged
from planner.plan.moves import pack_of, packs_word
from planner.plan.words import cents, number, sum_words
from planner.solution.nearby.records import BudgetPoint as Known

LITTLE = Decimal("0.50")  # money a season that is as good as nothing
FEW = Decimal(10)  # money a season by which the most that can be earned may be above what is found


def budget_section(nearby, facts):
    """The section, or None where nothing was asked."""
    if nearby is None:
        return None
    spend = cents(facts.plan.spend)
    budget = facts.problem.budget
    mark = spend if budget is None else cents(budget)
    knee = None if nearby.knee is None else nearby.points[nearby.knee].budget
    good = tuple(point for point in nearby.points if not point.poor)
    left_out = [cents(point.budget) for point in nearby.points if point.poor]
    less = _less(nearby.less, mark, facts)
    section = BudgetSection(
        seasons=len(facts.problem.scenarios),
        mark=mark,
        points=_points(_with_own(good, facts), knee, None if budget is None else mark),
        next_money=None if nearby.next_budget is None else cents(nearby.next_budget),
        next_earns=_next_earns(nearby),
        price=nearby.budget_price,
        less=less,
        not_told=_not_found(left_out, facts.money) or nearby.not_told,
    )
    sentences = (_next(section, facts), _knee(section, facts.money), *([less.said] if less else ()))
    return replace(section, sentences=tuple(said for said in sentences if said))


def _not_found(budgets, money):
    if not budgets:
        return ""
    told = (
        f"{sum_words(budgets[0], money)} to {sum_words(budgets[-1], money)}"
        if budgets[1:]
        else sum_words(budgets[0], money)
    )
    return f"Time ran out before good orders were found for budgets of {told}: they are left out. Allow more seconds."


def _next_earns(nearby):
    """What so much more earns: never less than the best single pack more that it pays for."""
    if nearby.next_earns is None:
        return None
    packs = [
        moved.worth_change
        for moved in nearby.moves
        if moved.step > 0 and moved.served and not moved.limit and 0 < moved.over_budget <= nearby.next_budget
    ]
    return cents(max(0.0, nearby.next_earns, *packs))


def _with_own(points, facts):
    """The curve with this order at its budget, where time ran out before the study came to it."""
    plan, budget = facts.plan, facts.problem.budget
    if budget is None or not points or any(abs(point.budget - budget) < 0.005 for point in points):
        return points
    own = Known(
        budget=budget,
        spend=plan.spend,
        objective=plan.objective,
        bound=plan.bound,
        fractions=plan.bound,
        packs=plan.packs(),
    )
    return tuple(sorted((*points, own), key=lambda point: point.budget))


def _points(known, knee, budget):
    """Worth over the smallest budget, never falling as budgets rise."""
    points, best = [], None
    for point in known:
        best = point.objective if best is None else max(best, point.objective)
        base = known[0].objective
        points.append(
            BudgetPoint(
                budget=cents(point.budget),
                spend=cents(point.spend),
                gain=cents(best - base),
                most=cents(max(point.bound, best) - base),
                chosen=budget is not None and cents(point.budget) == budget,
                knee=point.budget == knee,
            )
        )
    return tuple(points)


def _next(section, facts):
    """What the next hundred earns, after what they buy is paid for."""
    if facts.problem.budget is None:
        return "No budget was set: all that is worth its money is in the order."
    if section.next_money is None or section.next_earns is None:
        return ""
    money, earns = facts.money, section.next_earns
    hundred = sum_words(section.next_money, money)
    if earns > LITTLE:
        return f"The next {hundred} would earn {sum_of(earns, money)} a season on top of what it costs."
    further = section.points[-1].gain if section.points else Decimal(0)
    here = max((point.gain for point in section.points if point.budget <= section.mark), default=further)
    if further - here > LITTLE:
        more, last = sum_of(further - here, money), sum_words(section.points[-1].budget - section.mark, money)
        return f"The next {hundred} alone would earn nothing; {last} more would earn about {more} a season."
    if section.not_told or (section.points and section.points[-1].most - here > FEW):
        return f"Nothing was found that the next {hundred} would earn."
    return f"The next {hundred} would earn nothing: what is worth its money is in the order."


def _knee(section, money):
    knee = section.at_knee
    if knee is None or not section.points:
        return ""
    first, last = section.points[0], section.points[-1]
    below, above = knee.budget - first.budget, last.budget - knee.budget
    if not below or not above:
        return ""
    each = [
        sum_of(100 * earned / wide, money)
        for earned, wide in ((knee.gain - first.gain, below), (last.gain - knee.gain, above))
    ]
    bend = sum_words(knee.budget, money)
    hundred = sum_words(100, money)
    return (
        f"The curve bends at {bend}: up to there {hundred} more earn about {each[0]} a season, "
        f"beyond it about {each[1]}."
    )


def _less(less, mark, facts):
    if less is None:
        return None
    changes = tuple(
        _changed(offer, round(before), round(after), facts)
        for offer, _period, before, after in less.changes
        if round(before) != round(after)
    )
    changes = tuple(sorted(changes, key=lambda change: not change.is_less))
    budget, lost = cents(less.budget), max(Decimal(0), cents(less.lost))
    smaller = mark - budget
    return LessBudget(
        budget=budget,
        less=smaller,
        lost=lost,
        changes=changes,
        said=_less_said(smaller, lost, changes, facts.money),
    )


def _changed(offer, before, after, facts):
    known = facts.listed_offers.get(offer)
    count = abs(after - before)
    packs = f"{number(count)} {packs_word(pack_of(offer, facts), count)}".strip()
    if after < before:
        said = f"drop {packs} of {number(before)}" if after else f"drop all {number(before)}"
    else:
        said = f"take {packs} {'more' if before else 'instead'}"
    name = known.name if known else offer
    return PacksChanged(offer=offer, name=name, before=before, after=after, said=said)


def _less_said(smaller, lost, changes, money):
    if not changes:
        return f"With {sum_words(smaller, money)} less to spend the order would stay as it is."
    drops = sum(change.is_less for change in changes)
    loss = f"lose {sum_of(lost, money)} a season" if lost > LITTLE else "lose next to nothing"
    lines = f"{number(drops)} line{'' if drops == 1 else 's'}"
    swapped = len(changes) - drops
    taken = f" (and take more of {number(swapped)})" if swapped else ""
    return f"With {sum_words(smaller, money)} less to spend, drop from {lines}{taken} and {loss}."


def sum_of(value, money):
    """Whole money, cents below ten."""
    return sum_words(value, money, cents_too=0 < abs(value) < 10)


def drops_said(less):
    """A line a change, what is dropped first: Medium box, 5: drop 2 packs of 12."""
    return tuple(f"{change.name}: {change.said}" for change in less.changes)
