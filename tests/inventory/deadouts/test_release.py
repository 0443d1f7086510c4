"""Held gear released on the written word, by the keeper alone; comb of a confirmed case never.

The rules: combs with scale are always destroyed (Iowa Administrative Code 21-22.6); frames burnt, boxes irradiated or
dipped first (Western Australia, Department of Primary Industries, Preventing spread of American foulbrood disease).
"""

import datetime as dt

import pytest
from django.utils import timezone

from apiary.errors import FutureDay, UnknownWord
from inventory import ledger
from inventory.deadouts.holds import case_of, lots_at
from inventory.deadouts.refusals import (
    CaseTold,
    CombNeverReleased,
    CombWaits,
    KeeperReleases,
    KeeperUndoes,
    MixedHeld,
    NotHeldForIt,
    NotTreated,
    NoWrittenWord,
    WordTooEarly,
)
from inventory.deadouts.release import release, tell_verdict
from inventory.errors import NothingGiven
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.models import InspectorWord, Movement
from inventory.proof import prove
from inventory.yardwork import undo
from tests import makers
from tests.inventory.deadouts.conftest import FOUND, HIVE, at, hive_of, pieces_of, work

pytestmark = pytest.mark.django_db
HELD = Condition.HELD
WRITTEN = dt.date(2025, 6, 10)
WORD = {
    "inspector": "R. Alder, bee inspector (invented)",
    "written_on": WRITTEN,
    "words": "Dipped, may be used.",
}
TODAY = timezone.localdate()


def let_go(ground, *lines, who, deadout=None, verdict="treated", key=None, **word):
    told = {**WORD, **word}
    lines = [Line(part, number) for part, number in lines]
    key = key or makers.fresh_key()
    return release(
        at=ground, lines=lines, deadout=deadout, verdict=verdict, day=TODAY, who=who, key=key, **told
    )


def verdict(deadout, word, *, who, key=None, **more):
    told = {**WORD, **more}
    key = key or makers.fresh_key()
    return tell_verdict(deadout=deadout, verdict=word, day=TODAY, who=who, key=key, **told)


@pytest.fixture
def case(hive, shed):
    """F-01 suspected, all of it held in the shed."""
    return work(hive, shed, suspected=True)


@pytest.fixture
def unseen(hive, shed):
    """F-01, brood not looked at."""
    return work(hive, shed, brood_seen=False)


def test_boxes_go_on_the_inspectors_written_word(case, shed, keeper):
    act = let_go(shed, ("box-deep-10", 2), ("floor-10", 1), who=keeper, deadout=case)
    assert at(shed) == {"box-deep-10": 2, "floor-10": 1}
    assert at(shed, HELD) == {name: n for name, n in HIVE.items() if name not in ("box-deep-10", "floor-10")}
    word = InspectorWord.objects.get(act=act)
    assert (word.inspector, word.written_on, word.words, word.deadout) == (
        "R. Alder, bee inspector (invented)",
        WRITTEN,
        "Dipped, may be used.",
        case,
    )
    assert set(act.movements.values_list("reason", flat=True)) == {"released"}
    assert prove().faults == ()


@pytest.mark.parametrize("role", ["helper", "reader", None])
def test_nobody_but_the_keeper_releases(case, shed, yard, role):
    who = makers.make_person("other", role=role, yards=[yard] if role else ())
    with pytest.raises(KeeperReleases):
        let_go(shed, ("box-deep-10", 2), who=who, deadout=case)
    with pytest.raises(KeeperReleases):
        verdict(case, "cleared", who=who)
    assert at(shed) == {}


def test_nobody_at_all_releases_nothing(case, shed):
    with pytest.raises(KeeperReleases):
        let_go(shed, ("box-deep-10", 2), who=None, deadout=case)


@pytest.mark.parametrize("lacks", [{"inspector": " "}, {"words": ""}, {"written_on": None}])
def test_without_a_written_word_nothing_goes(case, shed, keeper, lacks):
    with pytest.raises(NoWrittenWord):
        let_go(shed, ("box-deep-10", 2), who=keeper, deadout=case, **lacks)


