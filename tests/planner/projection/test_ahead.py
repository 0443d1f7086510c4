"""A season under way asks only for what still begins within it."""

import datetime as dt
from dataclasses import replace

import pytest

from planner.projection import project
from planner.projection.ahead import within_season
from planner.season.assumptions import assumptions_of
from planner.season.operation import SoFar
from planner.season.scenarios import draw
from tests.planner.operations import DAY, operation


def projections(day, *, begun=DAY, count=6, whole=None, region="north", **given):
    whole = replace(whole or operation(), day=day)
    told = assumptions_of(given, start=day, region=region, begun=begun)
    return told, [project(whole, told, scenario) for scenario in draw(whole, told, count=count, seed=3)]


def test_on_the_first_day_of_the_season_nothing_is_cut(projected, answers):
    whole = projected(count=1)[0]
    assert within_season(whole, answers()) is whole


@pytest.mark.parametrize("weeks_gone", [3, 16, 24, 30, 36, 44, 51])
def test_nothing_that_begins_after_the_season_is_asked_for(weeks_gone):
    told, found = projections(DAY + dt.timedelta(weeks=weeks_gone))
    assert told.season_weeks == 52 - weeks_gone
    for each in found:
        weeks = [
            row.week for rows in (each.deadouts, each.splits, each.second_boxes, each.feed) for row in rows
        ]
        weeks += [row.first for row in (*each.supers, *each.small_gear)]
        weeks += [row.week for row in (*each.consumables, *each.drawing)]
        assert all(week < told.season_weeks for week in weeks)


def test_once_spring_is_past_the_winter_is_no_longer_drawn():
    _told, found = projections(DAY + dt.timedelta(weeks=24))
    assert not [dead for each in found for dead in each.deadouts if dead.why == "winter"]
    _told, before = projections(DAY + dt.timedelta(weeks=4))
    assert [dead for each in before for dead in each.deadouts if dead.why == "winter"]


def test_a_keeper_who_has_looked_into_every_hive_is_believed_before_the_usual_week():
    _told, found = projections(DAY + dt.timedelta(weeks=10), winter_counted=True)
    assert not [dead for each in found for dead in each.deadouts if dead.why == "winter"]


def test_flows_that_are_past_give_nothing_and_one_under_way_only_its_rest():
    clover_on = dt.date(2026, 6, 22)  # the third week of a clover flow of weeks 23 to 29
    _told, whole_season = projections(DAY)
    _told, rest = projections(clover_on)
    _told, past = projections(dt.date(2026, 8, 3))
    crop = [sum(each.crop_lb for each in found) for found in (whole_season, rest, past)]
    assert crop[0] > crop[1] > crop[2] > 0  # goldenrod is still to come
    assert {need.window for each in past for need in each.supers} == {"Goldenrod"}
    _told, over = projections(dt.date(2026, 10, 5))
    assert [each.crop_lb for each in over] == [0.0] * 6


def test_splits_already_made_count_against_those_wanted():
    day = DAY + dt.timedelta(weeks=14)
    _told, without = projections(day)
    whole = operation(so_far=SoFar(colonies_begun=110))
    grown = replace(
        whole,
        colonies=tuple(replace(group, colonies=group.colonies + 1) for group in whole.colonies),
    )
    _told, made = projections(day, whole=replace(grown, so_far=SoFar(colonies_begun=110, splits_made=32)))
    attempts = [sum(split.attempts for each in found for split in each.splits) for found in (without, made)]
    assert attempts[0] > attempts[1]


def test_nucs_sold_are_not_sold_a_second_time():
    day = DAY + dt.timedelta(weeks=14)
    _told, wanted = projections(day, nucs_sold=8)
    _told, rest = projections(day, nucs_sold=8, whole=operation(so_far=SoFar(nucs_sold=8)))
    assert sum(split.sold for each in wanted for split in each.splits) == 8 * 6
    assert sum(split.sold for each in rest for split in each.splits) == 0


NORTHERN = dt.date(2022, 12, 5)
SOUTHERN = NORTHERN + dt.timedelta(weeks=26)  # 2021 to 2025 have no 53rd ISO week
WEEKS = ("spring_week", "split_week", "second_box_week", "treatment_week", "autumn_feed_week", "guard_week")


def half_a_year_on(week):
    return (week + 26 - 1) % 52 + 1


def half_a_year_on_at(yard):
    windows = tuple(
        replace(each, first_week=half_a_year_on(each.first_week), last_week=half_a_year_on(each.last_week))
        for each in yard.windows
    )
    return replace(yard, windows=windows)


@pytest.mark.parametrize("weeks_gone", [0, 9, 16, 24, 30, 36])
def test_a_southern_season_is_the_northern_one_half_a_year_on(weeks_gone):
    """The same bees, every week and flow of the calendar moved by half a year: the same needs in the same periods."""
    gone, here = dt.timedelta(weeks=weeks_gone), operation()
    there = replace(here, yards=tuple(half_a_year_on_at(yard) for yard in here.yards))
    asked = {week: getattr(assumptions_of({}, start=NORTHERN, region="north"), week) for week in WEEKS}
    mirrored = {week: half_a_year_on(asked[week]) for week in WEEKS}
    north, northern = projections(NORTHERN + gone, begun=NORTHERN, whole=here, **asked)
    south, southern = projections(SOUTHERN + gone, begun=SOUTHERN, whole=there, **mirrored)
    assert south.season_weeks == north.season_weeks == 52 - weeks_gone
    assert southern == northern
    assert any(each.supers or each.feed or each.deadouts or each.consumables for each in northern)
    if weeks_gone:
        _told, unmoved = projections(SOUTHERN + gone, begun=SOUTHERN, whole=here, **asked)
        assert unmoved != northern


def test_supers_that_are_on_in_mid_flow_stay_on_with_their_honey():
    day = dt.date(2026, 6, 22)
    whole = operation()
    loaded = tuple(
        replace(
            group,
            gear={part: group.colonies * n for part, n in whole.sets_by_code[group.hive_set].gear.items()}
            | {"box-medium-10": 2 * group.colonies},
        )
        for group in whole.colonies
    )
    _told, bare = projections(day)
    _told, supered = projections(day, whole=replace(whole, colonies=loaded))
    units = [
        sum(
            need.colonies
            for each in found
            for need in each.supers
            if need.first == 0 and need.window == "Clover"
        )
        for found in (bare, supered)
    ]
    assert units[1] > units[0]
