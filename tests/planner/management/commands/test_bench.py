"""The bench command: lines of JSON only, whatever they say; the rest is said on the error output."""

import io
import json
import subprocess
import sys

import pytest
from django.conf import settings
from django.core.management import call_command
from django.core.management.base import CommandError

from planner.bench.instances import Size
from planner.bench.scales import Scale
from planner.management.commands import bench

TINY = Scale(
    small=Size(yards=1, colonies=6),
    medium=Size(yards=1, colonies=8),
    large=Size(yards=2, colonies=8),
    wide=Size(yards=2, colonies=12),
    few=1,
    hundred=2,
    several=2,
    many=3,
    of_forms=1,
    of_orders=1,
    repeats=1,
    seeds=(1,),
    trial_seeds=(1,),
    run_seconds=50.0,
    opponent_seconds=50.0,
    total_seconds=240.0,
    long_runs=False,
)


def run(*arguments):
    out, err = io.StringIO(), io.StringIO()
    call_command("bench", *arguments, stdout=out, stderr=err)
    return [json.loads(line) for line in out.getvalue().splitlines()], err.getvalue()


def test_a_quick_run_on_tiny_operations_prints_well_formed_lines(monkeypatch):
    monkeypatch.setitem(bench.SCALES, "quick", TINY)
    lines, _ = run("--quick", "--only", "against-naive", "--only", "yard-form", "--only", "building")
    assert [line["bench"] for line in lines].count("yard-form") == 3
    assert {line["bench"] for line in lines} == {"against-naive", "yard-form", "building"}
    for line in lines:
        assert set(line) == {"bench", "figure", "value", "unit", "target", "ok"}
        assert isinstance(line["value"], float) and isinstance(line["ok"], bool)
        sign, limit = line["target"].split()
        assert line["ok"] == {">=": line["value"] >= float(limit), "<=": line["value"] <= float(limit)}[sign]


def test_only_the_named_rows_are_measured(monkeypatch):
    monkeypatch.setitem(bench.SCALES, "full", TINY)
    lines, _ = run("--only", "building")
    assert {line["bench"] for line in lines} == {"building"}


def test_once_the_time_is_up_the_rest_is_said_on_the_error_output_and_nothing_printed(monkeypatch):
    monkeypatch.setitem(bench.SCALES, "quick", Scale(total_seconds=0.0, long_runs=False))
    lines, said = run("--quick", "--only", "yard-form")
    assert lines == []
    assert "left out, the time is up: linear forms of 6 yards" in said


def test_a_row_that_is_not_there_is_refused_by_name():
    with pytest.raises(CommandError, match="invalid choice: 'honey'"):
        run("--only", "honey")


def test_help_is_plain_words_and_names_the_rows():
    done = subprocess.run(
        [sys.executable, "manage.py", "bench", "--help"],
        cwd=settings.BASE_DIR,
        capture_output=True,
        text=True,
        check=True,
    )
    assert "nothing is changed" in done.stdout and "five minutes" in done.stdout
    assert "against-naive" in done.stdout
