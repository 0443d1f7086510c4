"""Refusals carry their figures and say one clear sentence."""

import datetime as dt

import pytest

from apiary.errors import ColonyEnded, FutureDay, Refused, SameYard, Several, refuse

DAY = dt.date(2025, 6, 1)


def test_a_refusal_says_its_figures_in_a_sentence_with_the_day_written_out():
    problem = ColonyEnded(colony="A1", ended_on=DAY, day=dt.date(2025, 6, 12))
    assert str(problem).startswith(
        "Colony A1 ended on 1 June 2025: this cannot be done to it on 12 June 2025."
    )
    assert (problem.colony, problem.ended_on) == ("A1", DAY)


def test_a_refusal_without_one_of_its_figures_is_a_bug():
    with pytest.raises(TypeError, match="today"):
        FutureDay(day=DAY)


def test_a_figure_a_refusal_does_not_carry_is_an_attribute_error():
    with pytest.raises(AttributeError):
        _ = FutureDay(day=DAY, today=DAY).colony
    assert not hasattr(Refused(what="no"), "colony")


def test_one_problem_is_raised_as_itself_and_several_together():
    first, second = FutureDay(day=DAY, today=DAY), SameYard(colony="A1", yard="Creek", day=DAY)
    refuse([])
    with pytest.raises(FutureDay) as alone:
        refuse([first])
    assert alone.value.problems == (first,)
    with pytest.raises(Several) as both:
        refuse([first, second])
    assert both.value.problems == (first, second)
    assert str(both.value) == f"{first} {second}"


def test_braces_in_what_people_typed_do_no_harm():
    assert "{x}" in str(SameYard(colony="{x}", yard="Creek", day=DAY))
