"""The invented year, told through the acts: the books hold, and every kind of ordinary act is in it."""

import datetime as dt
import json
from io import StringIO

import pytest
from django.conf import settings
from django.contrib.auth import get_user_model
from django.core.management import call_command

from apiary.models import Colony, Yard
from inventory import loading
from inventory.catalogue import ensure_catalogue
from inventory.models import Act
from inventory.sheets.template import filled
from planner.demo import sheet, year

pytestmark = pytest.mark.django_db
OPENED_ON, ORDER_DAY = dt.date(2025, 3, 1), dt.date(2025, 11, 15)


@pytest.fixture
def lived():
    ensure_catalogue()
    who = get_user_model().objects.create_superuser("demo-keeper")
    scenario = json.loads((settings.BASE_DIR / "fixtures" / "demo.json").read_text(encoding="utf-8"))
    file = filled(sheet.sheet_of(scenario, day=OPENED_ON, order_day=ORDER_DAY, seed=41))
    loading.load_file(file, day=OPENED_ON, who=who)
    return year.live_through(who=who, opened_on=OPENED_ON, seed=41)


def test_the_year_is_told_in_acts_and_the_books_prove_themselves(lived):
    out = StringIO()
    call_command("check_books", stdout=out)
    assert "The books are right" in out.getvalue()
    assert lived > 100
    told = set(Act.objects.values_list("name", flat=True))
    ordinary = {"receive", "move", "place", "take off", "assemble", "salvage", "scrap", "correct", "reverse"}
    assert ordinary <= told


def test_no_yard_ends_with_more_colonies_than_stands_and_one_deadout_waits(lived):
    for yard in Yard.objects.filter(is_shed=False):
        assert yard.colonies.alive(on=ORDER_DAY).count() <= yard.stands
    waiting = Colony.objects.filter(ended_on__isnull=False, place__holdings__quantity__gt=0).distinct()
    assert waiting.count() == 1
    assert 95 <= Colony.objects.alive(on=ORDER_DAY).count() <= 120
