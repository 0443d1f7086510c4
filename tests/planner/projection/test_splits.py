"""Splits answer to survival, and never go beyond strength or stands."""

import datetime as dt

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


SPRING = dt.date(2026, 4, 6)  # after the first look of ISO week 13: the next winter ends within the year


def test_splits_of_a_season_begun_in_spring_have_a_winter_of_their_own(projected):
    projections = projected(operation(day=SPRING), count=20, target_colonies=130, summer_loss_share=0)
    splits = [split for p in projections for split in p.splits]
    assert splits
    assert all(split.found_week > split.hive_week for split in splits)
    kept = sum(split.kept for split in splits)
    dead = sum(sum(split.dead.values()) for split in splits)
    assert 0.1 < dead / kept < 0.5
    for split in splits:
        for home, count in split.homes.items():
            assert split.at(home, split.hive_week - 1) == 0
            assert split.at(home, split.hive_week) == count
            assert split.at(home, split.found_week) == count - split.dead.get(home, 0)


def test_splits_of_a_season_begun_in_winter_have_none(projected):
    assert all(not split.dead for p in projected(count=5) for split in p.splits)


@pytest.mark.parametrize(("share", "dies"), [(0, True), (1, False)])
def test_a_winter_that_takes_all_splits_or_none(projected, share, dies):
    whole = operation(day=SPRING)
    told = {"target_colonies": 130, "survival_share": share, "summer_loss_share": 0}
    for split in (split for p in projected(whole, count=3, **told) for split in p.splits):
        assert sum(split.dead.values()) == (split.kept if dies else 0)


def test_what_the_summer_will_take_is_made_up_for(projected):
    tries = [
        sum(split.attempts for p in projected(count=20, summer_loss_share=share) for split in p.splits)
        for share in (0, 0.1, 0.2)
    ]
    assert tries == sorted(tries)
    assert tries[0] < tries[2]


@pytest.mark.parametrize("share", [0, 0.6, 1])
def test_second_boxes_of_splits_that_die_in_the_winter_are_told_with_the_week_they_are_found(
    projected, share
):
    told = {"target_colonies": 130, "survival_share": share, "summer_loss_share": 0}
    for projection in projected(operation(day=SPRING), count=4, **told):
        found = {split.found_week for split in projection.splits}
        boxes = [box for box in projection.second_boxes if box.strength == "split"]
        dying = sum(box.colonies for box in boxes if box.found_week is not None)
        dead = sum(sum(split.dead.values()) for split in projection.splits)
        # Seven of ten splits grow into a second box, the dying as often as the others, whole boxes a yard.
        assert dying == pytest.approx(0.7 * dead, abs=len(boxes))
        assert {box.found_week for box in boxes} <= {None, *found}
        assert (dying > 0) == (dead > 0)
