"""Beliefs rest on questions that are asked; answers read as one says them."""

from planner.plan.beliefs import BELIEFS, answer_words, assumption_rows, beliefs_of, own_answers
from planner.season.questions import QUESTIONS, question_of
from tests.planner.plan import small


def test_every_belief_is_the_answer_to_a_question():
    keys = {question.key for question in QUESTIONS}
    assert {key for told in BELIEFS.values() for key, _ in told} <= keys


def test_every_kind_of_belief_can_be_said():
    for kind in BELIEFS:
        (said,) = beliefs_of((kind,), small.assumptions())
        assert said.startswith("This assumes that 70") and "{" not in said


def test_every_question_has_a_row():
    rows = assumption_rows(small.assumptions(circuit_days=10))
    assert [row.key for row in rows] == [question.key for question in QUESTIONS]
    assert [row.key for row in rows if row.own] == ["circuit_days"]


def test_the_target_left_open_is_said_as_today():
    assert answer_words(question_of("target_colonies"), None) == "as today"
    (said,) = beliefs_of(("hive",), small.assumptions())
    assert "that you want as many colonies as now in autumn" in said


def test_answers_read_as_one_says_them():
    assert answer_words(question_of("second_box"), True) == "yes"
    assert answer_words(question_of("combs_in_super"), 9) == "nine"
    assert answer_words(question_of("honey_price"), 2.6) == "2.60"
    assert answer_words(question_of("honey_market_lb"), 1_000_000) == "1,000,000"


def test_an_answer_equal_to_the_default_is_no_answer_of_ones_own():
    assert own_answers(small.assumptions(survival_share=0.7)) == set()


def test_winters_of_ones_own_stand_among_the_answers_and_in_the_belief():
    told = small.assumptions(winters="60/54, 70/63, 80/72")
    rows = {row.key: row for row in assumption_rows(told)}
    assert (rows["winters"].value, rows["winters"].own) == ("60/54, 70/63, 80/72", True)
    assert (rows["winters"].default, rows["survival_share"].own) == ("not told", True)
    (said,) = beliefs_of(["split"], told)
    share = rows["survival_share"].value
    assert f"that {share} of colonies come through the winter (the average of your 3 winters, " in said
    assert "that 20\xa0% of them are gone by autumn" in said
