"""Tokens stay out of sight: worth nothing, bought nowhere, in no requirement."""

from planner.requirement import by_week
from planner.requirement.tokens import DRAWING, RESTED, TOKENS
from tests.planner.operations import operation


def test_tokens_are_worth_nothing_and_nobody_sells_them(season_problem):
    problem = season_problem(count=2)
    worth = {part.code: part.end_value for part in problem.parts}
    assert worth[DRAWING] == worth[RESTED] == 0
    assert not [offer.code for offer in problem.offers if offer.parts.keys() & set(TOKENS)]


def test_no_requirement_names_a_token(season_problem):
    lines = by_week(operation(), season_problem(count=2))
    assert lines
    assert not {line.part for line in lines} & set(TOKENS)
