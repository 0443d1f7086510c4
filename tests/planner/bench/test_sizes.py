"""Sizes told: those of programmes really built, and how much smaller each form is."""

from functools import partial

import pytest

from planner.bench import sizes
from planner.bench.instances import Size
from planner.bench.naive import naive_form
from planner.bench.tasks import GAP, Instance
from planner.programme import build
from planner.programme.blocks import block
from planner.programme.here_and_now import order_part
from planner.solution import highs, solve


@pytest.fixture
def tiny(catalogue, market):
    return Instance(catalogue=catalogue, market=market, size=Size(yards=1, colonies=6), scenarios=1)


@pytest.fixture
def pair(catalogue, market):
    return Instance(catalogue=catalogue, market=market, size=Size(yards=4, colonies=40), scenarios=2)


def test_the_naive_form_is_far_larger_than_the_pooled_one(tiny):
    naive, pooled = sizes.naive_sizes(instance=tiny), sizes.pooled_size(instance=tiny)
    assert naive["variables"] > 5 * pooled["variables"] > 0
    assert naive["rows"] > 5 * pooled["rows"] > 0


def test_the_pooled_size_is_that_handed_to_the_solver(tiny):
    matrix = highs.matrix_of(build(tiny.problem()).lp)
    found = sizes.pooled_size(instance=tiny)
    assert (found["variables"], found["rows"]) == (len(matrix.columns), len(matrix.rows))


def test_the_naive_sizes_told_are_those_built(tiny):
    found = sizes.naive_sizes(instance=tiny)
    for lean, keys in ((False, ("variables", "rows")), (True, ("lean", "lean_rows"))):
        form = naive_form(tiny.hauled(), lean=lean)
        assert (form.variables, form.rows) == tuple(found[key] for key in keys)


def test_what_is_solved_with_uses_merged_is_smaller_and_hides_less_than_the_gap(pair, monkeypatch):
    merged = sizes.size_of_cuts(instance=pair, seconds=60)
    monkeypatch.setattr(sizes, "COARSE_GAP", 1.0)
    exact = sizes.size_of_cuts(instance=pair, seconds=60)
    assert merged["done"] and exact["done"]
    assert merged["variables"] < exact["variables"] and merged["rows"] < exact["rows"]
    assert 0 < merged["hidden"] <= merged["proven"] <= GAP
    assert exact["hidden"] == 0


def test_without_merging_it_is_the_order_its_earnings_and_the_blocks_less_the_order_in_each(
    pair, monkeypatch
):
    problem, part = pair.problem(), order_part(pair.problem())
    blocks = [block(problem, number) for number in range(2)]
    monkeypatch.setattr(sizes, "COARSE_GAP", 1.0)
    found = sizes.size_of_cuts(instance=pair, seconds=60)
    own = sum(len(row.columns) - len(row.orders) for row in blocks)
    assert found["variables"] == len(part.columns) + 2 + own
    assert found["rows"] == len(part.rows) + sum(len(row.rows) for row in blocks)


def test_a_search_cut_short_tells_no_size(pair):
    assert sizes.size_of_cuts(instance=pair, seconds=0.0)["done"] is False


def test_the_size_told_is_that_of_the_way_the_product_takes(tiny, monkeypatch):
    told = sizes.solved_size(instance=tiny, seconds=60)
    exact, cuts = sizes.pooled_size(instance=tiny), sizes.size_of_cuts(instance=tiny, seconds=60)
    assert told["variables"] == (cuts if told["cut"] else exact)["variables"]

    monkeypatch.setattr(sizes, "solve", partial(solve, way="two-phase"))
    assert sizes.solved_size(instance=tiny, seconds=60) == cuts
    monkeypatch.setattr(sizes, "solve", partial(solve, way="direct"))
    found = sizes.solved_size(instance=tiny, seconds=60)
    assert found["done"] and not found["cut"]
    assert (found["variables"], found["rows"]) == (exact["variables"], exact["rows"])
