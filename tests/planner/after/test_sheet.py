"""The section as its page shows it: weeks, words, and only the yards of whoever looks."""

from planner.after.sheet import after_page, line_words, rides_words
from tests.planner.after import made


def test_loads_are_told_by_week_with_what_they_weigh():
    weeks = after_page(made.section()).weeks
    assert [(week.day, week.sum) for week in weeks] == [(made.week(16), "1 load"), (made.week(28), "2 loads")]
    row = weeks[0].rows[0]
    assert row.out == ("30 × box medium 10", "270 × comb medium honey")
    assert row.out_sum == "285 of 1,000 lb, 41 of 50 cubic ft"
    assert (row.home, row.home_sum) == ((), "")


def test_an_extra_trip_for_a_pull_is_made_only_where_the_first_is_full():
    rides = [row.rides for week in after_page(made.section()).weeks for row in week.rows]
    assert rides == ["on a due visit", "on a due visit", "extra trip, if the first is full"]
    out = made.load(4, 16, "mill-race", rides="extra trip", out=made.leg(made.carried(made.MEDIUM, 3)))
    assert rides_words(out) == "extra trip"


def test_full_boxes_and_gallons_are_named_as_such():
    assert line_words(made.carried(made.MEDIUM, 16, full=True)) == "16 × box medium 10, full"
    assert line_words(made.carried("heavy-syrup", 1, unit="gallon")) == "1 gallon heavy syrup"
    assert line_words(made.carried("heavy-syrup", 12, unit="gallon")) == "12 gallons heavy syrup"


def test_who_was_given_one_yard_sees_only_its_loads():
    page = after_page(made.section(), {"upper-meadow"})
    assert [row.yard_name for week in page.weeks for row in week.rows] == ["Upper meadow"]
    assert (page.whole, page.late, page.feed, page.pulls) == (False, (), (), ())


def test_evenings_are_told_by_week_with_their_hours():
    (week,) = after_page(made.section()).bench
    assert (week.day, week.sum) == (made.week(3), "2.0 hours")
