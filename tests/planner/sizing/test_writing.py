"""Problems written: what is read back is the same problem, defaults left out."""

import json
import random

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.sizing.reading import problem_of, read
from planner.sizing.writing import as_json, dump
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import full, small


def test_a_full_file_is_written_as_it_was_read():
    data = full()
    again = as_json(problem_of(data))
    data.pop("whole_uses")  # false is the default
    data["scenarios"][0]["uses"][1].pop("must")
    assert again == data


def test_defaults_are_left_out():
    assert as_json(problem_of(small())) == small()


@given(seed=st.integers(0, 10**9))
@settings(max_examples=150, deadline=None)
def test_any_problem_comes_back_the_same(seed):
    problem = problem_of(random_problem(random.Random(seed)))
    assert read(dump(problem)) == problem
    assert problem_of(as_json(problem)) == problem


@given(
    value=st.floats(-1e14, 1e14, allow_nan=False),
    price=st.floats(0, 1e14),
    code=st.text(min_size=1).filter(str.strip),
)
@settings(max_examples=100, deadline=None)
def test_numbers_and_codes_come_back_to_the_last_digit(value, price, code):
    prices = [{"from_packs": 1, "price": price}]
    data = small(use={"value": value, "code": code}, offer={"prices": prices})
    problem = problem_of(data)
    assert read(dump(problem)) == problem
    assert problem.scenarios[0].uses[0].value == value


def test_the_text_is_plain_json_with_a_line_break_at_the_end():
    text = dump(problem_of(small(money="€")))
    assert text.endswith("}\n")
    assert json.loads(text)["money"] == "€"
