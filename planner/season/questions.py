"""All questions of the season, in the order they are asked, and the same with a region's defaults filled in."""

from dataclasses import replace

from planner.season.asked.bees import BEES, SPLITS
from planner.season.asked.feed import FEED
from planner.season.asked.flow import FLOW
from planner.season.asked.gear import GEAR
from planner.season.asked.money import MONEY, RISK, WORK
from planner.season.question import GROUPS, JUDGEMENT, Question
from planner.season.regions import region_of

__all__ = ["GROUPS", "JUDGEMENT", "QUESTIONS", "Question", "question_of", "questions_for"]

QUESTIONS = (*BEES, *SPLITS, *FLOW, *GEAR, *FEED, *MONEY, *RISK, *WORK)

_BY_KEY = {question.key: question for question in QUESTIONS}


def question_of(key):
    """The question of that key; KeyError if none."""
    return _BY_KEY[key]


def questions_for(region):
    """The questions with the defaults of a region (its code or the keeper's word for it)."""
    row = region_of(region)

    def filled(question):
        if question.key == "region":
            return replace(question, default=row.code)
        if question.default is None and hasattr(row, question.key):
            return replace(question, default=getattr(row, question.key))
        return question

    return tuple(filled(question) for question in QUESTIONS)
