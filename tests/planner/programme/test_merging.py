"""Uses merged across yards: which share a column, what that hides at given prices, how groups are parted."""

import random

import numpy as np
import pytest

from planner.programme.merging import merging_of
from planner.sizing.reading import problem_of
from tests.planner.many_yards import many_yards
from tests.planner.small_problems import small, small_problem


def use(code, units, value, **more):
    row = {"code": code, "location": "shed", "first": 1, "last": 1, "units": units, "value": value}
    return row | {"keeps": {"box": 1}} | more


def merging(*uses, **changes):
    scenario = {"code": "year", "probability": 1, "uses": list(uses)}
    return merging_of(problem_of(small(scenarios=[scenario], **changes)), 0)


def told(found):
    return [([row.code for row in group.uses], group.units, group.value) for group in found.groups()]


def test_uses_alike_in_weeks_and_gear_share_a_group_worth_their_mean():
    found = merging(use("a", 1, 10), use("b", 3, 30), use("c", 4, 30, last=2), use("d", 4, 9, keeps={}))
    assert told(found) == [(["b", "a"], (3, 1), 25), (["c"], (4,), 30), (["d"], (4,), 9)]


def test_uses_that_wait_share_a_group_under_those_they_wait_for():
    waiting = [use(f"grid-{yard}", units, 5, needs_use=yard, per=0.5) for yard, units in (("a", 1), ("b", 2))]
    groups = list(merging(use("a", 2, 10), use("b", 4, 30), use("c", 2, 30), *waiting).groups())
    assert [len(group.uses) for group in groups] == [3, 2]
    assert (groups[1].on, groups[1].per) == (0, 3 / 8)
    assert [group.is_waited_for for group in groups] == [True, False]


def test_a_use_that_asks_for_more_than_the_other_allows_counts_for_as_much_as_that_allows():
    found = merging(use("a", 2, 10), use("grid", 9, 5, needs_use="a", per=1.5))
    assert [group.units for group in found.groups()] == [(2,), (3,)]


@pytest.mark.parametrize(
    "apart",
    [
        use("grid", 1, 5, needs_use="a", per=1),  # a limit of its own: one share would hold the other back
        use("grid", 2, 5, needs_use="a", per=1, must=True),
    ],
)
def test_families_that_cannot_be_served_to_one_share_stay_apart(apart):
    found = merging(use("a", 2, 10), apart, use("b", 4, 30))
    assert found.codes == {"b"}


def test_musts_and_gear_at_places_and_whole_uses_are_not_merged():
    assert merging(use("a", 2, 10, must=True)) is None
    assert merging(use("a", 2, 10), whole_uses=True) is None
    hauls = [{"from": "shed", "to": "hill"}]
    assert merging(use("a", 2, 10), locations=["shed", "hill"], hauls=hauls) is None
    assert merging_of(small_problem(scenarios=[{"code": "year", "probability": 1}]), 0) is None


def test_uses_of_no_units_stand_beside_others_and_alone():
    assert told(merging(use("a", 0, 10), use("b", 2, 30))) == [(["b", "a"], (2, 0), 30)]
    assert told(merging(use("a", 0, 10))) == [(["a"], (0,), 10)]


def test_what_a_group_hides_is_what_its_losses_take_off_its_gains():
    found = merging(use("a", 1, 10), use("b", 1, 30))
    assert found.loose(np.array([0.0])) == 10  # gear costs 20: one earns 10, the other would lose 10
    assert found.loose(np.array([15.0])) == found.loose(np.array([-15.0])) == 0
    assert found.part(np.array([0.0]), 0.0) == ([0], [0])
    assert sorted(told(found)) == [(["a"], (1,), 10), (["b"], (1,), 30)]
    assert found.loose(np.array([10.0, -10.0])) == 0


def test_nothing_is_parted_where_nothing_is_hidden():
    found = merging(use("a", 1, 10), use("b", 1, 30))
    assert found.part(np.array([11.0]), 0.0) == ([], [])
    assert found.count == 1


def test_a_loss_is_borne_for_what_waits_for_it():
    splits = [use("a", 1, -30), use("b", 1, -30)]
    hives = [use("hive-a", 1, 20, needs_use="a"), use("hive-b", 1, 130, needs_use="b")]
    found = merging(*splits, *hives)
    assert found.loose(np.array([-30.0, 75.0])) == pytest.approx(
        100 - 90
    )  # the first loses 10, the second earns 100
    assert found.part(np.array([-30.0, 75.0]), 0.0)[1] == [0, 1]
    assert sorted((group.uses[0].code, group.on is None) for group in found.groups()) == [
        ("a", True),
        ("b", True),
        ("hive-a", False),
        ("hive-b", False),
    ]
    assert all(
        group.uses[0].needs_use == list(found.groups())[group.on].uses[0].code
        for group in found.groups()
        if group.on is not None
    )


def kind(one):
    return one.first, one.last, tuple(one.keeps.items()), tuple(one.spends.items())


def plain_most(uses, costs):
    """What uses earn at most, each served for itself, by the book: families from the top down."""

    def earned(one, units):
        below = sum(max(earned(row, row.per * units), 0.0) for row in uses if row.needs_use == one.code)
        return units * (one.value - costs[kind(one)]) + below

    return sum(max(earned(one, one.units), 0.0) for one in uses if one.needs_use is None)


@pytest.mark.parametrize("seed", range(40))
def test_hidden_money_is_that_of_families_served_each_for_itself_and_parting_takes_it_away(seed):
    rnd = random.Random(seed)
    problem = problem_of(many_yards(rnd))
    found = merging_of(problem, 0)
    costs = {kind(one): rnd.uniform(0, 70) for one in found.uses}
    families = [one for one in problem.scenarios[0].uses if one.code in found.codes]
    for left in (30.0, 0.0):
        margins = np.array([group.value - costs[kind(group.uses[0])] for group in found.groups()])
        hidden, count = found.loose(margins), found.count
        units = [sum(group.units) for group in found.groups()]
        merged = with_waiting(
            [(group.on, n * m) for group, n, m in zip(found.groups(), units, margins, strict=True)]
        )
        assert merged + hidden == pytest.approx(plain_most(families, costs))
        found.part(margins, left)
        again = np.array([group.value - costs[kind(group.uses[0])] for group in found.groups()])
        assert found.loose(again) <= left + 1e-9
        assert found.count > count or hidden <= left + 1e-9


def with_waiting(groups):
    def earned(number):
        return groups[number][1] + sum(
            max(earned(at), 0.0) for at, (on, _) in enumerate(groups) if on == number
        )

    return sum(max(earned(number), 0.0) for number, (on, _) in enumerate(groups) if on is None)
