"""Splits answer to survival, and never go beyond strength or stands."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.projection import project
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from tests.planner.operations import DAY, operation

WHOLE = operation()
STANDS = {yard.code: yard.stands for yard in WHOLE.yards}


@settings(max_examples=40, deadline=None)
@given(
    survival=st.floats(0, 1),
    target=st.integers(0, 132),
    nucs=st.integers(0, 40),
    good=st.floats(0, 10),
    limits=st.tuples(st.integers(0, 3), st.integers(0, 2), st.integers(0, 1)),
    seed=st.integers(0, 1000),
)
def test_splits_stay_within_strength_and_stands(survival, target, nucs, good, limits, seed):
    strong, fair, weak = limits
    given_answers = {
        "survival_share": survival,
        "target_colonies": target,
        "nucs_sold": nucs,
        "splits_good_of_ten": good,
        "splits_strong": strong,
        "splits_fair": fair,
        "splits_weak": weak,
    }
    answers = assumptions_of(given_answers, start=DAY, region="north")
    for scenario in draw(WHOLE, answers, count=2, seed=seed):
        projection = project(WHOLE, answers, scenario)
        for split in projection.splits:
            alive = {
                word: sum(
                    n for (yard, _, w), n in scenario.survivors.items() if yard == split.yard and w == word
                )
                for word in ("strong", "fair", "weak")
            }
            most = alive["strong"] * strong + alive["fair"] * fair + alive["weak"] * weak
            assert split.attempts <= most
            assert 0 <= split.sold <= split.made <= split.attempts
            assert sum(split.homes.values()) == split.kept
        assert sum(split.sold for split in projection.splits) <= nucs
        for yard, stands in STANDS.items():
            autumn = sum(counts[51] for (code, _), counts in projection.colonies.items() if code == yard)
            assert autumn <= max(
                stands, sum(n for (code, _, _), n in scenario.survivors.items() if code == yard)
            )


def test_more_splits_after_a_hard_winter(projected):
    projections = projected(count=40)
    alive = [110 - sum(dead.colonies for dead in p.deadouts) for p in projections]
    tries = [sum(split.attempts for split in p.splits) for p in projections]
    hard = max(range(40), key=lambda i: (tries[i], -alive[i]))
    mild = max(range(40), key=lambda i: alive[i])
    assert alive[hard] < alive[mild]
    assert tries[hard] > tries[mild]


def test_splits_are_chosen_not_knowing_the_flow(answers):
    told = answers()
    scenario = draw(WHOLE, told, count=1, seed=1)[0]
    good = project(WHOLE, told, scenario)
    poor_flow = dict.fromkeys(scenario.flow, 0.2)
    poor = project(WHOLE, told, type(scenario)(**{**vars(scenario), "flow": poor_flow, "year_flow": 0.2}))
    assert good.splits == poor.splits
    assert good.supers != poor.supers


def test_a_target_below_the_survivors_asks_for_no_split(projected):
    assert all(not p.splits for p in projected(count=5, target_colonies=5))


def test_nucs_for_sale_come_first(projected):
    for projection in projected(count=5, target_colonies=5, nucs_sold=6):
        made = sum(split.made for split in projection.splits)
        assert sum(split.sold for split in projection.splits) == min(6, made)


def test_splits_that_never_work_are_not_tried(projected):
    assert all(not p.splits for p in projected(count=3, splits_good_of_ten=0))


def test_a_split_is_hived_after_its_weeks_in_the_nuc(projected):
    for split in (split for p in projected(count=3) for split in p.splits):
        assert (split.week, split.hive_week) == (22, 26)


@pytest.mark.parametrize("target", [100, 112])
def test_the_autumn_comes_near_the_target_when_splits_can_make_it(projected, target):
    totals = [p.total(51) for p in projected(count=40, target_colonies=target, survival_share=0.85)]
    assert abs(sum(totals) / 40 - target) < 0.06 * target
