"""The invented example speaks of parts and sets as the catalogue names them, and says that it is invented."""

from inventory.sheets.examples import example, example_names
from tests.inventory.sheets.workbooks import known


def test_its_names_are_those_of_the_catalogue():
    assert example_names().parts.items() <= known().parts.items()
    assert example_names().sets.items() <= known().sets.items()


def test_every_part_and_set_it_speaks_of_is_named():
    sheet = example()
    parts = {row.part for row in sheet.gear} | {part for offer in sheet.offers for part in offer.parts}
    assert parts == set(example_names().parts)
    assert {row.hive_set for row in sheet.colonies} == set(example_names().sets)


def test_keeper_yard_and_supplier_are_marked_as_invented():
    sheet = example()
    names = [sheet.keeper.name, sheet.yards[1].name, sheet.suppliers[0].name]
    assert all("(invented)" in name for name in names)
