"""An order tried in a run: its neighbours, the usual order as packs, the sections of the report, the solver's greeting."""

import itertools
import json
from dataclasses import replace

import pytest

from planner import runs
from planner.plan.facts import Facts
from planner.sizing.reading import read
from planner.sizing.writing import dump
from planner.solution import Cancelled, as_json, plan_of
from planner.solution.nearby import study
from planner.trying import OTHER_BUDGETS, hush_greeting, usual_packs
from planner.yardform import NotJudged
from tests.planner import outfit
from tests.planner.plan import small
from tests.planner.plan.neighbours import nearby


def test_the_usual_order_is_placed_at_each_offers_first_week():
    packs, gone = usual_packs(small.problem(), {"north-box": 2, "north-sugar": 0, "old": 1})
    assert (packs, gone) == ({("north-box", 0): 2}, ("old",))


def test_what_is_bought_in_season_is_no_winter_order():
    assert usual_packs(small.problem(), {"later-sugar": 5}) == ({}, ("later-sugar",))


def test_a_keeper_who_told_nothing_has_no_usual_order():
    assert usual_packs(small.problem(), {}) == (None, ())
    assert usual_packs(small.problem(), {"north-box": 0}) == (None, ())


@pytest.fixture
def quick(db):
    outfit.make_outfit()
    return runs.Settings(scenarios=4, seed=2, seconds=60.0, trial=20, trial_seconds=30.0)


def planned(settings, **changed):
    return runs.plan_order(outfit.DAY, {}, replace(settings, **changed)).report


def test_a_run_sets_its_order_beside_the_keepers_own(quick):
    report = planned(quick, usual_order={"mill-box-medium-10-flat": 2, "gone-box": 1})
    assert report.trial.against == "yours"
    assert {row.key for row in report.trial.rows} >= {"ours", "yours", "rule", "foresight"}
    yours = next(row for row in report.trial.rows if row.key == "yours")
    assert yours.spend == 185  # two packs at 70 and 45 for shipping
    assert "gone-box" in yours.how
    assert report.standing.rivals == ()


def test_a_run_judges_its_order_yard_by_yard(quick):
    judged = planned(quick).trial.by_yard
    assert judged.seasons >= 10
    assert abs(judged.gap_share) < 0.05
    assert judged.said.startswith("Hauling told yard by yard, this order is worth")


def test_an_order_with_no_time_left_to_judge_it_by_yard_says_so(quick, monkeypatch):
    monkeypatch.setattr("planner.trying.judge", refuse)
    judged = planned(quick).trial.by_yard
    assert (judged.by_yard, judged.seasons) == (None, 0)
    assert judged.said.startswith("Not judged yard by yard: the time allowed ran out.")


def refuse(*_facts, enough, **_settings):
    assert not enough(0)
    raise NotJudged("the time allowed ran out")


def test_without_a_trial_the_order_meets_its_rivals_on_its_own_seasons(quick):
    report = planned(quick, trial=0)
    assert report.trial is None
    assert [rival.name for rival in report.standing.rivals] == ["a rule of thumb", "buying nothing now"]


@pytest.mark.long
def test_the_bad_years_curve_is_drawn_where_it_is_asked_for(quick):
    assert planned(quick).bad_years is None
    curve = planned(quick, trial=0, bad_years_curve=True).bad_years
    assert len(curve.points) == 6
    assert sum(point.chosen for point in curve.points) == 1


def test_a_run_asks_what_a_pack_more_and_other_budgets_would_do_and_its_problem_file_says_the_same(quick):
    """The problem as `plan_season --problem` writes it, studied afresh, gives the moves of the run's report."""
    outcome = runs.plan_order(outfit.DAY, {}, replace(quick, trial=0, budget=1500))
    report = outcome.report
    assert not report.budgets.not_told
    assert len(report.budgets.points) == 12
    assert all(left.gain <= right.gain for left, right in itertools.pairwise(report.budgets.points))
    assert sum(point.chosen for point in report.budgets.points) == 1
    again = study(read(dump(outcome.problem)), plan_of(json.loads(json.dumps(as_json(outcome.plan)))))
    facts = Facts(
        operation=outcome.operation,
        assumptions=outcome.assumptions,
        problem=outcome.problem,
        plan=outcome.plan,
        nearby=again,
    )
    moves = {line.offer: line.why.moves for line in report.lines}
    assert moves == {offer: found for (offer, _period), found in facts.moves.items()}
    assert all(len(found) == 2 for found in moves.values())


def test_a_run_may_leave_its_neighbours_unasked(quick):
    report = planned(quick, trial=0, nearby_seconds=0)
    assert report.budgets is None
    assert all(line.why.moves == () for line in report.lines)


def test_a_study_whose_time_was_up_says_so_and_the_order_stands(quick, monkeypatch):
    monkeypatch.setattr("planner.trying.study_apart", too_late)
    report = planned(quick, trial=0)
    assert report.lines
    assert (report.budgets.points, report.budgets.not_told) == ((), "The time was up.")


def too_late(_problem, _plan, *, seconds, **_settings):
    assert seconds == 45.0
    return nearby(
        moves=(),
        points=(),
        knee=None,
        next_earns=None,
        less=None,
        seconds=seconds,
        not_told="The time was up.",
    )


def test_a_run_called_off_while_it_asks_for_other_budgets_ends_there(quick):
    told = []
    with pytest.raises(Cancelled):
        runs.plan_order(
            outfit.DAY,
            {},
            replace(quick, trial=0),
            progress=lambda stage, bound=None, gap=None: told.append(stage),
            cancelled=lambda: "asking what one pack more would do" in told,
        )
    assert set(told[told.index("asking what one pack more would do") :]) <= {
        "asking what one pack more would do",
        OTHER_BUDGETS,
    }


def test_the_solvers_greeting_stays_off_a_keepers_table(capfd):
    hush_greeting()
    print("The order")
    assert capfd.readouterr().out == "The order\n"


def test_a_run_that_is_stopped_in_the_midst_of_its_trial_ends_there(quick):
    def stop(stage, bound=None, gap=None):
        if stage == "trying the order on fresh seasons":
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        runs.plan_order(outfit.DAY, {}, quick, progress=stop)
