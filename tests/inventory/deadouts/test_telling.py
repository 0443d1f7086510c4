"""What acts on deadouts did, in one sentence."""

import datetime as dt

import pytest
from django.utils import timezone

from inventory.deadouts.care import care
from inventory.deadouts.release import release, tell_verdict
from inventory.deadouts.telling import HEADS, TELLERS, held_elsewhere, pieces
from inventory.ledger import Line
from inventory.sentences import head_of, sentence_of
from tests.inventory.deadouts.conftest import hive_of, work

pytestmark = pytest.mark.django_db
WORD = {"inspector": "R. Alder (invented)", "written_on": dt.date(2025, 6, 10), "words": "None found."}


def test_pieces_are_counted_in_words():
    assert (pieces(1), pieces(1200)) == ("1 piece", "1,200 pieces")


def test_a_deadout_tells_its_own_pieces_and_those_held_with_it(hive, yard, shed):
    hive_of("F-02", yard)
    row = work(hive, shed, suspected=True)
    assert sentence_of(row.act) == (
        "Worked deadout F-01: 0 pieces saved, 24 held back, 0 scrapped, burnt or lost. "
        "24 pieces elsewhere held back with it."
    )
    assert held_elsewhere(row) == 24


def test_words_releases_and_care_are_told(hive, shed, keeper):
    row = work(hive, shed, brood_seen=False)
    told = {"day": timezone.localdate(), "who": keeper}
    acts = [
        care(deadout=row, key="care", **told),
        tell_verdict(deadout=row, verdict="cleared", key="word", **WORD, **told),
        release(
            at=shed,
            lines=[Line("comb-deep-brood", 16)],
            deadout=row,
            verdict="cleared",
            key="r",
            **WORD,
            **told,
        ),
    ]
    assert [sentence_of(act) for act in acts] == [
        "Combs of F-01 cared for against wax moth.",
        "Wrote down the word of R. Alder (invented) on F-01: no foulbrood.",
        "Released 16 pieces at Shed on the written word.",
    ]


def test_every_teller_has_its_head(hive, shed):
    assert set(HEADS) == set(TELLERS)
    assert head_of(work(hive, shed).act) == "Deadout worked"
