"""Purchase orders for tests, invented, and orders drawn at random."""

import datetime as dt
from decimal import Decimal

from hypothesis import strategies as st

from inventory.printed import AskedLine, Content, Party, PurchaseOrder

DAY = dt.date(2027, 1, 15)
KEEPER = Party(
    name="Invented Apiary",
    address="1 Example Lane\nNowhere 00000",
    phone="555 0100",
    email="bees@example.org",
)
NORTH = Party(name="North Woodware (invented)", address="2 Sawmill Road\nNowhere 00001")


def make_line(name="Medium box, in pieces, pack of 5", packs=2, price="72.50", *, per_pack=5, **fields):
    usual = {
        "contents": (Content(name="medium box, in pieces", units=packs * per_pack, unit="piece"),),
        "cost": None if price is None else Decimal(price) * packs,
        "bill": () if price is None else ((packs, Decimal(price)),),
    }
    return AskedLine(name=name, packs=packs, **{**usual, **fields})


def make_paper(*lines, **fields):
    usual = {
        "reference": "winter-order-7-north-0",
        "day": DAY,
        "wanted_by": dt.date(2027, 3, 19),
        "money": "USD",
        "sender": KEEPER,
        "supplier": NORTH,
        "customer_number": "K-4711",
        "fee": Decimal("24.00"),
    }
    return PurchaseOrder(lines=lines or (make_line(),), **{**usual, **fields})


def kit():
    parts = (
        Content(name="deep box, in pieces", units=10, unit="piece"),
        Content(name="wire", units=20, unit="ft"),
    )
    return make_line("Hive without frames", 10, "69.00", contents=parts)


def stepped():
    """Two packs at 80.35, five more at 72.55."""
    bill = ((2, Decimal("80.35")), (5, Decimal("72.55")))
    return make_line("Frames by steps", 7, None, cost=Decimal("523.45"), bill=bill)


def lump():
    """Seven packs for 100.00, which is no whole number of cents a pack."""
    return make_line("Left over stock", 7, None, cost=Decimal("100.00"))


def asked():
    return make_line("Branding iron", 1, None)


money = st.integers(1, 10**7).map(lambda cents: Decimal(cents) / 100)
bills = st.lists(st.tuples(st.integers(1, 500), money), min_size=1, max_size=4)


@st.composite
def lines(draw):
    name = draw(st.text(max_size=60))
    if draw(st.integers(0, 5)) == 0:
        return make_line(name, draw(st.integers(1, 500)), None)
    bill = tuple(draw(bills))
    packs, cost = sum(n for n, _ in bill), sum(n * each for n, each in bill)
    lumped = draw(st.booleans())
    return make_line(name, packs, None, cost=cost, bill=() if lumped else bill)


papers = st.builds(
    lambda rows, fee, note, name: make_paper(*rows, fee=fee, note=note, supplier=Party(name=name)),
    st.lists(lines(), min_size=1, max_size=12),
    st.integers(0, 50_000).map(lambda cents: Decimal(cents) / 100),
    st.text(max_size=200),
    st.text(max_size=80),
)
