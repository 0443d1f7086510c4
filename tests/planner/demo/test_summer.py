"""The invented summer: supers go on and all come off again, a bear's loss is booked, found pieces are answered."""

import pytest

from apiary.models import Colony
from inventory.gear import Condition, Kind
from inventory.loans import out_of
from inventory.models import Act, FoundAnswer, Holding, Loan, Location, Movement
from inventory.sales import waiting_sales

pytestmark = pytest.mark.django_db


def test_every_super_that_went_on_is_off_again_by_the_autumn(lived):
    on = Holding.objects.filter(location__kind=Location.Kind.COLONY, quantity__gt=0)
    assert not on.filter(part__code__in=("box-medium-10", "comb-medium-honey", "excluder-10")).exists()
    boxes = Movement.objects.filter(act__name="super up", part__kind=Kind.BOX)
    assert sum(boxes.values_list("quantity", flat=True)) > 60


def test_the_bear_took_two_hives_and_some_boxes_can_be_mended(lived):
    act = Act.objects.get(name="lose a yard")
    ended = Colony.objects.filter(ended_why=Colony.Ended.LOST)
    assert ended.count() == 2
    assert act.movements.filter(target__kind=Location.Kind.LOST).exists()
    saved = act.movements.filter(target__kind=Location.Kind.STORE)
    assert set(saved.values_list("condition", flat=True)) == {Condition.TO_MEND}


def test_found_pieces_were_answered_in_both_ways(lived):
    assert set(FoundAnswer.objects.values_list("how", flat=True)) == set(FoundAnswer.How.values)


def test_the_neighbour_brought_back_or_lost_all_that_was_lent(lived):
    loan = Loan.objects.get(to__startswith="Neighbour")
    assert "invented" in loan.to
    assert not any(out_of(loan).values())


def test_the_buyer_of_a_colony_still_owes_a_box_and_its_frames(lived):
    (waiting,) = waiting_sales()
    assert {part.code: n for part, n in waiting.still.items()} == {
        "box-deep-10": 1,
        "frame-deep-foundation": 10,
    }
    assert "invented" in waiting.sale.buyer
