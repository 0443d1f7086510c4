"""An act on bees and gear is written whole, once, and not at all where anything in it fails."""

import pytest

from apiary import colonies
from apiary.errors import ColonyEnded
from apiary.models import Colony, ColonyEvent
from inventory.errors import KeyTaken, NotEnough
from inventory.gear import Gear, Reason
from inventory.ledger import Line
from inventory.ledger.field import _carried
from inventory.locations import place_of, store_of
from inventory.models import Act, Movement, Part
from inventory.stock import on_hand
from inventory.yardwork import together
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
BOX = Gear(part="box-medium-10")


@pytest.fixture
def creek(db):
    yard = makers.make_yard("creek")
    makers.put(yard, {"box-medium-10": 4})
    return yard


@pytest.fixture
def colony(creek):
    return makers.make_colony("A1", yard=creek)


def boxes(creek, colony, number):
    part = Part.objects.get(code="box-medium-10")
    return _carried([Line(part, number)], store_of(creek), place_of(colony), Reason.PLACED)


def judged_and_boxed(creek, colony, *, number=1, asked=None):
    def work(key):
        if asked is not None:
            asked.append(key)
        colonies.judge(colony, strength="strong", day=DAY, who=None, act_key=key)
        return boxes(creek, colony, number)

    return work


def written():
    return Act.objects.count(), Movement.objects.count(), ColonyEvent.objects.count()


def test_bees_and_gear_are_written_as_one_act(creek, colony):
    act = together("try", judged_and_boxed(creek, colony), day=DAY, who=None, key="k1", note="both")
    assert (act.name, act.note) == ("try", "both")
    assert on_hand(colony)[BOX] == 1
    assert colony.events.get(act_key="k1").kind == "strength"
    assert Colony.objects.get().strength == "strong"


def test_a_resend_gives_the_first_act_and_does_nothing(creek, colony):
    asked = []
    work = judged_and_boxed(creek, colony, asked=asked)
    first = together("try", work, day=DAY, who=None, key="k1")
    before = written()
    assert together("try", work, day=DAY, who=None, key="k1") == first
    assert (asked, written()) == (["k1"], before)


def test_a_key_sent_as_another_act_is_refused(creek, colony):
    together("try", judged_and_boxed(creek, colony), day=DAY, who=None, key="k1")
    with pytest.raises(KeyTaken):
        together("other", judged_and_boxed(creek, colony), day=DAY, who=None, key="k1")


def test_an_act_may_move_no_gear(colony):
    def work(key):
        colonies.judge(colony, strength="weak", day=DAY, who=None, act_key=key)
        return []

    act = together("look", work, day=DAY, who=None, key="k1")
    assert (act.movements.count(), Colony.objects.get().strength) == (0, "weak")


def test_missing_gear_takes_the_bees_back_too(creek, colony):
    before = written()
    with pytest.raises(NotEnough) as refused:
        together("try", judged_and_boxed(creek, colony, number=5), day=DAY, who=None, key="k1")
    assert (refused.value.wanted, refused.value.booked) == (5, 4)
    assert (written(), Colony.objects.get().strength) == (before, "fair")


def test_what_the_hand_holds_beyond_the_book_is_booked_as_found(creek, colony):
    work = judged_and_boxed(creek, colony, number=5)
    act = together("try", work, day=DAY, who=None, key="k1", found_allowed=True)
    assert [(row.quantity, row.found) for row in act.movements.order_by("id")] == [(1, True), (5, False)]
    assert on_hand(colony)[BOX] == 5


@pytest.mark.parametrize("boom", [KeyboardInterrupt, MemoryError, SystemExit])
def test_a_kill_in_the_middle_leaves_nothing(creek, colony, boom):
    before = written()

    def work(key):
        colonies.judge(colony, strength="weak", day=DAY, who=None, act_key=key)
        yield from boxes(creek, colony, 1)
        raise boom

    with pytest.raises(boom):
        together("try", work, day=DAY, who=None, key="k1")
    assert (written(), Colony.objects.get().strength) == (before, "fair")
    assert on_hand(creek)[BOX] == 4


def test_a_kill_while_the_movements_are_written_leaves_nothing(creek, colony, monkeypatch):
    before = written()
    monkeypatch.setattr("inventory.ledger.posting._carry", lambda changes: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        together("try", judged_and_boxed(creek, colony), day=DAY, who=None, key="k1")
    assert (written(), Colony.objects.get().strength) == (before, "fair")


def test_a_colony_that_refuses_takes_the_others_back(creek, colony):
    dead = makers.make_dead_colony(yard=creek, tag="D")
    before = written()

    def work(key):
        for bees in (colony, dead):
            colonies.judge(bees, strength="weak", day=DAY, who=None, act_key=key)
        return []

    with pytest.raises(ColonyEnded):
        together("look", work, day=DAY, who=None, key="k1")
    assert (written(), Colony.objects.get(tag="A1").strength) == (before, "fair")
