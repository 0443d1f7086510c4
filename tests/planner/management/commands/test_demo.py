"""The demo command: from an empty database to a printed order and its workbook, and what it refuses."""

import datetime as dt
from io import StringIO

import openpyxl
import pytest
from django.core.management import call_command
from django.core.management.base import CommandError

from apiary.models import Keeper, Yard
from inventory.models import Act
from planner.management.commands.demo import order_day_before
from planner.models import Run

pytestmark = pytest.mark.django_db(transaction=True)


def demo(*more):
    out = StringIO()
    call_command("demo", "--no-serve", "--scenarios", "4", "--trial", "20", *more, stdout=out)
    return out.getvalue()


def test_it_prints_an_order_within_the_budget_and_writes_the_workbook_and_serves_it_again(
    tmp_path, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    text = demo()
    run = Run.objects.get()
    assert run.is_done
    assert run.plan["spend"] <= run.budget_cents / 100 + 1e-9
    assert "rule of thumb" in text and "Proven to" in text
    assert "Summary" in openpyxl.load_workbook(tmp_path / "winter-order.xlsx").sheetnames

    there = Run.objects.count(), Yard.objects.count(), Act.objects.count()
    assert "Loading" not in demo()
    assert (Run.objects.count(), Yard.objects.count(), Act.objects.count()) == there


def test_over_a_keepers_own_books_it_refuses_and_changes_nothing():
    Keeper.objects.create(name="Own bees")
    with pytest.raises(CommandError, match="keeper's own books"):
        demo()
    assert not Yard.objects.exists()


def test_a_port_in_use_is_told_before_any_long_work():
    with pytest.raises(CommandError, match="port"):
        call_command("demo", "--host", "not-an-address.invalid", stdout=StringIO())
    assert not Yard.objects.exists()


def test_the_order_day_is_never_in_the_future():
    assert order_day_before(dt.date(2026, 11, 24)) == dt.date(2026, 11, 15)
    assert order_day_before(dt.date(2026, 11, 14)) == dt.date(2025, 11, 15)
