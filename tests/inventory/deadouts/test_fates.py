"""What may become of each piece by cause. Rules on foulbrood: frames and combs of it are burnt, boxes only treated
(Western Australia, Department of Primary Industries, Preventing spread of American foulbrood disease; Iowa
Administrative Code 21-22.6: combs with scale are always destroyed). The rest is common practice, no source."""

import itertools

import pytest

from inventory.deadouts.fates import (
    BURNT,
    CAUSES,
    FATES,
    HELD,
    KEPT_APART,
    LOCKED,
    Seen,
    open_fates,
    reason_to_hold,
    suggestion,
)
from inventory.gear import Comb, Kind

PIECES = [(Kind.FRAME, comb) for comb in Comb] + [
    (kind, "") for kind in Kind if kind not in (Kind.FRAME, Kind.FEED)
]
SEEN = [
    Seen(cause=cause, brood_seen=seen, suspected=suspected)
    for cause, seen, suspected in itertools.product(CAUSES, (True, False), (True, False))
]


@pytest.mark.parametrize("seen", SEEN)
@pytest.mark.parametrize(("kind", "comb"), PIECES)
def test_what_is_suggested_is_always_open(seen, kind, comb):
    assert suggestion(kind, comb, seen).fate in open_fates(comb, seen)


@pytest.mark.parametrize("seen", [seen for seen in SEEN if seen.suspected])
@pytest.mark.parametrize(("kind", "comb"), PIECES)
def test_of_suspected_foulbrood_all_is_held_or_burnt(seen, kind, comb):
    assert open_fates(comb, seen) == (HELD, BURNT) == KEPT_APART
    assert suggestion(kind, comb, seen).fate == HELD


@pytest.mark.parametrize("cause", CAUSES)
def test_brood_nobody_looked_at_holds_every_comb_and_only_combs(cause):
    seen = Seen(cause=cause, brood_seen=False)
    assert reason_to_hold(Comb.DRAWN, seen) == "brood"
    assert open_fates(Comb.DRAWN, seen) == KEPT_APART
    assert reason_to_hold("", seen) == reason_to_hold(Comb.FOUNDATION, seen) == ""


def test_pesticide_holds_comb_whoever_looked():
    seen = Seen(cause="pesticide", brood_seen=True)
    assert reason_to_hold(Comb.DRAWN, seen) == "pesticide"
    assert suggestion(Kind.BOX, "", seen).fate == "sound"


@pytest.mark.parametrize("cause", ["starved", "queen", "mites", "cold", "robbed", "unknown"])
def test_a_clean_hive_goes_to_the_store(cause):
    seen = Seen(cause=cause, brood_seen=True)
    assert suggestion(Kind.BOX, "", seen).fate == "sound"
    assert suggestion(Kind.FRAME, Comb.DRAWN, seen).fate == "sound"
    assert open_fates(Comb.DRAWN, seen) == FATES


@pytest.mark.parametrize(
    ("cause", "kind", "comb", "fate"),
    [
        ("mice", Kind.FRAME, Comb.DRAWN, "to_mend"),
        ("mice", Kind.FLOOR, "", "to_mend"),
        ("cold", Kind.INNER_COVER, "", "to_mend"),
        ("disease", Kind.FRAME, Comb.DRAWN, "held"),
        ("disease", Kind.BOX, "", "to_mend"),
        ("pesticide", Kind.FRAME, Comb.FOUNDATION, "to_mend"),
    ],
)
def test_a_cause_that_asks_for_more_says_why(cause, kind, comb, fate):
    told = suggestion(kind, comb, Seen(cause=cause, brood_seen=True))
    assert told.fate == fate and told.why


def test_every_reason_that_leaves_no_choice_is_told():
    assert set(LOCKED) == {reason_to_hold(comb, seen) for seen in SEEN for _kind, comb in PIECES} - {""}
