"""The books in money, from acts: what came, was made and left, and what undoing restores."""

import datetime as dt

import pytest

from inventory import ledger
from inventory.ledger import Arrival, Instead, Line
from inventory.models import Claim, Part, ToldPrice, ValueBasis
from inventory.orders import answer_claim, claim, enter_invoice
from inventory.value import books_of, value_by_part
from inventory.valuing import basis, lives, pools, posted_lines
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
END = dt.date(2025, 12, 31)


def later(days):
    return DAY + dt.timedelta(days=days)


def told(key=None, days=0):
    return {"day": later(days), "who": None, "key": key or makers.fresh_key()}


def value(*, as_of=END):
    """{part's code: (pieces, cents)}."""
    codes = {str(pk): code for pk, code in Part.objects.values_list("pk", "code")}
    rows = value_by_part(posted_lines(), as_of=as_of)
    return {codes[part]: (amount.pieces, amount.cents) for part, amount in rows.items()}


def whole(first=DAY, last=END):
    return books_of(posted_lines(), first=first, last=last).whole


@pytest.fixture
def shed(db):
    return makers.make_shed()


@pytest.fixture
def order(shed):
    """Ten boxes at 20.00 a pack of five, four excluders at 20.00 for two; shipping 15.00."""
    supplier = makers.make_supplier(order_fee_cents=1500)
    boxes = makers.make_offer({"box-medium-10": 5}, supplier=supplier)
    both = makers.make_offer({"excluder-10": 2}, supplier=supplier)
    return makers.make_order({boxes: 2, both: 2})


def test_opening_stock_counts_at_list_price_or_at_the_price_told(shed):
    makers.put(shed, {"box-medium-10": 10, "stand": 2})
    assert value() == {"box-medium-10": (10, 22000), "stand": (2, 4200)}
    ToldPrice.objects.create(part=makers.part("stand"), cents=500)
    assert value()["stand"] == (2, 1000)


def test_a_receipt_counts_as_planned_with_shipping_by_value(shed, order):
    """80.00 of goods and 15.00 of shipping, half of it each."""
    ledger.receive(order=order, into=shed, **told())
    assert value() == {"box-medium-10": (10, 4750), "excluder-10": (4, 4750)}


def test_a_receipt_in_part_bears_its_part_and_the_rest_the_rest(shed, order):
    ledger.receive(order=order, into=shed, arrivals=[Arrival(part="box-medium-10", sound=3)], **told())
    first = value()["box-medium-10"]
    assert first == (3, 1200 + 225)  # 3 of 10 of 40.00, and 12 of 80 of the shipping
    ledger.receive(order=order, into=shed, **told(days=2))
    assert value() == {"box-medium-10": (10, 4750), "excluder-10": (4, 4750)}


def test_the_invoice_counts_instead_of_the_plan(shed, order):
    act = ledger.receive(order=order, into=shed, **told())
    boxes, both = order.lines.all()
    enter_invoice(act, paid={(boxes.pk, None): 5000, (both.pk, None): 3000}, shipping_cents=800, day=DAY)
    assert value() == {"box-medium-10": (10, 5500), "excluder-10": (4, 3300)}
    enter_invoice(act, paid={(boxes.pk, None): 5000, (both.pk, None): 3000}, shipping_cents=0, day=DAY)
    assert value() == {"box-medium-10": (10, 5000), "excluder-10": (4, 3000)}


def test_pieces_scrapped_on_arrival_are_written_off_and_a_credit_lowers_that(shed, order):
    arrivals = [Arrival(part="box-medium-10", sound=8, scrapped=2), Arrival(part="excluder-10", sound=4)]
    act = ledger.receive(order=order, into=shed, arrivals=arrivals, **told())
    assert value()["box-medium-10"] == (8, 3800)
    assert whole().left["broken on arrival"].cents == 950
    line = order.lines.first()
    asked = claim(act, line=line, part=makers.part("box-medium-10"), pieces=2, day=DAY)
    answer_claim(asked, answer=Claim.Answer.CREDITED, day=later(3), credit_cents=800)
    assert value()["box-medium-10"] == (8, 3800)
    assert whole().left["broken on arrival"].cents == 150


def test_what_is_replaced_comes_free_of_charge(shed, order):
    arrivals = [Arrival(part="box-medium-10", sound=8, scrapped=2), Arrival(part="excluder-10", sound=4)]
    act = ledger.receive(order=order, into=shed, arrivals=arrivals, **told())
    asked = claim(act, line=order.lines.first(), part=makers.part("box-medium-10"), pieces=2, day=DAY)
    answer_claim(asked, answer=Claim.Answer.REPLACED, day=later(3))
    ledger.receive(order=order, into=shed, **told(days=9))
    assert value()["box-medium-10"] == (10, 3800)


