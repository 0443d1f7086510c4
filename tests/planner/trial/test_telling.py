"""A trial in words: sums rounded to what the seasons bear, what cannot be told apart, what was not tried."""

from dataclasses import replace
from decimal import Decimal

import numpy as np
import pytest

from planner.trial.contest import compared
from planner.trial.records import Contender, Trial
from planner.trial.replications import StatisticalGap
from planner.trial.telling import section_of

RNG = np.random.default_rng(5)
YEARS = RNG.normal(20_000, 3_000, 200)
LUCK = RNG.normal(0, 400, 200)


def contender(key, more=0.0, *, spend=4000.0, spread=0.0, seasons=200, packs=None):
    worths = tuple((YEARS + more + spread * LUCK)[:seasons].tolist())
    return Contender(key=key, packs=packs or {}, spend=spend, worths=worths)


def trial(*others, **changed):
    usual = {
        "seasons": 200,
        "asked": 200,
        "contenders": (contender("ours"), *others),
        "foresight": None,
        "gap": None,
        "other_seed": None,
        "left_out": (),
    }
    return Trial(**{**usual, **changed})


def said(*others, **changed):
    return section_of(trial(*others, **changed), "USD").sentences


def test_the_keepers_usual_order_is_what_all_are_compared_with():
    section = section_of(trial(contender("yours", -1180, spread=1), contender("rule", -1500)), "USD")
    assert (section.against, section.against_name) == ("yours", "your usual order")
    assert section.ours.over > 0
    assert section.sentences[0].startswith(
        "On 200 fresh seasons this order earns about $1,200 a season more than yours"
    )
    assert "on the same money (19 seasons of 20 between" in section.sentences[0]


def test_without_it_the_rule_of_thumb_is():
    section = section_of(trial(contender("rule", -900, spread=1)), "USD")
    assert section.against == "rule"
    assert section.sentences[0].startswith("On 200 fresh seasons this order earns about")


def test_figures_claim_no_more_than_the_seasons_bear():
    row = section_of(trial(contender("rule", -903.37, spread=1)), "USD").ours
    assert row.over_reach >= Decimal(50)
    assert row.over % 50 == 0
    assert row.worth % 100 == 0


def test_what_cannot_be_told_apart_is_said_to_earn_as_much():
    assert (
        "earns as much as the rule of thumb, as far as these seasons can tell"
        in said(contender("rule", 1, spread=1))[0]
    )


def test_a_rival_that_earns_more_is_said_to():
    assert "a season less than the rule of thumb" in said(contender("rule", 2000))[0]


def test_other_money_is_told():
    assert "spending $4,000 where that spends $700" in said(contender("yours", -500, spend=700.0))[0]


def test_seasons_in_which_it_is_less_are_told_so():
    first = said(contender("yours", -300, spread=1))[0]
    assert "less and $" in first and first.endswith("more).")


def test_knowing_the_future_would_add_at_most_so_much():
    future = Contender(key="foresight", packs={}, spend=None, worths=tuple((YEARS[:60] + 740).tolist()))
    sentences = said(contender("rule", -900), foresight=future)
    assert "Knowing the future would add at most $740 a season (tried on 60 of them)." in sentences


def test_the_statistical_gap_is_told_as_money_and_share():
    gap = StatisticalGap(mean=40.0, most=61.0, batches=5, seasons=30)
    section = section_of(trial(contender("rule", -900), gap=gap), "USD")
    assert section.gap_most == Decimal("70")
    assert section.gap_share == pytest.approx(0.003, rel=0.1)
    assert any(
        "at most about $70 (0.3\N{NO-BREAK SPACE}%) a season more" in line for line in section.sentences
    )


def test_a_span_too_wide_to_mean_anything_is_told_as_not_known():
    gap = StatisticalGap(mean=900.0, most=9000.0, batches=2, seasons=30)
    section = section_of(trial(contender("rule", -900), gap=gap), "USD")
    line = next(line for line in section.sentences if "fresh seasons: such a span" in line)
    assert line.startswith("How much more another order could earn is not told by planning 2 times on 30")
    assert not any("best order there could be" in line for line in section.sentences)


def test_what_another_seed_changes_is_told_in_packs_and_money():
    ours = contender("ours", packs={("a", 0): 3, ("b", 0): 1})
    other = contender("other", 0.5, spend=4040.0, spread=0.1, packs={("a", 0): 5, ("b", 0): 1})
    line = said(contender("rule", -900), other_seed=compared(other, ours))[-1]
    assert line.startswith("Planned with other seasons, the order differs in 1 of 2 lines, 2 packs in all")
    assert "spends $40 more and earns the same" in line


def test_an_order_that_stays_pack_for_pack_is_said_to():
    same = compared(contender("other"), contender("ours"))
    assert "Planned with other seasons, the order is the same pack for pack." in said(
        contender("rule", -900), other_seed=same
    )


def test_what_was_not_tried_is_said_with_why():
    sentences = said(contender("rule", -900), asked=300, left_out=("nothing", "other", "gap"))
    assert "Time ran out after 200 of 300 fresh seasons." in sentences
    assert "Not compared: buying nothing now, since it leaves undone what must be done." in sentences
    assert sentences[-1].startswith(
        "Not tried, since the time allowed ran out: what other seasons would change and"
    )


def test_what_nobody_offers_any_more_is_named_beside_the_usual_order():
    section = section_of(trial(contender("yours", -500)), "USD", not_offered=("Old boxes",))
    row = next(row for row in section.rows if row.key == "yours")
    assert row.how == "as you told it, less what nobody offers now: Old boxes"


def test_rows_stand_from_the_one_that_earns_least_the_future_last():
    future = replace(contender("foresight", 700), spend=None)
    section = section_of(
        trial(contender("mean", 200), contender("nothing", -2000), contender("rule", -900), foresight=future),
        "USD",
    )
    assert [row.key for row in section.rows] == ["nothing", "rule", "ours", "mean", "foresight"]
