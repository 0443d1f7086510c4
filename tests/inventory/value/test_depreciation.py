"""Straight-line depreciation, against worked examples and by hand."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.value.depreciation import Convention, Rest, schedule, worn
from inventory.value.records import Posted

YEARLY, MONTHLY = Convention(), Convention(monthly=True)
LIVES = {"box": 5, "frame": 5, "comb": 5}


def line(on, pieces, cents, why="received", part="box", **more):
    return Posted(day=dt.date.fromisoformat(on), part=part, pieces=pieces, cents=cents, why=why, **more)


def one(lines, year, convention=YEARLY, **more):
    (row,) = schedule(lines, LIVES, year=year, convention=convention, **more)
    return row


def test_a_printing_press_of_five_years():
    """Franklin, Graybeal and Cooper, Principles of Accounting, Volume 1 (OpenStax, 2019), chapter 11, from memory:
    $58,000 less a rest of $10,000 over five years is $9,600 a year."""
    came = dt.date(2019, 1, 1)
    told = {"came": came, "years": 5, "convention": YEARLY, "rest": 1_000_000}
    by_year = [worn(5_800_000, through=2019 + n, **told) for n in range(6)]
    assert by_year == [960_000, 1_920_000, 2_880_000, 3_840_000, 4_800_000, 4_800_000]
    press, rest = [line("2019-01-01", 1, 5_800_000)], Rest(cents={"box": 1_000_000})
    rows = [one(press, 2019 + n, rest=rest) for n in range(6)]
    assert [row.year_cents for row in rows] == [960_000] * 5 + [0]
    assert [row.net_cents for row in rows] == [
        4_840_000,
        3_880_000,
        2_920_000,
        1_960_000,
        1_000_000,
        1_000_000,
    ]


def test_a_machine_of_five_years():
    """Teaching slides to a financial accounting textbook (Cengage, 2011, chapter 3), read second hand: $10,000 less
    a rest of $2,000 over five years: book values 8,400, 6,800, 5,200, 3,600 and 2,000."""
    machine, rest = [line("2011-01-01", 1, 1_000_000)], Rest(percent=20)
    worth = [one(machine, 2011 + n, MONTHLY, rest=rest).net_cents for n in range(5)]
    assert worth == [840_000, 680_000, 520_000, 360_000, 200_000]


def test_by_whole_years_the_year_it_came_counts_whole():
    row = one([line("2025-11-30", 5, 1000)], 2025)
    assert (row.cost_cents, row.before_cents, row.year_cents, row.net_cents) == (1000, 0, 200, 800)
    assert [one([line("2025-11-30", 5, 1000)], year).year_cents for year in range(2026, 2031)] == [
        200
    ] * 4 + [0]


def test_by_months_the_month_it_came_counts_whole_and_the_rest_comes_at_the_end():
    parts = [one([line("2025-11-30", 5, 1200)], year, MONTHLY).year_cents for year in range(2025, 2032)]
    assert parts == [40, 240, 240, 240, 240, 200, 0]
    assert sum(parts) == 1200


def test_a_year_may_begin_in_another_month():
    june = Convention(monthly=True, begins=7)
    assert (june.year_of(dt.date(2025, 6, 30)), june.year_of(dt.date(2025, 7, 1))) == (2024, 2025)
    assert one([line("2025-06-10", 1, 1200)], 2024, june).year_cents == 20


def test_what_goes_is_the_oldest_and_its_rest_is_written_off():
    lines = [
        line("2023-03-01", 2, 1000),
        line("2024-03-01", 2, 2000),
        line("2025-06-15", -3, -2000, "scrapped"),
    ]
    old, new = schedule(lines, LIVES, year=2025, convention=YEARLY)
    assert (old.pieces, old.gone, old.gone_year_cents, old.gone_net_cents) == (
        0,
        2,
        0,
        600,
    )  # two of five years worn
    assert (new.pieces, new.cost_cents, new.before_cents, new.year_cents, new.net_cents) == (
        1,
        1000,
        200,
        200,
        600,
    )
    assert (new.gone, new.gone_net_cents) == (1, 800)
    both = old + new
    assert both.gone_net_cents == 1400 and both.net_cents == 600


def test_by_months_what_goes_wears_until_the_month_before():
    lines = [line("2024-01-01", 1, 600), line("2025-04-20", -1, -600, "sold")]
    row = one(lines, 2025, MONTHLY)
    assert (row.gone_year_cents, row.gone_net_cents) == (30, 450)  # 12 months before, three this year, of 60


def test_drawn_comb_keeps_the_year_its_frame_came():
    lines = [
        line("2024-05-01", 10, 1000, part="frame"),
        line("2025-05-01", -10, -1000, "drawn by bees", part="frame", key="a"),
        line("2025-05-01", 10, 1000, "drawn by bees", part="comb", key="a"),
    ]
    row = one(lines, 2025)
    assert (row.part, row.came, row.before_cents, row.year_cents) == ("comb", 2024, 200, 200)


def test_what_is_assembled_begins_anew_and_what_never_wears_is_left_out():
    lines = [
        line("2024-05-01", 1, 700, part="flat"),
        line("2025-05-01", -1, -700, "assembled", part="flat", key="a"),
        line("2025-05-01", 1, 700, "assembled", part="box", key="a"),
    ]
    row = one(lines, 2025)
    assert (row.part, row.came, row.before_cents) == ("box", 2025, 0)


def test_what_was_undone_is_not_gone():
    scrapped = line("2025-02-01", -1, -500, "scrapped", key="s")
    lines = [line("2024-01-01", 2, 1000), scrapped, line("2025-03-01", 1, 500, "taken back", undoes="s")]
    row = one(lines, 2025)
    assert (row.came, row.pieces, row.gone, row.net_cents) == (2024, 2, 0, 600)
    receipt = [line("2024-01-01", 2, 1000), line("2025-01-01", 1, 900, key="r")]
    undone = [*receipt, line("2025-03-01", -1, -900, "taken back", undoes="r")]
    row = one(undone, 2025)
    assert (row.came, row.pieces, row.gone) == (2024, 2, 0)


def test_a_rest_told_for_a_part_counts_before_the_share_and_is_never_more_than_the_cost():
    rest = Rest(cents={"box": 100}, percent=50)
    assert one([line("2020-01-01", 2, 1000)], 2030, rest=rest).net_cents == 200
    assert one([line("2020-01-01", 2, 150)], 2030, rest=rest).net_cents == 150
    assert one([line("2020-01-01", 2, 1000, part="comb")], 2030, rest=rest).net_cents == 500


def test_what_goes_is_written_off_with_its_rest():
    lines = [line("2024-01-01", 1, 1000), line("2026-05-01", -1, -1000, "scrapped")]
    row = one(lines, 2026, rest=Rest(percent=50))
    assert (row.gone_year_cents, row.gone_net_cents) == (0, 800)


def test_no_years_of_life_is_all_at_once():
    assert worn(500, came=dt.date(2025, 1, 1), years=0, convention=YEARLY, through=2025) == 500


@given(st.integers(0, 10**6), st.integers(1, 20), st.integers(1, 12), st.booleans(), st.integers(0, 100))
def test_all_years_together_are_the_cost_less_the_rest(cents, years, month, monthly, percent):
    told = {"came": dt.date(2025, month, 1), "years": years, "convention": Convention(monthly=monthly)}
    rest = cents * percent // 100
    total = [worn(cents, through=2024 + n, rest=rest, **told) for n in range(years + 3)]
    assert total[0] == 0 and total[-1] == cents - rest
    assert total == sorted(total)


@pytest.mark.parametrize("convention", [YEARLY, MONTHLY])
def test_what_goes_in_the_month_it_came_never_wore(convention):
    assert worn(500, came=dt.date(2025, 3, 1), years=5, convention=convention, gone=dt.date(2025, 3, 9)) == 0
