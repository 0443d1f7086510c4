"""What is measured next door to a solved order."""

import pytest

from planner.bench import nextdoor
from planner.bench.instances import Size
from planner.bench.tasks import Instance


@pytest.fixture
def tiny(catalogue, market):
    return Instance(catalogue=catalogue, market=market, size=Size(yards=1, colonies=6), scenarios=9)


def test_every_line_is_moved_both_ways(tiny):
    found = nextdoor.pack_by_pack(instance=tiny, seconds=60)
    assert found["done"] and found["moves"] > 0 and found["moves"] % 2 == 0
    assert found["seconds"] > 0 and found["building"] > 0


def test_both_ways_prove_the_curve_over_the_same_twelve_budgets(tiny):
    assert len(nextdoor.budgets_of(tiny.problem())) == 12
    for task in (nextdoor.curve_by_one_master, nextdoor.curve_by_cold_solves):
        found = task(instance=tiny, seconds=60, gap=0.005)
        assert found["done"] and found["seconds"] > 0


def test_cold_solves_stopped_before_their_end_say_so(tiny):
    assert nextdoor.curve_by_cold_solves(instance=tiny, seconds=0.01, gap=0.005)["done"] is False
