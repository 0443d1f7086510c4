"""What gear is called in a sentence, for every part of the catalogue."""

import json
from pathlib import Path

import pytest

from planner.plan.gear_words import counted, pieces
from planner.season.operation import PartFacts
from tests.planner.operations import operation

CATALOGUE = json.loads((Path(__file__).parents[3] / "fixtures" / "catalogue.json").read_text())
PARTS = {part.code: part for part in operation().parts}


@pytest.mark.parametrize(
    ("code", "words"),
    [
        ("box-medium-10", "ten-frame medium boxes"),
        ("box-deep-8-flat", "eight-frame deep boxes in pieces"),
        ("frame-medium", "medium frames"),
        ("frame-deep-foundation", "deep frames with foundation"),
        ("frame-deep-flat", "deep frames in pieces"),
        ("foundation-medium", "sheets of medium foundation"),
        ("comb-medium-honey", "drawn medium honey combs"),
        ("comb-deep-brood-treated", "drawn deep brood combs, treated"),
        ("cover-10", "ten-frame telescoping covers"),
        ("nuc-box-5", "nuc boxes"),
        ("sugar", "lb of white sugar"),
        ("treatment", "doses of mite treatment"),
        ("frame-nails", "boxes of frame nails"),
        ("jar", "honey jars (1 lb)"),
        ("pallet-4", "four-way pallets"),
    ],
)
def test_a_part_is_called_as_the_trade_calls_it(code, words):
    assert pieces(PARTS[code]) == words


def test_one_piece_is_called_in_the_singular():
    assert counted(1, PARTS["box-deep-10"]) == "1 ten-frame deep box"
    assert counted(1, PARTS["glue"]) == "1 bottle of wood glue"
    assert counted(1250, PARTS["frame-deep"]) == "1,250 deep frames"


def test_every_part_of_the_catalogue_has_a_name_of_its_own():
    names = [pieces(part) for part in PARTS.values()]
    assert len(names) == len(CATALOGUE["parts"])
    assert len(set(names)) == len(names)


def test_a_part_of_the_keepers_own_keeps_its_name():
    own = PartFacts(code="board-12", name="slatted rack, 12 frames", kind="other", width=12)
    assert pieces(own) == "12-frame slatted racks"
