"""What an act did in one sentence. The sentences of acts that have pages are tested with the pages, too."""

import pytest

from inventory import ledger
from inventory.ledger import Line, Piece, Return
from inventory.models import Act, Loan, Movement
from inventory.sentences import HEADS, amount, head_of, sentence_of
from inventory.yardwork.boxes import add_brood_box, super_up
from inventory.yardwork.pulling import pull
from tests import makers

pytestmark = pytest.mark.django_db


def told(act, **kwargs):
    return sentence_of(act(day=makers.DAY, who=None, key=makers.fresh_key(), **kwargs))


def test_opening_stock_and_drawn_comb():
    shed, colony = makers.make_shed(), makers.make_colony("F-01")
    makers.put(colony, {"frame-deep-foundation": 10})
    makers.put(shed, {"box-deep-10": 8, "sugar": 50})
    assert sentence_of(Act.objects.last()) == "Opening stock: 8 pieces and 50 lb."
    lines = [Line("frame-deep-foundation", 10)]
    assert told(ledger.draw, colony=colony, lines=lines) == "Comb drawn: 10 pieces on 1 colony."


def test_a_load_a_loan_and_a_feeding_tell_where_to_whom_and_how_much():
    shed, yards = makers.make_shed(), [makers.make_yard("fern-hollow"), makers.make_yard("long-acre")]
    makers.put(shed, {"box-deep-10": 8, "sugar": 50})
    drops = [(yard, [Line("box-deep-10", number)]) for yard, number in zip(yards, (1, 2), strict=True)]
    words = "Hauled from Shed: 1 piece to Fern Hollow, 2 pieces to Long Acre."
    assert told(ledger.haul, source=shed, drops=drops) == words
    lent = {"source": shed, "to": "A. Neighbour", "lines": [Line("box-deep-10", 3)]}
    assert told(ledger.lend, **lent) == "Lent 3 pieces of Shed to A. Neighbour, with no day to be back."
    due = told(ledger.lend, due_on=makers.DAY, **{**lent, "lines": [Line("box-deep-10", 1)]})
    assert due == "Lent 1 piece of Shed to A. Neighbour, due back 1 April 2025."
    loan = Loan.objects.get(due_on=makers.DAY)
    returns = [Return(part="box-deep-10", sound=1)]
    assert told(ledger.take_back, loan=loan, into=shed, returns=returns).startswith(
        "From A. Neighbour: 1 piece back"
    )
    loan = Loan.objects.get(due_on=None)
    returns = [Return(part="box-deep-10", to_mend=1, lost=1)]
    assert told(ledger.take_back, loan=loan, into=shed, returns=returns) == (
        "From A. Neighbour: 1 piece back in the store of Shed, 1 piece of it to mend, 1 piece given up for lost."
    )
    hives = [makers.make_colony(yard=yards[0]) for _ in range(2)]
    words = "Fed 2 colonies 2.5 gal of syrup 1:1: 13 lb of white sugar of Shed."
    portions = [(hives[0], 4), (hives[1], 6)]
    assert told(ledger.feed, ration="syrup-1-1", portions=portions, source=shed) == words


def test_salvage_tells_what_became_of_the_hive():
    shed, deadout = makers.make_shed(), makers.make_dead_colony(tag="F-02", gear=True, day=makers.DAY)
    pieces = [
        Piece(part="box-deep-10", sound=1, burnt=1),
        Piece(part="floor-10", held=1),
        Piece(part="cover-10", lost=1),
        Piece(part="inner-cover-10", scrapped=1),
    ]
    act = ledger.salvage(
        colony=deadout, into=shed, pieces=pieces, day=deadout.ended_on, who=None, key=makers.fresh_key()
    )
    assert sentence_of(act) == (
        "Salvaged F-02: 2 pieces to the store of Shed, 1 piece of it held back, "
        "1 piece scrapped, 1 piece burnt, 1 piece lost."
    )


def test_a_receipt_of_scrap_alone_names_no_store():
    order = makers.make_order()
    arrivals = [ledger.Arrival(part="box-medium-10", scrapped=2)]
    sentence = told(ledger.receive, order=order, into=makers.make_shed(), arrivals=arrivals)
    assert sentence == "Received 2 pieces, 2 pieces scrapped."


def test_amounts_are_summed_by_unit():
    makers.put(makers.make_shed(), {"box-deep-10": 1, "floor-10": 1, "sugar": 1200, "paint": 1})
    rows = Movement.objects.select_related("part").order_by("id")
    assert amount(rows) == "2 pieces, 1,200 lb and 1 quart"
    assert amount([]) == "nothing"


def test_every_act_the_books_have_seen_has_a_head():
    act = Act(name="place")
    assert head_of(act) == "Placed on a colony"
    assert head_of(Act(name="something new")) == "Something new"
    assert all(head[0].isupper() for head in HEADS.values())


def test_boxes_over_a_whole_yard_tell_hives_boxes_and_frames():
    creek = makers.make_yard("creek")
    hives = [makers.make_colony(yard=creek, hive_set="one-deep-10", gear=True) for _ in range(2)]
    makers.put(creek, {"box-medium-10": 3, "comb-medium-honey": 20, "frame-medium-foundation": 10})
    told_up = told(super_up, colonies={hives[0]: 2, hives[1]: 1}, source=creek)
    assert told_up == (
        "Supered up 2 colonies with 3 supers, 20 drawn combs and 10 frames with foundation, "
        "from the store of Creek."
    )
    off = told(pull, colonies={hives[0]: 2, hives[1]: 1}, target=creek)
    assert off == "Pulled 3 supers off 2 colonies into the store of Creek, 10 frames drawn out by now."
    grown = told(add_brood_box, colonies={hives[0]: 1}, source=creek)
    assert grown.startswith(
        "Built up 1 colony with 1 brood box, 10 frames with foundation, from the store of Creek. 11 pieces"
    )
