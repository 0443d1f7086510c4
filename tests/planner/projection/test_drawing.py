"""What bees draw: by flow and strength, half in the build-up, a few by splits, none in a dearth."""

from planner.projection.drawing import BUILD_UP, SPRING_DRAWING_SHARE
from tests.planner.operations import operation


def by_name(projection):
    rows = {}
    for drawing in projection.drawing:
        rows.setdefault(drawing.window, []).append(drawing)
    return rows


def limit(projection, week):
    a_colony = {"strong": 15, "fair": 10, "weak": 5, "split": 5}
    return sum(counts[week] * a_colony[word] for (_yard, word), counts in projection.colonies.items())


def test_each_flow_has_its_first_visit_and_its_last_week(projected):
    # ISO weeks 23 to 29 and 34 to 38 are periods 26 to 32 and 37 to 41 of a season that starts on 1 December 2025,
    # less the first three days; visits fall on even periods.
    rows = by_name(projected(count=1)[0])
    assert [(row.week, row.last) for row in rows["Clover"]] == [(26, 32)]
    assert [(row.week, row.last) for row in rows["Goldenrod"]] == [(36, 41)]


def test_the_build_up_draws_half_of_a_flow_until_the_first_begins(projected):
    projection = projected(count=1)[0]
    (row,) = by_name(projection)[BUILD_UP]
    assert (row.week, row.last) == (20, 25)
    assert row.frames == limit(projection, 21) * SPRING_DRAWING_SHARE


def test_splits_draw_from_their_making_until_they_are_hived(projected):
    projection = projected(count=1)[0]
    (row,) = by_name(projection)["splits"]
    assert (row.week, row.last) == (projection.splits[0].week, projection.splits[0].hive_week)
    assert row.frames == 5 * sum(split.attempts for split in projection.splits)


def test_bees_that_draw_nothing_have_no_drawing(projected):
    projection = projected(count=1, drawn_strong=0, drawn_fair=0, drawn_weak=0)[0]
    assert projection.drawing == ()


def test_without_any_flow_only_the_build_up_and_splits_draw(projected):
    yards = tuple(type(yard)(**{**vars(yard), "windows": ()}) for yard in operation().yards)
    projection = projected(operation(yards=yards), count=1)[0]
    assert by_name(projection).keys() == {BUILD_UP, "splits"}
    assert by_name(projection)[BUILD_UP][0].last == 51
