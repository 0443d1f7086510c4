"""The check in words: rows by what they cost, three named, what was not reached and what is the keeper's own choice."""

from decimal import Decimal

import pytest

from planner.beliefs.doubts import DOUBTS
from planner.beliefs.ends import Beliefs
from planner.beliefs.telling import Standing, chosen, section_of
from planner.checking.task import ends_of
from tests.planner.operations import operation

DOUBTS_TOLD = tuple(
    doubt
    for doubt in DOUBTS
    if doubt.key in ("survival_share", "honey_price", "circuit_days", "season_markup")
)
PACKS = {("ok-deep-5", 0): 6, ("th-feeder", 0): 2}


@pytest.fixture
def told(answers):
    beliefs = Beliefs(operation=operation(), assumptions=answers())
    ends = ends_of(DOUBTS_TOLD, beliefs.operation, beliefs.assumptions)
    standing = Standing(packs=PACKS, spend=600.0, worth=10_000.0, gap=10.0)

    def tell(answers_):
        by_number = {
            number: answers_[doubt.key, other.side]
            for number, (doubt, other) in enumerate(ends)
            if (doubt.key, other.side) in answers_
        }
        return section_of(beliefs, ends, by_number, standing, seasons=100, doubts=DOUBTS_TOLD)

    return tell


def figures(best, held, packs, *, spend=600.0):
    rows = [[offer, period, count] for (offer, period), count in packs.items()]
    return {"held": held, "best": best, "bound": best + 5, "spend": spend, "packs": rows}


FEWER = {("ok-deep-5", 0): 2, ("th-feeder", 0): 2}
TOLD = {
    ("survival_share", "low"): figures(8_140.0, 8_000.0, FEWER, spend=250.0),
    ("survival_share", "high"): figures(11_000.0, 11_000.0, PACKS),
    ("honey_price", "low"): figures(9_300.0, 9_000.0, FEWER, spend=250.0),
    ("circuit_days", "low"): {"same": True},
}


def test_what_costs_most_comes_first_and_is_named(told):
    section = told(TOLD)
    assert [row.key for row in section.rows] == ["honey_price", "survival_share", "circuit_days"]
    assert section.first == ("honey_price", "survival_share")
    assert "price of a pound of honey and colonies that come through" in section.sentences[0]


def test_an_end_says_what_would_be_ordered_and_what_keeping_costs(told):
    low = told(TOLD).row("survival_share").low
    assert low.changes == {"ok-deep-5": (6, 2)}
    assert (low.spend, low.worth, low.regret) == (Decimal("-350.00"), Decimal("-1860.00"), Decimal("140.00"))
    assert low.regret_most == Decimal("145.00")
    assert low.sentence == (
        "If only 54\N{NO-BREAK SPACE}% of colonies come through the winter instead of 69\N{NO-BREAK SPACE}%, you would "
        "order 20 ten-frame deep boxes in pieces fewer; the order as it stands would then cost you $140 a season "
        "against the best."
    )


def test_an_order_that_stands_says_so_and_its_bar_is_zero(told):
    high = told(TOLD).row("survival_share").high
    assert (high.changes, high.regret, high.spend) == ({}, 0, 0)
    assert high.sentence.endswith("the order would stay as it is.")


def test_an_answer_that_touches_nothing_has_zero_bars(told):
    low = told(TOLD).row("circuit_days").low
    assert (low.spend, low.worth, low.regret, low.regret_most, low.changes) == (0, 0, 0, 0, {})
    assert "nothing would change" in low.sentence


def test_what_the_time_did_not_reach_is_named(told):
    section = told(TOLD)
    assert section.not_reached == ("how much dearer gear is in season",)
    assert section.sentences[-1].startswith("Time was up before 1 answer could be tried")


def test_an_end_that_could_not_be_judged_is_left_out(told):
    section = told({**TOLD, ("honey_price", "high"): {"why": "a must is left undone"}})
    assert section.row("honey_price").high is None


def test_where_nothing_matters_it_says_so(told):
    section = told({("circuit_days", "low"): {"same": True}})
    assert section.first == ()
    assert section.sentences[0].startswith("None of the answers tried")


def test_a_keepers_own_choices_are_told_apart(answers):
    left = chosen(Beliefs(operation=operation(), assumptions=answers()), DOUBTS)
    assert "How many colonies do you want going into next winter?" in left
    assert "What is a pound of honey worth to you in the tank?" not in left
