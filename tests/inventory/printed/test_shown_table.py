"""A page's table is read as it is seen, with the kinds of its cells."""

import datetime as dt
from decimal import Decimal

import pytest

from inventory.printed.shown_table import read_tables, value_of


def read(rows, head=""):
    return read_tables(
        f"<table><caption>Yards &amp; <b>sheds</b></caption><thead>{head}</thead><tbody>{rows}</tbody></table>"
    )[0]


def test_heads_rows_and_sums_are_told_apart():
    shown = read_tables(
        "<p>12</p><table><caption>Gear</caption>"
        "<thead><tr><th>Piece</th><th class='figure'><a href='?sort=n'>All</a></th></tr></thead>"
        "<tbody><tr><th>Deep &lt;box&gt;</th><td class='quantity'>1,250</td></tr></tbody>"
        "<tfoot><tr><td>Sum</td><td class='figure'>1,250</td></tr></tfoot></table>"
    )
    assert len(shown) == 1
    assert shown[0].caption == "Gear"
    assert shown[0].columns == (("Piece", False), ("All", True))
    assert shown[0].rows == (("Deep <box>", 1250),)
    assert shown[0].sums == (("Sum", 1250),)


@pytest.mark.parametrize(
    ("words", "figure", "value"),
    [
        ("1,234.50", True, Decimal("1234.50")),
        ("-12", True, -12),
        ("$1,234", True, 1234),
        ("2 missing", True, "2 missing"),
        ("1,23", True, "1,23"),
        ("12", False, "12"),
        ("007", False, "007"),
        ("3 Nov 2026", False, dt.date(2026, 11, 3)),
        ("3 November 2026", False, dt.date(2026, 11, 3)),
        ("3 Nix 2026", False, "3 Nix 2026"),
        ("=1+1", True, "=1+1"),
        ("", True, ""),
    ],
)
def test_a_figure_is_a_number_and_a_day_a_day(words, figure, value):
    assert value_of(words, figure=figure) == value
    assert type(value_of(words, figure=figure)) is type(value)


def test_a_day_that_is_none_stays_words():
    assert value_of("31 Feb 2026", figure=False) == "31 Feb 2026"


def test_what_stands_small_gets_its_own_column():
    shown = read(
        "<tr><th>Deep<span class='sub'>sound</span><span class='sub'>lent</span></th>"
        "<td class='figure'>4.00<span class='sub'>12</span></td></tr>"
        "<tr><th>Shallow</th><td class='figure'>1.00</td></tr>",
        "<tr><th>Piece</th><th>Worth</th></tr>",
    )
    assert [head for head, _ in shown.columns] == ["Piece", "Piece, note", "Worth", "Worth, note"]
    assert shown.rows == (("Deep", "sound; lent", Decimal("4.00"), 12), ("Shallow", "", Decimal("1.00"), ""))


def test_what_opens_is_drawn_or_said_twice_is_left_out():
    shown = read(
        "<tr><th><details class='places'><summary>Deep</summary><ul><li>Shed: 4</li></ul></details>"
        "<span class='sub cramped'>1.00 a piece</span><svg><title>drawn</title></svg></th>"
        "<td><span aria-hidden='true'>Run 1</span>yes<br>so<span class='hidden'> of Deep</span></td></tr>"
        "<tr class='reason'><td colspan='2'>why</td></tr>"
    )
    assert shown.rows == (("Deep", "yes so"),)


def test_spans_are_written_out():
    shown = read(
        "<tr><th rowspan='2'>Winter</th><td>low</td></tr><tr><td>high</td></tr>"
        "<tr><td colspan='2'>none</td></tr>"
    )
    assert shown.rows == (("Winter", "low"), ("Winter", "high"), ("none", ""))


def test_a_head_that_is_only_heard_is_read_too():
    assert read("<tr><td>1</td></tr>", "<tr><th><span class='hidden'>Open</span></th></tr>").columns == (
        ("Open", False),
    )


def test_an_empty_table_has_no_columns():
    shown = read("")
    assert (shown.columns, shown.rows, shown.caption) == ((), (), "Yards & sheds")
