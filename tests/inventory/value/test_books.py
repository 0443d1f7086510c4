"""A stretch of the books."""

import datetime as dt
from decimal import Decimal

from inventory.value.books import Amount, books_of, value_by_part
from inventory.value.records import Posted

DAY = dt.date(2025, 1, 1)


def line(number, pieces, cents, why, part="box"):
    return Posted(day=DAY + dt.timedelta(days=number), part=part, pieces=pieces, cents=cents, why=why)


LINES = [
    line(0, 10, 1000, "received"),
    line(5, -2, -200, "scrapped"),
    line(6, 4, 600, "received"),
    line(6, 1, 50, "received", part="lid"),
    line(9, -1, -117, "sold"),
]


def test_opening_and_in_less_out_is_closing():
    books = books_of(LINES, first=DAY + dt.timedelta(days=5), last=DAY + dt.timedelta(days=8))
    box, lid = books.parts
    assert (box.opening, box.closing) == (Amount(pieces=10, cents=1000), Amount(pieces=12, cents=1400))
    assert box.left == {"scrapped": Amount(pieces=2, cents=200)}
    assert lid.opening == Amount() and lid.closing == Amount(pieces=1, cents=50)
    assert books.whole.came == {"received": Amount(pieces=5, cents=650)}
    assert books.whole.closing == Amount(pieces=13, cents=1450)


def test_a_part_that_is_gone_before_is_left_out():
    gone = [line(0, 1, 5, "received"), line(1, -1, -5, "sold")]
    assert books_of(gone, first=DAY + dt.timedelta(days=2), last=DAY + dt.timedelta(days=3)).parts == ()


def test_value_on_a_day_counts_that_evening():
    assert value_by_part(LINES, as_of=DAY + dt.timedelta(days=5)) == {"box": Amount(pieces=8, cents=800)}


def test_an_amount_tells_money_and_what_a_piece_is_worth():
    amount = Amount(pieces=3, cents=1000)
    assert (amount.value, amount.average) == (Decimal("10.00"), Decimal("3.3333"))
    assert Amount().average == 0
