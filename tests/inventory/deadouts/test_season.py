"""The season's losses from the books: by yard and cause, each colony once, moves no loss.

The measure: van der Zee et al. 2013, BEEBOOK volume II, 1.3.3.1: at risk = start + increase - removed.
"""

import datetime as dt
from fractions import Fraction

import pytest

from apiary import colonies
from apiary.models import Colony
from inventory.deadouts.season import DISASTER, NOT_WORKED, losses_between
from tests import makers
from tests.inventory.deadouts.conftest import work

pytestmark = pytest.mark.django_db
SINCE, UNTIL = dt.date(2025, 4, 30), dt.date(2025, 10, 1)


def colony(tag, yard, **fields):
    return makers.make_colony(tag, yard=yard, **fields)


def ended(bees, why, day=dt.date(2025, 7, 1)):
    return colonies.end(bees, why=why, day=day, who=None)


def row_of(report, yard):
    (row,) = [row for row in report.rows if row.yard == str(yard)]
    return row


def test_each_yard_bears_its_dead_by_cause(yard, shed):
    work(colony("F-1", yard), shed, cause="starved", pieces=[])
    work(colony("F-2", yard), shed, cause="mites", pieces=[])
    ended(colony("F-3", yard), "died")
    ended(colony("F-4", yard), "lost")
    colony("F-5", yard)
    row = row_of(losses_between(SINCE, UNTIL), yard)
    assert row.causes == {"starved": 1, "mites and virus": 1, NOT_WORKED: 1, DISASTER: 1}
    assert (row.balance.start, row.balance.dead, row.balance.end) == (5, 4, 1)


def test_sold_and_united_are_removed_not_lost(yard):
    ended(colony("F-1", yard), "sold")
    ended(colony("F-2", yard), "united")
    colony("F-3", yard)
    report = losses_between(SINCE, UNTIL)
    assert (report.total, report.whole.removed, report.whole.at_risk) == (0, 2, 1)


def test_what_came_in_the_span_is_at_risk_too(yard):
    colony("F-1", yard)
    ended(colony("F-2", yard, day=dt.date(2025, 6, 1)), "died")
    report = losses_between(SINCE, UNTIL)
    assert (report.whole.start, report.whole.increase, report.total) == (1, 1, Fraction(1, 2))


def test_a_colony_moved_is_lost_where_it_died_and_nowhere_else(yard):
    far = makers.make_yard("long-acre")
    bees = colony("F-1", yard)
    colonies.move(bees, yard=far, day=dt.date(2025, 6, 1), who=None)
    ended(bees, "died")
    report = losses_between(SINCE, UNTIL)
    here, there = row_of(report, yard), row_of(report, far)
    assert (here.balance.removed, here.balance.dead, here.loss) == (1, 0, None)
    assert (there.balance.increase, there.balance.dead) == (1, 1)
    assert report.total == 1


def test_what_died_before_or_after_the_span_is_not_in_it(yard):
    ended(colony("F-1", yard, day=dt.date(2025, 1, 1)), "died", SINCE)
    ended(colony("F-2", yard), "died", dt.date(2025, 10, 2))
    report = losses_between(SINCE, UNTIL)
    assert (report.whole.start, report.whole.dead, report.whole.end) == (1, 0, 1)


def test_the_whole_agrees_with_the_colonies_own_balance(yard):
    far = makers.make_yard("long-acre")
    for number, why in enumerate(("died", "sold", "united", "lost", None, None)):
        bees = colony(f"F-{number}", yard if number % 2 else far)
        if why:
            ended(bees, why)
    whole = losses_between(SINCE, UNTIL).whole
    balance = Colony.objects.balance(since=SINCE, until=UNTIL)
    assert (whole.at_risk, whole.dead, whole.end) == (balance.at_risk, balance.dead, balance.end)


def test_only_the_yards_asked_for_are_told(yard):
    colony("F-1", yard)
    colony("L-1", makers.make_yard("long-acre"))
    assert [row.yard for row in losses_between(SINCE, UNTIL, yards={yard.pk}).rows] == ["Fern Hollow"]


def test_without_a_colony_there_is_no_loss():
    assert losses_between(SINCE, UNTIL).total is None
