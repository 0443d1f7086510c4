"""How large what is solved is: the exact pooled programme, and what the product ends up solving, uses merged.

Takes an instance; gives columns, rows, and how much merged uses may hide of the worth at the best order. Times nothing.
"""

import numpy as np

from planner.bench.naive import naive_size
from planner.bench.tasks import GAP
from planner.programme import build
from planner.programme.here_and_now import order_part
from planner.solution import solve
from planner.solution.clock import Clock
from planner.solution.two_phase.earnings import Earnings
from planner.solution.two_phase.master import Master
from planner.solution.two_phase.planning import COARSE_GAP, GROUPS
from planner.solution.two_phase.search import Search
from planner.solution.warm import WarmScenarios

CUTTING = "weighing the seasons"  # the stage the product tells where it goes by cuts


def pooled_size(*, instance):
    """The size of the exact pooled programme."""
    programme = build(instance.problem())
    return {"variables": len(programme.lp.variables()), "rows": len(programme.lp.constraints())}


def solved_size(*, instance, seconds, gap=GAP):
    """The size of what the product solves where it chooses the way itself: cuts (`cut`), or the exact form in one piece."""
    problem = instance.problem()
    stages = set()
    plan = solve(
        problem, gap=gap, seconds=seconds, prices=False, progress=lambda stage, *_: stages.add(stage)
    )
    if CUTTING in stages:
        return size_of_cuts(instance=instance, seconds=seconds, gap=gap)
    done = plan.is_order and plan.gap is not None and plan.gap <= gap + 1e-9
    return {**pooled_size(instance=instance), "done": done, "cut": False, "hidden": 0.0, "proven": plan.gap}


def size_of_cuts(*, instance, seconds, gap=GAP):
    """The size of the order with its earnings and of all blocks, merged uses parted as far as the gap asked for.

    A block holds the order's columns at given packs; they are no variables there. Cuts are not counted as rows.
    """
    problem = instance.problem()
    warm, part = WarmScenarios(problem, merge=gap >= COARSE_GAP), order_part(problem)
    earnings = Earnings(problem, warm, list(part.packs), GROUPS)
    search = Search(Master(part, earnings.groups), earnings, gap=gap, clock=Clock(seconds), tell=_unheard)
    search.run()
    if search.best_columns is None or search.distance() > gap + 1e-9:
        return {"done": False, "cut": True}
    earned = earnings.at(np.array(list(search.best_packs().values())))
    blocks = [scenario.block for scenario in warm.scenarios]
    return {
        "done": True,
        "cut": True,
        "variables": len(part.columns)
        + earnings.groups
        + sum(len(block.columns) - len(block.orders) for block in blocks),
        "rows": len(part.rows) + sum(len(block.rows) for block in blocks),
        "hidden": earned.loose / max(1.0, abs(search.best)),
        "proven": search.distance(),
    }


def naive_sizes(*, instance):
    """The naive form's size, and that of the lean one."""
    problem = instance.hauled()
    (variables, rows), (lean, lean_rows) = (naive_size(problem, lean=lean) for lean in (False, True))
    return {"variables": variables, "rows": rows, "lean": lean, "lean_rows": lean_rows}


def _unheard(*told):
    pass
