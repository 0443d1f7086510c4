"""The catalogue's rows as facts: nothing is lost on the way, and every recipe and set names parts that exist."""

import json
from decimal import Decimal
from pathlib import Path

from planner.bench.catalogue import part_of, recipe_of, set_of

CATALOGUE = json.loads(
    (Path(__file__).parents[3] / "fixtures" / "catalogue.json").read_text(encoding="utf-8")
)


def test_a_part_keeps_its_weight_price_and_kind():
    row = {
        "code": "x",
        "name": "x",
        "kind": "box",
        "tare_lb": "9.5",
        "list_price": "26.00",
        "years_of_life": 12,
    }
    part = part_of({**row, "depth": "deep", "width": 10})
    assert (part.weight_lb, part.list_price, part.years_of_life) == (9.5, Decimal("26.00"), 12)
    assert (part.kind, part.depth, part.width, part.unit, part.flat) == ("box", "deep", 10, "piece", False)


def test_a_set_lists_only_the_boxes_it_has():
    gear = {row["hive_set"]: row["parts"] for row in CATALOGUE["gear_sets"] if row["hive_set"]}
    boxes = {row["code"]: set_of(row, gear[row["code"]]).boxes for row in CATALOGUE["hive_sets"]}
    assert boxes["two-deeps-10"] == {"deep": 2}
    assert boxes["deep-and-medium-10"] == {"deep": 1, "medium": 1}


def test_recipes_and_sets_name_parts_of_the_catalogue():
    parts = {part_of(row).code for row in CATALOGUE["parts"]}
    for recipe in map(recipe_of, CATALOGUE["recipes"]):
        assert {*recipe.takes, *recipe.makes} <= parts
        assert recipe.minutes > 0
    for row in CATALOGUE["gear_sets"]:
        assert set(row["parts"]) <= parts
