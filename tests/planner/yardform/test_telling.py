"""The yard form's judgement in words: both worths rounded alike, the gap told where it says something."""

from decimal import Decimal

from planner.yardform import Judged, not_told, section_of


def told(pooled, by_yard, seasons=60):
    return section_of(Judged(scenarios=seasons, pooled=pooled, by_yard=by_yard), "USD")


def test_the_pools_flattery_is_told_in_money_and_per_cent():
    section = told(21_340.0, 21_289.5)
    assert (section.pooled, section.by_yard, section.seasons) == (Decimal(21340), Decimal(21290), 60)
    assert section.said.replace("\N{NO-BREAK SPACE}", " ") == (
        "Hauling told yard by yard, this order is worth $21,290 a season; reckoned as one pool it looked like $21,340 "
        "(0.2 % more), on the same 60 fresh seasons."
    )


def test_a_pool_that_is_too_modest_is_told_as_less():
    assert "(1.0\N{NO-BREAK SPACE}% less)" in told(990.0, 1000.0).said


def test_forms_that_agree_are_told_as_the_same():
    assert "(the same within a tenth of a per cent)" in told(5000.0, 5000.4).said


def test_beside_a_worth_of_next_to_nothing_no_share_is_told():
    section = told(40.0, 0.5)
    assert "%" not in section.said
    assert section.gap_share == 39.5


def test_a_loss_is_told_as_one():
    section = told(-1_000.0, -1_020.0)
    assert "is worth −$1,020 a season" in section.said
    assert section.gap_share > 0


def test_an_order_not_judged_says_why_and_what_it_was_reckoned_by():
    section = not_told("the time allowed ran out")
    assert section.by_yard is section.pooled is section.gap_share is None
    assert section.said == (
        "Not judged yard by yard: the time allowed ran out. Its worth is reckoned as if all gear lay in one pool."
    )
