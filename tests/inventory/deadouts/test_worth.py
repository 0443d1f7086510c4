"""What of a dead hive was saved, held back and written off, at the average of what was paid, else at list price."""

from decimal import Decimal

import pytest

from inventory import ledger
from inventory.deadouts.worth import cents_a_piece, money_of, own_movements, worth_of
from inventory.ledger import Piece
from inventory.models import Part, ToldPrice
from inventory.value_sums import write_offs
from tests import makers
from tests.inventory.deadouts.conftest import FOUND, HIVE, hive_of, work

pytestmark = pytest.mark.django_db


def cents(**pieces):
    return sum(
        makers.part(code.replace("_", "-")).list_price_cents * number for code, number in pieces.items()
    )


def test_every_piece_is_saved_held_or_written_off(hive, shed):
    told = [
        Piece(part="box-deep-10", sound=1, to_mend=1),
        Piece(part="comb-deep-brood", held=10, scrapped=3, burnt=2),  # one was not there
        Piece(part="frame-deep-foundation", sound=4),
        Piece(part="floor-10", sound=1),
        Piece(part="cover-10", scrapped=1),
    ]
    row = work(hive, shed, pieces=told)
    worth = worth_of(row)
    assert (worth.saved, worth.held, worth.lost) == (7, 10, 7)
    worth = money_of(row)  # opening stock for which no price was told is in the books at its list price
    assert worth.at_list == 0
    assert worth.saved_cents == cents(box_deep_10=2, frame_deep_foundation=4, floor_10=1)
    assert worth.held_cents == cents(comb_deep_brood=10)
    assert worth.lost_cents == cents(comb_deep_brood=6, cover_10=1)


def test_all_of_the_hive_is_in_one_of_the_three(hive, shed):
    worth = money_of(work(hive, shed, fate="sound"))
    whole = sum(makers.part(code).list_price_cents * number for code, number in HIVE.items())
    assert worth.saved_cents + worth.held_cents + worth.lost_cents == whole


def test_what_a_suspicion_reaches_elsewhere_is_not_its_worth(hive, yard, shed):
    hive_of("F-02", yard)
    row = work(hive, shed, suspected=True)
    assert (worth_of(row).held, worth_of(row).saved) == (sum(HIVE.values()), 0)
    assert sum(move.quantity for move in own_movements(row)) == sum(HIVE.values())


def test_money_is_the_average_of_the_books_and_agrees_with_what_they_wrote_off(hive, shed):
    """Two boxes told at 10.00 and four bought for 19.00 each: 16.00 a box. One is saved, one scrapped."""
    box = makers.part("box-deep-10")
    ToldPrice.objects.create(part=box, cents=1000)
    offer = makers.make_offer({"box-deep-10": 4}, steps=((1, 7600),))
    order = makers.make_order({offer: 1})
    ledger.receive(order=order, into=shed, day=makers.DAY, who=None, key="came")
    assert cents_a_piece(as_of=FOUND)[box.pk] == Decimal("1600.00")
    told = [Piece(part="box-deep-10", sound=1, scrapped=1), Piece(part="floor-10", sound=1)]
    row = work(hive, shed, pieces=told)
    money = money_of(row)
    assert money.saved_cents == 1600 + makers.part("floor-10").list_price_cents
    lost = write_offs(first=FOUND, last=FOUND)
    assert money.lost_cents == lost.whole.cents
    assert worth_of(row).lost == lost.whole.pieces


def test_where_the_books_know_no_average_the_list_price_stands_in_and_is_told(hive, shed, monkeypatch):
    row = work(hive, shed, fate="sound")
    monkeypatch.setattr("inventory.deadouts.worth.pools", lambda **_: {})
    money = money_of(row)
    prices = dict(Part.objects.values_list("code", "list_price_cents"))
    assert (money.at_list, money.saved_cents) == (
        sum(HIVE.values()),
        sum(prices[code] * n for code, n in HIVE.items()),
    )
