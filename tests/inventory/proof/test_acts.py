"""Acts without gear and all that was told of colonies are sealed: whatever is done to them by raw SQL is found."""

import hashlib
import json
from importlib import import_module
from types import SimpleNamespace

import pytest
from django.apps import apps
from django.db import connection
from django.utils.crypto import salted_hmac

from apiary import colonies
from apiary.models import Colony, ColonyEvent
from inventory import ledger
from inventory.ledger import Line
from inventory.models import Act, BookSeal, Movement
from inventory.proof import prove
from inventory.proof.acts import Acts
from inventory.proof.seal import UNMARKED
from inventory.yardwork import undo
from inventory.yardwork.moving import move_colonies
from inventory.yardwork.requeening import requeen
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
BROKEN = "does not carry the digest it should"


@pytest.fixture
def books(db):
    """Two colonies requeened, one moved, one judged outside any act, one act with gear last."""
    creek, hill = makers.make_yard("creek"), makers.make_yard("hill")
    told = {"day": DAY, "who": None}
    one, two = (makers.make_colony(tag, yard=creek) for tag in ("A1", "A2"))
    makers.put(makers.make_shed(), {"stand": 5})
    requeen(colonies=[one, two], queen="bought", key="queens", note="Monday", **told)
    move_colonies(colonies=[one], yard=hill, key="away", **told)
    colonies.judge(two, strength="strong", **told)
    ledger.scrap(at=makers.make_shed(), lines=[Line("stand", 1)], key="scrap", **told)
    assert prove().faults == ()


def sql(statement, *values):
    with connection.cursor() as cursor:
        cursor.execute(statement, values)


def faults():
    return " ".join(prove().faults)


def act(key):
    return Act.objects.get(key=key)


def event(key):
    return ColonyEvent.objects.filter(sealed_by=key).order_by("id").first()


def test_each_act_carries_the_digest_of_its_fields_what_it_told_and_of_the_act_before(books):
    before = ""
    for row in Act.objects.order_by("id"):
        told = b""
        for e in ColonyEvent.objects.filter(sealed_by=row.key).order_by("id"):
            stamp = e.recorded_at.strftime("%Y-%m-%dT%H:%M:%S.%f+00:00")
            fields = [
                e.colony_id,
                e.day.isoformat(),
                e.kind,
                e.yard_id,
                e.note,
                e.was,
                None,
                stamp,
                e.act_key,
            ]
            told += json.dumps(fields).encode("ascii") + b"\n"
        digest = hashlib.sha256(told).hexdigest() if told else ""
        stamp = row.recorded_at.strftime("%Y-%m-%dT%H:%M:%S.%f+00:00")
        fields = [before, row.key, row.name, row.day.isoformat(), None, row.note, None, stamp, digest]
        assert row.digest == hashlib.sha256(json.dumps(fields).encode("ascii")).hexdigest()
        before = row.digest
    seal = BookSeal.objects.get()
    assert (seal.acts, seal.act_head) == (Act.objects.count(), before)


@pytest.mark.parametrize(
    ("column", "value"),
    [("day", "2025-03-31"), ("name", "move"), ("note", "Tuesday"), ("digest", "0" * 64)],
)
def test_an_edited_act_that_moved_no_gear_is_found(books, column, value):
    edited = act("queens")
    assert not edited.movements.exists()
    sql(f"UPDATE inventory_act SET {column} = %s WHERE id = %s", value, edited.pk)
    assert f"Act {edited.pk} (" in faults() and BROKEN in faults()


def test_an_act_removed_from_the_middle_is_found(books):
    removed, after = act("queens"), act("away")
    sql("DELETE FROM apiary_colonyevent WHERE act_key = 'queens'")
    sql("DELETE FROM inventory_act WHERE id = %s", removed.pk)
    assert f"Act {after.pk} (move colonies" in faults()
    assert "acts, the books hold" in faults()


def test_acts_cut_from_the_end_are_found_though_they_moved_no_gear(books):
    requeen(colonies=[Colony.objects.get(tag="A1")], queen="bought", day=DAY, who=None, key="last")
    sql("DELETE FROM apiary_colonyevent WHERE act_key = 'last'")
    sql("DELETE FROM inventory_act WHERE key = 'last'")
    count = Act.objects.count()
    assert prove().faults == (
        f"The seal counts {count + 1} acts, the books hold {count}.",
        "The seal does not fit the last act: acts were cut from the end, put there, or the seal was edited.",
    )


def test_an_act_put_in_is_found(books):
    sql(
        "INSERT INTO inventory_act (key, name, day, note, recorded_at, digest) "
        "SELECT 'new', name, day, note, recorded_at, digest FROM inventory_act WHERE key = 'queens'"
    )
    assert f"Act {act('new').pk} (requeen" in faults()


@pytest.mark.parametrize(
    ("column", "value"),
    [
        ("day", "2025-03-31"),
        ("kind", "strength"),
        ("note", "a swarm"),
        ("was", "weak"),
        ("recorded_at", "2025-01-01 00:00:00+00:00"),
        ("act_key", "away"),
        ("sealed_by", "away"),
        ("sealed_by", ""),
    ],
)
def test_an_edited_event_is_found(books, column, value):
    edited, owner = event("queens"), act("queens")
    sql(f"UPDATE apiary_colonyevent SET {column} = %s WHERE id = %s", value, edited.pk)
    assert f"Act {owner.pk} (requeen, 1 April 2025) {BROKEN}" in faults()


