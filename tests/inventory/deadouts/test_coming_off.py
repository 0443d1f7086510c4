"""What comes off a hive under an open case is held back on the way; its bees are not sold, split or moved away."""

import pytest
from django.utils import timezone

from apiary import colonies
from inventory import ledger
from inventory.deadouts.holds import lots_at, open_cases
from inventory.deadouts.refusals import UnderCase
from inventory.deadouts.release import release, tell_verdict
from inventory.errors import OffACase
from inventory.gear import Condition
from inventory.ledger import Line, Piece
from inventory.locations import place_of
from inventory.models import Hold
from inventory.proof import prove
from inventory.sentences import sentence_of
from inventory.yardwork import undo
from inventory.yardwork.moving import move_colonies
from inventory.yardwork.pulling import pull
from inventory.yardwork.sharing import suspected
from tests import makers
from tests.inventory.deadouts.conftest import at, hive_of, work

pytestmark = pytest.mark.django_db
HELD = Condition.HELD
WHY = "stood in Fern Hollow with F-01 (foulbrood suspected)"
SUPER = {"box-medium-10": 1, "comb-medium-honey": 9}


@pytest.fixture
def case(hive, neighbour, shed):
    return work(hive, shed, suspected=True)


@pytest.fixture
def neighbour(yard):
    return hive_of("F-02", yard)


@pytest.fixture
def today():
    return timezone.localdate()


def supered(colony, shed, day):
    """Sound gear from elsewhere set on the hive once the case is open."""
    far = makers.make_yard("far-field")
    makers.put(far, SUPER)
    lines = [Line(part, number) for part, number in SUPER.items()]
    told = {"day": day, "who": None, "key": makers.fresh_key()}
    return ledger.place(source=far, colony=colony, lines=lines, **told)


def taken_off(colony, target, day):
    lines = [Line(part, number) for part, number in SUPER.items()]
    return ledger.take_off(
        colony=colony, target=target, lines=lines, day=day, who=None, key=makers.fresh_key()
    )


def test_sound_gear_comes_off_held_for_the_case_and_the_reason_is_told(case, neighbour, shed, today):
    supered(neighbour, shed, today)
    store = makers.make_yard("store")
    act = taken_off(neighbour, store, today)
    assert at(store) == {} and at(store, HELD) == SUPER
    (lot,) = lots_at(store, makers.part("box-medium-10"))
    assert (lot.deadout, lot.reason, lot.why) == (case, Hold.Reason.REACHED, WHY)
    assert sentence_of(act) == (f"Took 10 pieces from F-02 to {store}. 10 pieces held back: {WHY}.")
    assert prove().faults == ()


def test_supers_pulled_come_off_held(case, neighbour, shed, today):
    supered(neighbour, shed, today)
    store = makers.make_yard("store")
    pull(colonies={neighbour: 1}, target=store, box="super-medium-10", day=today, who=None, key="pull")
    assert at(store) == {} and at(store, HELD)["box-medium-10"] == 1


def test_once_the_case_is_cleared_gear_comes_off_as_it_was(case, neighbour, shed, keeper, today):
    supered(neighbour, shed, today)
    told = {"inspector": "invented inspector", "written_on": today, "words": "no foulbrood found"}
    tell_verdict(deadout=case, verdict="cleared", day=today, who=keeper, key="word", **told)
    store = makers.make_yard("store")
    taken_off(neighbour, store, today)
    assert at(store) == SUPER and at(store, HELD) == {}


def test_a_case_undone_holds_nothing_on_its_way(case, neighbour, shed, keeper, today):
    undo(case.act, who=keeper, key="undo")
    supered(neighbour, shed, today)
    store = makers.make_yard("store")
    taken_off(neighbour, store, today)
    assert at(store) == SUPER


def test_a_hive_no_case_reaches_gives_sound_gear(case, shed, today):
    other = hive_of("O-01", makers.make_yard("long-acre"), SUPER)
    store = makers.make_yard("store")
    taken_off(other, store, today)
    assert at(store) == SUPER


def test_a_reached_hive_that_dies_gives_nothing_sound_whatever_it_died_of(case, neighbour, shed, today):
    supered(neighbour, shed, today)
    store = makers.make_yard("store")
    work(neighbour, store, fate="sound", cause="starved", day=today)
    assert at(store) == {} and at(store, HELD)["box-medium-10"] == 1
    (lot,) = lots_at(store, makers.part("box-medium-10"))
    assert (lot.deadout, lot.why) == (case, WHY)


def test_salvage_to_mend_comes_off_held_too(case, neighbour, shed, today):
    supered(neighbour, shed, today)
    colonies.end(neighbour, why="died", day=today, who=None)
    store = makers.make_yard("store")
    pieces = [Piece(part="box-medium-10", to_mend=1)]
    ledger.salvage(colony=neighbour, into=store, pieces=pieces, day=today, who=None, key="salvage")
    assert at(store, HELD) == {"box-medium-10": 1} and at(store, Condition.TO_MEND) == {}


def test_a_reached_hive_is_not_moved_nor_sold_nor_split(case, neighbour, shed, today):
    with pytest.raises(UnderCase, match="stood in Fern Hollow with F-01"):
        move_colonies(colonies=[neighbour], yard=makers.make_yard("east"), day=today, who=None, key="move")
    (first, *_rest) = suspected([place_of(neighbour)], "sold")
    assert isinstance(first, UnderCase) and "cannot be sold" in str(first)


def test_a_hive_all_of_whose_held_gear_was_released_on_a_word_is_free_of_the_case(
    hive, shed, yard, keeper, today
):
    small = hive_of("F-02", yard, {"box-deep-10": 2})
    row = work(hive, shed, suspected=True)
    word = {"inspector": "invented inspector", "written_on": today, "words": "boxes flamed", "day": today}
    told = {"at": small, "verdict": "treated", "deadout": row, "who": keeper, **word}
    release(lines=[Line("box-deep-10", 1)], key="1", **told)
    assert place_of(small).pk in open_cases([place_of(small)])
    release(lines=[Line("box-deep-10", 1)], key="2", **told)
    assert open_cases([place_of(small)]) == {}


def test_an_act_that_set_gear_on_such_a_hive_is_undone_only_where_the_keeper_says_it_never_stood_there(
    case, neighbour, shed, keeper, today
):
    act = supered(neighbour, shed, today)
    far = makers.Yard.objects.get(code="far-field")
    helper = makers.make_person("helper", role="helper", yards=[far, neighbour.yard])
    for told in ({"who": keeper}, {"who": helper, "never_stood": True}):
        with pytest.raises(OffACase, match="Take the gear off instead: it comes off held back"):
            undo(act, key="slip", **told)
    assert at(far) == {} and at(neighbour)["box-medium-10"] == 1
    undo(act, who=keeper, key="slip", never_stood=True)
    assert at(far) == SUPER
    assert prove().faults == ()
