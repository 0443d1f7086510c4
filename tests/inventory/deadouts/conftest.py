"""A keeper, a shed, a yard, and how a deadout is worked in few words. All invented."""

import datetime as dt

import pytest

from inventory.deadouts.work import work_deadout
from inventory.gear import Condition
from inventory.ledger import Piece
from inventory.models import Deadout
from inventory.stock import on_hand
from tests import makers

FOUND = dt.date(2025, 6, 1)
HIVE = {"box-deep-10": 2, "comb-deep-brood": 16, "frame-deep-foundation": 4, "floor-10": 1, "cover-10": 1}


@pytest.fixture
def keeper(db):
    return makers.make_person("keeper")


@pytest.fixture
def shed(db):
    return makers.make_shed()


@pytest.fixture
def yard(db):
    return makers.make_yard("fern-hollow")


@pytest.fixture
def hive(yard):
    """F-01, alive, with a whole hive on it."""
    return hive_of("F-01", yard)


def hive_of(tag, yard, gear=HIVE, **fields):
    colony = makers.make_colony(tag, yard=yard, **fields)
    makers.put(colony, gear, day=fields.get("day", makers.DAY))
    return colony


def pieces_of(colony, fate="held"):
    """All the book has on a colony, all of it with one fate."""
    return [
        Piece(part=gear.part, condition=gear.condition, **{fate: number})
        for gear, number in on_hand(colony).items()
    ]


def work(colony, shed, *, who=None, pieces=None, fate="held", key=None, day=FOUND, **told):
    usual = {"cause": "unknown", "brood_seen": True, "suspected": False}
    act = work_deadout(
        colony=colony,
        into=shed,
        pieces=pieces_of(colony, fate) if pieces is None else pieces,
        day=day,
        who=who,
        key=key or makers.fresh_key(),
        **{**usual, **told},
    )
    return Deadout.objects.get(act=act)


def at(ground, condition=Condition.SOUND):
    """{part: pieces} in one condition."""
    return {gear.part: n for gear, n in on_hand(ground).items() if gear.condition == condition}
