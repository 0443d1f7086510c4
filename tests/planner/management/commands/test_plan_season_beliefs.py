"""`plan_season --beliefs`: the check printed, and each of its problems solved by `size` alone."""

import json
import subprocess
import sys

import pytest
from django.core.management import CommandError, call_command

from planner.beliefs.regret import regret_of
from planner.sizing.reading import read
from planner.solution.plan_json import plan_of
from planner.solution.recourse import worths
from planner.solution.valuing import objective_of
from tests.planner import outfit

QUICK = ("--scenarios", "4", "--seconds", "60", "--trial", "0", "--nearby-seconds", "0")
GAP = 0.001


@pytest.fixture
def season(db):
    outfit.make_outfit()
    return outfit.make_season()


def test_every_problem_of_the_check_can_be_made_again_by_size(season, capsys, tmp_path):
    folder, base, out = tmp_path / "others", tmp_path / "base.json", tmp_path / "plan.json"
    first = tmp_path / "first.json"
    call_command(
        "plan_season",
        *QUICK,
        *("--problem", str(base), "--plan", str(first), "--beliefs-problems", str(folder)),
    )
    names = sorted(path.stem for path in folder.iterdir())
    assert f"Written: {len(names)} problems in {folder}" in capsys.readouterr().out
    assert {"survival_share-low", "survival_share-high", "honey_price-low"} <= set(names)
    problems = {name: read((folder / f"{name}.json").read_text()) for name in names}
    as_answered = read(base.read_text())
    assert all(each.budget == as_answered.budget for each in problems.values())
    assert [s.code for s in problems["survival_share-low"].scenarios] == [
        s.code for s in as_answered.scenarios
    ]
    assert problems["survival_share-low"] != as_answered
    command = [
        sys.executable,
        "manage.py",
        "size",
        str(folder / "survival_share-low.json"),
        "--out",
        str(out),
    ]
    subprocess.run(command, check=True, capture_output=True)
    alone = json.loads(out.read_text())
    assert alone["status"] in ("optimal", "within_gap")
    # what the check itself finds at that end is worth what the file's order is, within both gaps
    other = problems["survival_share-low"]
    found = regret_of(other, plan_of(json.loads(first.read_text())).packs(), gap=GAP, seconds=60.0)
    near = 2 * GAP * max(1.0, abs(found.best))
    assert abs(found.best - alone["objective"]) <= near
    assert found.held <= alone["bound"] + near and found.lost >= 0
    made_alone = plan_of(alone).packs()
    assert abs(objective_of(other, worths(other, made_alone)) - found.best) <= near


def test_the_check_is_printed_where_it_is_asked_for(season, capsys):
    call_command("plan_season", *QUICK, "--beliefs", "--beliefs-seconds", "4")
    out = capsys.readouterr().out
    assert "Find out: " in out or "None of the answers tried" in out or "Time was up" in out


def test_seconds_of_the_check_that_are_no_number_are_refused(season):
    with pytest.raises(CommandError, match="a number from 0 to 86400, got 'soon'"):
        call_command("plan_season", *QUICK, "--beliefs-seconds", "soon")


def test_a_folder_that_cannot_be_made_is_refused_before_any_work(season, tmp_path):
    with pytest.raises(CommandError, match="There is no folder"):
        call_command("plan_season", *QUICK, "--beliefs-problems", str(tmp_path / "no" / "where"))
