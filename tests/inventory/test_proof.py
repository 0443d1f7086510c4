"""The proof of the books finds whatever was done to them by raw SQL behind the product's back."""

import datetime as dt
import json

import pytest
from django.db import connection

from apiary import colonies
from apiary.errors import told
from inventory import ledger, proof
from inventory.ledger import Line, Piece, evenings
from inventory.ledger.digest import digest_of
from inventory.models import Act, BookSeal, Evening, Holding, Movement, Order
from inventory.proof import prove
from inventory.proof.seal import UNMARKED
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
LATER = dt.date(2025, 5, 1)


@pytest.fixture
def shed(db):
    """Books with an order, loads, a colony, a reversal and a changed condition: right to the last piece."""
    shed, creek = makers.make_shed(), makers.make_yard("creek")
    makers.put(shed, {"stand": 10, "box-medium-10": 6})
    ledger.receive(order=makers.make_order(), into=shed, day=DAY, who=None, key="order")
    load = [Line("stand", 4), Line("box-medium-10", 5)]
    ledger.move(source=shed, target=creek, lines=load, day=LATER, who=None, key="load")
    wrong = ledger.scrap(at=creek, lines=[Line("stand", 1)], day=LATER, who=None, key="scrap")
    ledger.reverse(act=wrong, who=None, key="back")
    ledger.mark(at=shed, lines=[Line("stand", 2)], becomes="to mend", day=LATER, who=None, key="mark")
    ledger.mend(at=shed, lines=[Line("stand", 1)], day=LATER, who=None, key="mend")
    return shed


def sql(statement, *values):
    """What somebody does to the tables without the product."""
    with connection.cursor() as cursor:
        cursor.execute(statement, values)


def unchecked(statement, *values):
    """The same with the database's own constraints out of the way, as somebody determined would."""
    if connection.vendor == "sqlite":
        sql("PRAGMA ignore_check_constraints = ON")
        sql(statement, *values)
        sql("PRAGMA ignore_check_constraints = OFF")
        return
    sql("SET CONSTRAINTS ALL IMMEDIATE")
    for name in ("movement_positive", "movement_has_two_ends", "inventory_movement_quantity_check"):
        sql(f"ALTER TABLE inventory_movement DROP CONSTRAINT IF EXISTS {name}")
    sql(statement, *values)


def row(number):
    return Movement.objects.order_by("id")[number].pk


def last_row():
    return Movement.objects.order_by("-id").first().pk


def faults():
    return " ".join(prove().faults)


def test_right_books_are_proven_in_one_line(shed):
    proof = prove()
    assert (proof.faults, proof.notes) == ((), ())
    head = BookSeal.objects.get().head[:12]
    assert proof.line == (
        "The books are right: 11 movements of 7 acts, 26 pieces in 2 places, every balance re-derived, "
        f"nothing below zero on any day, seal {head}."
    )


def test_empty_books_are_right():
    assert prove().faults == ()
    assert "0 movements" in prove().line


@pytest.mark.parametrize(
    ("column", "value"),
    [
        ("quantity", 9),
        ("condition", "held back"),
        ("day", "2025-03-01"),
        ("reason", "lost"),
        ("found", True),
        ("order_line_id", None),
        ("digest", "0" * 64),
    ],
)
def test_an_edited_row_is_found(shed, column, value):
    number = Movement.objects.get(act__key="order").pk
    sql(f"UPDATE inventory_movement SET {column} = %s WHERE id = %s", value, number)
    assert f"Movement {number} (" in faults()


@pytest.mark.parametrize("column", ["part_id", "source_id", "target_id"])
def test_a_row_that_points_elsewhere_is_found(shed, column):
    first, other = row(0), Movement.objects.get(act__key="scrap")
    sql(f"UPDATE inventory_movement SET {column} = %s WHERE id = %s", getattr(other, column), row(1))
    changed = getattr(Movement.objects.get(pk=row(1)), column)
    assert changed == getattr(other, column)
    assert f"Movement {row(1)} (" in faults()
    assert f"Movement {first} (" not in faults()


