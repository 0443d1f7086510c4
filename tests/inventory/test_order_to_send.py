"""An order of the books as it is sent: lines, prices, steps, what was cancelled, what is asked for, what is missing."""

import datetime as dt
import io
import zipfile
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import load_workbook

from inventory.order_to_send import (
    NothingToSend,
    all_to_send,
    bill_of,
    lacking,
    name_of_file,
    to_send,
    write_note,
)
from inventory.orders import close_lines, cost_of
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def seller():
    return makers.make_supplier("mill-end", order_fee_cents=1500)


@pytest.fixture
def offers(seller):
    boxes = makers.make_offer({"box-medium-10": 5}, supplier=seller, name="Medium, five to a pack")
    kit = makers.make_offer({"excluder-10": 2, "feeder-10": 1}, supplier=seller, steps=((1, 999),))
    return boxes, kit


@pytest.fixture
def order(offers):
    return makers.make_order({offers[0]: 2, offers[1]: 3})


def test_it_holds_the_lines_in_the_suppliers_words_with_units_price_and_total(order):
    paper = to_send(order)
    boxes, kit = paper.lines
    assert (boxes.name, boxes.packs, boxes.cost, boxes.bill) == (
        "Medium, five to a pack",
        2,
        Decimal(40),
        ((2, Decimal(20)),),
    )
    assert [part.units for part in kit.contents] == [6, 3]
    assert paper.total == Decimal("84.97")  # 2 × 20.00 + 3 × 9.99 + 15.00
    assert (paper.day, paper.wanted_by, paper.asks) == (order.placed_on, order.due_on, 0)


def test_names_and_addresses_are_those_told_and_what_is_missing_is_said(order):
    assert [gap.page for gap in lacking(to_send(order))] == ["operation", "supplier"]
    makers.make_keeper(address="1 Example Lane", phone="555 0100", money="CAD")
    order.supplier.address, order.supplier.customer_number = "2 Sawmill Road", "K-4711"
    paper = to_send(order)
    assert paper.sender.lines == ("Invented Apiary", "1 Example Lane", "555 0100")
    assert paper.supplier.lines == ("Invented mill-end", "2 Sawmill Road")
    assert (paper.customer_number, paper.money, lacking(paper)) == ("K-4711", "CAD", [])


def test_a_cancelled_line_is_not_sent_and_an_order_of_none_is_refused(order):
    first, second = order.lines.all()
    close_lines(order, {first.pk}, why="cancelled", day=makers.DAY)
    assert [line.packs for line in to_send(order).lines] == [3]
    close_lines(order, {second.pk}, why="cancelled", day=makers.DAY)
    with pytest.raises(NothingToSend, match=f"Order {order.reference} is cancelled in every line"):
        to_send(order)


def test_a_line_whose_price_list_ended_before_the_order_asks_for_the_price(seller):
    old = makers.make_offer({"sugar": 50}, supplier=seller, open_until=makers.DAY - dt.timedelta(days=1))
    still = makers.make_offer({"sugar": 50}, supplier=seller, open_until=makers.DAY)
    paper = to_send(makers.make_order({old: 1, still: 1}))
    assert [line.cost for line in paper.lines] == [None, Decimal(20)]
    assert (paper.asks, paper.total) == (1, Decimal(35))


def test_a_line_without_a_price_asks_for_it(seller):
    free = makers.make_offer({"sugar": 50}, supplier=seller, steps=((1, 0),))
    assert to_send(makers.make_order({free: 4})).asks == 1


def test_steps_that_price_their_own_packs_are_told_step_by_step(seller):
    steps = ((1, 8035), (3, 7255), (100, 10))
    offer = makers.make_offer({"sugar": 50}, supplier=seller, steps=steps, price_rule="incremental")
    (line,) = to_send(makers.make_order({offer: 7})).lines
    assert line.bill == ((2, Decimal("80.35")), (5, Decimal("72.55")))


def test_steps_changed_since_the_order_leave_the_price_agreed(seller):
    offer = makers.make_offer(
        {"sugar": 50}, supplier=seller, steps=((1, 1000), (2, 501)), price_rule="incremental"
    )
    order = makers.make_order({offer: 2})
    offer.steps.filter(from_packs=2).update(price_cents=400)
    (line,) = to_send(order).lines
    assert (line.cost, line.bill) == (Decimal("15.01"), ())


@given(
    steps=st.lists(
        st.tuples(st.integers(2, 60), st.integers(1, 10_000)), max_size=4, unique_by=lambda s: s[0]
    ),
    packs=st.integers(1, 80),
    rule=st.sampled_from(["all_units", "incremental"]),
)
def test_a_bill_is_always_all_packs_and_their_cost(steps, packs, rule):
    offer = Priced(rule, [(1, 9999), *sorted(steps)])
    cost = cost_of(offer, packs)
    bill = bill_of(offer, packs, cost)
    assert sum(count for count, _ in bill) == packs
    assert sum(count * price for count, price in bill) == cost


class Priced:
    """A price list without a database."""

    max_packs = None

    def __init__(self, rule, steps):
        self.price_rule, self._steps = rule, steps

    @property
    def steps(self):
        return self

    def all(self):
        return [Step(*each) for each in self._steps]


class Step:
    def __init__(self, from_packs, price_cents):
        self.from_packs, self.price_cents = from_packs, price_cents


def test_the_note_is_kept_without_blank_ends(order):
    write_note(order, "\n Ring first.  \nNo forklift.\n\n")
    order.refresh_from_db()
    assert order.note == to_send(order).note == "Ring first.\nNo forklift."


def test_all_orders_come_in_one_file_each_under_its_own_safe_name(order):
    strange = makers.make_supplier("north", name="צפון / ..\\ = North")
    other = makers.make_order({makers.make_offer({"sugar": 50}, supplier=strange): 1})
    dropped = makers.make_order({makers.make_offer({"sugar": 50}, supplier=strange): 1})
    close_lines(dropped, {dropped.lines.get().pk}, why="cancelled", day=makers.DAY)
    with zipfile.ZipFile(io.BytesIO(all_to_send([order, other, dropped]))) as file:
        assert file.namelist() == [name_of_file(order), name_of_file(other)]
        assert file.namelist()[0] == f"order-{order.pk}-invented-mill-end.xlsx"
        assert file.namelist()[1] == f"order-{other.pk}-north.xlsx"
        assert load_workbook(file.open(name_of_file(other))).sheetnames == ["Purchase order"]
    with pytest.raises(NothingToSend):
        all_to_send([dropped])
