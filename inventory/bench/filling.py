"""Fills empty books with invented years in bulk, as the ledger would have written them: digests, seal, balances, evenings.

Takes how many movements, yards, colonies and parts, and the last day; only for measuring, on empty SQLite books. Rows
are written by SQL, many at once; check_books proves them like any others.
"""

import datetime as dt
import random
from dataclasses import dataclass, field

from django.contrib.auth import get_user_model
from django.db import connection, transaction

from apiary.colonies import seal_told
from apiary.models import Colony, ColonyEvent, FlowWindow, HiveSet, Yard
from inventory.bench.invented import Ground, Years
from inventory.catalogue import ensure_catalogue
from inventory.ledger.digest import Told, act_digest, act_text, digest_of_row, end_text, mark_of
from inventory.ledger.evenings import keep_again
from inventory.locations import outside, store_of
from inventory.models import Act, BookSeal, Holding, Location, Movement, Part

YEARS_DAYS = 5 * 365
MOVES_A_COLONY = 6  # yard to yard in those years
BATCH = 20_000
EVENING = dt.time(19, 0, tzinfo=dt.UTC)
ACT_SQL = (
    "INSERT INTO {} (id, key, name, day, who_id, note, reverses_id, recorded_at, digest) "
    "VALUES (%s, %s, %s, %s, %s, %s, %s, %s, %s)"
)
MOVEMENT_SQL = (
    "INSERT INTO {} (act_id, day, part_id, condition, quantity, source_id, target_id, reason, found, digest) "
    "VALUES (%s, %s, %s, %s, %s, %s, %s, %s, 0, %s)"
)


@transaction.atomic
def fill(*, movements, yards, colonies, parts, last, seed=1):
    """The books of an outfit of that size, full of so many movements up to the last day."""
    if Movement.objects.exists():
        raise ValueError("only empty books are filled")
    first = last - dt.timedelta(days=YEARS_DAYS)
    keeper = get_user_model().objects.create_user(username="bench", is_superuser=True, is_staff=True)
    ground = _lay_out(yards, colonies, parts, first, last, random.Random(seed))
    years = Years(ground, seed=seed)
    pen = _Pen(ends=_end_texts(), who=keeper.pk)
    for act in years.acts(movements, first=first, last=last):
        pen.write(act)
    pen.flush()
    _close(years, pen)


def _lay_out(yards, colonies, parts, first, last, chance):
    ensure_catalogue()
    for number in range(parts - Part.objects.count()):
        code = f"invented-{number + 1:02}"
        Part.objects.create(
            code=code, name=f"invented part {number + 1}", kind="consumable", list_price_cents=500
        )
    shed = Yard.objects.create(code="shed", name="Shed", is_shed=True)
    grounds = [
        Yard(code=f"yard-{number + 1:02}", name=f"Invented yard {number + 1}", stands=60)
        for number in range(yards)
    ]
    grounds = Yard.objects.bulk_create(grounds)
    FlowWindow.objects.bulk_create(
        FlowWindow(yard=yard, name="clover", first_week=22, last_week=28, gain_lb=60) for yard in grounds
    )
    stood = _settle(grounds, colonies, first, last, chance)
    stores = {yard.pk: store_of(yard).pk for yard in grounds}
    places = Location.objects.bulk_create(Location(kind="colony", colony_id=pk) for pk in stood)
    by_yard: dict[int, list] = {store: [] for store in stores.values()}
    for place in places:
        by_yard[stores[stood[place.colony_id]]].append(place.pk)
    return Ground(
        shed=store_of(shed).pk,
        yards={store: tuple(colonies) for store, colonies in by_yard.items()},
        outside={kind: outside(kind).pk for kind in ("correction", "bench")},
        parts=tuple(Part.objects.order_by("pk").values_list("pk", flat=True)),
    )


def _settle(grounds, colonies, first, last, chance):
    """Colonies as even over the yards as it goes, each taken from yard to yard now and then; {colony: yard at last}."""
    hive_set = HiveSet.objects.get(code="two-deeps-10")
    rows, events = [], []
    for number in range(colonies):
        home = grounds[number % len(grounds)]
        colony = Colony(tag=f"C{number + 1}", started_on=first, hive_set=hive_set, yard=home)
        days = sorted(chance.sample(range(1, (last - first).days), MOVES_A_COLONY))
        stays = [home, *(chance.choice(grounds) for _ in days[1:]), home]
        told = zip([first, *(first + dt.timedelta(days=day) for day in days)], stays, strict=True)
        rows.append(colony)
        events.append([(day, yard) for day, yard in told])
    rows = Colony.objects.bulk_create(rows)
    ColonyEvent.objects.bulk_create(
        (
            ColonyEvent(colony=colony, day=day, yard=yard, kind="moved" if number else "started")
            for colony, stays in zip(rows, events, strict=True)
            for number, (day, yard) in enumerate(stays)
        ),
        batch_size=2000,
    )
    return {colony.pk: colony.yard_id for colony in rows}


def _end_texts():
    return {
        pk: end_text(kind, yard, colony)
        for pk, kind, yard, colony in Location.objects.values_list("pk", "kind", "yard_id", "colony_id")
    }


def _told(key):
    told = Told()
    for event in seal_told(key):
        told.add(*event)
    return told.digest


@dataclass(kw_only=True)
class _Pen:
    """Writes acts with the chain of their digests, many rows at once."""

    ends: dict
    who: int
    acts: list = field(default_factory=list)
    rows: list = field(default_factory=list)
    count: int = 0
    length: int = 0
    head: str = ""
    act_head: str = ""

    def write(self, act):
        self.count += 1
        back = self.count - act.reverses if act.reverses else None
        stamp = dt.datetime.combine(act.day, EVENING) + dt.timedelta(microseconds=1 + self.count % 900_000)
        key = f"invented-{self.count}"
        text = act_text(key, act.name, act.day, self.who, "", back, stamp)
        day = act.day.isoformat()
        stored = stamp.replace(tzinfo=None).isoformat(sep=" ", timespec="microseconds")
        told = _told(key) if self.count == 1 else ""  # the colonies, settled before
        self.act_head = act_digest(self.act_head, text, told)
        self.acts.append((self.count, key, act.name, day, self.who, "", back, stored, self.act_head))
        for part, condition, pieces, here, there, why in act.rows:
            ends = self.ends[here], self.ends[there]
            self.head = digest_of_row(
                self.head, text, act.day, part, condition, pieces, why, None, False, *ends
            )
            self.rows.append((self.count, day, part, condition, pieces, here, there, why, self.head))
        if len(self.rows) >= BATCH:
            self.flush()

    def flush(self):
        with connection.cursor() as cursor:
            cursor.executemany(ACT_SQL.format(Act._meta.db_table), self.acts)
            cursor.executemany(MOVEMENT_SQL.format(Movement._meta.db_table), self.rows)
        self.length += len(self.rows)
        self.acts, self.rows = [], []


def _close(years, pen):
    """Balances, seal and evenings of what was written."""
    Holding.objects.bulk_create(
        (
            Holding(location_id=place, part_id=part, condition=condition, quantity=pieces)
            for place, gears in years.held.items()
            for (part, condition), pieces in gears.items()
        ),
        batch_size=2000,
    )
    said = {"length": pen.length, "head": pen.head, "acts": pen.count, "act_head": pen.act_head}
    BookSeal.objects.create(pk=1, mark=mark_of(**said), **said)
    keep_again()
