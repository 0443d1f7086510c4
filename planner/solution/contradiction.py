"""Why no plan exists, in words: which must-uses cannot be served, and which limits stand in the way.

Takes a Problem found infeasible; gives a sentence. Solves it again with must-uses, then with limits, that may give.
"""

from planner.programme import build
from planner.solution import highs

ENOUGH = 1e-6
NAMED = 4


def contradiction(problem, *, packs=None, seconds=20.0):
    """The sentence, or None where the problem has a plan after all."""
    limits = _limits(problem, packs, seconds)
    if limits == []:
        return None
    unserved = _unserved(problem, packs, seconds)
    parts = []
    if unserved:
        parts.append("must-uses that cannot be served in full: " + _joined(unserved))
    if limits:
        parts.append("it would take " + _joined(limits))
    return "; ".join(parts) if parts else "the limits contradict each other"


def _joined(sentences):
    shown = "; ".join(sentences[:NAMED])
    more = len(sentences) - NAMED
    return shown + (f"; and {more} more of the kind" if more > 0 else "")


def _eased(problem, packs, ease, seconds):
    programme = build(problem, packs=packs, ease=ease)
    matrix = highs.matrix_of(programme.lp)
    answer = highs.solve(matrix, seconds=seconds, gap=1e-4)
    if answer.values is None:
        return programme, None
    return programme, dict(zip(matrix.columns, answer.values, strict=True))


def _unserved(problem, packs, seconds):
    """Must-uses left short when everything else holds."""
    programme, values = _eased(problem, packs, "musts", seconds)
    if values is None:
        return []
    found = []
    for row in programme.served:
        if row.column is None or not row.uses[0].must:
            continue
        units = sum(use.units for use in row.uses)
        served = max(values[row.column], 0.0) + 0.0
        if units - served > ENOUGH * max(1.0, units):
            where = _in_scenario(problem, row.scenario)
            names = " and ".join(f'"{use.code}"' for use in row.uses[:3]) + (
                " ..." if len(row.uses) > 3 else ""
            )
            found.append(f"{names}{where}, {units:.6g} asked, {served:.6g} possible")
    return found


def _limits(problem, packs, seconds):
    """By how much which limits would have to give for every must-use to be served; None where that is unknown."""
    programme, values = _eased(problem, packs, "limits", seconds)
    if values is None:
        return None
    found = []
    for slack in programme.slacks:
        amount = values[slack.column]
        if amount > ENOUGH:
            found.append(_words(problem, slack, amount))
    return found


def _in_scenario(problem, scenario):
    if scenario is None or len(problem.scenarios) == 1:
        return ""
    return f' in scenario "{problem.scenarios[scenario].code}"'


def _words(problem, slack, amount):
    where = _in_scenario(problem, slack.scenario)
    if slack.kind == "part":
        place, part, period = slack.what
        at = "" if place is None else f' at "{place}"'
        return (
            f'{amount:.6g} more of part "{part}"{at}{where} by about period {period}{_source(problem, part)}'
        )
    if slack.kind == "budget":
        return f"{amount:.2f} {problem.money} more budget than {slack.what:.2f}"
    if slack.kind == "later_budget":
        return f"{amount:.2f} {problem.money} more later_budget than {slack.what:.2f}{where}"
    if slack.kind == "work":
        first, last = slack.what
        span = f"period {first}" if first == last else f"periods {first} to {last}"
        return f"{amount:.6g} more minutes of work in {span}{where}"
    if slack.kind == "order_limit":
        offer, period = slack.what
        return f'{amount:.6g} more packs than max_packs of offer "{offer}" in period {period}{where}'
    return f'use "{slack.what}"{where} served without the use it needs'


def _source(problem, part):
    """Whether anything brings the part at all."""
    offered = any(offer.parts.get(part) for offer in problem.offers)
    made = any(recipe.makes.get(part) for recipe in problem.recipes)
    return "" if offered or made else ", which no offer sells and no recipe makes"
