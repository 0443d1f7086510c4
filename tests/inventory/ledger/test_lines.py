"""What an act is told: every line checked, all that is wrong said at once."""

import pytest

from inventory.errors import NothingGiven, NotWhole, Several, UnknownCondition, UnknownPart
from inventory.gear import Condition
from inventory.ledger.lines import Line, checked, whole
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def catalogue(db):
    makers.make_catalogue()


def test_alike_lines_are_summed_and_keep_their_order():
    lines = checked([Line("stand", 2), Line("box-deep-10", 1), Line(makers.part("stand"), 3)], act="move")
    assert [(line.part.code, line.quantity) for line in lines] == [("stand", 5), ("box-deep-10", 1)]


def test_the_same_part_in_two_conditions_stays_two_lines():
    lines = checked([Line("stand", 2), Line("stand", 1, "to mend")], act="move")
    assert [line.condition for line in lines] == [Condition.SOUND, Condition.TO_MEND]


@pytest.mark.parametrize("quantity", [0, -1, 1.5, "3", None, True, 1_000_001])
def test_a_quantity_that_is_no_whole_number_of_pieces_is_refused(quantity):
    with pytest.raises(NotWhole) as refused:
        checked([Line("stand", quantity)], act="move")
    assert repr(quantity) in str(refused.value)


def test_zero_is_a_count_but_no_load():
    assert whole("stand", 0, lowest=0) == 0
    with pytest.raises(NotWhole):
        whole("stand", 0)


def test_a_part_outside_the_catalogue_is_refused():
    with pytest.raises(UnknownPart, match="'box-huge'"):
        checked([Line("box-huge", 1)], act="move")


def test_a_condition_that_is_no_condition_is_refused():
    with pytest.raises(UnknownCondition, match="'rotten'"):
        checked([Line("stand", 1, "rotten")], act="move")


def test_all_that_is_wrong_is_said_at_once():
    with pytest.raises(Several) as refused:
        checked([Line("box-huge", 1), Line("stand", 0), Line("stand", 1)], act="move")
    assert [type(problem) for problem in refused.value.problems] == [UnknownPart, NotWhole]
    assert "box-huge" in str(refused.value)
    assert "whole number" in str(refused.value)


def test_no_lines_at_all_are_refused():
    with pytest.raises(NothingGiven):
        checked([], act="move")
