"""What is measured, each a function to be run apart: takes an instance and settings, gives plain numbers.

Seconds cover building and solving, not the season's projection, which every form shares.
"""

import os
import tempfile
import warnings
from dataclasses import dataclass

import pulp

from apiary.bench.measuring import Stopwatch, timed
from planner.bench.instances import REGION, Size, invented, season_problem
from planner.bench.naive import naive_form, without_choices
from planner.programme import build
from planner.season.assumptions import assumptions_of
from planner.solution import highs, solve
from planner.yardform import with_hauling, yard_problem

GAP = 0.001


@dataclass(frozen=True, kw_only=True)
class Instance:
    """An invented operation and how many scenarios of its season; catalogue and market are plain objects."""

    catalogue: dict
    market: dict
    size: Size
    scenarios: int
    seed: int = 1

    def operation(self):
        return invented(self.catalogue, self.market, self.size, seed=self.seed)

    def answers(self, operation):
        return assumptions_of({}, start=operation.day, region=REGION)

    def problem(self):
        return season_problem(self.operation(), scenarios=self.scenarios, seed=self.seed)

    def hauled(self, *, cost_share=1.0):
        """The same season with the ways between shed and yards."""
        operation = self.operation()
        return with_hauling(operation, self.answers(operation), self.problem(), cost_share=cost_share)


def product(*, instance, seconds, solver="highs", way=None, gap=GAP):
    """The product's own solve of the pooled form: its size, seconds and what it proved."""
    problem = instance.problem()
    settings = {} if way is None else {"way": way}
    plan, spent = timed(
        lambda: solve(problem, solver=solver, gap=gap, seconds=seconds, prices=False, **settings)
    )
    proven = plan.is_order and plan.gap is not None and plan.gap <= gap + 1e-9
    return {"seconds": spent, "done": proven, "objective": plan.objective, "bound": plan.bound}


def direct(*, instance, seconds, solver, gap=GAP):
    """The exact pooled programme built and solved in one piece, without anything the product does besides."""
    problem = instance.problem()
    programme, building = timed(lambda: build(problem))
    left = max(1.0, seconds - building)
    if solver == "highs":
        found, solving = timed(lambda: highs.solve(highs.matrix_of(programme.lp), gap=gap, seconds=left))
        return {
            "seconds": building + solving,
            "done": found.status == highs.SOLVED,
            "objective": found.objective,
            "bound": found.bound,
        }
    _, solving = timed(lambda: _solve(programme.lp, solver, left, gap))
    return {"seconds": building + solving, **_ended(programme.lp, solving, left)}


def naive(*, instance, seconds, solver, lean=False, gap=GAP):
    """The naive form built by plain PuLP and solved by its stock solver; `done` False where time ran out."""
    problem = instance.hauled()
    form, building = timed(lambda: naive_form(problem, lean=lean))
    left = max(1.0, seconds - building)
    _, solving = timed(lambda: _solve(form.lp, solver, left, gap))
    return {
        "seconds": building + solving,
        "building": building,
        "solving": solving,
        "variables": form.variables,
        "rows": form.rows,
        **_ended(form.lp, solving, left),
    }


def _ended(lp, solving, left):
    """Whether PuLP's solver ended with an order before its time was up; it calls one of a stopped run optimal."""
    done = solving < 0.98 * left and lp.status == pulp.LpStatusOptimal
    return {"done": done, "objective": pulp.value(lp.objective)}


def _solve(lp, solver, seconds, gap):
    with tempfile.TemporaryDirectory(prefix="bench-") as folder, warnings.catch_warnings():
        warnings.simplefilter("ignore")
        if solver == "highs":
            lp.solve(pulp.HiGHS(msg=False, gapRel=gap, timeLimit=seconds))
            return
        path = pulp.apis.coin_api.pulp_cbc_path
        stock = pulp.COIN_CMD(path=path, msg=False, gapRel=gap, timeLimit=seconds, logPath=os.devnull)
        stock.tmpDir = folder
        lp.solve(stock)


def linear_forms(*, instance, seconds):
    """LP worth of the naive form and the yard form, where hauling costs and where it is free."""
    found, watch = {}, Stopwatch(seconds)
    for name, share in (("", 1.0), ("free_", 0.0)):
        problem = without_choices(instance.hauled(cost_share=share))
        found[f"{name}naive"] = _worth(naive_form(problem, lean=True).lp, watch, relaxed=True)
        found[f"{name}yard"] = _worth(build(yard_problem(problem)).lp, watch, relaxed=True)
    return found


def pooled_order_in_naive(*, instance, seconds):
    """Worth in the naive form of the pooled order, of its own best order, and its bound as low as time allowed."""
    watch = Stopwatch(seconds)
    plan = solve(instance.problem(), gap=GAP, seconds=seconds / 4, prices=False)
    if not plan.is_order:
        return {"held": None, "best": None, "bound": None}
    problem = instance.hauled()
    held = _worth(naive_form(problem, packs=plan.packs(), lean=True).lp, watch, gap=1e-6)
    best = highs.solve(highs.matrix_of(naive_form(problem, lean=True).lp), gap=GAP / 4, seconds=watch.left())
    return {"held": held, "best": best.objective, "bound": best.bound}


def _worth(lp, watch, **settings):
    """The best worth, or None where it was not proven in time."""
    found = highs.solve(highs.matrix_of(lp), seconds=watch.left(), **settings)
    return found.objective if found.status == highs.SOLVED else None
