"""A season and a run as rows: money in cents, what is over and what is done."""

import datetime as dt
from decimal import Decimal

import pytest
from django.db import IntegrityError

from planner.models import Run
from tests.planner import made


def test_a_budget_is_kept_in_cents_and_told_in_money(db):
    season = made.make_season(budget_cents=412_50)
    assert season.budget == Decimal("412.50")
    assert made.make_run(season).budget == Decimal("412.50")


def test_no_budget_is_not_a_budget_of_nothing(db):
    assert made.make_season(budget_cents=None).budget is None
    assert made.make_season(name="Bare", budget_cents=0).budget == 0


@pytest.mark.parametrize(
    ("status", "over"),
    [("waiting", False), ("working", False), ("done", True), ("failed", True), ("cancelled", True)],
)
def test_a_run_is_over_once_nobody_will_work_it(status, over):
    assert Run(status=status).is_over is over
    assert Run(status=status).is_done is (status == "done")


def test_a_run_beside_another_with_nothing_supposed_only_checks_it(db):
    order = made.make_done_run()
    check = made.make_run(order.season, parent=order, status=Run.Status.DONE)
    what_if = made.make_run(
        order.season, parent=order, status=Run.Status.DONE, what_if={"prices": {"all": 5}}
    )
    assert [run.only_checks for run in (order, check, what_if)] == [False, True, False]
    assert [run.is_done for run in (order, check, what_if)] == [True, False, True]
    assert list(Run.objects.with_orders()) == [what_if, order]
    assert list(order.season.runs.in_earnest()) == [order]


def test_two_seasons_of_one_name_are_refused(db):
    made.make_season()
    with pytest.raises(IntegrityError):
        made.make_season()


def test_a_season_can_be_planned_again_from_the_day_after_its_first_until_its_year_is_over(db):
    season = made.make_season()
    first = season.starts_on
    days = [0, 1, 363, 364]
    assert [season.is_under_way(first + dt.timedelta(days=day)) for day in days] == [False, True, True, False]


def test_a_run_of_a_later_day_knows_that_its_season_began_before():
    first = made.DAY
    assert Run(begun=first, day=first + dt.timedelta(days=40)).later_in_season
    assert not Run(begun=first, day=first).later_in_season
    assert not Run(day=first).later_in_season
