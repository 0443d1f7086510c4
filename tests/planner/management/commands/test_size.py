"""`size`: exit codes, what it prints and writes, and that it needs no database."""

import json
import os
import subprocess
import sys

import pytest
from django.core.management import CommandError, call_command

from planner.management.commands import size
from planner.solution.nearby import studying
from planner.solution.plans import no_plan
from tests.planner.small_problems import small, years


@pytest.fixture
def run(tmp_path, capsys):
    """run(problem or text, *options) -> (exit code, printed, said in error, plan or None)."""

    def ask(problem, *options):
        asked, answered = tmp_path / "problem.json", tmp_path / "plan.json"
        asked.write_text(problem if isinstance(problem, str) else json.dumps(problem), encoding="utf-8")
        code = 0
        try:
            call_command("size", str(asked), "--out", str(answered), *options)
        except SystemExit as ended:
            code = ended.code
        printed = capsys.readouterr()
        plan = json.loads(answered.read_text(encoding="utf-8")) if answered.exists() else None
        return code, printed.out, printed.err, plan

    return ask


@pytest.mark.parametrize("solver", ["highs", "cbc"])
def test_an_order_is_printed_and_written(run, solver):
    code, out, _, plan = run(small(), "--solver", solver)
    assert code == 0
    assert "boxes" in out
    assert "Spend: 40.00 USD" in out
    assert (plan["status"], plan["objective"], plan["solver"]) == ("optimal", 60, solver)


def test_faults_are_all_listed_and_nothing_is_written(run):
    problem = small(periods=0)
    problem["offers"][0]["prices"][0]["price"] = "9,5"
    code, out, err, plan = run(problem)
    assert (code, out, plan) == (2, "", None)
    assert 'offers[0].prices[0].price: must be a number ≥ 0, got "9,5"' in err
    assert "periods: must be a whole number" in err


def test_text_that_is_not_json_is_a_fault(run):
    code, _, err, plan = run("{")
    assert (code, plan) == (2, None)
    assert "not JSON" in err


def test_an_infeasible_problem_is_explained(run):
    code, out, _, plan = run(small(budget=0, use={"must": True}))
    assert (code, plan["status"]) == (1, "infeasible")
    assert "40.00 USD more budget" in out


def test_a_money_machine_is_explained(run):
    code, out, _, plan = run(small(part={"end_value": 11}))
    assert (code, plan["status"]) == (1, "unbounded")
    assert 'offer "boxes" is a money machine' in out


def test_out_of_time_without_an_order_is_told(run, monkeypatch):
    late = no_plan("time_limit", "no order was found within the time limit; allow more seconds", 1, "highs")
    monkeypatch.setattr(size, "solve_apart", lambda *args, **kwargs: late)
    code, out, _, plan = run(small())
    assert (code, plan["status"], plan["here_and_now"]) == (3, "time_limit", [])
    assert "Time ran out before any order was found." in out


@pytest.mark.parametrize(
    "options",
    [("--gap", "-1"), ("--gap", "two"), ("--seconds", "0"), ("--seconds", "nan"), ("--solver", "abacus")],
)
def test_settings_that_make_no_sense_are_refused(run, options):
    with pytest.raises(CommandError, match=options[0]):
        run(small(), *options)


def test_a_file_that_is_not_there_is_told(capsys, tmp_path):
    with pytest.raises(SystemExit) as ended:
        call_command("size", str(tmp_path / "none.json"))
    assert ended.value.code == 2
    assert "none.json cannot be read: No such file" in capsys.readouterr().err


def test_a_file_that_is_no_text_is_told(capsys, tmp_path):
    path = tmp_path / "problem.json"
    path.write_bytes(b"\xff\xfe\x00")
    with pytest.raises(SystemExit) as ended:
        call_command("size", str(path))
    assert ended.value.code == 2
    assert "cannot be read" in capsys.readouterr().err


def test_a_folder_that_is_not_there_is_told_before_solving(capsys, tmp_path):
    path = tmp_path / "problem.json"
    path.write_text(json.dumps(small()), encoding="utf-8")
    with pytest.raises(SystemExit) as ended:
        call_command("size", str(path), "--out", str(tmp_path / "nowhere" / "plan.json"))
    assert ended.value.code == 2
    assert "there is no folder" in capsys.readouterr().err


