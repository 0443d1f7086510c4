"""The books of one day read into an operation: what is where that evening, and nothing later."""

import datetime as dt
from decimal import Decimal

import pytest

from apiary import colonies
from apiary.models import Colony, HiveSet, Yard
from apiary.winters import tell_winter
from inventory import ledger
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.orders import cancel_order
from planner.errors import NoShed, SetWithoutGear
from planner.intake import operation_as_of
from tests import makers
from tests.planner import outfit

DAY = dt.date(2025, 4, 10)


@pytest.fixture
def shed(db):
    makers.make_keeper(region="north", truck_lb=800, truck_cubic_ft=64)
    return makers.make_shed()


def test_the_keeper_and_the_shed_are_read(shed):
    operation = operation_as_of(DAY)
    assert (operation.day, operation.region, operation.money) == (DAY, "north", "USD")
    assert (operation.shed, operation.truck_lb, operation.truck_cubic_ft) == (shed.code, 800, 64)


def test_books_without_a_shed_are_refused(db):
    with pytest.raises(NoShed, match="load your sheet first, or mark one"):
        operation_as_of(DAY)


def test_before_the_keeper_has_told_anything_the_usual_stands(db):
    makers.make_shed()
    assert operation_as_of(DAY).money == "USD"


def test_a_yard_brings_its_flows_in_their_order(shed):
    creek = makers.make_yard("creek", stands=24, drive_minutes=35, miles="21.5", visit_every_days=10)
    makers.make_window(creek, name="basswood", first_week=27, last_week=29, gain_lb="40.5", spread="0.5")
    makers.make_window(creek, name="clover", first_week=22, last_week=26)
    yard = next(yard for yard in operation_as_of(DAY).yards if yard.code == "creek")
    assert (yard.stands, yard.drive_minutes, yard.miles, yard.visit_every_days) == (24, 35, 21.5, 10)
    assert [window.name for window in yard.windows] == ["clover", "basswood"]
    assert (yard.windows[1].gain_lb, yard.windows[1].spread) == (40.5, 0.5)


def test_colonies_alike_are_one_group_with_all_their_gear(shed):
    creek = makers.make_yard("creek")
    makers.make_colony(yard=creek, gear=True, strength="strong")
    makers.make_colony(yard=creek, gear=True, strength="strong")
    makers.make_colony(yard=creek, gear=True, strength="weak")
    groups = {group.strength: group for group in operation_as_of(DAY).colonies}
    whole = makers.gear_of("two-deeps-10")
    assert groups["strong"].colonies == 2
    assert groups["strong"].gear == {part: 2 * pieces for part, pieces in whole.items()}
    assert groups["weak"].gear == whole


def test_a_colony_that_died_is_left_out_from_its_day_on(shed):
    colony = makers.make_colony(yard=makers.make_yard("creek"))
    colonies.end(colony, why="died", day=DAY, who=None)
    assert operation_as_of(DAY).colonies == ()
    assert operation_as_of(DAY - dt.timedelta(days=1)).colonies[0].colonies == 1


def test_a_colony_stands_where_it_stood_that_evening(shed):
    creek, hill = makers.make_yard("creek"), makers.make_yard("hill")
    colony = makers.make_colony(yard=creek)
    colonies.move(colony, yard=hill, day=DAY, who=None)
    assert operation_as_of(DAY - dt.timedelta(days=1)).colonies[0].yard == "creek"
    assert operation_as_of(DAY).colonies[0].yard == "hill"


def test_gear_held_back_on_a_colony_is_not_counted_with_it(shed):
    colony = makers.make_colony(yard=makers.make_yard("creek"))
    makers.put(colony, {"box-deep-10": 3})
    ledger.mark(
        at=colony,
        lines=[Line("box-deep-10", 1)],
        becomes=Condition.HELD,
        day=makers.DAY,
        who=None,
        key="held",
    )
    assert operation_as_of(DAY).colonies[0].gear == {"box-deep-10": 2}


def test_stock_is_told_by_part_yard_and_condition_as_of_the_evening(shed):
    makers.put(shed, {"box-medium-10": 30})
    makers.put(shed, {"box-medium-10": 4}, condition="to mend")
    ledger.scrap(at=shed, lines=[Line("box-medium-10", 5)], day=DAY, who=None, key="scrap")
    before = {
        (line.yard, line.condition): line.quantity
        for line in operation_as_of(DAY - dt.timedelta(days=1)).stock
    }
    after = {(line.yard, line.condition): line.quantity for line in operation_as_of(DAY).stock}
    assert before == {("shed", "sound"): 30, ("shed", "to mend"): 4}
    assert after == {("shed", "sound"): 25, ("shed", "to mend"): 4}


def test_gear_on_colonies_is_not_in_stock(shed):
    makers.make_colony(yard=makers.make_yard("creek"), gear=True)
    assert operation_as_of(DAY).stock == ()


