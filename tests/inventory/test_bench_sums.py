"""What the workbench could make of what lies in a store."""

import pytest

from inventory.bench_sums import possible_of, recipes_at
from inventory.models import Recipe
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def shed():
    shed = makers.make_shed()
    makers.put(shed, {"frame-deep": 30, "foundation-deep": 12, "box-deep-10-flat": 4})
    makers.put(shed, {"foundation-deep": 50}, condition="to mend")
    return shed


def test_the_scarcest_part_says_how_often(shed):
    bench = possible_of(Recipe.objects.get(code="fit-foundation-deep"), shed)
    assert bench.possible == 12  # sheets to mend do not count
    assert bench.possible_words == "up to 12"
    assert {line.part.code: line.there for line in bench.lines} == {
        "frame-deep": 30,
        "foundation-deep": 12,
        "frame-deep-foundation": 0,
    }


def test_those_that_can_be_made_come_first_and_the_rest_say_what_lacks(shed):
    rows = recipes_at(shed)
    assert [row.recipe.code for row in rows if row.can_be_made] == [
        "fit-foundation-deep",
        "assemble-box-deep-10",
    ]
    assert rows[1].minutes_of_all == rows[1].recipe.minutes * 4
    frame = next(row for row in rows if row.recipe.code == "assemble-frame-deep")
    assert frame.lacking == "deep frame, in pieces (0 here, 1 wanted)"
    assert frame.possible_words == "none by the book"
