"""Title blocks: gate and emergency come first, and are never left out in silence."""

import pytest

from apiary.models import Yard
from apiary.titles import colony_cells, counted, yard_cells
from tests.makers import DAY, make_colony, make_dead_colony, make_yard

pytestmark = pytest.mark.django_db


def cells_of(yard):
    return yard_cells(Yard.objects.with_colonies(on=DAY).get(pk=yard.pk))


def test_gate_and_emergency_address_come_first():
    cells = cells_of(make_yard(gate="4417", emergency="2 Fern Lane", drive_minutes=22, miles=14))
    assert cells[:2] == [("Gate", "4417"), ("Emergency", "2 Fern Lane")]
    assert ("From home", "22 min, 14 mi") in cells


def test_a_yard_without_an_emergency_address_says_so():
    assert ("Emergency", "no address written down") in cells_of(make_yard())


def test_stands_count_the_living():
    yard = make_yard(stands=10)
    make_colony(yard=yard)
    make_dead_colony(yard=yard, ended=DAY)
    assert ("Stands", "1 of 10") in cells_of(yard)


def test_more_colonies_than_stands_are_told():
    yard = make_yard(stands=1)
    make_colony(yard=yard)
    make_colony(yard=yard)
    assert ("Stands", "2 of 1, 1 too many") in cells_of(yard)


def test_a_dead_colony_says_when_it_died():
    cells = colony_cells(make_dead_colony())
    assert ("Died", "1 Jun 2025") in cells


def test_a_split_names_its_mother():
    mother = make_colony("M-1")
    daughter = make_colony("M-2", origin="split", mother=mother)
    assert ("Origin", "split of M-1") in colony_cells(daughter)


def test_one_colony_and_many_colonies():
    assert counted(1, "colony", "colonies") == "1 colony"
    assert counted(1200, "colony", "colonies") == "1,200 colonies"
