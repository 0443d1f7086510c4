"""Combs of a deadout cared for against wax moth: as cold and as long as published, never against foulbrood."""

import datetime as dt
from decimal import Decimal

import pytest
from django.utils import timezone

from apiary.errors import FutureDay
from inventory.deadouts.care import care
from inventory.deadouts.refusals import NoCareNeeded, NotColdEnough, TooShort
from inventory.deadouts.waiting import to_freeze
from inventory.models import MothCare
from inventory.yardwork import undo
from tests import makers
from tests.inventory.deadouts.conftest import FOUND, work

pytestmark = pytest.mark.django_db


@pytest.fixture
def row(hive, shed):
    return work(hive, shed, fate="sound")


def frozen(row, celsius, hours, key="care"):
    return care(deadout=row, celsius=Decimal(celsius), hours=Decimal(hours), day=FOUND, who=None, key=key)


def test_cold_enough_and_long_enough_is_written_down_and_moves_nothing(row):
    act = frozen(row, -15, 2)
    told = MothCare.objects.get(act=act)
    assert (told.way, told.tenths_celsius, told.minutes, told.deadout) == ("frozen", -150, 120, row)
    assert not act.movements.exists()


@pytest.mark.parametrize(("celsius", "hours"), [("-14.9", 2), (-12, "2.9"), (-7, 4), (-30, "1.9"), (-15, 0)])
def test_too_short_for_the_cold_is_refused(row, celsius, hours):
    with pytest.raises(TooShort, match="too short against wax moth"):
        frozen(row, celsius, hours)


def test_too_warm_is_refused_however_long(row):
    with pytest.raises(NotColdEnough, match=r"-6\.9 °C is too warm to rely on"):
        frozen(row, "-6.9", 999)


def test_freezing_is_never_care_against_foulbrood(hive, shed):
    with pytest.raises(NoCareNeeded, match="Freezing is never care against it"):
        frozen(work(hive, shed, suspected=True), -20, 48)


def test_care_is_told_in_words(row):
    frozen(row, "-17.5", "2.5")
    assert MothCare.objects.get().words == "frozen at −17.5 °C for 2.5 hours"
    assert MothCare(way="frozen", tenths_celsius=-300, minutes=60).words == "frozen at −30 °C for 1 hour"
    assert MothCare(way="other").words == "otherwise: light and air, or stored in the cold"


def test_a_day_before_it_was_found_or_to_come_is_refused(row):
    with pytest.raises(NoCareNeeded, match="found dead on 1 June 2025, so its combs"):
        care(deadout=row, day=FOUND - dt.timedelta(days=1), who=None, key="early")
    with pytest.raises(FutureDay):
        care(deadout=row, day=timezone.localdate() + dt.timedelta(days=1), who=None, key="late")
    assert not MothCare.objects.exists()


def test_combs_are_cared_for_once(row):
    frozen(row, -15, 2)
    with pytest.raises(NoCareNeeded, match="cared for already"):
        frozen(row, -15, 2, key="again")
    assert frozen(row, -15, 2) == MothCare.objects.get().act  # a resend


def test_other_care_needs_no_temperature(row):
    care(deadout=row, day=FOUND, who=None, key="air")
    assert MothCare.objects.get().way == "other"


def test_care_undone_waits_again(row):
    act = frozen(row, -15, 2)
    assert to_freeze() == []
    undo(act, who=None, key="undo")
    assert to_freeze() == [row]


def test_the_books_never_tell_it_colder_than_it_was(row):
    frozen(row, "-17.77", 2)
    assert MothCare.objects.get().tenths_celsius == -177


def test_care_of_one_is_not_care_of_another(row, yard, shed):
    other = work(makers.make_colony("F-02", yard=yard, gear=True), shed, fate="sound")
    frozen(row, -15, 2)
    assert to_freeze() == [other]
    assert not other.cares.exists()
