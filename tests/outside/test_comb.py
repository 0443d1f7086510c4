"""Wax, drawn comb and the honey it costs: the planner's and the catalogue's figures against published ones."""

import json

import pytest

from inventory.catalogue import CATALOGUE
from planner.requirement.values import DRAWING_HONEY_LB, drawing_cost
from planner.season.questions import question_of
from tests.outside import seasons

LB_PER_KG = 2.2046
# Bogdanov, Beeswax, ch. 2 (second hand): 100 g of wax in a deep frame
WAX_LB = 0.100 * LB_PER_KG


@pytest.fixture(scope="module")
def tare():
    rows = json.loads(CATALOGUE.read_text(encoding="utf-8"))["parts"]
    return {row["code"]: float(row["tare_lb"]) for row in rows}


def test_drawing_a_deep_frame_costs_a_pound_and_eighty_five_of_honey():
    """Derived: 100 g of wax (Bogdanov) at 8.4 lb of honey a lb of wax (Whitcomb, 1946, second hand); a box of ten
    18.5 lb."""
    assert DRAWING_HONEY_LB["deep"] == pytest.approx(WAX_LB * 8.4, abs=0.005)
    assert 10 * DRAWING_HONEY_LB["deep"] == pytest.approx(18.5, abs=0.05)


def test_a_pound_of_wax_takes_six_to_nine_pounds_of_honey():
    """Whitcomb (1946): 6.66 to 8.80 (range from memory); 6 to 8 commonly printed."""
    assert 6 <= DRAWING_HONEY_LB["deep"] / WAX_LB <= 9


@pytest.mark.parametrize(("depth", "ratio"), [("medium", 0.688), ("shallow", 0.591)])
def test_a_lower_frame_takes_wax_by_its_boxs_volume(depth, ratio):
    """Volume ratios derived from MacFawn, Bee Culture, winter 2020."""
    assert DRAWING_HONEY_LB[depth] / DRAWING_HONEY_LB["deep"] == pytest.approx(ratio, abs=0.005)


def test_drawing_is_paid_in_honey_at_the_price_of_the_last_pound():
    told = seasons.operation(colonies=10)
    assumptions = seasons.answers(told, honey_price=3, honey_price_more=2)
    assert drawing_cost(assumptions, "deep") == pytest.approx(3.70, abs=0.01)


@pytest.mark.parametrize(("depth", "ratio"), [("deep", 1), ("medium", 0.688), ("shallow", 0.591)])
def test_a_drawn_honey_comb_weighs_its_wax_more_than_the_bare_frame(depth, ratio, tare):
    """Bogdanov: 100 g in a deep frame; the others by volume."""
    wax = tare[f"comb-{depth}-honey"] - tare[f"frame-{depth}"]
    assert wax == pytest.approx(WAX_LB * ratio, abs=0.01)


def test_a_pound_of_comb_carries_about_twenty_two_pounds_of_honey(tare):
    """22 lb a lb of comb is printed; Bogdanov's 1.8 to 3.8 kg on 100 g are 18 to 38 (both second hand)."""
    wax = tare["comb-deep-honey"] - tare["frame-deep"]
    assert 18 <= question_of("honey_deep_lb").default / 10 / wax <= 38
