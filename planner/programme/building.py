"""Builds the programme of a sizing problem: one call a family of constraints, here-and-now first, then each scenario.

Takes a Problem, and packs where the order is given; gives a Programme. Solves nothing, opens nothing.
"""

import gc
from contextlib import contextmanager

import pulp

from planner.programme import gear as gear_rows
from planner.programme import hauls, money, orders, recipes, uses
from planner.programme.draft import Draft, add, add_all, mark
from planner.programme.most import Most


def build(problem, *, packs=None, ease=None):
    """The programme; `packs` {(offer, period): packs} fixes the here-and-now order, `ease` finds contradictions."""
    with undisturbed():
        return _build(problem, packs, ease)


@contextmanager
def undisturbed():
    """Without Python's collector of cycles: it would walk what is being built again and again, and find none."""
    running = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if running:
            gc.enable()


def _build(problem, packs, ease):
    draft = Draft(problem, packs=packs, ease=ease)
    most = Most(problem, limits_give=ease == "limits")
    now = orders.place_orders(draft, most, None)
    fees = money.fees(draft, now, None)
    money.budget(draft, now, fees)
    draft.programme.orders.extend(now)
    draft.programme.fees.extend(fees)
    for scenario in range(len(problem.scenarios)):
        _build_scenario(draft, most, scenario, now)
    _set_objective(draft)
    return draft.programme


def _build_scenario(draft, most, scenario, now):
    later = orders.place_orders(draft, most, scenario)
    fees = money.fees(draft, later, scenario)
    money.later_budget(draft, scenario, later, fees)
    draft.programme.orders.extend(later)
    draft.programme.fees.extend(fees)
    gear = gear_rows.Gear(draft, scenario)
    gear.count_given()
    for order in [*now, *later]:
        gear.count_order(order)
    uses.place_uses(draft, gear, scenario)
    runs, windows = recipes.place_runs(draft, gear, [*now, *later])
    hauls.place_hauls(draft, gear, runs)
    gear_rows.balance(gear)
    recipes.work_minutes(draft, scenario, [*now, *later], runs, windows)


def _set_objective(draft):
    problem, programme = draft.problem, draft.programme
    if draft.ease is not None:
        draft.lp.setObjective(pulp.LpAffineExpression(draft.penalties))
        return
    weight = problem.bad_years.weight
    if len(problem.scenarios) == 1 or problem.bad_years.share >= 1:
        weight = 0.0
    total, constant = dict(draft.now_money), 0.0
    for number, scenario in enumerate(problem.scenarios):
        share = (1 - weight) * scenario.probability
        add_all(total, draft.own_money[number], share)
        constant += share * draft.constants[number]
        programme.spread[number] = share
    if weight:
        add_all(total, bad_years(draft, weight))
    draft.lp.setObjective(pulp.LpAffineExpression(total, constant=constant))
    for part in problem.parts:
        programme.stock_worth[part.code] = draft.worth[part.code][0]


def bad_years(draft, weight):
    """Bad years: shortfall_s ≥ mark − own money_s; the mean of the worst share is mark − Σ p·shortfall ÷ share.

    The price of a scenario's row is the weight its money has among the bad years.
    """
    problem = draft.problem
    level = draft.column("bad_years_mark", lowest=None)
    terms = {level: weight}
    for number, scenario in enumerate(problem.scenarios):
        shortfall = draft.column("shortfall", mark(number))
        row = dict(draft.own_money[number])
        add(row, shortfall, 1.0)
        add(row, level, -1.0)
        bound = -draft.constants[number]
        name = draft.row("bad_years", mark(number), terms=row, sense=">=", bound=bound)
        draft.programme.tail_rows[number] = name
        add(terms, shortfall, -weight * scenario.probability / problem.bad_years.share)
    return terms