@pytest.mark.parametrize("column", ["colony_id", "yard_id"])
def test_an_event_that_tells_of_another_colony_or_yard_is_found(books, column):
    other = ColonyEvent.objects.exclude(**{column: getattr(event("queens"), column)}).first()
    sql(
        f"UPDATE apiary_colonyevent SET {column} = %s WHERE id = %s",
        getattr(other, column),
        event("queens").pk,
    )
    assert f"Act {act('queens').pk} (requeen" in faults()


def test_a_removed_event_is_found(books):
    sql("DELETE FROM apiary_colonyevent WHERE id = %s", event("queens").pk)
    assert f"Act {act('queens').pk} (requeen" in faults()


@pytest.mark.parametrize("seal", ["queens", ""])
def test_an_event_put_in_for_an_act_is_found(books, seal):
    sql(
        "INSERT INTO apiary_colonyevent "
        "(colony_id, day, kind, yard_id, note, was, recorded_at, act_key, sealed_by, undone) "
        "SELECT colony_id, day, kind, yard_id, note, was, recorded_at, act_key, %s, undone "
        "FROM apiary_colonyevent WHERE id = %s",
        seal,
        event("queens").pk,
    )
    expected = (
        f"Act {act('queens').pk} (requeen" if seal else "is not under the seal of the act that told it."
    )
    assert expected in faults()


def test_what_was_told_outside_any_act_is_sealed_by_the_next(books):
    judged = ColonyEvent.objects.get(kind="strength")
    assert (judged.act_key, judged.sealed_by) == ("", "scrap")
    sql("UPDATE apiary_colonyevent SET note = 'weak' WHERE id = %s", judged.pk)
    assert f"Act {act('scrap').pk} (scrap" in faults()


def test_what_was_told_outside_any_act_since_the_last_waits_for_the_next(books):
    colonies.judge(Colony.objects.get(tag="A1"), strength="weak", day=DAY, who=None)
    assert event("") is not None
    assert prove().faults == ()
    ledger.scrap(at=makers.make_shed(), lines=[Line("stand", 1)], day=DAY, who=None, key="next")
    assert event("") is None
    assert prove().faults == ()


def test_an_event_outside_any_act_that_is_said_not_to_count_or_lies_under_a_strange_seal_is_found(books):
    judged = ColonyEvent.objects.get(kind="strength")
    sql("UPDATE apiary_colonyevent SET undone = %s WHERE id = %s", True, judged.pk)
    assert "it was told outside any act: nothing takes it back." in faults()
    sql("UPDATE apiary_colonyevent SET sealed_by = 'nowhere' WHERE id = %s", judged.pk)
    assert "is under the seal of an act that is not in the books (nowhere)." in faults()
    assert f"Act {act('scrap').pk} (scrap" in faults()


def test_an_act_taken_back_leaves_its_events_under_its_seal(books):
    undo(act("away"), who=None, key="back")
    assert event("away").undone
    assert prove().faults == ()


def test_a_chain_of_acts_worked_out_anew_is_found_by_the_mark(books):
    sql("UPDATE inventory_act SET note = 'never' WHERE key = 'queens'")
    import_module("inventory.migrations.0010_act_digests").chain_acts(apps, EDITOR)
    acts = Acts()
    assert list(acts.faults()) == []
    seal = BookSeal.objects.get()
    assert (seal.acts, seal.act_head) == (acts.length, acts.head)
    assert prove().faults == (UNMARKED,)


EDITOR = SimpleNamespace(connection=connection)


def as_before_acts_were_chained(mark=None):
    """The books as earlier versions of the product left them."""
    seal = BookSeal.objects.get()
    text = f"{seal.length} {seal.head}"
    mark = salted_hmac("inventory.seal", text, algorithm="sha256").hexdigest() if mark is None else mark
    sql("UPDATE inventory_act SET digest = ''")
    sql("UPDATE inventory_bookseal SET acts = 0, act_head = '', mark = %s", mark)
    sql("UPDATE apiary_colonyevent SET sealed_by = ''")


def migrated():
    import_module("apiary.migrations.0005_sealed_by").lay_under_their_acts(apps, EDITOR)
    import_module("inventory.migrations.0010_act_digests").chain_acts(apps, EDITOR)


def test_books_from_before_acts_were_chained_are_proven_after_the_migration(books):
    movements = list(Movement.objects.order_by("id").values_list("digest", flat=True))
    as_before_acts_were_chained()
    migrated()
    assert prove().faults == ()
    assert movements == list(Movement.objects.order_by("id").values_list("digest", flat=True))
    requeen(colonies=[Colony.objects.get(tag="A2")], queen="bought", day=DAY, who=None, key="after")
    assert prove().faults == ()
    sql("UPDATE apiary_colonyevent SET note = 'a swarm' WHERE id = %s", event("queens").pk)
    assert f"Act {act('queens').pk} (requeen" in faults()


def test_a_migration_does_not_heal_a_wrong_mark(books):
    as_before_acts_were_chained(mark="0" * 64)
    migrated()
    assert prove().faults == (UNMARKED,)
