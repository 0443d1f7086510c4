"""Rows for a terminal stand under their heads."""

from apiary.management.in_columns import in_columns


def test_columns_are_as_wide_as_their_widest_word_and_figures_stand_at_the_right():
    rows = [("yards", 3, "as they are"), ("colonies", 120, "")]
    assert in_columns(("", "New", "What"), rows).splitlines() == [
        "          New  What",
        "yards       3  as they are",
        "colonies  120",
    ]


def test_heads_stand_alone_where_there_are_no_rows():
    assert in_columns(("Sheet", "Cell"), []) == "Sheet  Cell"
