"""Recipes and work of one scenario: runs where they have to be told apart, and the minutes they take.

Takes recipes and the orders landing; adds runs, their gear and rows of the family work_minutes.
"""

from planner.programme.calendar import calendar
from planner.programme.draft import add, add_all, mark
from planner.programme.record import Run


def place_runs(draft, gear, orders):
    """Columns of all recipes in a scenario. Gives the runs and the windows in which their work must fit.

    What a recipe takes may be missing at first: its runs stay all the same, so that the price of a part tells what it
    would earn if there were some.
    """
    scenario = gear.scenario
    loaded = {order.landing for order in orders if order.offer.work_minutes}
    found = calendar(draft, gear, loaded)
    runs = []
    for pace in sorted(draft.paces, key=lambda pace: pace.recipe.lead_periods > 0):
        recipe = pace.recipe
        for first, last in found.spans[recipe.code]:
            column = draft.column("runs", mark(scenario), recipe.code, last)
            runs.append(Run(scenario=scenario, recipe=recipe, first=first, last=last, column=column))
            for (part, after), n in pace.changes.items():  # counted in the run's last period
                gear.count(recipe.location, part, last + after, column, n)
            draft.money(scenario, {column: pace.worths[last]})
    draft.programme.runs.extend(runs)
    return runs, found.windows


def work_minutes(draft, scenario, orders, runs, windows):
    """Work: minutes of packs landing + minutes of runs begun ≤ minutes_per_period, summed over a window of periods.

    Its price is what one minute more in those periods would earn.
    """
    if draft.problem.work.minutes_per_period is None:
        return
    working = [run for run in runs if run.recipe.work_minutes]
    landing = [order for order in orders if order.offer.work_minutes]
    slacks: dict = {}
    for first, last in windows:
        terms = {
            run.column: run.recipe.work_minutes for run in working if first <= run.first and run.last <= last
        }
        for order in landing:
            if first <= order.landing <= last:
                add_all(terms, order.packs, order.offer.work_minutes)
        _work_row(draft, scenario, first, last, terms, slacks)


def _work_row(draft, scenario, first, last, terms, slacks):
    if not terms:
        return
    limit = sum(draft.problem.work.minutes_per_period[first : last + 1])
    slack = draft.slack("work", scenario, (first, last), weight=1 / max(1.0, limit))
    if slack is not None:
        slacks[first, last] = slack
        for (start, end), column in slacks.items():
            if first <= start and end <= last:
                add(terms, column, -1.0)
    name = draft.row("work_minutes", mark(scenario), first, last, terms=terms, sense="<=", bound=limit)
    for period in range(first, last + 1):
        draft.programme.work_rows.setdefault((scenario, period), []).append(name)
