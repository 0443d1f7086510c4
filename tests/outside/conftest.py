"""Runs a problem file through the `size` command, as a keeper would, and gives the plan file back."""

import json

import pytest
from django.core.management import call_command

SOLVERS = ("highs", "cbc")


def pytest_generate_tests(metafunc):
    """A test that takes `solver` is run with both."""
    if "solver" in metafunc.fixturenames:
        metafunc.parametrize("solver", SOLVERS)


@pytest.fixture
def sized(tmp_path, capsys):
    """sized(problem, solver) -> the plan that `size` wrote; the command must end well and prove its order."""

    def run(problem, solver, *, gap=1e-7):
        asked, answered = tmp_path / "problem.json", tmp_path / "plan.json"
        asked.write_text(json.dumps(problem), encoding="utf-8")
        try:
            call_command("size", str(asked), out=str(answered), solver=solver, gap=gap, seconds=120)
        except SystemExit as ended:
            assert not ended.code, capsys.readouterr().out
        plan = json.loads(answered.read_text(encoding="utf-8"))
        assert plan["status"] == "optimal"
        assert plan["solver"] == solver
        assert plan["bound"] >= plan["objective"]
        return plan

    return run


def packs(plan, offer):
    """Here-and-now packs of an offer, over all its orders."""
    return sum(line["packs"] for line in plan["here_and_now"] if line["offer"] == offer)


def packs_by_period(plan, offer, periods):
    found = {line["period"]: line["packs"] for line in plan["here_and_now"] if line["offer"] == offer}
    return [found.get(period, 0) for period in range(periods)]
