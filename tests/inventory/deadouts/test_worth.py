"""What of a dead hive was saved, held back and written off, at list price."""

import pytest

from inventory.deadouts.worth import own_movements, worth_of
from inventory.ledger import Piece
from tests import makers
from tests.inventory.deadouts.conftest import HIVE, hive_of, work

pytestmark = pytest.mark.django_db


def cents(**pieces):
    return sum(
        makers.part(code.replace("_", "-")).list_price_cents * number for code, number in pieces.items()
    )


def test_every_piece_is_saved_held_or_written_off_at_its_list_price(hive, shed):
    told = [
        Piece(part="box-deep-10", sound=1, to_mend=1),
        Piece(part="comb-deep-brood", held=10, scrapped=3, burnt=2),  # one was not there
        Piece(part="frame-deep-foundation", sound=4),
        Piece(part="floor-10", sound=1),
        Piece(part="cover-10", scrapped=1),
    ]
    worth = worth_of(work(hive, shed, pieces=told))
    assert (worth.saved, worth.held, worth.lost) == (7, 10, 7)
    assert worth.saved_cents == cents(box_deep_10=2, frame_deep_foundation=4, floor_10=1)
    assert worth.held_cents == cents(comb_deep_brood=10)
    assert worth.lost_cents == cents(comb_deep_brood=6, cover_10=1)


def test_all_of_the_hive_is_in_one_of_the_three(hive, shed):
    worth = worth_of(work(hive, shed, fate="sound"))
    whole = sum(makers.part(code).list_price_cents * number for code, number in HIVE.items())
    assert worth.saved_cents + worth.held_cents + worth.lost_cents == whole


def test_what_a_suspicion_reaches_elsewhere_is_not_its_worth(hive, yard, shed):
    hive_of("F-02", yard)
    row = work(hive, shed, suspected=True)
    assert (worth_of(row).held, worth_of(row).saved) == (sum(HIVE.values()), 0)
    assert sum(move.quantity for move in own_movements(row)) == sum(HIVE.values())
