"""Recipes and work of one scenario: runs by stretch of periods, and the minutes they take.

Takes recipes and the orders landing; adds runs, their gear and rows of the family work_minutes.
"""

from planner.programme.calendar import stretches
from planner.programme.draft import add, add_all, mark
from planner.programme.record import Run


def place_runs(draft, gear, orders):
    """Columns of all recipes in a scenario. Gives the runs and the stretches they were put in.

    What a recipe takes may be missing at first: its runs stay all the same, so that the price of a part tells what it
    would earn if there were some.
    """
    problem, scenario = draft.problem, gear.scenario
    instant = [recipe for recipe in problem.recipes if not recipe.lead_periods]
    slow = [recipe for recipe in problem.recipes if recipe.lead_periods]
    spans = _spans(draft, gear, orders, instant, slow)
    singles = [(period, period) for period in range(problem.periods)]
    runs = []
    for recipe in [*instant, *slow]:
        for first, last in singles if recipe.lead_periods else spans:
            if last + recipe.lead_periods < problem.periods:
                column = draft.column("runs", mark(scenario), recipe.code, last)
                runs.append(Run(scenario=scenario, recipe=recipe, first=first, last=last, column=column))
                _count(draft, gear, runs[-1])
    draft.programme.runs.extend(runs)
    return runs, spans


def _spans(draft, gear, orders, instant, slow):
    problem = draft.problem
    touched = {part for recipe in instant for part in (*recipe.takes, *recipe.makes)}
    held = any(draft.worth[part][0] != draft.worth[part][-1] for part in touched)
    every = range(problem.periods)
    if held or not gear.pooled:
        return [(period, period) for period in every]
    comes: set[int] = set()
    goes: set[int] = set()
    for (_, part), rows in gear.columns.items():
        if part in touched:
            for period, _, units in rows:
                (comes if units > 0 else goes).add(period)
    for (_, part), rows in gear.fixed.items():
        if part in touched:
            for period, units in rows:
                (comes if units > 0 else goes).add(period)
    for recipe in slow:
        if touched & set(recipe.takes):
            goes.update(every)
        if touched & set(recipe.makes):
            comes.update(range(recipe.lead_periods, problem.periods))
    alone = {order.landing for order in orders if order.offer.work_minutes}
    return stretches(problem.periods, comes=comes, goes=goes, alone=alone)


def _count(draft, gear, run):
    """Gear a run takes and makes, and its money."""
    recipe, start = run.recipe, run.last
    landing = start + recipe.lead_periods
    worth = -recipe.cost - recipe.work_minutes / 60 * draft.problem.work.cost_per_hour
    changes: dict[tuple, float] = {}
    for part, n in recipe.takes.items():
        add(changes, (part, start), -n)
    for part, n in recipe.makes.items():
        add(changes, (part, landing), n)
    for (part, period), n in changes.items():
        gear.count(recipe.location, part, period, run.column, n)
        worth += n * draft.worth[part][period]
    draft.money(gear.scenario, {run.column: worth})


def work_minutes(draft, scenario, orders, runs, spans):
    """Work: minutes of packs landing + minutes of runs begun ≤ minutes_per_period, summed over a stretch of periods.

    Its price is what one minute more in those periods would earn.
    """
    minutes = draft.problem.work.minutes_per_period
    if minutes is None:
        return
    for first, last in spans:
        inside = {
            run.column: run.recipe.work_minutes for run in runs if first <= run.first and run.last <= last
        }
        _work_row(draft, scenario, first, last, {**inside, **_landing_work(orders, first, last)})
    for run in runs:
        if run.recipe.lead_periods and run.recipe.work_minutes:
            _add_single(draft, scenario, run, runs, spans)


def _landing_work(orders, first, last):
    terms: dict = {}
    for order in orders:
        if order.offer.work_minutes and first <= order.landing <= last:
            add_all(terms, order.packs, order.offer.work_minutes)
    return terms


def _add_single(draft, scenario, run, runs, spans):
    """Runs with a lead are told by period: their own minutes must fit each period of a stretch."""
    done = draft.programme.work_rows.get((scenario, run.first), ())
    span = next(span for span in spans if span[0] <= run.first <= span[1])
    if span[0] == span[1] or len(done) > 1:
        return
    terms = {
        other.column: other.recipe.work_minutes
        for other in runs
        if other.recipe.lead_periods and other.first == run.first
    }
    _work_row(draft, scenario, run.first, run.first, terms)


def _work_row(draft, scenario, first, last, terms):
    terms = {column: minutes for column, minutes in terms.items() if minutes}
    if not terms:
        return
    limit = sum(draft.problem.work.minutes_per_period[first : last + 1])
    slack = draft.slack("work", scenario, (first, last), weight=1 / max(1.0, limit))
    if slack is not None:
        add(terms, slack, -1.0)
    name = draft.row("work_minutes", mark(scenario), first, last, terms=terms, sense="<=", bound=limit)
    for period in range(first, last + 1):
        draft.programme.work_rows.setdefault((scenario, period), []).append(name)
