"""Books filled in bulk: check_books finds them as right as any the ledger wrote, and the ledger goes on from there."""

import datetime as dt

import pytest
from django.db import connection

from inventory import ledger, stock
from inventory.bench import filling, invented
from inventory.ledger import Line, evenings
from inventory.models import Act, Evening, Movement, Part
from inventory.proof import prove
from tests import makers

pytestmark = pytest.mark.django_db
LAST = dt.date(2025, 10, 1)
SIZE = {"movements": 1500, "yards": 3, "colonies": 10, "parts": 70}


@pytest.fixture
def filled(db, monkeypatch):
    if connection.vendor != "sqlite":
        pytest.skip("books are filled in bulk only on SQLite")
    monkeypatch.setattr(evenings, "STEP", 200)
    monkeypatch.setattr(filling, "BATCH", 400)
    monkeypatch.setattr(invented, "REVERSED", 0.5)
    filling.fill(last=LAST, **SIZE)


def test_they_are_right_and_as_large_as_asked_for(filled):
    proof = prove()
    assert proof.faults == ()
    assert proof.line.startswith("The books are right: 1,500 movements of")
    assert Part.objects.count() == 70
    assert Act.objects.filter(reverses__isnull=False).exists()
    assert Evening.objects.count() >= 3


def test_the_ledger_goes_on_from_there(filled):
    shed = makers.make_shed()
    ledger.scrap(at=shed, lines=[Line("box-deep-10", 1)], day=LAST, who=None, key="after")
    assert prove().faults == ()


def test_colonies_have_stood_in_several_yards(filled):
    past = stock.by_place(as_of=LAST - dt.timedelta(days=900))
    assert {row.on_colonies for row in past} == {True, False}
    assert len({row.yard for row in past}) == 4


def test_books_with_anything_in_them_are_not_filled(filled):
    with pytest.raises(ValueError, match="only empty books are filled"):
        filling.fill(last=LAST, **SIZE)
    assert Movement.objects.count() == 1500