def test_what_an_order_still_owes_is_on_order_until_it_comes(shed):
    order = makers.make_order(placed_on=DAY, due_on=DAY + dt.timedelta(days=14))
    assert operation_as_of(DAY - dt.timedelta(days=1)).on_order == ()
    owed = operation_as_of(DAY).on_order[0]
    assert (owed.part, owed.quantity, owed.reference) == ("box-medium-10", 10, order.reference)
    assert owed.due == DAY + dt.timedelta(days=14)
    came = DAY + dt.timedelta(days=12)
    four = [ledger.Arrival(part="box-medium-10", sound=4)]
    ledger.receive(order=order, into=shed, arrivals=four, day=came, who=None, key="came")
    assert operation_as_of(came).on_order[0].quantity == 6
    assert operation_as_of(came - dt.timedelta(days=1)).on_order[0].quantity == 10


def test_a_cancelled_order_owes_nothing(shed):
    cancel_order(makers.make_order(placed_on=DAY), day=DAY)
    assert operation_as_of(DAY).on_order == ()


def test_an_order_that_came_in_full_was_still_owed_the_evening_before(shed):
    order = makers.make_order(placed_on=DAY)
    came = DAY + dt.timedelta(days=12)
    ledger.receive(order=order, into=shed, day=came, who=None, key="came")
    assert operation_as_of(came).on_order == ()
    assert operation_as_of(came - dt.timedelta(days=1)).on_order[0].quantity == 10


def test_offers_bring_their_steps_and_the_suppliers_lead_time(shed):
    mill = makers.make_supplier("mill", lead_weeks=3, order_fee_cents=4550, free_from_cents=150000)
    makers.make_offer(
        {"box-medium-10-flat": 5}, supplier=mill, code="mill-mediums", steps=((1, 7100), (10, 6800))
    )
    makers.make_offer({"excluder-10": 10}, supplier=mill, code="mill-excluders", lead_weeks=0, max_packs=4)
    operation = operation_as_of(DAY)
    excluders, mediums = operation.offers
    assert operation.suppliers[0].order_fee == Decimal("45.50")
    assert operation.suppliers[0].free_from == Decimal("1500.00")
    assert (mediums.parts, mediums.lead_weeks) == ({"box-medium-10-flat": 5}, 3)
    assert mediums.prices == ((1, Decimal("71.00")), (10, Decimal("68.00")))
    assert (excluders.lead_weeks, excluders.max_packs) == (0, 4)


def test_an_offer_without_a_price_is_left_out(shed):
    makers.make_offer({"excluder-10": 10}, steps=())
    assert operation_as_of(DAY).offers == ()


def test_sets_tell_the_gear_of_a_colony_in_them(shed):
    makers.make_catalogue()
    two_deeps = next(each for each in operation_as_of(DAY).sets if each.code == "two-deeps-10")
    assert two_deeps.boxes == {"deep": 2}
    assert two_deeps.gear == makers.gear_of("two-deeps-10")


def test_a_set_of_the_keepers_own_without_gear_is_refused_once_a_colony_stands_in_it(shed):
    makers.make_catalogue()
    own = HiveSet.objects.create(code="tall", name="Tall and thin", deep_boxes=3)
    assert "tall" not in [each.code for each in operation_as_of(DAY).sets]
    colonies.start(tag="T1", yard=makers.make_yard("creek"), hive_set=own, day=makers.DAY, who=None)
    with pytest.raises(SetWithoutGear, match="Tall and thin"):
        operation_as_of(DAY)


def test_recipes_are_read_with_their_minutes(shed):
    makers.make_catalogue()
    recipes = {recipe.code: recipe for recipe in operation_as_of(DAY).recipes}
    box = recipes["assemble-box-medium-10"]
    assert box.takes["box-medium-10-flat"] == 1
    assert box.makes == {"box-medium-10": 1}
    assert box.minutes > 0


def test_the_number_of_questions_to_the_database_does_not_grow_with_the_books(
    shed, django_assert_max_num_queries
):
    for number in range(6):
        yard = makers.make_yard(f"yard-of-many-{number}")
        makers.make_window(yard)
        makers.make_colony(yard=yard, gear=True)
        makers.make_offer({"excluder-10": 10})
        makers.make_order()
    with django_assert_max_num_queries(50):
        operation_as_of(DAY)


def test_a_season_under_way_tells_what_became_of_it_so_far(db):
    outfit.make_outfit()
    day = outfit.DAY + dt.timedelta(days=120)
    creek = Yard.objects.get(code="creek")
    dead = list(Colony.objects.filter(yard=creek)[:2])
    for colony, on in zip(
        dead, (outfit.DAY - dt.timedelta(days=9), outfit.DAY + dt.timedelta(days=60)), strict=True
    ):
        Colony.objects.filter(pk=colony.pk).update(ended_on=on, ended_why="died")
    makers.make_colony(yard=creek, origin="split", day=outfit.DAY + dt.timedelta(days=100))
    so_far = operation_as_of(day, begun=outfit.DAY).so_far
    assert (so_far.colonies_begun, so_far.splits_made, so_far.nucs_sold) == (11, 1, 0)
    assert so_far.dead == ((outfit.DAY - dt.timedelta(days=9), 1), (outfit.DAY + dt.timedelta(days=60), 1))
    assert operation_as_of(outfit.DAY).so_far.colonies_begun is None


def test_past_winters_the_books_were_told_are_read(shed):
    tell_winter(autumn=2023, went_in=60, came_out=44)
    tell_winter(autumn=2026, went_in=70, came_out=50)
    assert operation_as_of(DAY).winters == ((60, 44),)
