"""A deadout worked: the colony's end and its hive taken apart in one act, or none of it."""

import datetime as dt

import pytest
from django.utils import timezone

from apiary import colonies
from apiary.errors import FutureDay, Several, UnknownWord
from apiary.models import Colony, ColonyEvent
from inventory import ledger
from inventory.deadouts.fates import CAUSES
from inventory.deadouts.holds import lots_at
from inventory.deadouts.refusals import (
    BroodNotSeen,
    BroodNotSpokenOf,
    FoulbroodSuspected,
    KeeperUndoes,
    NotADeadout,
    PoisonedComb,
    WorkedAlready,
)
from inventory.deadouts.work import worked
from inventory.errors import ColonyAlive, UnknownPart
from inventory.gear import Condition
from inventory.ledger import Piece
from inventory.models import Act, Deadout, Hold, Movement
from inventory.proof import prove
from inventory.stock import on_hand
from inventory.yardwork import undo
from tests import makers
from tests.inventory.deadouts.conftest import FOUND, HIVE, at, hive_of, pieces_of, work

pytestmark = pytest.mark.django_db
HELD = Condition.HELD


def test_the_colony_ends_and_its_hive_goes_to_the_store_in_one_act(hive, shed, keeper):
    row = work(hive, shed, who=keeper, fate="sound", cause="starved", note="clustered beside honey")
    hive.refresh_from_db()
    assert (hive.ended_on, hive.ended_why) == (FOUND, Colony.Ended.DIED)
    assert at(shed) == HIVE
    assert on_hand(hive) == {}
    assert (row.colony, row.found_on, row.cause, row.brood_seen, row.suspected) == (
        hive,
        FOUND,
        "starved",
        True,
        False,
    )
    assert (row.who, row.act.name, row.note) == (keeper, "deadout", "clustered beside honey")
    assert ColonyEvent.objects.get(colony=hive, kind="ended").act_key == row.act.key
    assert prove().faults == ()


@pytest.mark.parametrize("cause", CAUSES)
def test_each_cause_of_the_closed_list_is_written_down(hive, shed, cause):
    row = work(hive, shed, cause=cause, fate="held")
    assert Deadout.objects.get(pk=row.pk).cause == cause
    assert at(shed, HELD) == HIVE


def test_the_closed_list_is_what_the_books_know():
    assert tuple(Deadout.Cause.values) == CAUSES


def test_a_cause_outside_the_list_is_refused(hive, shed):
    with pytest.raises(UnknownWord, match="starved, queen, mites"):
        work(hive, shed, cause="lightning")


def test_whether_the_brood_was_looked_at_must_be_answered(hive, shed):
    with pytest.raises(BroodNotSpokenOf, match="F-01"):
        work(hive, shed, brood_seen=None)
    hive.refresh_from_db()
    assert hive.ended_on is None


@pytest.mark.parametrize("fate", ["sound", "to_mend", "scrapped"])
def test_no_comb_leaves_where_nobody_looked_at_the_brood(hive, shed, fate):
    with pytest.raises(BroodNotSeen) as refused:
        work(hive, shed, brood_seen=False, fate=fate)
    assert [str(problem.part) for problem in refused.value.problems] == ["deep drawn brood comb"]
    hive.refresh_from_db()
    assert hive.ended_on is None
    assert not Act.objects.filter(name="deadout").exists()


def test_where_nobody_looked_the_combs_are_held_and_the_rest_may_go(hive, shed):
    pieces = [
        Piece(part=name, **{"held" if name.startswith("comb") else "sound": number})
        for name, number in HIVE.items()
    ]
    work(hive, shed, pieces=pieces, brood_seen=False)
    assert at(shed, HELD) == {"comb-deep-brood": 16}
    assert at(shed)["box-deep-10"] == 2
    held = Hold.objects.get()
    assert (held.reason, held.why) == (
        "brood",
        "nobody who knows foulbrood looked at the brood of F-01, found on 1 June 2025",
    )


def test_comb_of_a_pesticide_kill_is_held(hive, shed):
    with pytest.raises(PoisonedComb, match="deep drawn brood comb of F-01"):
        work(hive, shed, cause="pesticide", fate="sound")
    comb = Piece(part="comb-deep-brood", held=10, burnt=6)
    work(hive, shed, cause="pesticide", pieces=[comb, Piece(part="box-deep-10", sound=2)])
    assert at(shed, HELD) == {"comb-deep-brood": 10}
    assert Hold.objects.get().reason == "pesticide"


@pytest.mark.parametrize("fate", ["sound", "to_mend", "scrapped"])
def test_nothing_of_suspected_foulbrood_goes_back_or_on_a_heap(hive, shed, fate):
    with pytest.raises(Several) as refused:
        work(hive, shed, suspected=True, fate=fate)
    assert {type(problem) for problem in refused.value.problems} == {FoulbroodSuspected}
    assert len(refused.value.problems) == len(HIVE)


def test_all_of_a_suspected_hive_is_held_and_knows_why(hive, shed):
    row = work(hive, shed, suspected=True)
    assert at(shed, HELD) == HIVE
    assert at(shed) == {}
    own = row.holds.filter(movement__target__yard=shed)
    assert {hold.why for hold in own} == {"foulbrood suspected in F-01, found on 1 June 2025"}
    assert own.count() == len(HIVE)


def test_a_suspicion_is_booked_today_and_keeps_the_day_it_was_found(hive, shed):
    row = work(hive, shed, suspected=True)
    hive.refresh_from_db()
    assert (row.found_on, hive.ended_on, row.act.day) == (FOUND, FOUND, timezone.localdate())


