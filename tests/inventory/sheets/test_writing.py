"""Records as cell values: names for codes, steps and kits spread out."""

import dataclasses
from decimal import Decimal

import pytest

from inventory.sheets.examples import example, example_names
from inventory.sheets.writing import cells_of


def test_codes_are_written_as_the_names_a_keeper_knows():
    cells = cells_of(example(), example_names())
    assert cells["Gear"][0]["yard"] == "Shed" and cells["Gear"][0]["part"] == "medium box, 10 frames"
    assert cells["Colonies"][0]["hive_set"] == "two deeps, 10 frames"
    assert cells["Prices"][0]["supplier"] == "Example Joinery (invented)"


def test_price_steps_are_spread_over_columns():
    box = cells_of(example(), example_names())["Prices"][0]
    assert (box["price_1"], box["from_2"], box["price_2"]) == (Decimal("70.00"), 10, Decimal("64.50"))
    assert (box["units"], box.get("from_3")) == (5, None)


def test_a_kit_names_its_parts_on_a_sheet_of_its_own():
    cells = cells_of(example(), example_names())
    assert cells["Prices"][1].get("part") is None
    assert [(line["part"], line["units"]) for line in cells["Kits"]] == [
        ("floor, 10 frames", 1),
        ("telescoping cover, 10 frames", 1),
    ]


@pytest.mark.parametrize("count", [0, 6])
def test_more_price_steps_than_there_are_columns_are_refused(count):
    steps = tuple((packs + 1, Decimal(1)) for packs in range(count))
    offer = dataclasses.replace(example().offers[0], prices=steps)
    with pytest.raises(ValueError, match="1 to 5 price steps"):
        cells_of(dataclasses.replace(example(), offers=(offer,)), example_names())
