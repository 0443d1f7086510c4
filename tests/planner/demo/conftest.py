"""The invented year, lived once for all tests of the demo that look at it; nothing of it stays in the database."""

import datetime as dt
import json
from dataclasses import dataclass

import pytest
from django.conf import settings
from django.contrib.auth import get_user_model
from django.db import transaction

from inventory import loading
from inventory.catalogue import ensure_catalogue
from inventory.sheets.template import filled
from planner.demo import sheet, year

SEED = 41


@dataclass(frozen=True, kw_only=True)
class Lived:
    """How many acts were told, and between which days."""

    acts: int
    opened_on: dt.date = dt.date(2025, 3, 1)
    order_day: dt.date = dt.date(2025, 11, 15)

    def day(self, after):
        return self.opened_on + dt.timedelta(days=after)


def told():
    who = get_user_model().objects.create_superuser("demo-keeper")
    scenario = json.loads((settings.BASE_DIR / "fixtures" / "demo.json").read_text(encoding="utf-8"))
    file = filled(sheet.sheet_of(scenario, day=Lived.opened_on, order_day=Lived.order_day, seed=SEED))
    loading.load_file(file, day=Lived.opened_on, who=who)
    return Lived(acts=year.live_through(who=who, opened_on=Lived.opened_on, seed=SEED))


@pytest.fixture(scope="package")
def lived(django_db_setup, django_db_blocker):
    """Tests that ask for it only look: it is one transaction, taken back after the last of them."""
    with django_db_blocker.unblock(), transaction.atomic():
        ensure_catalogue()
        yield told()
        transaction.set_rollback(True)
