"""The two-phase way against the direct one: the same plan, the same refusals, an order at any time."""

import random

import pytest

from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.solution.two_phase import planning as planning_module
from planner.solution.two_phase import suits, takes
from planner.solution.valuing import objective_of
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small, small_problem, years

RANDOM = [problem_of(random_problem(random.Random(seed))) for seed in range(160)]
SUITED = [problem for problem in RANDOM if suits(problem)]


def test_both_ways_find_the_same_worth_on_random_problems():
    solved = 0
    for problem in SUITED:
        direct, cuts = (solve(problem, gap=0, way=way) for way in ("direct", "two-phase"))
        assert direct.status == cuts.status
        if direct.is_order:
            solved += 1
            assert cuts.objective == pytest.approx(direct.objective, rel=1e-6, abs=1e-6)
            assert cuts.bound >= cuts.objective
    assert solved > 25


def test_a_gap_is_kept_and_its_bound_holds():
    for problem in SUITED:
        best, near = solve(problem, gap=0, way="direct"), solve(problem, gap=0.02, way="two-phase")
        if best.is_order:
            assert near.gap <= 0.02 + 1e-9
            assert near.objective <= best.objective + 1e-6 * max(1, abs(best.objective))
            assert near.bound >= best.objective - 1e-6 * max(1, abs(best.objective))


def test_cbc_finds_the_same_worth_in_one_piece():
    for problem in SUITED[:12]:
        cbc, cuts = solve(problem, gap=0, solver="cbc"), solve(problem, gap=0, way="two-phase")
        assert cbc.status == cuts.status
        if cbc.is_order:
            assert cuts.objective == pytest.approx(cbc.objective, rel=1e-6, abs=1e-6)


def test_scenarios_weighed_come_to_the_objective():
    for problem in SUITED[:20]:
        plan = solve(problem, gap=0, way="two-phase")
        if plan.is_order:
            money = [scenario.objective for scenario in plan.scenarios]
            assert objective_of(problem, money) == pytest.approx(plan.objective, abs=1e-6)


def test_a_given_order_is_judged_as_the_direct_way_judges_it():
    judged = 0
    for problem in SUITED:
        best = solve(problem, gap=0, way="direct", prices=False)
        if best.is_order and takes(problem, best.packs()):
            judged += 1
            plan = solve(problem, gap=0, way="two-phase", packs=best.packs())
            assert (plan.status, plan.packs()) == ("optimal", pytest.approx(best.packs()))
            assert plan.objective == pytest.approx(best.objective, rel=1e-6, abs=1e-6)
            assert plan.fees == best.fees
    assert judged > 25


def test_a_given_order_beyond_its_limits_is_not_taken():
    problem = small_problem(budget=25, offer={"max_packs": 3})
    assert takes(problem, {("boxes", 0): 2})
    for packs in ({("boxes", 0): 3}, {("boxes", 0): 1.5}, {("boxes", 0): 4}, {("jars", 0): 1}):
        assert not takes(problem, packs)
    assert solve(problem, packs={("boxes", 0): 3}, way="two-phase").status == "infeasible"


def test_a_given_order_nobody_can_place_is_refused():
    problem = problem_of(small(scenarios=years((0.5, 2), (0.5, 8))))
    with pytest.raises(ValueError, match='"boxes" can be placed in period 2'):
        solve(problem, packs={("boxes", 2): 1})


def test_a_given_order_that_leaves_a_must_use_short_is_told_in_words():
    scenarios = years((0.5, 2), (0.5, 8), must=True)
    plan = solve(problem_of(small(scenarios=scenarios)), packs={("boxes", 0): 5})
    assert plan.status == "infeasible"
    assert '"super"' in plan.reason
    assert '"year-1"' in plan.reason


def test_contradictions_and_money_machines_are_told_in_words():
    short = solve(small_problem(budget=25, use={"must": True}), way="two-phase")
    assert short.status == "infeasible"
    assert "15.00 USD more budget than 25.00" in short.reason
    machine = solve(small_problem(part={"end_value": 11}), way="two-phase")
    assert machine.status == "unbounded"
    assert "money machine" in machine.reason


