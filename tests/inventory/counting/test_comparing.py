"""Counted beside booked, and a word for exactly what was shown."""

import datetime as dt

import pytest

from inventory import counting, ledger
from inventory.counting.comparing import booked_at
from inventory.ledger import Line
from inventory.locations import place_of, store_of
from tests import makers

pytestmark = pytest.mark.django_db


def test_more_missing_and_what_agrees_in_words(shed, counted):
    count = counted(shed, {"box-medium-10": 18, "stand": 1_012, "comb-medium-honey": 200})
    assert [(row.name, row.words) for row in counting.compared(count)] == [
        ("Medium box, 10 frames", "2 missing"),
        ("Hive stand", "1,002 more"),
        ("Medium drawn honey comb", "agrees"),
    ]


def test_a_posted_count_tells_what_it_was_whatever_came_later(shed, counted):
    count = counted(shed, {"stand": 12})
    counting.post_count(count, who=None)
    ledger.scrap(at=shed, lines=[Line("stand", 5)], day=makers.DAY, who=None, key="s")
    count.refresh_from_db()
    assert [row.words for row in counting.compared(count)] == ["2 more"]


def test_the_book_of_today_and_of_a_past_evening(shed, yard, colony):
    day = makers.DAY + dt.timedelta(days=3)
    ledger.move(source=shed, target=yard, lines=[Line("stand", 4)], day=day, who=None, key="m")
    store, hive = store_of(shed), place_of(colony)
    past = booked_at([store, hive], makers.DAY)
    assert past[store.pk, "stand", "sound"] == 10
    assert past[hive.pk, "box-medium-10", "sound"] == 1
    assert booked_at([store], dt.date.max)[store.pk, "stand", "sound"] == 6


def test_the_token_changes_with_any_figure(shed, counted):
    one, other = counted(shed, {"stand": 9}), counted(shed, {"stand": 8})
    tokens = [counting.token_of(counting.compared(count)) for count in (one, other, one)]
    assert tokens[0] == tokens[2] != tokens[1]