def test_a_word_older_than_the_find_is_refused(case, shed, keeper):
    with pytest.raises(WordTooEarly, match="dated 31 May 2025, before F-01 was found on 1 June 2025"):
        let_go(shed, ("box-deep-10", 2), who=keeper, deadout=case, written_on=dt.date(2025, 5, 31))


def test_a_word_of_a_day_to_come_is_refused(case, shed, keeper):
    with pytest.raises(FutureDay):
        let_go(shed, ("box-deep-10", 2), who=keeper, deadout=case, written_on=TODAY + dt.timedelta(days=1))


@pytest.mark.parametrize("word", ["confirmed", "perhaps"])
def test_only_a_word_that_releases_releases(case, shed, keeper, word):
    with pytest.raises(UnknownWord):
        let_go(shed, ("box-deep-10", 2), who=keeper, deadout=case, verdict=word)


@pytest.mark.parametrize("part", ["comb-deep-brood", "frame-deep-foundation"])
@pytest.mark.parametrize("word", ["treated", "cleared"])
def test_frames_of_a_suspected_case_wait_for_the_verdict(case, shed, keeper, part, word):
    with pytest.raises(CombWaits):
        let_go(shed, (part, 1), who=keeper, deadout=case, verdict=word)


@pytest.mark.parametrize("word", ["treated", "cleared"])
def test_comb_of_a_confirmed_case_is_never_released(case, shed, keeper, word):
    verdict(case, "confirmed", who=keeper)
    with pytest.raises(CombNeverReleased, match="never released"):
        let_go(shed, ("comb-deep-brood", 1), who=keeper, deadout=case, verdict=word)
    let_go(shed, ("box-deep-10", 2), who=keeper, deadout=case)  # boxes may, treated
    assert at(shed) == {"box-deep-10": 2}


def test_once_it_is_written_that_it_is_none_combs_go_too(case, shed, keeper):
    verdict(case, "cleared", who=keeper)
    assert case_of(case) == "cleared"
    let_go(shed, ("comb-deep-brood", 16), who=keeper, deadout=case, verdict="cleared")
    assert at(shed) == {"comb-deep-brood": 16}


def test_a_verdict_is_told_once(case, keeper):
    verdict(case, "cleared", who=keeper)
    with pytest.raises(CaseTold, match="cleared"):
        verdict(case, "cleared", who=keeper)


def test_confirmed_after_all_is_the_last_word(case, keeper):
    verdict(case, "cleared", who=keeper)
    verdict(case, "confirmed", who=keeper)
    assert case_of(case) == "confirmed"
    with pytest.raises(CaseTold, match="confirmed"):
        verdict(case, "cleared", who=keeper)


def test_a_verdict_that_is_none_is_refused(case, keeper):
    with pytest.raises(UnknownWord):
        verdict(case, "treated", who=keeper)


def test_foulbrood_confirmed_in_a_hive_nobody_suspected_holds_what_it_reaches_now(yard, shed, keeper):
    other = hive_of("F-02", yard)
    row = work(hive_of("F-01", yard), shed, fate="sound")
    assert at(shed) == HIVE
    act = verdict(row, "confirmed", who=keeper)
    assert at(shed) == {} and at(shed, HELD) == HIVE
    assert at(other) == {} and at(other, HELD) == HIVE
    assert act.day == TODAY
    assert {lot.reason for lot in lots_at(shed, makers.part("comb-deep-brood"))} == {"foulbrood"}
    assert prove().faults == ()


def test_a_confirmation_undone_lets_go_what_it_held(yard, shed, keeper):
    row = work(hive_of("F-01", yard), shed, fate="sound")
    act = verdict(row, "confirmed", who=keeper)
    with pytest.raises(KeeperUndoes):
        undo(act, who=makers.make_person("hand", role="helper", yards=[yard]), key="no")
    undo(act, who=keeper, key="undo")
    assert at(shed) == HIVE and case_of(row) == ""


def test_combs_nobody_looked_at_go_once_somebody_has(unseen, shed, keeper):
    let_go(shed, ("comb-deep-brood", 16), who=keeper, deadout=unseen, verdict="cleared")
    assert at(shed) == {"comb-deep-brood": 16}


