"""The whole projection: any start week, either hemisphere, any outfit; same in, same out."""

import datetime as dt

import pytest

from planner.projection import home_set, project
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from tests.planner.operations import DAY, operation
from tests.planner.projection.test_gear_of_season import in_set


def test_the_same_scenario_gives_the_same_projection(projected):
    assert projected(count=3, seed=4) == projected(count=3, seed=4)


@pytest.mark.parametrize("month", range(1, 13))
@pytest.mark.parametrize("region", ["north", "southern-long"])
def test_any_month_of_either_hemisphere_can_be_the_start(projected, month, region):
    whole = operation(day=dt.date(2026, month, 15))
    for projection in projected(whole, count=2, region=region):
        assert projection.total(0) == 110
        for need in (*projection.supers, *projection.small_gear):
            assert 0 <= need.first <= need.last <= 51
        for split in projection.splits:
            assert 0 <= split.week < split.hive_week <= 51
        assert projection.crop_lb > 0


def test_southern_seasons_are_the_northern_ones_half_a_year_on():
    north = assumptions_of({}, start=dt.date(2025, 12, 1), region="north")
    south = assumptions_of({}, start=dt.date(2026, 6, 1), region="southern-long")
    whole = operation(yards=_yards_half_a_year_on())
    first = draw(operation(), north, count=1, seed=1)[0]
    here, there = project(operation(), north, first), project(whole, south, first)
    assert here.total(51) == there.total(51)
    assert abs(here.crop_lb - there.crop_lb) < 0.1 * here.crop_lb


def _yards_half_a_year_on():
    return tuple(
        type(yard)(
            **{
                **vars(yard),
                "windows": tuple(
                    type(w)(
                        name=w.name,
                        first_week=(w.first_week + 25) % 52 + 1,
                        last_week=(w.last_week + 25) % 52 + 1,
                        gain_lb=w.gain_lb,
                        spread=w.spread,
                    )
                    for w in yard.windows
                ),
            }
        )
        for yard in operation().yards
    )


@pytest.mark.parametrize("share", [0, 1])
def test_a_winter_of_none_or_all(projected, share):
    projection = projected(count=1, survival_share=share, summer_loss_share=0)[0]
    assert projection.total(30) == (0 if share == 0 else 110)
    assert bool(projection.deadouts) == (share == 0)


def test_no_colonies_ask_for_nothing(projected):
    projection = projected(operation(colonies=()), count=1)[0]
    assert (projection.supers, projection.splits, projection.feed, projection.consumables) == ((), (), (), ())


def test_no_flow_asks_for_no_super(projected):
    yards = tuple(type(yard)(**{**vars(yard), "windows": ()}) for yard in operation().yards)
    projection = projected(operation(yards=yards), count=1)[0]
    assert projection.supers == ()
    assert projection.crop_lb == 0
    assert projection.splits


@pytest.mark.parametrize(
    "code", ["three-mediums-10", "deep-and-medium-10", "two-deeps-8", "one-deep-8", "nuc-5"]
)
def test_any_outfit_is_projected(projected, code):
    projection = projected(in_set(code), count=1)[0]
    assert projection.supers
    assert projection.total(51) > 80


def test_the_home_set_is_the_commonest_that_is_no_nuc():
    assert home_set(operation()).code == "one-deep-10"
    assert home_set(in_set("two-deeps-8")).code == "two-deeps-8"
    assert not home_set(in_set("nuc-5")).is_nuc
    assert DAY.year == 2025
