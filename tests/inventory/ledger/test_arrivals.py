"""What came of an order as it is told: parts that came instead, and each refusal."""

import datetime as dt

import pytest

from inventory import ledger, stock
from inventory.errors import MoreThanOwed, NothingGiven, NotOnOrder, NotWhole, UnknownPart
from inventory.gear import Gear
from inventory.ledger import Arrival, Instead
from inventory.models import Act, Order, Substitution
from inventory.orders import owed_lines
from inventory.orders.refusals import MoreSettled, OrderedToo, OtherWidth, SamePart
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture
def shed(db):
    return makers.make_shed()


def instead(ordered="box-medium-10", settles=4, part="box-shallow-10", sound=4, **more):
    return Instead(ordered=ordered, settles=settles, came=Arrival(part=part, sound=sound, **more))


def receive(order, shed, *substitutes, arrivals=(), **more):
    told = {"day": DAY, "who": None, "key": makers.fresh_key(), "substitutes": substitutes, **more}
    return ledger.receive(order=order, into=shed, arrivals=arrivals, **told)


def test_what_came_instead_lies_in_the_store_and_settles_what_was_ordered(shed):
    order = makers.make_order()
    receive(order, shed, instead(settles=4, sound=3, scrapped=1))
    assert stock.on_hand(shed) == {Gear(part="box-shallow-10"): 3}
    (row,) = owed_lines(order)
    assert (row.units, row.came, row.settled, row.owed) == (10, 0, 4, 6)
    assert Substitution.objects.get().pieces == 4


def test_the_rest_may_come_in_the_same_receipt(shed):
    order = makers.make_order()
    receive(order, shed, instead(settles=4), arrivals=None)
    assert stock.on_hand(shed) == {Gear(part="box-medium-10"): 6, Gear(part="box-shallow-10"): 4}
    order.refresh_from_db()
    assert order.status == Order.Status.RECEIVED


def test_a_receipt_reversed_owes_again_what_was_settled(shed):
    order = makers.make_order()
    act = receive(order, shed, instead(settles=10))
    assert Order.objects.get().status == "received"
    ledger.reverse(act=act, who=None, key="back", day=DAY + dt.timedelta(days=3))
    assert [row.owed for row in owed_lines(order)] == [10]
    assert [row.owed for row in owed_lines(order, as_of=DAY)] == [0]
    assert Order.objects.get().status == "placed"


def test_a_resend_writes_nothing_twice(shed):
    order = makers.make_order()
    first = receive(order, shed, instead(), key="once")
    assert receive(order, shed, instead(), key="once") == first
    assert Substitution.objects.count() == 1


@pytest.mark.parametrize(
    ("told", "refusal"),
    [
        (instead(part="box-medium-10"), SamePart),
        (instead(ordered="stand"), NotOnOrder),
        (instead(settles=11), MoreSettled),
        (instead(settles=0), NotWhole),
        (instead(sound=0), NotWhole),
        (instead(part="no-such"), UnknownPart),
        (instead(ordered="no-such"), UnknownPart),
    ],
)
def test_what_makes_no_sense_is_refused_whole(shed, told, refusal):
    order = makers.make_order()
    with pytest.raises(refusal):
        receive(order, shed, told)
    assert not Act.objects.filter(name="receive").exists()
    assert not Substitution.objects.exists()


def test_a_part_of_another_width_settles_nothing_unless_it_is_said_to_stay(shed):
    with pytest.raises(OtherWidth, match="medium box, 8 frames is 8 frames wide, medium box, 10 frames 10"):
        receive(makers.make_order(), shed, instead(part="box-medium-8"))
    assert not Substitution.objects.exists()
    told = Arrival(part="box-medium-8", sound=4)
    receive(
        makers.make_order(), shed, Instead(ordered="box-medium-10", settles=4, came=told, width_allowed=True)
    )
    assert stock.on_hand(shed)[Gear(part="box-medium-8")] == 4


def test_a_part_of_the_same_line_is_not_instead(shed):
    kit = makers.make_offer({"box-medium-10": 1, "frame-medium": 10})
    with pytest.raises(OrderedToo):
        receive(makers.make_order({kit: 1}), shed, instead(settles=1, part="frame-medium"))


def test_two_that_settle_more_than_is_owed_are_refused(shed):
    with pytest.raises(MoreSettled, match="6"):
        receive(makers.make_order(), shed, instead(settles=6), instead(settles=6))


def test_what_is_settled_is_no_longer_owed_to_the_rest(shed):
    with pytest.raises(MoreThanOwed):
        receive(
            makers.make_order(), shed, instead(settles=6), arrivals=[Arrival(part="box-medium-10", sound=5)]
        )


def test_nothing_at_all_is_refused(shed):
    with pytest.raises(NothingGiven):
        receive(makers.make_order(), shed)
