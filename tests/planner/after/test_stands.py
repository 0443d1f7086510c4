"""Never more colonies than stands without being told."""

from dataclasses import replace
from types import SimpleNamespace

from planner.after.stands import stand_rows
from tests.planner.operations import operation


def season(counts, probability=0.5):
    return SimpleNamespace(
        probability=probability, colonies={("alder", "strong"): counts, ("birch", "fair"): (3, 3)}
    )


def ground(stands):
    whole = operation()
    return replace(
        whole, yards=tuple(replace(y, stands=stands) if y.code == "alder" else y for y in whole.yards)
    )


def test_a_yard_with_a_stand_for_each_colony_is_not_named():
    assert stand_rows(ground(20), [season((18, 20)), season((18, 19))]) == ()


def test_a_yard_that_some_season_overfills_is_named_with_how_often_and_when():
    (row,) = stand_rows(ground(18), [season((18, 20)), season((17, 18))])
    assert (row.yard_name, row.stands, row.colonies, row.week, row.in_100) == ("Alder", 18, 20, 1, 50)
