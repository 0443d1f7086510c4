"""Money machines: offers and recipes that together make money without end, whatever the season asks for.

Takes a Problem; gives sentences that name them. Small programmes over one endless step, not the whole season.
"""

import pulp

from planner.programme.names import Names
from planner.solution import highs


def money_machines(problem, *, bounded=True):
    """Sentences naming each money machine. With `bounded` also those that only budgets and limits hold back."""
    if not any(part.end_value > 0 for part in problem.parts):
        return []
    found = _offer_machines(problem, bounded) + _recipe_machines(problem, bounded)
    if found or not problem.recipes:
        return found
    return _joint_machine(problem, bounded)


def _is_open(problem, offer, bounded):
    """Whether any number of packs may be bought."""
    landing = [period for period in offer.order_periods if period + offer.lead_periods < problem.periods]
    budget = problem.budget if offer.when == "now" else problem.later_budget
    if not landing or offer.max_packs == 0:
        return False
    if bounded:
        return True
    free = offer.prices[-1].price == 0
    tied = offer.work_minutes and problem.work.minutes_per_period is not None
    return offer.max_packs is None and (budget is None or free) and not tied


def _holding(problem, part, first):
    holding = part.holding_cost
    if isinstance(holding, tuple | list):
        return sum(holding[first:])
    return holding * (problem.periods - first)


def _lasting_value(problem, code, first):
    part = next(part for part in problem.parts if part.code == code)
    return part.end_value - _holding(problem, part, first)


def _offer_machines(problem, bounded):
    found = []
    for offer in problem.offers:
        if not _is_open(problem, offer, bounded):
            continue
        landing = max(
            p + offer.lead_periods for p in offer.order_periods if p + offer.lead_periods < problem.periods
        )
        worth = sum(n * _lasting_value(problem, part, landing) for part, n in offer.parts.items())
        price = _price(offer, bounded) + offer.work_minutes / 60 * problem.work.cost_per_hour
        if worth > price + 1e-9:
            parts = ", ".join(f'"{part}"' for part, n in offer.parts.items() if n)
            found.append(
                f'offer "{offer.code}" is a money machine: a pack costs {price:.6g} and what is in it ({parts}) '
                f"is worth {worth:.6g} at the end; lower end_value of the part below its cheapest price"
            )
    return found


def _price(offer, bounded):
    """The price of ever more packs, or the cheapest step where packs are held back."""
    return min(step.price for step in offer.prices) if bounded else offer.prices[-1].price


def _recipe_machines(problem, bounded):
    """Recipes that make more of a part than they take of it, with nothing else taken."""
    found = []
    tied = problem.work.minutes_per_period is not None and not bounded
    for recipe in problem.recipes:
        net = {part: -n for part, n in recipe.takes.items()}
        for part, n in recipe.makes.items():
            net[part] = net.get(part, 0.0) + n
        lasts = recipe.lead_periods == 0
        worth = sum(n * _lasting_value(problem, part, problem.periods - 1) for part, n in net.items())
        cost = recipe.cost + recipe.work_minutes / 60 * problem.work.cost_per_hour
        if lasts and min(net.values()) >= 0 and worth > cost + 1e-9 and not (tied and recipe.work_minutes):
            grown = ", ".join(f'"{part}"' for part, n in net.items() if n > 0)
            found.append(
                f'recipe "{recipe.code}" is a money machine: it makes more of {grown} than it takes, '
                f"worth {worth:.6g} a run at a cost of {cost:.6g}"
            )
    return found


def _joint_machine(problem, bounded):
    """Offers and recipes that only together make money: an endless direction of the programme, found by an LP."""
    lp, names = pulp.LpProblem("machine", pulp.LpMaximize), Names()
    acts: dict = {}
    idle: dict = {}
    objective: dict = {}
    idle_rows = _moves(problem, bounded, lp, names, acts, objective)
    for (part, period), terms in idle_rows.items():
        kept = idle[part, period] = lp.add_variable(names.name("idle", part, period), 0)
        terms = {**terms, kept: -1.0}
        if period:
            terms[idle[part, period - 1]] = 1.0
        lp.addConstraint(
            pulp.LpConstraint(pulp.LpAffineExpression(terms), 0, names.name("row", part, period), 0)
        )
    _end_money(problem, idle, objective)
    lp.setObjective(pulp.LpAffineExpression(objective))
    matrix = highs.matrix_of(lp)
    answer = highs.solve(matrix, seconds=30)
    if answer.values is None or answer.objective < 1e-6:
        return []
    values = dict(zip(matrix.columns, answer.values, strict=True))
    taking_part = {what for column, what in acts.items() if values[column] > 1e-7}
    names_of = sorted(f'{kind} "{code}"' for kind, code in taking_part)
    return [
        f"{', '.join(names_of)} together are a money machine: what they make is worth more at the end than it "
        f"costs; lower end_value of what they make"
    ]


def _moves(problem, bounded, lp, names, acts, objective):
    """Columns for one step of every open offer and recipe, and the balance terms by part and period."""
    rows: dict[tuple, dict] = {
        (part.code, period): {} for part in problem.parts for period in range(problem.periods)
    }
    hourly = problem.work.cost_per_hour / 60
    for offer in problem.offers:
        if not _is_open(problem, offer, bounded):
            continue
        for period in offer.order_periods:
            landing = period + offer.lead_periods
            if landing < problem.periods:
                column = lp.add_variable(names.name("packs", offer.code, period), 0, 1)
                acts[column] = ("offer", offer.code)
                objective[column] = -_price(offer, bounded) - offer.work_minutes * hourly
                for part, n in offer.parts.items():
                    rows[part, landing][column] = n
    tied = problem.work.minutes_per_period is not None and not bounded
    for recipe in problem.recipes:
        if tied and recipe.work_minutes:
            continue
        for period in range(problem.periods - recipe.lead_periods):
            column = lp.add_variable(names.name("runs", recipe.code, period), 0, 1)
            acts[column] = ("recipe", recipe.code)
            objective[column] = -recipe.cost - recipe.work_minutes * hourly
            for part, n in recipe.takes.items():
                rows[part, period][column] = rows[part, period].get(column, 0.0) - n
            for part, n in recipe.makes.items():
                landing = period + recipe.lead_periods
                rows[part, landing][column] = rows[part, landing].get(column, 0.0) + n
    return rows


def _end_money(problem, idle, objective):
    for part in problem.parts:
        for period in range(problem.periods):
            holding = part.holding_cost
            cost = holding[period] if isinstance(holding, tuple | list) else holding
            last = period + 1 == problem.periods
            objective[idle[part.code, period]] = (part.end_value if last else 0.0) - cost