def test_no_time_leaves_the_best_order_so_far_with_its_gap():
    problem = problem_of(small(scenarios=years(*[(1 / 25, units + 1) for units in range(25)])))
    plan = solve(problem, seconds=0, gap=0.001)
    assert plan.is_order
    assert plan.status == "time_limit"
    assert plan.bound is None or plan.bound > plan.objective


class Stopped:
    """A clock that tells the seconds it is given, one after another, and the last from then on."""

    def __init__(self, *spent, seconds=1.0):
        self.told, self.seconds = list(spent), seconds

    def spent(self):
        return self.told.pop(0) if len(self.told) > 1 else self.told[0]

    def left(self, least=1.0):
        return max(self.seconds - self.spent(), least)

    def is_over(self):
        return self.spent() >= self.seconds


def many_years(count):
    return problem_of(small(scenarios=years(*[(1 / count, units % 25 + 1) for units in range(count)])))


def test_time_that_runs_out_while_building_is_told_with_how_far_it_came():
    told: list = []
    plan = planning_module.solve_in_two_phases(
        many_years(60),
        gap=0.001,
        clock=Stopped(0.5, 1.5, 2.5),
        tell=lambda stage, bound, gap: told.append(stage),
        prices=False,
    )
    assert (plan.status, plan.is_order, plan.bound) == ("time_limit", False, None)
    assert plan.reason == "time ran out when 30 of 60 scenarios were built; allow more seconds"
    assert told == ["building"] * 3


def test_building_that_ends_little_late_still_gives_an_order():
    plan = planning_module.solve_in_two_phases(
        many_years(60), gap=0.001, clock=Stopped(1.5), tell=lambda *told: None, prices=False
    )
    assert (plan.status, plan.is_order) == ("time_limit", True)


def test_time_that_runs_out_while_a_given_order_is_judged_is_told_too():
    problem = many_years(60)
    plan = planning_module.judged(problem, {("boxes", 0): 2}, gap=0.001, clock=Stopped(9.0), prices=False)
    assert (plan.status, plan.is_order) == ("time_limit", False)
    assert "10 of 60 scenarios" in plan.reason


def test_no_time_and_a_must_use_leave_no_order():
    problem = small_problem(use={"must": True})
    plan = solve(problem, seconds=0, way="two-phase")
    assert (plan.status, plan.is_order) == ("time_limit", False)
    assert "allow more seconds" in plan.reason


def test_many_scenarios_take_the_two_phase_way_by_themselves(monkeypatch):
    stages = []
    problem = problem_of(small(scenarios=years(*[(1 / 25, units + 1) for units in range(25)])))
    plan = solve(problem, progress=lambda stage, bound, gap: stages.append(stage))
    assert "weighing the seasons" in stages
    assert plan.objective == pytest.approx(solve(problem, way="direct", gap=0).objective, rel=0.001)
    for count, cuts in ((1, False), (7, False), (8, True)):
        stages.clear()
        solve(many_years(count), progress=lambda stage, bound, gap: stages.append(stage))
        assert ("weighing the seasons" in stages) == cuts


def test_what_cuts_cannot_bound_is_solved_in_one_piece(monkeypatch):
    class Uncut(planning_module.Search):
        def run(self):
            raise planning_module.CannotCut("without end")

    monkeypatch.setattr(planning_module, "Search", Uncut)
    assert solve(small_problem(), way="two-phase", gap=0).objective == 60


def test_cuts_that_come_to_a_halt_are_followed_by_one_piece(monkeypatch):
    class Halted(planning_module.Search):
        def run(self):
            self.worth(self.master.nothing())

    monkeypatch.setattr(planning_module, "Search", Halted)
    assert solve(small_problem(), way="two-phase", gap=0).objective == 60


def test_an_unknown_way_is_refused():
    with pytest.raises(ValueError, match="way must be one of auto, direct, two-phase"):
        solve(small_problem(), way="guess")


def test_prices_may_be_left_out():
    plan = solve(small_problem(), way="two-phase", prices=False)
    assert (plan.shadow_prices, plan.shadow_prices_withheld) == (None, "not asked for")