def bought_or_nothing(**use):
    """25 ways the year may go that ask for boxes: many enough for cuts."""
    return small(scenarios=years(*[(1 / 25, units + 1) for units in range(25)], **use))


def with_two_faults():
    problem = small(periods=0)
    problem["offers"][0]["parts"] = {"quilt": 1}
    return problem


REAL = (
    (0, small(), (), "This is the best order there is."),
    (0, bought_or_nothing(), ("--seconds", "0.01"), "Time ran out: this is the best order found so far; "),
    (1, small(budget=0, use={"must": True}), (), "40.00 USD more budget than 0.00"),
    (1, small(part={"end_value": 11}), (), 'offer "boxes" is a money machine'),
    (
        1,
        small(part={"end_value": 1}, offer={"prices": [{"from_packs": 1, "price": 0}]}),
        (),
        '"boxes" is a money',
    ),
    (3, bought_or_nothing(must=True), ("--seconds", "0.01"), "Time ran out before any order was found."),
)


@pytest.fixture
def real(tmp_path):
    """real(problem, *options) -> the ended process of the command run by itself, with no database to be had."""
    nowhere = {"DATA_DIR": str(tmp_path / "data"), "DATABASE_URL": "postgres://nobody@127.0.0.1:1/none"}

    def run(problem, *options):
        path = tmp_path / "problem.json"
        path.write_text(json.dumps(problem), encoding="utf-8")
        line = [
            sys.executable,
            "manage.py",
            "size",
            str(path),
            "--out",
            str(tmp_path / "plan.json"),
            *options,
        ]
        return subprocess.run(
            line, capture_output=True, text=True, timeout=120, env={**os.environ, **nowhere}, check=False
        )

    return run


@pytest.mark.parametrize(("code", "problem", "options", "words"), REAL)
def test_run_by_itself_it_ends_with_the_code_of_what_it_found(real, code, problem, options, words):
    ended = real(problem, *options)
    assert (ended.returncode, ended.stderr) == (code, "")
    assert words in ended.stdout


def test_run_by_itself_it_lists_every_fault_with_its_place_and_writes_no_plan(real, tmp_path):
    ended = real(with_two_faults())
    assert (ended.returncode, ended.stdout) == (2, "")
    assert [line.split(":")[0] for line in ended.stderr.splitlines()] == ["periods", "offers[0].parts.quilt"]
    assert not (tmp_path / "plan.json").exists()


def test_out_of_time_the_best_order_so_far_is_written_with_how_far_it_may_be_off(real, tmp_path):
    ended = real(bought_or_nothing(), "--seconds", "0.01")
    plan = json.loads((tmp_path / "plan.json").read_text(encoding="utf-8"))
    assert plan["status"] == "time_limit" and plan["bound"] >= plan["objective"] == 0  # the order of nothing
    assert (
        "how much better one could be is not known" in ended.stdout
    )  # any gap on nothing is too wide to mean much


def test_what_lies_next_door_is_written_beside_the_plan(run, tmp_path):
    path = tmp_path / "next.json"
    code, _, _, plan = run(small(budget=25), "--next-door", str(path), "--gap", "0")
    told = json.loads(path.read_text(encoding="utf-8"))
    assert (code, plan["objective"]) == (0, 30)
    assert [(row["step"], row["worth_change"], row["over_budget"]) for row in told["moves"]] == [
        (1, 15, 5),
        (-1, -15, 0),
    ]
    assert [point["budget"] for point in told["points"]].count(25) == 1
    assert (len(told["points"]), told["not_told"]) == (12, "")


def test_without_an_order_nothing_lies_next_door(run, tmp_path):
    path = tmp_path / "next.json"
    code, _, _, _ = run(small(budget=0, use={"must": True}), "--next-door", str(path))
    assert (code, path.exists()) == (1, False)


def test_a_folder_that_is_not_there_is_said_before_the_solve(run, tmp_path):
    path = tmp_path / "nowhere" / "next.json"
    code, _, err, plan = run(small(), "--next-door", str(path))
    assert (code, plan) == (2, None)
    assert "cannot be written: there is no folder" in err


def test_what_could_not_be_told_in_time_is_said(run, tmp_path, monkeypatch):
    said = studying.nothing(1.0, "There was no time.")
    monkeypatch.setattr(size, "study_apart", lambda *told, **settings: said)
    code, out, _, _ = run(small(), "--next-door", str(tmp_path / "next.json"))
    assert (code, "There was no time." in out) == (0, True)
