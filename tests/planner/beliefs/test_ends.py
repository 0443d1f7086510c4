"""An answer lower and higher: its values, what moves along, and the same seasons drawn."""

from dataclasses import replace

import pytest

from planner.beliefs.doubts import DOUBTS
from planner.beliefs.ends import (
    Beliefs,
    answered,
    believing,
    key_of,
    other_values,
    problem_at,
)
from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.scenarios import draw
from tests.planner.operations import operation

BY_KEY = {doubt.key: doubt for doubt in DOUBTS}
SEASONS = 8


@pytest.fixture
def believed(answers):
    return lambda **given: Beliefs(operation=operation(), assumptions=answers(**given))


@pytest.fixture
def base(answers):
    told, whole = answers(), operation()
    seasons = draw(whole, told, count=SEASONS, seed=1)
    return sizing_problem(whole, told, [project(whole, told, each) for each in seasons], budget=4500)


def values(key, beliefs):
    return {other.side: other for other in other_values(BY_KEY[key], beliefs)}


def test_survival_is_as_unsure_as_the_mean_of_a_few_winters(believed):
    # By hand: the published share weighs like two winters, winters' correlation 0.075, so the standard deviation is
    # sqrt(0.69 x 0.31 x 0.075 / 2) = 0.0896, and 1.645 of it 0.147.
    ends = values("survival_share", believed())
    assert (ends["low"].value, ends["high"].value) == (0.54, 0.84)
    assert ends["low"].words == "54\N{NO-BREAK SPACE}%"


def test_more_winters_told_make_survival_surer(believed):
    told = believed(winters="60/44, 72/58, 66/47, 70/52, 75/50")
    narrow, wide = values("survival_share", told), values("survival_share", believed())
    span = narrow["high"].value - narrow["low"].value
    assert span < wide["high"].value - wide["low"].value


def test_ends_keep_within_what_the_question_allows(believed):
    ends = values("deadout_sound_share", believed(deadout_sound_share=0.97))
    assert ends["high"].value == 1.0
    assert values("season_limit", believed(season_limit=0)) == {}


def test_a_price_beyond_the_own_market_stays_under_the_own_price(believed):
    ends = values("honey_price_more", believed(honey_price=2.0, honey_price_more=1.9))
    assert ends["high"].value == 2.0


def test_what_belongs_together_moves_together(believed):
    low = values("drawn_strong", believed())["low"].beliefs.assumptions
    assert (low.drawn_strong, low.drawn_fair, low.drawn_weak) == (9, 6, 3)


def test_crops_draw_together_about_the_same_middle(believed):
    beliefs = believed()
    low = values("crop_best", beliefs)["low"].beliefs.assumptions
    told = beliefs.assumptions
    assert low.crop_best * low.crop_worst == pytest.approx(told.crop_best * told.crop_worst)
    assert told.crop_worst < low.crop_worst < low.crop_best < told.crop_best


def test_the_flows_of_all_yards_move_in_like_measure(believed):
    beliefs = believed()
    low = values("window_lb", beliefs)["low"].beliefs.operation
    for before, after in zip(beliefs.operation.yards, low.yards, strict=True):
        assert [w.gain_lb for w in after.windows] == [0.75 * w.gain_lb for w in before.windows]


def test_nucs_are_in_doubt_only_where_some_are_sold(believed):
    assert values("nuc_price", believed()) == {}
    assert values("nuc_price", believed(nucs_sold=10))["high"].value == 180


def test_honey_in_a_super_is_that_of_the_supers_in_use(believed):
    beliefs = believed(super_depth="shallow")
    assert key_of(BY_KEY["honey_medium_lb"], beliefs) == "honey_shallow_lb"
    assert answered(BY_KEY["honey_medium_lb"], beliefs)[1] == "32 lb"


def test_at_the_value_answered_the_problem_is_the_same_to_the_last_figure(believed, base):
    beliefs = believed()
    doubt = BY_KEY["survival_share"]
    same = believing(doubt, beliefs.assumptions.survival_share, beliefs)
    assert problem_at(same, base, seed=1) == base


def test_an_answer_that_touches_nothing_leaves_the_problem_as_it_is(believed, base):
    # no nuc is sold, so that what one brings is of no matter
    beliefs = believed()
    other = replace(beliefs, assumptions=replace(beliefs.assumptions, nuc_price=900.0))
    assert problem_at(other, base, seed=1) == base


def test_the_luck_of_the_seasons_is_the_same_at_another_survival(believed):
    beliefs = believed()
    other = values("survival_share", beliefs)["high"].beliefs
    here = draw(beliefs.operation, beliefs.assumptions, count=SEASONS, seed=1)
    there = draw(other.operation, other.assumptions, count=SEASONS, seed=1)
    for before, after in zip(here, there, strict=True):
        assert (before.flow, before.split_success) == (after.flow, after.split_success)
        assert all(before.survivors[group] <= after.survivors[group] for group in before.survivors)


def test_more_colonies_through_the_winter_never_give_more_deadout_gear(believed, base):
    # common practice, no source: gear of a colony comes free only where it died
    beliefs = believed()
    problems = {
        side: problem_at(other.beliefs, base, seed=1)
        for side, other in values("survival_share", beliefs).items()
    }
    for low, high in zip(problems["low"].scenarios, problems["high"].scenarios, strict=True):
        boxes = [
            sum(a.quantity for a in scenario.arrivals if a.part == "box-deep-10" and a.period < 26)
            for scenario in (low, high)
        ]
        assert boxes[0] >= boxes[1]