@pytest.mark.parametrize(
    ("column", "value"), [("day", "2025-04-30"), ("name", "burn"), ("note", "nothing"), ("key", "other")]
)
def test_an_edited_act_is_found(shed, column, value):
    act = Act.objects.get(key="load")
    sql(f"UPDATE inventory_act SET {column} = %s WHERE id = %s", value, act.pk)
    numbers = list(act.movements.values_list("pk", flat=True))
    assert len(numbers) == 2
    assert all(f"Movement {number} (" in faults() for number in numbers)


def test_a_row_removed_from_the_middle_is_found(shed):
    after = row(4)
    sql("DELETE FROM inventory_movement WHERE id = %s", row(3))
    found = faults()
    assert f"Movement {after} (" in found
    assert "The seal counts 11 movements, the books hold 10." in found


def test_rows_cut_from_the_end_are_found(shed):
    sql("DELETE FROM inventory_movement WHERE id = %s", last_row())
    found = faults()
    assert "The seal counts 11 movements, the books hold 10." in found
    assert "cut from the end" in found


def test_a_cut_with_the_balance_set_to_match_is_found_all_the_same(shed):
    last = Movement.objects.order_by("-id").first()
    sql("DELETE FROM inventory_movement WHERE id = %s", last.pk)
    sql(
        "UPDATE inventory_holding SET quantity = quantity - 1 WHERE location_id = %s AND part_id = %s "
        "AND condition = 'sound'",
        last.target_id,
        last.part_id,
    )
    assert "cut from the end" in faults()


@pytest.mark.parametrize("digest", ["f" * 64, None])
def test_a_row_put_in_is_found(shed, digest):
    last = Movement.objects.order_by("-id").first()
    sql(
        "INSERT INTO inventory_movement "
        "(act_id, day, part_id, condition, quantity, source_id, target_id, reason, found, digest) "
        "VALUES (%s, %s, %s, 'sound', 5, %s, %s, 'moved', %s, %s)",
        last.act_id,
        last.day,
        last.part_id,
        last.source_id,
        last.target_id,
        False,
        digest or last.digest,
    )
    found = faults()
    assert f"Movement {last_row()} (" in found
    assert "The seal counts 11 movements, the books hold 12." in found


def test_two_rows_that_changed_places_are_found(shed):
    first, second = row(2), row(3)
    sql("UPDATE inventory_movement SET id = 999999 WHERE id = %s", first)
    sql("UPDATE inventory_movement SET id = %s WHERE id = %s", first, second)
    sql("UPDATE inventory_movement SET id = %s WHERE id = 999999", second)
    assert f"Movement {first} (" in faults()


@pytest.mark.parametrize(("column", "value"), [("length", 3), ("head", "0" * 64)])
def test_an_edited_seal_is_found(shed, column, value):
    sql(f"UPDATE inventory_bookseal SET {column} = %s", value)
    assert "The seal" in faults()


def test_a_missing_seal_is_found(shed):
    sql("DELETE FROM inventory_bookseal")
    assert "The seal counts 0 movements, the books hold 11." in faults()


def test_an_edited_balance_is_found_and_the_part_does_not_add_up(shed):
    holding = Holding.objects.get(location__yard=shed, part__code="stand", condition="sound")
    sql("UPDATE inventory_holding SET quantity = 7 WHERE id = %s", holding.pk)
    assert prove().faults == (
        "Shed, hive stand (sound): the balance kept is 7, the movements give 5.",
        "hive stand: 10 came in and did not go out, but stores and colonies hold 12.",
    )


def test_a_removed_balance_is_found(shed):
    sql("DELETE FROM inventory_holding WHERE location_id IN (SELECT id FROM inventory_location)")
    assert len(prove().faults) == 7  # five balances, two parts


def test_a_day_below_zero_is_found(shed):
    act = Act.objects.get(key="load")
    sql("UPDATE inventory_movement SET day = '2025-03-01' WHERE act_id = %s", act.pk)
    sql("UPDATE inventory_act SET day = '2025-03-01' WHERE id = %s", act.pk)
    assert "Shed, hive stand (sound): below zero from 1 March 2025 on, -4 at the lowest." in faults()


