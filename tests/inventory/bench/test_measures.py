"""What is measured of small books: sensible numbers, and the books right afterwards."""

import pytest
from django.db import connection

from inventory.bench import measures
from inventory.models import Act
from inventory.proof import prove

pytestmark = pytest.mark.django_db
SIZE = {"movements": 400, "yards": 3, "colonies": 6, "parts": 70}


@pytest.fixture
def few(monkeypatch):
    if connection.vendor != "sqlite":
        pytest.skip("books are filled in bulk only on SQLite")
    monkeypatch.setattr(measures, "DAYS", 3)
    monkeypatch.setattr(measures, "ACTS", 12)
    assert measures.fill_books(**SIZE)["holdings"] > 50


def test_stock_is_asked_for_today_and_for_past_days(few):
    found = measures.stock_by_place()
    assert found["rows"] > 20
    assert all(found[key] > 0 for key in ("today", "past", "today_cpu", "past_cpu"))


def test_the_pages_of_yards_are_opened(few):
    assert 5 < measures.yard_page()["queries"] < 60


def test_acts_of_today_and_told_late_are_posted(few):
    before = Act.objects.count()
    found = measures.posting()
    assert Act.objects.count() == before + 2 * measures.ACTS
    assert found["today"] > 0 and found["late"] > 0
    assert prove().faults == ()


def test_the_proof_is_timed(few):
    found = measures.check_books()
    assert found["faults"] == 0 and found["seconds"] > 0 and found["megabytes"] > 10


def test_every_measure_is_asked_for_by_its_name(few, monkeypatch, capsys):
    monkeypatch.setattr(measures.sys, "argv", ["measures", "check_books", "{}"])
    measures.answer()
    assert '"faults": 0' in capsys.readouterr().out