def test_gear_set_aside_by_hand_goes_on_a_word_too(shed, keeper):
    makers.put(shed, {"box-deep-10": 3})
    lines = [Line("box-deep-10", 3)]
    ledger.mark(at=shed, lines=lines, becomes="held back", day=FOUND, who=None, key="mark")
    let_go(shed, ("box-deep-10", 2), who=keeper)
    assert at(shed) == {"box-deep-10": 2} and at(shed, HELD) == {"box-deep-10": 1}


def test_more_than_is_held_for_the_case_is_refused(case, shed, keeper):
    with pytest.raises(NotHeldForIt, match="3 are to be released, but 2 are held back for F-01"):
        let_go(shed, ("box-deep-10", 3), who=keeper, deadout=case)
    with pytest.raises(NotHeldForIt, match="by hand"):
        let_go(shed, ("box-deep-10", 1), who=keeper)


def test_nothing_named_is_refused(case, shed, keeper):
    with pytest.raises(NothingGiven):
        let_go(shed, who=keeper, deadout=case)


def test_combs_that_lay_beside_a_confirmed_case_are_not_told_apart(case, yard, shed, keeper):
    clean = work(hive_of("W-01", makers.make_yard("west")), shed, brood_seen=False)
    verdict(case, "confirmed", who=keeper)
    with pytest.raises(CombNeverReleased):
        let_go(shed, ("comb-deep-brood", 16), who=keeper, deadout=clean, verdict="cleared")
    held = Line("comb-deep-brood", 16, HELD)
    ledger.burn(at=shed, lines=[held], day=TODAY, who=keeper, key="burn")
    with pytest.raises(CombNeverReleased):  # the sixteen left lay with those that were burnt
        let_go(shed, ("comb-deep-brood", 16), who=keeper, deadout=clean, verdict="cleared")


def test_boxes_beside_graver_ones_are_not_released_by_a_lighter_word(case, shed, keeper):
    makers.put(shed, {"box-deep-10": 2})
    lines = [Line("box-deep-10", 2)]
    ledger.mark(at=shed, lines=lines, becomes="held back", day=TODAY, who=None, key="mark")
    with pytest.raises(MixedHeld):
        let_go(shed, ("box-deep-10", 2), who=keeper)


def test_combs_of_a_neighbour_need_the_word_that_they_are_clear(yard, shed, keeper):
    other = hive_of("F-02", yard)
    row = work(hive_of("F-01", yard), shed, suspected=True)
    with pytest.raises(NotTreated):
        let_go(other, ("comb-deep-brood", 16), who=keeper, deadout=row, verdict="treated")
    let_go(other, ("comb-deep-brood", 16), who=keeper, deadout=row, verdict="cleared")
    assert at(other) == {"comb-deep-brood": 16}


def test_a_release_takes_the_lots_it_was_written_for(case, shed, keeper):
    other = work(hive_of("W-01", makers.make_yard("west")), shed, suspected=True)
    let_go(shed, ("box-deep-10", 2), who=keeper, deadout=other)
    assert [lot.deadout for lot in lots_at(shed, makers.part("box-deep-10"))] == [case]


def test_a_resent_release_changes_nothing(case, shed, keeper):
    first = let_go(shed, ("box-deep-10", 2), who=keeper, deadout=case, key="once")
    movements = Movement.objects.count()
    assert let_go(shed, ("box-deep-10", 1), who=keeper, deadout=case, key="once") == first
    assert (Movement.objects.count(), InspectorWord.objects.count()) == (movements, 1)


def test_a_release_undone_is_held_again_for_the_same_reason(case, shed, keeper):
    before = [(lot.quantity, lot.why) for lot in lots_at(shed, makers.part("box-deep-10"))]
    act = let_go(shed, ("box-deep-10", 2), who=keeper, deadout=case)
    undo(act, who=keeper, key="undo")
    assert [(lot.quantity, lot.why) for lot in lots_at(shed, makers.part("box-deep-10"))] == before


def test_a_pesticide_comb_is_released_on_a_word_and_keeps_no_case(hive, shed, keeper):
    row = work(hive, shed, cause="pesticide", pieces=pieces_of(hive, "held"))
    let_go(shed, ("comb-deep-brood", 16), who=keeper, deadout=row, verdict="cleared")
    assert at(shed)["comb-deep-brood"] == 16
