"""What the tables themselves hold: rows of the books are written once, constraints are the last guard."""

from decimal import Decimal

import pytest
from django.db import IntegrityError, transaction

from inventory import ledger
from inventory.errors import AppendOnly
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.locations import outside, store_of
from inventory.models import Act, BookSeal, Holding, Location, Movement, Part, PriceStep, RecipeLine
from inventory.models.catalogue import choices_of
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"stand": 10})
    return shed


@pytest.mark.parametrize("model", [Movement, Act])
def test_a_row_of_the_books_is_neither_edited_nor_removed(shed, model):
    row = model.objects.get()
    for breach in (
        row.save,
        row.delete,
        model.objects.all().delete,
        lambda: model.objects.update(day=makers.DAY),
        lambda: model.objects.filter(pk=row.pk).update(day=makers.DAY),
        lambda: model.objects.bulk_update([row], ["day"]),
    ):
        with pytest.raises(AppendOnly):
            breach()
    assert model.objects.count() == 1


def test_the_movements_of_an_act_are_not_removed_through_the_act(shed):
    with pytest.raises(AppendOnly):
        Act.objects.get().movements.all().delete()


def refused_by_the_database(model, **fields):
    with pytest.raises(IntegrityError), transaction.atomic():
        model.objects.create(**fields)


def test_a_movement_moves_something_between_two_places(shed):
    store, scrap = store_of(shed), outside(Location.Kind.SCRAP)
    usual = {"act": Act.objects.get(), "day": makers.DAY, "part": makers.part("stand"), "reason": "moved"}
    refused_by_the_database(Movement, quantity=0, source=store, target=scrap, **usual)
    refused_by_the_database(Movement, quantity=1, source=store, target=store, **usual)


def test_a_balance_is_never_below_zero(shed):
    refused_by_the_database(
        Holding, location=store_of(shed), part=makers.part("sugar"), condition=Condition.SOUND, quantity=-1
    )


def test_a_location_names_its_ground_and_outside_ends_are_there_once(shed):
    refused_by_the_database(Location, kind="store")
    refused_by_the_database(Location, kind="scrap", yard=shed)
    outside(Location.Kind.LENT)
    refused_by_the_database(Location, kind="lent")


def test_there_is_one_seal(shed):
    assert BookSeal.objects.get().pk == 1
    refused_by_the_database(BookSeal, pk=2)


def test_a_frame_has_a_state_and_only_drawn_comb_a_use(shed):
    refused_by_the_database(Part, code="x", name="x", kind="frame")
    refused_by_the_database(Part, code="x", name="x", kind="frame", comb="bare", comb_use="honey")


def test_a_recipe_line_takes_or_makes(shed):
    recipe = makers.part("stand") and RecipeLine.objects.first().recipe
    refused_by_the_database(RecipeLine, recipe=recipe, part=makers.part("stand"), takes=1, makes=1)
    refused_by_the_database(RecipeLine, recipe=recipe, part=makers.part("stand"))


def test_prices_are_money_and_steps_begin_at_a_pack(shed):
    offer = makers.make_offer({"stand": 1}, steps=((1, 1999),))
    assert offer.steps.get().price == Decimal("19.99")
    assert makers.part("stand").list_price == Decimal("21.00")
    refused_by_the_database(PriceStep, offer=offer, from_packs=0, price_cents=1)


def test_rows_say_what_they_are(shed):
    act = ledger.scrap(at=shed, lines=[Line("stand", 1)], day=makers.DAY, who=None, key=makers.fresh_key())
    assert str(act) == "scrap, 2025-04-01"
    assert str(act.movements.get()) == "2025-04-01: 1 hive stand Shed → scrap"
    assert str(Holding.objects.get()) == "Shed: 9 hive stand"
    assert str(BookSeal.objects.get()) == "2 movements"


def test_choices_are_the_words_themselves():
    assert ("held back", "held back") in choices_of(Condition)
