"""Checks of single values, and how faults are shown."""

import pytest

from planner.sizing.faults import WRONG, Checks, Faults, a_list, shown


def test_all_messages_are_in_the_exception_s_text():
    faults = Faults(["a: is missing", "b: is missing"])
    assert str(faults) == "a: is missing\nb: is missing"
    assert faults.messages == ["a: is missing", "b: is missing"]


def test_a_long_value_is_cut():
    assert shown("x" * 100) == '"' + "x" * 56 + "..."
    assert shown({1, 2}) == "{1, 2}"


def test_lists_read_as_a_sentence():
    assert a_list(["a"]) == "a"
    assert a_list(["a", "b", "c"]) == "a, b or c"


@pytest.mark.parametrize("value", [True, "3", None, float("nan"), float("inf"), 1e16, 10**400, [1]])
def test_what_is_no_plain_number_is_wrong(value):
    checks = Checks()
    assert checks.number("x", value) is WRONG
    assert len(checks.messages) == 1
    assert checks.messages[0].startswith("x: must be a number")


def test_a_whole_number_may_be_written_with_a_point():
    assert Checks().whole("x", 3.0) == 3
    checks = Checks()
    assert checks.whole("x", 3.5) is WRONG
    assert checks.whole("x", False) is WRONG
    assert checks.whole("x", float("inf")) is WRONG
    assert len(checks.messages) == 3


def test_limits_are_part_of_the_sentence():
    checks = Checks()
    checks.number("x", -1, lowest=0)
    checks.number("x", 0, above=0)
    checks.number("x", 2, lowest=0, highest=1)
    assert checks.messages == [
        "x: must be a number ≥ 0, got -1",
        "x: must be a number > 0, got 0",
        "x: must be a number 0 to 1, got 2",
    ]
