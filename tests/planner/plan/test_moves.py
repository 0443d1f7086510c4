"""One pack more, one pack fewer: figures to the cent, and words that never say other than the figures."""

import re
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.plan import report_of
from planner.plan.facts import Facts
from planner.plan.moves import aside_of, move_of, moves_by_line, pack_of, packs_word, told
from tests.planner.plan import small
from tests.planner.plan.neighbours import moved, nearby

SUM = re.compile(r"\$([\d,]+(?:\.\d\d)?)")
money = st.floats(-3000, 3000).map(lambda value: round(value, 2))


def facts(**changed):
    return Facts(
        operation=small.operation(),
        assumptions=small.assumptions(),
        problem=small.problem(),
        plan=small.plan(),
        **changed,
    )


def said(**changed):
    return move_of(moved(**changed), "pack of 5", "USD").sentence


def test_a_pack_that_earns_less_than_it_costs_is_left():
    assert said() == "One pack of 5 more costs $72 and should earn $42, so leave it."


def test_a_pack_that_is_worth_more_than_it_saves_is_kept():
    assert said(step=-1, cost=-72.5, worth=-120.0) == (
        "One pack of 5 fewer saves $72 and loses $192, so keep it."
    )


def test_both_moves_of_a_line_are_one_sentence_in_its_reason():
    report = report_of(small.operation(), small.assumptions(), small.problem(), small.plan(), nearby=nearby())
    line = report.lines[0]
    assert line.why.moves_said == (
        "One pack of 5 more costs $72 and should earn $42, so leave it; "
        "one fewer saves $65 (the price a pack rises) and loses $185, so keep it."
    )
    assert line.why.moves_said in line.why.text
    assert [move.step for move in line.why.moves] == [1, -1]
    assert (line.why.moves[0].cost, line.why.moves[0].earned) == (Decimal("72.50"), Decimal("42.50"))


def test_a_pack_past_the_budget_says_so_and_what_it_would_earn():
    assert said(worth=30.0, over_budget=22.5) == (
        "One pack of 5 more costs $72 and breaks the budget by $22; it should earn $102."
    )
    assert said(over_budget=22.0).endswith("by $22; it should earn $42, so leave it.")


def test_limits_of_an_offer_are_told_without_figures():
    assert said(limit="most") == "One pack of 5 more cannot be had: 2 is the most that may be ordered."
    assert said(step=-1, limit="least", packs=0) == (
        "One pack of 5 fewer cannot be: there is no pack to take off."
    )
    assert move_of(moved(limit="most"), "", "USD").can_be is False


def test_a_pack_without_which_what_must_be_done_is_left_undone_stays():
    assert said(step=-1, served=False) == (
        "One pack of 5 fewer will not do: what must be done would be left undone."
    )


def test_a_pack_that_reaches_a_lower_price_brings_the_bill_down():
    assert said(cost=-12.0, worth=7.0) == (
        "One pack of 5 more brings the bill down by $12 and loses $5, so it would pay."
    )
    assert "and loses $20, so leave it" in said(cost=-12.0, worth=-8.0)


def test_a_pack_off_that_loses_a_lower_price_makes_the_bill_dearer():
    assert said(step=-1, cost=12.0, worth=-52.0) == (
        "One pack of 5 fewer makes the bill $12 dearer and loses $40, so keep it."
    )
    assert "breaks the budget by $8; it loses" in said(step=-1, cost=12.0, worth=-52.0, over_budget=8.0)


@pytest.mark.parametrize(
    ("cost", "worth", "words"),
    [
        (71.4, -0.1, "costs $71.40 and should earn $71.30, so leave it"),
        (71.4, 0.0, "costs $71 and should earn $71: take it or leave it"),
        (3.2, -3.2, "costs $3.20 and should earn nothing, so leave it"),
    ],
)
def test_sums_that_whole_would_look_alike_are_told_with_their_cents(cost, worth, words):
    assert words in said(cost=cost, worth=worth)


def sums(text):
    return [Decimal(found.replace(",", "")) for found in SUM.findall(text)]


@given(money, money, st.sampled_from([1, -1]), st.sampled_from([0.0, 0.01, 17.5, 400.0]))
def test_words_never_contradict_the_figures(cost, worth, step, over):
    move = move_of(moved(step=step, cost=cost, worth=worth, over_budget=over), "pack of 5", "USD")
    earns_less = move.earned < move.cost
    advice = "leave it." if step > 0 else "keep it."
    assert move.sentence.endswith(f"so {advice}") == earns_less
    assert ("would pay" in move.said or "could go" in move.said) <= (move.earned > move.cost)
    assert ("breaks the budget" in move.said) == (over > 0)
    shown = [abs(each) for each in sums(re.sub(r"breaks the budget by \S+", "", move.said))]
    if len(shown) == 2 and move.earned != move.cost:  # the two sums told compare as the true ones do
        true = [abs(move.cost), abs(move.earned)]
        assert (shown[0] < shown[1]) == (true[0] < true[1])


@given(money, money)
def test_two_sums_that_differ_are_never_told_alike(one, other):
    one, other = Decimal(str(one)), Decimal(str(other))
    say = told("USD", one, other)
    if abs(one) != abs(other):
        assert say(abs(one)) != say(abs(other))


def test_shipping_and_price_steps_that_turn_the_bill_are_named():
    """Two packs at 72.50; one alone costs 80. What is left of the bill's change is shipping."""
    for step, cost, words in (
        (-1, -65.0, " (the price a pack rises)"),
        (-1, -41.0, " ($24 of shipping falls due and the price a pack rises)"),
        (1, 48.5, " ($24 of shipping falls away)"),
        (1, 72.5, ""),
    ):
        assert aside_of(moved(step=step, cost=cost), facts()) == words
    assert aside_of(moved(limit="most"), facts()) == ""
    told_ = moves_by_line(nearby(moves=(moved(-1, 8.0, -60.0), moved(1))), facts())["north-box", 0]
    assert [move.step for move in told_] == [1, -1]
    assert told_[1].said.startswith("makes the bill $8 dearer ($73 of shipping falls due and the price")


def test_packs_are_called_as_they_are_sold():
    assert pack_of("north-box", facts()) == "pack of 5"
    assert pack_of("north-sugar", facts()) == "pack of 50 lb"
    whole = small.operation()
    single = [offer.__class__(**{**vars(offer), "parts": {small.FLAT: 1}}) for offer in whole.offers[:1]]
    kit = [
        offer.__class__(**{**vars(offer), "parts": {small.FLAT: 5, "guard-10": 5}})
        for offer in whole.offers[:1]
    ]
    for offers, words in ((single, ""), (kit, "pack")):
        changed = facts()
        object.__setattr__(changed, "operation", small.operation(offers=tuple(offers)))
        assert pack_of("north-box", changed) == words


def test_a_pack_of_one_is_called_by_its_unit():
    changed = facts()
    glue = small.operation().offers[1]
    one = glue.__class__(**{**vars(glue), "parts": {"sugar": 1}})
    object.__setattr__(changed, "operation", small.operation(offers=(one,)))
    assert pack_of("north-sugar", changed) == "lb"
    assert [packs_word("bottle", count) for count in (1, 2)] == ["bottle", "bottles"]
    assert [packs_word("pack of 5", count) for count in (1, 2)] == ["pack", "packs"]
    assert packs_word("", 2) == ""


def test_a_run_that_did_not_ask_tells_no_moves():
    report = report_of(small.operation(), small.assumptions(), small.problem(), small.plan())
    assert all(line.why.moves == () and line.why.moves_said == "" for line in report.lines)
