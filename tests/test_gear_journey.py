"""The journey of gear: ordered, received, assembled, moved, placed, drawn, salvaged, counted, and still all there."""

import datetime as dt
from io import StringIO

import pytest
from django.core.management import call_command

from apiary import colonies
from inventory import ledger, stock
from inventory.gear import Condition, Gear
from inventory.ledger import Arrival, Line, Piece
from tests import makers

pytestmark = pytest.mark.django_db


def day(month, number):
    return dt.date(2025, month, number)


def sound(**gear):
    return {Gear(part=code.replace("_", "-")): quantity for code, quantity in sorted(gear.items())}


def order_and_receive(shed, who):
    """Two boxes and twenty frames ordered; one box comes broken, one sheet bent."""
    kit = makers.make_offer({"box-medium-10-flat": 2, "frame-medium-flat": 20, "foundation-medium": 20})
    order = makers.make_order({kit: 1}, placed_on=day(1, 10))
    arrivals = [
        Arrival(part="box-medium-10-flat", sound=1, scrapped=1),
        Arrival(part="frame-medium-flat", sound=20),
        Arrival(part="foundation-medium", sound=19, to_mend=1),
    ]
    ledger.receive(order=order, into=shed, arrivals=arrivals, day=day(2, 1), key="received", who=who)
    order.refresh_from_db()
    return order


def assemble_and_put_on(shed, yard, colony, who):
    """A super built in winter, taken out and placed in May; eight of its ten frames are drawn by June."""
    for recipe, times in (
        ("assemble-box-medium-10", 1),
        ("assemble-frame-medium", 20),
        ("fit-foundation-medium", 10),
    ):
        ledger.assemble(recipe=recipe, times=times, at=shed, day=day(2, 20), key=recipe, who=who)
    load = [Line("box-medium-10", 1), Line("frame-medium-foundation", 10)]
    ledger.move(source=shed, target=yard, lines=load, day=day(5, 1), key="load", who=who)
    ledger.place(source=yard, colony=colony, lines=load, day=day(5, 2), key="super", who=who)
    drawn = [Line("frame-medium-foundation", 8)]
    ledger.draw(colony=colony, lines=drawn, day=day(6, 15), key="drawn", who=who)


def salvage_and_count(shed, colony, who):
    """The colony dies; its gear comes in, brood comb held back; a count finds one frame fewer."""
    colonies.end(colony, why="died", day=day(11, 3), who=who)
    pieces = [
        Piece(part="box-medium-10", sound=1),
        Piece(part="comb-medium-honey", sound=8),
        Piece(part="frame-medium-foundation", sound=2),
        Piece(part="box-deep-10", to_mend=1),
        Piece(part="comb-deep-brood", held=9, lost=1),
        Piece(part="floor-10", sound=1),
        Piece(part="inner-cover-10", sound=1),
        Piece(part="cover-10", sound=1),
    ]
    ledger.salvage(colony=colony, into=shed, pieces=pieces, day=day(11, 5), key="deadout", who=who)
    counted = [Line("frame-medium", 9)]
    ledger.correct(location=shed, counted=counted, day=day(12, 1), key="count", who=who)


def test_gear_goes_from_the_order_to_next_years_stock_and_every_piece_is_accounted_for():
    robin = makers.make_person()
    shed, creek = makers.make_shed(), makers.make_yard("creek")
    colony = makers.make_colony("A1", yard=creek, hive_set="one-deep-10", day=day(3, 1), gear=True)
    order = order_and_receive(shed, robin)
    assert (order.status, stock.owed()) == ("received", [])
    assemble_and_put_on(shed, creek, colony, robin)
    salvage_and_count(shed, colony, robin)

    assert stock.on_colony(colony) == stock.on_hand(creek) == {}
    whole = {gear: n for gear, n in stock.on_hand(shed).items() if gear.condition == Condition.SOUND}
    assert whole == sound(
        box_medium_10=1,
        comb_medium_honey=8,
        cover_10=1,
        floor_10=1,
        foundation_medium=9,
        frame_medium=9,
        frame_medium_foundation=2,
        inner_cover_10=1,
    )
    assert stock.on_hand(shed)[Gear(part="comb-deep-brood", condition=Condition.HELD)] == 9
    assert stock.on_colony(colony, as_of=day(5, 2))[Gear(part="frame-medium-foundation")] == 10

    told = StringIO()
    call_command("check_books", stdout=told)
    assert told.getvalue().startswith("The books are right:")
