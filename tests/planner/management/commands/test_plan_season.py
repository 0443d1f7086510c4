"""`plan_season`: the whole planning from the database, its files, its refusals and how it ends."""

import datetime as dt
import json
import subprocess
import sys

import openpyxl
import pytest
from django.core.management import CommandError, call_command

from apiary.models import Colony
from inventory.models import Offer, PriceStep
from planner import runs
from planner.sizing.reading import read
from tests.planner import outfit

QUICK = ("--scenarios", "4", "--seconds", "60", "--trial", "20")


@pytest.fixture
def season(db):
    outfit.make_outfit()
    return outfit.make_season()


def printed(capsys, *arguments):
    call_command("plan_season", *QUICK, *arguments)
    return capsys.readouterr().out


def refused(*arguments):
    with pytest.raises(CommandError) as refusal:
        call_command("plan_season", *QUICK, *arguments)
    return refusal.value


def test_the_order_is_printed_and_its_files_are_written(season, capsys, tmp_path):
    files = {name: tmp_path / name for name in ("order.xlsx", "problem.json", "plan.json")}
    out = printed(
        capsys,
        "--workbook",
        str(files["order.xlsx"]),
        "--problem",
        str(files["problem.json"]),
        "--plan",
        str(files["plan.json"]),
    )
    assert "Mill Lane Woodware (invented)" in out
    assert "All orders, shipping included" in out
    assert f"Written: {files['order.xlsx']}" in out
    plan = json.loads(files["plan.json"].read_text())
    assert 0 < plan["spend"] <= 2000
    assert f"{plan['spend']:,.2f}" in out
    assert len(read(files["problem.json"].read_text()).scenarios) == 4
    assert "Order" in openpyxl.load_workbook(files["order.xlsx"]).sheetnames


def test_what_other_budgets_would_do_is_printed_unless_it_is_not_asked(season, capsys):
    out = printed(capsys, "--trial", "0")
    assert "The next $100 " in out and "With $300 less to spend" in out
    out = printed(capsys, "--trial", "0", "--nearby-seconds", "0")
    assert "The next $100" not in out


def test_seconds_to_ask_in_that_are_no_number_are_refused(season):
    refusal = refused("--nearby-seconds", "soon")
    assert "--nearby-seconds: a number from 0 to 86400, got 'soon'" in str(refusal)


def test_the_problem_file_solved_by_size_gives_the_same_order(season, capsys, tmp_path):
    problem, plan, again = tmp_path / "problem.json", tmp_path / "plan.json", tmp_path / "again.json"
    printed(capsys, "--problem", str(problem), "--plan", str(plan), "--gap", "0.001")
    command = [sys.executable, "manage.py", "size", str(problem), "--out", str(again), "--gap", "0.001"]
    subprocess.run(command, check=True, capture_output=True)
    first, second = json.loads(plan.read_text()), json.loads(again.read_text())
    assert second["here_and_now"] == first["here_and_now"]
    assert (second["spend"], second["objective"]) == (first["spend"], first["objective"])


def test_the_budget_told_on_the_command_line_is_kept_to_the_cent(season, capsys, tmp_path):
    plan = tmp_path / "plan.json"
    printed(capsys, "--budget", "412.50", "--plan", str(plan))
    assert json.loads(plan.read_text())["spend"] <= 412.50


def test_without_a_season_the_usual_answers_serve(season, capsys):
    season.delete()
    assert "shipping included" in printed(capsys, "--day", "2025-01-15")


def test_the_answers_of_the_season_named_are_used(season, monkeypatch, capsys):
    outfit.make_season(name="Spring 2026", starts_on="2026-02-01", answers={"circuit_days": 10})
    asked = {}

    def note(day, answers, settings, **kwargs):
        asked.update(day=str(day), answers=answers, budget=settings.budget)
        raise runs.NoOrderFound(status="time_limit", reason=None)

    monkeypatch.setattr(runs, "plan_order", note)
    refused("--season", "Spring 2026")
    assert (asked["day"], asked["answers"], asked["budget"]) == ("2026-02-01", {"circuit_days": 10}, 2000)


def test_an_unknown_season_is_refused_with_those_there_are(season):
    refusal = refused("--season", "Winter 1999")
    assert refusal.returncode == 2
    assert "Winter order 2025" in str(refusal)


def test_no_colonies_end_with_2_and_say_what_to_do(season):
    Colony.objects.update(started_on="2030-01-01")
    refusal = refused()
    assert refusal.returncode == 2
    assert "enter your yards and colonies first" in str(refusal)


def test_a_price_list_that_holds_no_more_ends_with_2_and_says_what_to_do(season):
    Offer.objects.update(open_until=outfit.DAY - dt.timedelta(days=1))
    refusal = refused()
    assert refusal.returncode == 2
    assert "No supplier's price holds on 15 January 2025 or later: load a price list first" in str(refusal)


def test_prices_of_nothing_end_with_2_and_are_all_named(season):
    PriceStep.objects.filter(offer__supplier__code="bees").update(price_cents=0)
    refusal = refused()
    assert refusal.returncode == 2
    assert "A price of 0 stands on the price list for" in str(refusal)
    assert "sugar, 50 a pack" in str(refusal) and "jar, 12 a pack" in str(refusal)


def test_a_second_to_look_gives_the_best_order_so_far_and_says_how_sure_it_is(season, capsys):
    call_command("plan_season", "--scenarios", "60", "--seconds", "0.1", "--trial", "0")
    out = capsys.readouterr().out
    assert "Time ran out: this is the best order found so far;" in out
    assert "Give it more seconds" in out


def test_faulty_answers_end_with_2_and_are_all_told(season):
    season.answers = {"circuit_days": 1000, "survival_share": 3}
    season.save()
    refusal = refused()
    assert refusal.returncode == 2
    assert str(refusal).count("lies outside") == 2


@pytest.mark.parametrize(("status", "code"), [("infeasible", 1), ("unbounded", 1), ("time_limit", 3)])
def test_no_order_ends_with_1_and_no_time_with_3(season, monkeypatch, status, code):
    def none(*args, **kwargs):
        raise runs.NoOrderFound(status=status, reason=None)

    monkeypatch.setattr(runs, "plan_order", none)
    assert refused().returncode == code


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("--day", "15.1.2025"), "write the day as 2027-01-15"),
        (("--budget", "9,5"), "write a sum as 4500"),
        (("--budget", "-1"), "write a sum as 4500"),
        (("--budget", "1.005"), "write a sum as 4500"),
        (("--scenarios", "0"), "a whole number from 1"),
        (("--gap", "2"), "a number from 0 to 1"),
        (("--seconds", "soon"), "a number from 0"),
        (("--workbook", "/nowhere/order.xlsx"), "There is no folder /nowhere"),
    ],
)
def test_what_cannot_be_read_is_refused_before_any_work(db, arguments, sentence):
    refusal = refused(*arguments)
    assert refusal.returncode == 2
    assert sentence in str(refusal)