def test_a_movement_of_nothing_or_from_here_to_here_is_found(shed):
    unchecked("UPDATE inventory_movement SET quantity = 0 WHERE id = %s", row(3))
    assert f"Movement {row(3)} moves 0 pieces" in faults()
    sql("UPDATE inventory_movement SET quantity = 1 WHERE id = %s", row(3))
    unchecked("UPDATE inventory_movement SET target_id = source_id WHERE id = %s", row(3))
    assert f"Movement {row(3)} has the same place at both ends." in faults()


def test_a_reversal_that_does_not_put_all_back_is_found(shed):
    back = Act.objects.get(key="back")
    sql("UPDATE inventory_movement SET quantity = 3 WHERE act_id = %s", back.pk)
    assert f"Act {back.pk} does not put back what act {back.reverses_id}" in faults()


def test_a_reversal_of_a_reversal_or_before_its_act_is_found(shed):
    back, mark = Act.objects.get(key="back"), Act.objects.get(key="mark")
    sql("UPDATE inventory_act SET reverses_id = %s WHERE id = %s", back.pk, mark.pk)
    assert "is not an act that can be reversed" in faults()
    sql("UPDATE inventory_act SET reverses_id = NULL, day = '2025-04-02' WHERE id = %s", mark.pk)
    sql("UPDATE inventory_act SET day = '2025-04-02' WHERE id = %s", back.pk)
    assert "on a day before it" in faults()


def test_an_order_whose_status_was_set_by_hand_is_found(shed):
    order = Order.objects.get()
    sql("UPDATE inventory_order SET status = 'placed' WHERE id = %s", order.pk)
    assert f"Order {order.reference} says placed, its movements say received." in faults()


def test_the_same_books_give_the_same_text(shed):
    assert prove() == prove()
    sql("UPDATE inventory_movement SET quantity = quantity + 1")
    assert prove().faults == prove().faults
    assert len(prove().faults) > 11


def test_gear_that_waits_long_on_an_ended_colony_is_a_note_and_no_fault(shed):
    colony = makers.make_colony("A1", gear=True)
    colonies.end(colony, why="died", day=DAY, who=None)
    assert prove().notes == ()
    lines = [Line("stand", 1)]
    ledger.scrap(at=shed, lines=lines, day=dt.date(2025, 7, 1), who=None, key="much later")
    proof = prove()
    assert proof.faults == ()
    assert proof.notes == (
        "Note: colony A1 ended on 1 April 2025 and 25 pieces are still booked on it. "
        "Salvage them, or count what is there.",
    )
    pieces = [Piece(part=code, sound=quantity) for code, quantity in makers.gear_of("two-deeps-10").items()]
    ledger.salvage(colony=colony, into=shed, pieces=pieces, day=LATER, who=None, key="salvage")
    assert prove().notes == ()


def recount_the_seal(mark=None):
    """The seal rewritten to fit the rows there are, as somebody who knows the tables would."""
    last = Movement.objects.order_by("-id").first()
    sql("UPDATE inventory_bookseal SET length = %s, head = %s", Movement.objects.count(), last.digest)
    if mark is not None:
        sql("UPDATE inventory_bookseal SET mark = %s", mark)


def cut_the_tail():
    """The last row gone, and the balance it made set to match."""
    last = Movement.objects.order_by("-id").first()
    sql("DELETE FROM inventory_movement WHERE id = %s", last.pk)
    place, part = last.target_id, last.part_id
    sql(
        "UPDATE inventory_holding SET quantity = quantity - 1 "
        "WHERE location_id = %s AND part_id = %s AND condition = 'sound'",
        place,
        part,
    )


@pytest.mark.parametrize("mark", [None, "", "0" * 64])
def test_a_cut_tail_with_length_head_and_balance_set_to_match_is_found(shed, mark):
    cut_the_tail()
    recount_the_seal(mark)
    found = faults()
    assert "The seal does not carry this site's mark" in found
    assert "The seal counts" not in found


