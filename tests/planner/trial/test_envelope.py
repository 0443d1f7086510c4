"""Netting and buying on an envelope, by hand. Prices are invented."""

import pytest

from planner.sizing.records import Offer, PriceStep, Problem, Recipe, Scenario, Supplier
from planner.sizing.records import Part as SizingPart
from planner.trial.envelope import Envelope


def offer(code, parts, *steps, **changed):
    prices = tuple(PriceStep(from_packs=packs, price=price) for packs, price in steps)
    return Offer(**{"code": code, "supplier": "s", "parts": parts, "prices": prices, **changed})


FLAT = offer("box-flat", {"box-flat": 5}, (1, 90), (10, 80))
BOX = offer("box", {"box": 1}, (1, 26))
FLOOR = offer("floor", {"floor": 1}, (1, 16))
SHEETS = offer("sheets", {"sheet": 50}, (1, 75))
FRAMES = offer("frames", {"frame-flat": 100}, (1, 110))
FITTED = offer("fitted", {"fitted": 10}, (1, 40))
RECIPES = (
    Recipe(code="nail-box", takes={"box-flat": 1}, makes={"box": 1}, work_minutes=15),
    Recipe(code="nail-frame", takes={"frame-flat": 1}, makes={"frame": 1}, work_minutes=3),
    Recipe(code="fit", takes={"frame": 1, "sheet": 1}, makes={"fitted": 1}, work_minutes=2),
)


def envelope(owned=(), *, offers=(FLAT, BOX, FLOOR, SHEETS, FRAMES, FITTED), instead=(), **changed):
    parts = {part for each in offers for part in each.parts}
    for recipe in RECIPES:
        parts |= {*recipe.takes, *recipe.makes}
    facts = Problem(
        periods=4,
        parts=tuple(SizingPart(code=code) for code in sorted(parts)),
        locations=("shed",),
        suppliers=(Supplier(code="s"), Supplier(code="other")),
        offers=tuple(offers),
        recipes=RECIPES,
        scenarios=(Scenario(code="only", probability=1.0),),
    )
    settings = {"hour_value": 12, "instead": dict(instead), "suppliers": {"s"}, **changed}
    return Envelope(facts, dict(owned), **settings)


def bought(sheet, **wanted):
    for code, pieces in wanted.items():
        sheet.want(code, pieces)
    return {code: packs for (code, _period), packs in sheet.packs().items()}


def test_what_is_owned_is_used_before_anything_is_bought():
    sheet = envelope({"floor": 3})
    assert bought(sheet, floor=5) == {"floor": 2}
    assert sheet.left["floor"] == 0


def test_gear_owned_in_pieces_is_put_together_before_ready_gear_is_bought():
    """Two boxes in pieces lie there: of five wanted, three come as one pack in pieces (18 and a quarter hour at 12)."""
    sheet = envelope({"box-flat": 2})
    assert bought(sheet, box=5) == {"box-flat": 1}
    assert sheet.minutes == 5 * 15


def test_frames_owned_in_pieces_take_bought_sheets_and_the_rest_comes_the_cheapest_way():
    """A sheet at 1.50 and five minutes is 2.50; with a frame at 1.10 it is 3.60, below a fitted one at 4."""
    sheet = envelope({"frame-flat": 30, "sheet": 10})
    assert bought(sheet, fitted=40) == {"sheets": 1, "frames": 1}
    assert sheet.to_buy == {"sheet": 30, "frame-flat": 10}


def test_a_dear_evening_makes_ready_gear_the_cheaper_way():
    assert bought(envelope(hour_value=60), box=5, fitted=10) == {"box": 5, "fitted": 1}


def test_what_serves_instead_is_used_first():
    sheet = envelope({"comb": 4, "fitted": 1}, instead={"fitted": ("comb",)})
    assert bought(sheet, fitted=5) == {}
    assert sheet.left["comb"] == sheet.left["fitted"] == 0


def test_a_set_is_bought_where_it_costs_less_than_its_parts():
    kit = offer("kit", {"box-flat": 1, "floor": 1}, (1, 30))
    offers = (FLAT, BOX, FLOOR, kit)
    assert bought(envelope(offers=offers), box=5, floor=7) == {"kit": 5, "floor": 2}
    dear = offer("kit", {"box-flat": 1, "floor": 1}, (1, 60))
    assert bought(envelope(offers=(FLAT, BOX, FLOOR, dear)), box=5, floor=7) == {"box-flat": 1, "floor": 7}


def test_the_cheapest_whole_packs_win_not_the_cheapest_piece():
    """One piece wanted: a hundred at 0.50 each cost more than ten at 1."""
    ten = offer("ten", {"floor": 10}, (1, 10))
    hundred = offer("hundred", {"floor": 100}, (1, 50))
    assert bought(envelope(offers=(hundred, ten)), floor=1) == {"ten": 1}
    assert bought(envelope(offers=(hundred, ten)), floor=99) == {"hundred": 1}


def test_only_the_suppliers_allowed_sell_and_what_nobody_sells_is_counted():
    away = offer("away", {"floor": 1}, (1, 2), supplier="other")
    sheet = envelope(offers=(away, BOX))
    assert bought(sheet, floor=3, box=1) == {"box": 1}
    assert sheet.missing == 3
    assert bought(envelope(offers=(away,), suppliers={"other"}), floor=3) == {"away": 3}


@pytest.mark.parametrize("offered", [{"when": "later"}, {"order_periods": ()}])
def test_what_cannot_be_ordered_now_is_not_on_the_envelope(offered):
    sheet = envelope(offers=(offer("floor", {"floor": 1}, (1, 16), **offered),))
    assert bought(sheet, floor=1) == {}
    assert sheet.missing == 1
