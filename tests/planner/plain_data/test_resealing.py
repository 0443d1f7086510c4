"""Chains and balances made anew are those the ledger wrote, and follow what was changed."""

import pytest
from django.db import connection

from inventory.ledger.sealing import seal_again
from inventory.models import Act, BookSeal, Holding, Movement
from inventory.proof import prove
from planner.plain_data.resealing import balance_anew, seal_anew
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def books(db):
    shed = makers.make_shed()
    makers.make_colony("A", gear=True)
    makers.put(shed, {"stand": 5})
    makers.put(shed, {"stand": 7})


def chains():
    return list(Act.objects.values_list("digest", flat=True)), list(
        Movement.objects.values_list("digest", flat=True)
    )


def wipe_digests():
    with connection.cursor() as cursor:
        cursor.execute("UPDATE inventory_act SET digest = ''")
        cursor.execute("UPDATE inventory_movement SET digest = ''")


def test_of_books_nobody_touched_the_chains_come_out_as_the_ledger_wrote_them():
    before, seal = chains(), BookSeal.objects.values_list("length", "head", "acts", "act_head").get()
    wipe_digests()
    assert prove().faults
    seal_anew()
    assert chains() == before
    assert BookSeal.objects.values_list("length", "head", "acts", "act_head").get() == seal
    assert prove().faults == ()


def test_changed_pieces_come_into_chain_and_balance():
    row = Movement.objects.filter(quantity=7).get()
    with connection.cursor() as cursor:
        cursor.execute("UPDATE inventory_movement SET quantity = 9 WHERE id = %s", [row.pk])
    assert len(prove().faults) >= 2
    balance_anew()
    seal_anew()
    assert not prove().faults or prove().is_only_unmarked
    seal_again()
    assert prove().faults == ()
    assert Holding.objects.get(location=row.target_id, part=row.part_id).quantity == 14


def test_a_balance_below_zero_is_left_for_the_proof_to_tell():
    row = Movement.objects.filter(quantity=7).get()
    with connection.cursor() as cursor:
        cursor.execute(
            "UPDATE inventory_movement SET source_id = target_id, target_id = source_id WHERE id = %s",
            [row.pk],
        )
    balance_anew()
    seal_anew()
    seal_again()
    assert any("below zero" in fault for fault in prove().faults)