def test_a_chain_worked_out_anew_to_the_end_is_found_all_the_same(shed):
    sql("UPDATE inventory_movement SET reason = 'lost' WHERE id = %s", last_row())
    before = Movement.objects.order_by("-id")[1].digest
    digest = digest_of(Movement.objects.get(pk=last_row()), before)
    sql("UPDATE inventory_movement SET digest = %s WHERE id = %s", digest, last_row())
    recount_the_seal()
    assert prove().faults == (UNMARKED,)


def test_an_act_after_a_cut_does_not_heal_it(shed):
    cut_the_tail()
    recount_the_seal()
    ledger.scrap(at=shed, lines=[Line("stand", 1)], day=LATER, who=None, key="after")
    assert prove().faults == (UNMARKED,)


def test_a_former_secret_key_still_vouches_and_a_strange_one_does_not(shed, settings):
    former, settings.SECRET_KEY = settings.SECRET_KEY, "another, as long as a key should be"
    assert prove().faults == (UNMARKED,)
    settings.SECRET_KEY_FALLBACKS = [former]
    assert prove().faults == ()


def test_a_whole_earlier_state_put_back_is_found_by_the_line_noted_since(shed):
    seal = BookSeal.objects.get()
    noted = (seal.length, seal.head[:12])
    assert prove(noted=noted).faults == ()
    ledger.scrap(at=shed, lines=[Line("stand", 1)], day=LATER, who=None, key="since")
    assert prove(noted=noted).faults == ()
    assert prove(noted=(12, "abcdef")).faults == (
        "The seal that was noted, abcdef, is not that of movement 12: what the books held then was rewritten since.",
    )
    assert prove(noted=(13, "abcdef")).faults == (
        "The seal that was noted counts 13 movements, the books hold 12: some are gone.",
    )


@pytest.fixture
def evening(shed, monkeypatch):
    """The books with an evening kept."""
    monkeypatch.setattr(evenings, "STEP", 3)
    ledger.scrap(at=shed, lines=[Line("stand", 1)], day=dt.date(2025, 5, 2), who=None, key="much")
    assert prove().faults == ()
    return Evening.objects.first()


def test_an_evening_kept_that_was_edited_is_found(evening):
    place, gears = next(iter(evening.balances.items()))
    gear, quantity = next(iter(gears.items()))
    text = json.dumps({**evening.balances, place: {**gears, gear: quantity + 1}})
    sql("UPDATE inventory_evening SET balances = %s WHERE id = %s", text, evening.pk)
    day = told(evening.day)
    assert f"the evening kept of {day} says {quantity + 1}, the movements give {quantity}." in faults()


def test_an_evening_kept_with_another_length_or_left_unreadable_is_found(evening):
    sql("UPDATE inventory_evening SET length = length + 2 WHERE id = %s", evening.pk)
    assert f"counts {evening.length + 2} movements up to it, the books hold {evening.length}." in faults()
    sql("UPDATE inventory_evening SET balances = %s WHERE id = %s", '{"there": 3}', evening.pk)
    assert f"The evening kept of {told(evening.day)} cannot be read." in faults()


def test_an_evening_kept_of_a_day_past_all_movements_is_proven_too(evening):
    sql("UPDATE inventory_evening SET day = '2025-12-31' WHERE id = %s", evening.pk)
    assert "the evening kept of 31 December 2025" in faults()


def test_of_very_many_faults_the_first_are_told_and_the_rest_counted(shed, monkeypatch):
    sql("UPDATE inventory_movement SET quantity = quantity + 1")
    whole = prove().faults
    monkeypatch.setattr(proof, "MANY", 4)
    assert prove().faults == (*whole[:4], f"And {len(whole) - 4} faults more.")


@pytest.mark.parametrize(("column", "value"), [("quantity", "many"), ("day", "yesterday")])
def test_words_where_a_number_or_a_day_belongs_are_found(shed, column, value):
    if connection.vendor != "sqlite":
        pytest.skip("only SQLite takes them")
    number = Movement.objects.get(act__key="order").pk
    unchecked(f"UPDATE inventory_movement SET {column} = %s WHERE id = %s", value, number)
    assert f"Movement {number} (" in faults()
