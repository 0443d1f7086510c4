"""A season and a run as rows: money in cents, what is over and what is done."""

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


def test_two_seasons_of_one_name_are_refused(db):
    made.make_season()
    with pytest.raises(IntegrityError):
        made.make_season()
