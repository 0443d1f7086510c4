"""How good an order is known to be, said plainly."""

from dataclasses import replace
from decimal import Decimal

import pytest

from planner.plan.facts import Facts
from planner.plan.records import Rival
from planner.plan.standing import bad_year, gap_words, mean_worth, standing_of
from planner.trial import WithoutBudget
from tests.planner.plan import small


def facts(problem=None, **changed):
    return Facts(
        operation=small.operation(),
        assumptions=small.assumptions(),
        problem=problem or small.problem(),
        plan=small.plan(**changed),
    )


def rival(gain, packs=None):
    return Rival(
        name="buying nothing now",
        how="by hand",
        spend=Decimal(0),
        worth=Decimal(200) - gain,
        gain=Decimal(gain),
        bad_year=Decimal(0),
        packs=packs or {},
    )


def test_the_worst_of_twenty_is_the_mean_of_the_worst_five_seasons_of_100():
    """Four seasons of equal chance, 50 to 350: the worst twentieth lies in the worst; the worst half is 50 and 150."""
    assert bad_year(small.plan(), small.problem()) == 50
    assert bad_year(small.plan(), small.problem(), share=0.5) == 100


@pytest.mark.parametrize(
    ("status", "said"),
    [
        ("optimal", "Proven best"),
        ("within_gap", "Proven to 0.05\N{NO-BREAK SPACE}%"),
        ("time_limit", "Time ran out: this is the best order found so far"),
    ],
)
def test_each_status_is_said_in_words(status, said):
    assert standing_of(facts(status=status)).said.startswith(said)


def test_a_gap_is_never_said_to_be_nothing():
    assert gap_words(0.00002) == "less than 0.01\N{NO-BREAK SPACE}%"
    assert gap_words(None) == ""


def test_a_gain_and_a_loss_are_told_apart_and_the_judge_named():
    more, judged = standing_of(facts(), [rival(50)]).sentences
    assert more == "Worth $50 a season more than buying nothing now (by hand)."
    assert "the same 4 seasons it was planned with" in judged
    less, _ = standing_of(facts(), [rival(-7)]).sentences
    assert less.startswith("Worth $7 a season less than")


def test_an_order_is_not_compared_with_itself():
    same = rival(0, {"north-box": 2, "north-sugar": 1})
    assert standing_of(facts(), [same]).sentences == ()


def test_a_budget_that_binds_says_what_it_holds_back():
    free = WithoutBudget(spend=Decimal(900), worth=Decimal(260))
    (said,) = standing_of(facts(), without_budget=free).sentences
    assert said == "Without the budget of $250 the best order spends $900 and is worth $60 a season more."


def test_an_empty_purse_says_what_buying_nothing_costs():
    free = WithoutBudget(spend=Decimal(900), worth=Decimal(260))
    none = facts(replace(small.problem(), budget=0.0))
    assert "Buying nothing costs about $60 a season" in standing_of(none, without_budget=free).sentences[0]


def test_with_a_weight_on_bad_years_the_worth_is_still_the_mean_seasons():
    """The objective then holds bad years too: 50, 150, 250 and 350 of equal chance are 200 in the mean season."""
    weighed = small.problem(bad_years={"weight": 0.5, "share": 0.25})
    assert mean_worth(small.plan(objective=125.0, bound=125.0), weighed) == 200
    assert mean_worth(small.plan(objective=200.0), small.problem()) == 200
