"""Packs and knapsacks through `size`, against published values."""

import pytest

from tests.outside import packs
from tests.outside.published import case


def test_the_cheapest_packs_cover_a_requirement(solver, sized):
    """Constructed (a covering knapsack): 137 frames from packs of 1, 10, 25 and 100 cost 136.10."""
    published = case("pack-cover")
    plan = sized(packs.cover(published.data), solver)
    assert -plan["objective"] == published.figure("optimal_cost")
    assert plan["spend"] == published.figure("optimal_cost")
    assert sum(line["units"]["frame"] for line in plan["here_and_now"]) >= 137


KNAPSACKS = {
    # Burkardt, KNAPSACK_01 data set, 2014, after Kreher and Stinson, Combinatorial Algorithms, 1999
    "kp-p01": (packs.one_limit, [1, 1, 1, 1, 0, 1, 0, 0, 0, 0]),
    # Taha, Operations Research: An Introduction, 2017, Example 12.3-1 (from memory)
    "kp-cargo": (packs.one_limit, [2, 0, 0]),
    # Petersen, Computational Experience with Variants of the Balas Algorithm, Management Science 13(9), 1967
    # (from memory)
    "kp-petersen1": (packs.many_limits, [0, 1, 1, 0, 0, 1]),
}


@pytest.mark.parametrize("name", KNAPSACKS)
def test_a_knapsack_takes_the_published_objects(name, solver, sized):
    encode, taken = KNAPSACKS[name]
    published = case(name)
    plan = sized(encode(published.data), solver)
    assert plan["objective"] == published.figure("optimal_value")
    served = {line["use"]: line["units"] for line in plan["scenarios"][0]["served"]}
    assert [served.get(f"object-{j}", 0) for j in range(len(taken))] == taken
