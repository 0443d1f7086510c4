"""Random acts and reversals through the ledger: the books in money agree with the books in pieces, always.

On every evening pieces valued are the pieces owned or lent, opening and in less out is closing to the cent, and an
act reversed as of its day leaves value as if it had never been.
"""

import datetime as dt
from collections import Counter

import pytest
from django.db import transaction
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inventory import ledger, stock
from inventory.errors import Refused
from inventory.ledger import Arrival, Instead, Line
from inventory.models import Location, Movement, Part
from inventory.orders import billed_lines, enter_invoice
from inventory.value import books_of, value_by_part
from inventory.valuing import posted_lines
from tests import makers

START, DAYS = makers.DAY, 12
PARTS = ("stand", "frame-medium", "foundation-medium", "frame-medium-foundation", "box-medium-10")
WHATS = (
    "open",
    "receive",
    "swap",
    "fit",
    "scrap",
    "use",
    "count",
    "lend",
    "move",
    "mark",
    "reverse",
    "bill",
    "draw",
)
acts = st.tuples(
    st.sampled_from(WHATS), st.integers(0, DAYS), st.sampled_from(PARTS), st.integers(1, 6), st.integers(0, 3)
)


class World:
    """A shed, a yard, a colony, two orders, and the acts so far."""

    def __init__(self):
        self.shed, self.yard = makers.make_shed(), makers.make_yard()
        self.colony = makers.make_colony(yard=self.yard, day=START)
        supplier = makers.make_supplier(order_fee_cents=1234)
        boxes = makers.make_offer({"box-medium-10": 3, "frame-medium": 7}, supplier=supplier)
        self.order = makers.make_order({boxes: 4}, placed_on=START)
        self.acts = []

    def act(self, what, day, part, pieces, number):
        told = {"day": START + dt.timedelta(days=day), "who": None, "key": makers.fresh_key()}
        lines = [Line(part, pieces)]
        if what == "reverse" and self.acts:
            act = self.acts[number % len(self.acts)]
            on = None if pieces < 4 else max(act.day, told["day"])
            return ledger.reverse(act=act, who=None, key=told["key"], day=on)
        if what == "bill" and self.acts:
            act = self.acts[number % len(self.acts)]
            paid = dict.fromkeys(billed_lines(act), pieces * 777)
            return enter_invoice(act, paid=paid, shipping_cents=pieces * 11, day=act.day) and None
        return getattr(self, f"_{what}", lambda *_: None)(lines, told, number)

    def _open(self, lines, told, number):
        return ledger.open_stock(location=self.shed, lines=lines, **told)

    def _receive(self, lines, told, number):
        came = Arrival(part="box-medium-10", sound=lines[0].quantity, scrapped=number, to_mend=number % 2)
        return ledger.receive(order=self.order, into=self.shed, arrivals=[came], over_allowed=True, **told)

    def _swap(self, lines, told, number):
        came = Arrival(part="stand", sound=lines[0].quantity)
        swap = Instead(ordered="frame-medium", settles=number + 1, came=came)
        return ledger.receive(order=self.order, into=self.shed, arrivals=[], substitutes=[swap], **told)

    def _fit(self, lines, told, number):
        return ledger.assemble(recipe="fit-foundation-medium", times=number + 1, at=self.shed, **told)

    def _scrap(self, lines, told, number):
        return ledger.scrap(at=self.shed, lines=lines, **told)

    def _use(self, lines, told, number):
        return ledger.use(at=self.shed, lines=lines, **told)

    def _count(self, lines, told, number):
        return ledger.correct(location=(self.shed, self.yard)[number % 2], counted=lines, **told)

    def _lend(self, lines, told, number):
        return ledger.lend(source=self.shed, to="an invented neighbour", lines=lines, **told)

    def _move(self, lines, told, number):
        return ledger.move(source=self.shed, target=self.yard, lines=lines, found_allowed=number > 1, **told)

    def _mark(self, lines, told, number):
        return ledger.mark(at=self.shed, lines=lines, becomes="to mend", **told)

    def _draw(self, lines, told, number):
        lines = [Line("frame-medium-foundation", lines[0].quantity)]
        return ledger.draw(colony=self.colony, lines=lines, found_allowed=True, **told)


def owned(day):
    """{part: pieces} inside or lent on an evening, by a plain count."""
    own = set(Location.objects.filter(kind__in=(*Location.INSIDE, "lent")).values_list("pk", flat=True))
    sums = Counter()
    for row in Movement.objects.filter(day__lte=day):
        sums[str(row.part_id)] += row.quantity * ((row.target_id in own) - (row.source_id in own))
    return {part: pieces for part, pieces in sums.items() if pieces}


def agree(posted):
    for number in range(-1, DAYS + 1, 3):
        day = START + dt.timedelta(days=number)
        amounts = value_by_part(posted, as_of=day)
        assert {part: amount.pieces for part, amount in amounts.items() if amount.pieces} == owned(day)
        assert all(amount.cents == 0 for amount in amounts.values() if not amount.pieces)
        assert all(amount.cents >= 0 for amount in amounts.values())
        books = books_of(posted, first=day, last=day + dt.timedelta(days=2))
        closing = value_by_part(posted, as_of=books.last)
        assert books.whole.closing.cents == sum(amount.cents for amount in closing.values())
        assert {row.part: row.closing for row in books.parts if row.closing.pieces} == {
            part: amount for part, amount in closing.items() if amount.pieces
        }


@pytest.mark.django_db
@settings(
    max_examples=25, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck), database=None
)
@given(st.lists(acts, min_size=4, max_size=22))
def test_money_and_pieces_agree_whatever_is_done(told):
    with transaction.atomic():
        world = World()
        for one in told:
            try:
                with transaction.atomic():
                    act = world.act(*one)
            except Refused:
                continue
            if act is not None and act.reverses_id is None:
                world.acts.append(act)
        posted = posted_lines()
        agree(posted)
        assert value_by_part(posted_lines(last=START), as_of=START) == value_by_part(posted, as_of=START)
        for act in world.acts:
            _undone_is_as_if_it_had_never_been(act, posted)
        transaction.set_rollback(True)


def _undone_is_as_if_it_had_never_been(act, posted):
    """One more receipt, taken back as of its day: the same value on every evening."""
    if act.name != "receive" or hasattr(act, "reversed_by"):
        return
    shed = act.movements.filter(target__yard__isnull=False).first()
    if shed is None:
        return
    order = act.movements.first().order_line.order
    came = [Arrival(part="box-medium-10", sound=2)]
    told = {"day": act.day, "who": None, "arrivals": came, "over_allowed": True}
    again = ledger.receive(order=order, into=shed.target.yard, key=makers.fresh_key(), **told)
    assert posted_lines() != posted
    ledger.reverse(act=again, who=None, key=makers.fresh_key())
    assert posted_lines() == posted


@pytest.mark.django_db
def test_what_is_owned_is_what_is_valued():
    makers.put(makers.make_shed(), {"stand": 3})
    codes = {str(pk): code for pk, code in Part.objects.values_list("pk", "code")}
    pieces = {
        codes[part]: amount.pieces for part, amount in value_by_part(posted_lines(), as_of=START).items()
    }
    assert pieces == {gear.part: n for gear, n in stock.owned().items()}
