"""Cells and figures of the season's sheets."""

import datetime as dt
from decimal import Decimal

from django.utils import timezone

from planner.models import Run, Season
from planner.templatetags import order_sheet

DONE_AT = dt.datetime(2027, 1, 15, 5, 58, tzinfo=dt.UTC)


def test_the_title_block_of_a_done_run_says_when_how_sure_and_whether_approved():
    run = Run(pk=14, status="done", finished_at=DONE_AT, scenarios=300, gap_reached=0.0008)
    assert order_sheet.run_cells(run) == [
        ("Run", "14, done 05:58"),
        ("Seasons", "300"),
        ("Proven within", "0.08 %"),
        ("Status", "not approved"),
    ]


def test_an_order_proven_to_the_last_figure_is_called_best():
    run = Run(pk=14, status="done", finished_at=DONE_AT, scenarios=300, gap_reached=1e-9)
    assert ("Proven", "best") in order_sheet.run_cells(run)


def test_a_working_run_claims_nothing_yet():
    run = Run(pk=14, status="working", scenarios=100, gap_reached=0.2)
    assert order_sheet.run_cells(run) == [("Run", "14, working"), ("Seasons", "100")]


def test_seconds_are_told_in_the_largest_units_that_count():
    now = timezone.now()
    spans = ((0, "0 s"), (48, "48 s"), (125, "2 min 5 s"), (3790, "1 h 3 min"))
    told = [order_sheet.elapsed(now - dt.timedelta(seconds=seconds)) for seconds, _words in spans]
    assert told == [words for _seconds, words in spans]


def test_a_season_without_a_budget_has_no_limit():
    season = Season(starts_on=dt.date(2027, 1, 15))
    assert order_sheet.season_cells(season) == [
        ("Day of the order", "15 January 2027"),
        ("Budget", "no limit"),
    ]


def test_shares_keep_two_figures_that_count():
    shares = (0, 1e-9, 0.0008, 0.0134, 0.2, 1.5)
    words = ["0 %", "under 0.005 %", "0.08 %", "1.3 %", "20 %", "150 %"]
    assert [order_sheet.percent(share) for share in shares] == words


def test_money_is_signed_and_grouped():
    assert order_sheet.money(Decimal("1240.5")) == "$1,240.50"
    assert order_sheet.whole_money(Decimal("-340.2")) == "−$340"
    assert order_sheet.figures(Decimal("-1240.5")) == "−1,240.50"
    assert order_sheet.money(None) == ""


def test_a_cautions_head_loses_the_word_its_frame_brings():
    assert order_sheet.bare_head("Caution: lifting") == "lifting"