def test_what_the_book_has_and_was_not_there_is_lost(hive, shed):
    work(hive, shed, pieces=[Piece(part="box-deep-10", sound=1)])
    lost = Movement.objects.filter(act__name="deadout", target__kind="lost")
    assert dict(lost.values_list("part__code", "quantity")) == {**HIVE, "box-deep-10": 1}
    assert set(lost.values_list("reason", flat=True)) == {"lost"}
    assert on_hand(hive) == {}


def test_an_empty_hive_is_all_lost(hive, shed):
    work(hive, shed, pieces=[])
    assert on_hand(hive) == {}
    assert sum(Movement.objects.filter(target__kind="lost").values_list("quantity", flat=True)) == 24


def test_what_stood_there_beyond_the_book_is_booked_as_found(hive, shed):
    work(hive, shed, pieces=[*pieces_of(hive, "sound"), Piece(part="excluder-10", sound=1)])
    assert at(shed)["excluder-10"] == 1
    assert Movement.objects.get(found=True).part.code == "excluder-10"


def test_a_deadout_twice_is_refused(hive, shed):
    work(hive, shed)
    with pytest.raises(WorkedAlready, match="F-01 was worked as a deadout already, found on 1 June 2025"):
        work(hive, shed, pieces=[Piece(part="box-deep-10", sound=1)])
    assert Deadout.objects.count() == 1


def test_a_resend_changes_nothing(hive, shed):
    first = work(hive, shed, key="once", suspected=True)
    movements = Movement.objects.count()
    assert work(hive, shed, key="once", suspected=True, pieces=[]).pk == first.pk
    assert (Movement.objects.count(), Deadout.objects.count()) == (movements, 1)


def test_a_colony_written_down_as_dead_before_is_worked_later(hive, shed):
    colonies.end(hive, why="died", day=dt.date(2025, 5, 20), who=None)
    row = work(hive, shed, fate="sound")
    hive.refresh_from_db()
    assert (hive.ended_on, row.found_on) == (dt.date(2025, 5, 20), FOUND)


def test_a_day_before_its_end_is_refused(hive, shed):
    colonies.end(hive, why="died", day=dt.date(2025, 6, 20), who=None)
    with pytest.raises(ColonyAlive):
        work(hive, shed)


def test_a_colony_that_was_lost_is_no_deadout(hive, shed):
    colonies.end(hive, why="lost", day=FOUND, who=None)
    with pytest.raises(NotADeadout, match="written down as lost"):
        work(hive, shed)


@pytest.mark.parametrize("suspected", [True, False])
def test_a_day_to_come_is_refused(hive, shed, suspected):
    with pytest.raises(FutureDay):
        work(hive, shed, day=timezone.localdate() + dt.timedelta(days=1), suspected=suspected)


def test_a_part_nobody_knows_leaves_the_colony_alive(hive, shed):
    with pytest.raises(UnknownPart):
        work(hive, shed, pieces=[Piece(part="throne", sound=1)])
    hive.refresh_from_db()
    assert hive.ended_on is None


def test_undone_the_colony_lives_and_its_hive_stands(hive, shed, keeper):
    row = work(hive, shed, suspected=True)
    undo(row.act, who=keeper, key="undo")
    hive.refresh_from_db()
    assert hive.ended_on is None
    assert at(hive) == HIVE
    assert on_hand(shed) == {}
    assert worked(hive) is None
    work(hive, shed, fate="sound")
    assert Deadout.objects.standing().count() == 1
    assert prove().faults == ()


def test_only_the_keeper_undoes_what_held_gear_back(hive, shed, yard):
    row = work(hive, shed, suspected=True)
    with pytest.raises(KeeperUndoes):
        undo(row.act, who=makers.make_person("hand", role="helper", yards=[yard]), key="undo")
    assert at(shed, HELD) == HIVE


def test_gear_held_on_the_hive_keeps_its_reason(hive, shed):
    line = ledger.Line("box-deep-10", 2)
    ledger.mark(at=hive, lines=[line], becomes="held back", day=makers.DAY, who=None, key="mark")
    work(hive, shed, fate="sound", pieces=[Piece(part="box-deep-10", condition="held back", sound=2)])
    assert at(shed, HELD) == {"box-deep-10": 2}
    assert [lot.why for lot in lots_at(shed, makers.part("box-deep-10"))] == [
        "set aside by hand on 1 April 2025"
    ]


def test_a_hive_found_dead_before_a_case_reached_it_is_booked_today_with_all_its_gear(hive, yard, shed):
    """Both were found on one day; the first, foulbrood suspected, was booked first and holds the second's gear."""
    other = hive_of("F-02", yard)
    work(hive, shed, suspected=True)
    row = work(other, shed, fate="sound")
    assert (row.found_on, row.act.day) == (FOUND, timezone.localdate())
    assert on_hand(other) == {}
    assert not row.act.movements.filter(found=True).exists()
    assert sum(at(shed, Condition.HELD).values()) == 2 * sum(HIVE.values())


def test_what_a_case_held_on_a_hive_and_was_not_there_is_lost(hive, yard, shed):
    other = hive_of("F-02", yard)
    work(hive, shed, suspected=True)
    row = work(other, shed, pieces=[])
    assert on_hand(other) == {}
    assert sum(move.quantity for move in row.act.movements.filter(target__kind="lost")) == sum(HIVE.values())
