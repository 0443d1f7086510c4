"""Why held-back gear is held back, through moves, fires, releases and reversals."""

import datetime as dt

import pytest
from django.utils import timezone

from apiary.errors import told as told_day
from inventory import ledger
from inventory.deadouts.holds import case_of, held_lots, lots_at, refuse_loosening, why_held
from inventory.deadouts.refusals import KeeperUndoes
from inventory.errors import HeldBack
from inventory.ledger import Line
from tests import makers
from tests.inventory.deadouts.conftest import hive_of, work

pytestmark = pytest.mark.django_db
LATER = timezone.localdate()  # a suspicion is booked today, and what is done with its gear comes after
COMB = "comb-deep-brood"


def told(ground, part=COMB):
    return [(lot.quantity, lot.reason) for lot in lots_at(ground, makers.part(part))]


def act(name, number, part=COMB, **more):
    lines = [Line(part, number, "held back")]
    return getattr(ledger, name)(lines=lines, day=LATER, who=None, key=makers.fresh_key(), **more)


@pytest.fixture
def both(yard, shed):
    """16 combs of a brood nobody looked at and 16 of suspected foulbrood in one shed."""
    work(hive_of("L-01", makers.make_yard("east")), shed, brood_seen=False, day=dt.date(2025, 5, 1))
    work(hive_of("L-02", makers.make_yard("west")), shed, suspected=True)
    return shed


def test_every_lot_says_why(both):
    assert told(both) == [(16, "foulbrood"), (16, "brood")]
    assert why_held(both, makers.part(COMB)) == (
        "foulbrood suspected in L-02, found on 1 June 2025; "
        "nobody who knows foulbrood looked at the brood of L-01, found on 1 May 2025"
    )


def test_what_leaves_takes_the_gravest_first_and_what_stays_remembers(both, yard):
    act("move", 20, source=both, target=yard)
    assert told(yard) == [(16, "foulbrood"), (4, "brood")]
    assert told(both) == [(12, "brood")]
    (lot,) = lots_at(both, makers.part(COMB))
    assert {case.colony.tag for case in lot.cases} == {"L-02"}


def test_what_is_burnt_is_the_gravest(both):
    act("burn", 16, at=both)
    assert told(both) == [(16, "brood")]


def test_a_burning_reversed_is_as_if_it_never_was(both):
    burnt = act("burn", 30, at=both)
    ledger.reverse(act=burnt, who=None, key="back")
    assert told(both) == [(16, "foulbrood"), (16, "brood")]
    assert all(lot.beside == frozenset() for lot in lots_at(both, makers.part(COMB)))


def test_what_was_set_aside_by_hand_says_when(shed):
    makers.put(shed, {"box-deep-10": 3})
    lines = [Line("box-deep-10", 2)]
    ledger.mark(at=shed, lines=lines, becomes="held back", day=LATER, who=None, key="mark")
    assert why_held(shed, makers.part("box-deep-10")) == f"set aside by hand on {told_day(LATER)}"


def test_where_nothing_is_held_disease_is_the_word(shed):
    assert why_held(shed, makers.part("box-deep-10")) == "disease is suspected"
    assert held_lots() == {}


def test_placing_a_held_piece_is_refused_with_its_reason(both):
    hive = makers.make_colony("A-01", yard=makers.make_yard("north"), day=dt.date(2025, 8, 1))
    with pytest.raises(HeldBack, match="foulbrood suspected in L-02, found on 1 June 2025") as refused:
        act("place", 1, source=both, colony=hive)
    assert refused.value.location == hive


def test_marking_a_held_piece_anew_is_refused_with_its_reason(both):
    with pytest.raises(HeldBack, match="nobody who knows foulbrood looked at the brood of L-01"):
        act("mark", 1, at=both, becomes="sound")


def test_lots_of_all_places_are_found_at_once(both, yard):
    act("move", 20, source=both, target=yard)
    part = makers.part(COMB)
    found = held_lots(part=part)
    assert sum(lot.quantity for lots in found.values() for lot in lots) == 32
    assert why_held(None, part).startswith("foulbrood suspected in L-02")


def test_lots_are_as_many_as_the_book_holds(both):
    act("burn", 5, at=both)
    act("scrap", 2, at=both)
    assert sum(quantity for quantity, _reason in told(both)) == 25


def test_a_deadout_not_suspected_is_no_case(yard, shed):
    assert case_of(work(hive_of("F-01", yard), shed, brood_seen=False)) == ""


def test_undoing_what_held_nothing_is_open_to_all(yard, shed):
    row = work(hive_of("F-01", yard), shed, fate="sound")
    refuse_loosening(row.act, makers.make_person("hand", role="helper", yards=[yard]))


def test_undoing_what_held_gear_is_not(both):
    row = work(hive_of("F-01", makers.make_yard("south")), both, brood_seen=False)
    with pytest.raises(KeeperUndoes):
        refuse_loosening(row.act, makers.make_person("hand", role="helper"))