def test_a_part_that_came_instead_costs_what_was_planned_or_billed(shed, order):
    instead = Instead(ordered="box-medium-10", settles=5, came=Arrival(part="box-shallow-10", sound=6))
    act = ledger.receive(order=order, into=shed, substitutes=[instead], **told())
    assert value()["box-shallow-10"] == (6, 2375)  # 5 of 10 of 40.00, and 20 of 80 of the shipping
    boxes, both = order.lines.all()
    paid = {(boxes.pk, None): 2000, (boxes.pk, act_part("box-shallow-10")): 1200, (both.pk, None): 4000}
    enter_invoice(act, paid=paid, shipping_cents=0, day=DAY)
    assert value()["box-shallow-10"] == (6, 1200)


def act_part(code):
    return makers.part(code).pk


def test_a_receipt_reversed_as_of_its_day_never_was(shed, order):
    makers.put(shed, {"box-medium-10": 3})
    before = value()
    act = ledger.receive(order=order, into=shed, **told(days=1))
    assert value() != before
    ledger.reverse(act=act, who=None, key="back")
    assert value() == before
    assert whole().all_out.pieces == 0


def test_a_receipt_reversed_later_takes_along_what_it_brought(shed, order):
    makers.put(shed, {"box-medium-10": 10})
    before = value()
    act = ledger.receive(order=order, into=shed, **told(days=1))
    assert value(as_of=later(4))["box-medium-10"] == (20, 22000 + 4750)
    ledger.reverse(act=act, who=None, key="back", day=later(5))
    assert value() == before
    assert value(as_of=later(4))["box-medium-10"] == (20, 22000 + 4750)


def test_a_scrapping_reversed_later_brings_back_what_it_took(shed):
    makers.put(shed, {"stand": 5})
    act = ledger.scrap(at=shed, lines=[Line("stand", 2)], **told(days=1))
    assert value() == {"stand": (3, 6300)}
    ledger.reverse(act=act, who=None, key="back", day=later(2))
    assert value() == {"stand": (5, 10500)}


def test_assembling_carries_the_cost_over_and_own_work_counts_when_told(shed):
    makers.put(shed, {"frame-medium": 10, "foundation-medium": 10})  # 2.00 and 1.60
    ledger.assemble(recipe="fit-foundation-medium", times=5, at=shed, **told(days=1))
    assert value()["frame-medium-foundation"] == (5, 1800)
    ValueBasis.objects.create(pk=1, work_cents_per_hour=6000)
    minutes = basis().work_cents_per_hour / 60
    assert value()["frame-medium-foundation"][1] > 1800 and minutes == 100


def test_drawn_comb_is_worth_what_went_in(shed):
    colony = makers.make_colony(gear=False)
    makers.put(colony, {"frame-medium-foundation": 10})
    ledger.draw(colony=colony, lines=[Line("frame-medium-foundation", 4)], **told(days=1))
    assert value() == {"comb-medium-honey": (4, 1520), "frame-medium-foundation": (6, 2280)}


def test_moving_lending_and_marking_change_no_value(shed):
    makers.put(shed, {"stand": 5})
    yard = makers.make_yard()
    ledger.move(source=shed, target=yard, lines=[Line("stand", 2)], **told(days=1))
    ledger.mark(at=shed, lines=[Line("stand", 1)], becomes="to mend", **told(days=1))
    ledger.lend(source=yard, to="an invented neighbour", lines=[Line("stand", 1)], **told(days=2))
    assert value() == {"stand": (5, 10500)}
    assert not whole(first=later(1)).moved


def test_counts_of_one_day_are_one_difference(shed):
    makers.put(shed, {"stand": 5})
    yard = makers.make_yard()
    ledger.correct(location=shed, counted=[Line("stand", 3)], **told(days=1))
    ledger.correct(location=yard, counted=[Line("stand", 2)], **told(days=1))
    assert not whole(first=later(1)).moved
    ledger.correct(location=yard, counted=[Line("stand", 1)], **told(days=2))
    assert whole().left["counted less"].cents == 2100


def test_what_leaves_is_told_by_why(shed):
    makers.put(shed, {"stand": 9, "sugar": 10})
    ledger.scrap(at=shed, lines=[Line("stand", 1)], **told(days=1))
    ledger.burn(at=shed, lines=[Line("stand", 2)], **told(days=1))
    ledger.use(at=shed, lines=[Line("sugar", 10)], **told(days=1))
    left = {why: amount.cents for why, amount in whole().left.items()}
    assert left == {"scrapped": 2100, "burnt": 4200, "used up": 720}


def test_only_gear_in_service_wears(db):
    makers.make_catalogue()
    years = {Part.objects.get(pk=pk).code: n for pk, n in lives().items()}
    assert years["box-deep-10"] == 20 and years["comb-deep-brood"] == 5
    assert not {"box-deep-10-flat", "sugar", "jar", "foundation-deep", "frame-deep"} & set(years)


def test_pools_of_an_evening_count_what_an_act_left_out_wrote_off(shed):
    makers.put(shed, {"stand": 4})
    stand = makers.part("stand")
    act = ledger.scrap(at=shed, lines=[Line("stand", 1)], **told(days=1))
    each = stand.list_price_cents
    assert pools(last=later(0)) == {stand.pk: (4, 4 * each)}
    assert pools(last=later(1)) == {stand.pk: (3, 3 * each)}
    assert pools(last=later(1), without=act) == {stand.pk: (4, 4 * each)}
