"""Rows as typed: spaces squeezed, dittos and empty days filled in from above, blank rows passed over."""

from inventory.catching_up.rows import Typed, without_dittos


def test_spaces_are_squeezed_and_a_row_without_words_is_blank():
    row = Typed(number=1, place="  F-01 ", gear=" deep   box ")
    assert (row.place, row.gear, row.blank) == ("F-01", "deep box", False)
    assert Typed(number=2, day="2025-05-20", act="haul", place="  ").blank


def test_an_empty_day_and_a_ditto_mean_the_row_above():
    rows = [
        Typed(number=1, day="2025-05-20", act="feed", place="F-01", gear="2:1", quantity="1"),
        Typed(number=2),
        Typed(number=3, act="feed", place="F-02", gear='"', quantity="″"),
        Typed(number=4, day="〃", act="haul", place='"', gear="''", quantity="2"),
    ]
    told = without_dittos(rows)
    assert [row.number for row in told] == [1, 3, 4]
    assert [row.day for row in told] == ["2025-05-20"] * 3
    assert [(row.place, row.gear) for row in told[1:]] == [("F-02", "2:1"), ("F-02", "2:1")]
    assert told[1].quantity == "″"  # a mark of inches is no ditto


def test_nothing_stands_above_the_first_row():
    (row,) = without_dittos([Typed(number=1, place='"', quantity="1")])
    assert (row.day, row.place) == ("", "")
