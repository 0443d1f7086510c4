"""Assembling at the bench and comb drawn by bees: what goes in comes out as something else."""

import datetime as dt

import pytest

from inventory import ledger, stock
from inventory.errors import (
    ColonyEnded,
    NotEnough,
    NotFoundation,
    NotWhole,
    UnknownPart,
    UnknownRecipe,
    UnknownWord,
)
from inventory.gear import Gear
from inventory.ledger import Line
from inventory.ledger.bench import drawn_comb
from inventory.models import Part, Recipe
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
WHO = {"day": DAY, "who": None}


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"frame-deep": 10, "foundation-deep": 8, "box-deep-10-flat": 2})
    return shed


def test_foundation_is_fitted_into_frames(shed):
    ledger.assemble(recipe="fit-foundation-deep", times=8, at=shed, key="k", **WHO)
    assert stock.on_hand(shed) == {
        Gear(part="box-deep-10-flat"): 2,
        Gear(part="frame-deep"): 2,
        Gear(part="frame-deep-foundation"): 8,
    }


def test_a_recipe_may_be_given_as_its_row(shed):
    ledger.assemble(recipe=Recipe.objects.get(code="assemble-box-deep-10"), times=2, at=shed, key="k", **WHO)
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 2


def test_what_is_missing_for_the_recipe_is_told(shed):
    with pytest.raises(NotEnough) as refused:
        ledger.assemble(recipe="fit-foundation-deep", times=9, at=shed, key="k", **WHO)
    assert (refused.value.code, refused.value.wanted, refused.value.booked) == ("foundation-deep", 9, 8)


def test_missing_pieces_are_found_where_that_is_allowed(shed):
    ledger.assemble(recipe="fit-foundation-deep", times=9, at=shed, key="k", found_allowed=True, **WHO)
    assert stock.on_hand(shed)[Gear(part="frame-deep-foundation")] == 9
    assert [(row.part.code, row.quantity) for row in stock.found_gear()] == [("foundation-deep", 1)]


def test_a_recipe_nobody_knows_is_refused(shed):
    with pytest.raises(UnknownRecipe, match="'bake'"):
        ledger.assemble(recipe="bake", times=1, at=shed, key="k", **WHO)


@pytest.mark.parametrize("times", [0, 0.5, -2])
def test_a_recipe_is_carried_out_a_whole_number_of_times(shed, times):
    with pytest.raises(NotWhole):
        ledger.assemble(recipe="fit-foundation-deep", times=times, at=shed, key="k", **WHO)


@pytest.mark.parametrize(("use", "comb"), [("honey", "comb-deep-honey"), ("brood", "comb-deep-brood")])
def test_bees_draw_foundation_into_comb(shed, use, comb):
    colony = makers.make_colony()
    makers.put(colony, {"frame-deep-foundation": 10})
    ledger.draw(colony=colony, lines=[Line("frame-deep-foundation", 6)], use=use, key="k", **WHO)
    assert stock.on_colony(colony) == {Gear(part=comb): 6, Gear(part="frame-deep-foundation"): 4}


def test_comb_drawn_on_a_treated_colony_is_kept_apart(shed):
    assert drawn_comb("medium", "honey", treated=True).code == "comb-medium-honey-treated"


def test_only_a_frame_with_foundation_is_drawn(shed):
    colony = makers.make_colony(gear=True)
    with pytest.raises(NotFoundation):
        ledger.draw(colony=colony, lines=[Line("comb-deep-brood", 1)], key="k", **WHO)


def test_a_use_of_comb_that_is_none_is_refused(shed):
    with pytest.raises(UnknownWord, match="'wax'"):
        drawn_comb("deep", "wax")


def test_a_depth_without_comb_in_the_catalogue_is_refused(shed):
    Part.objects.filter(code="comb-shallow-honey").delete()
    with pytest.raises(UnknownPart, match="shallow"):
        drawn_comb("shallow", "honey")


def test_a_dead_colony_draws_nothing(shed):
    colony = makers.make_dead_colony()
    with pytest.raises(ColonyEnded):
        ledger.draw(
            colony=colony,
            lines=[Line("frame-deep-foundation", 1)],
            day=dt.date(2025, 7, 1),
            who=None,
            key="k",
        )
