"""Names as people write them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.sheets.names import Names, alike, code_of, nearest, suggestion


def test_case_width_and_spaces_do_not_tell_names_apart():
    assert alike(" Mill  FIELD ") == alike("ｍill field")


@pytest.mark.parametrize(
    "name, code",
    [("Mill Field", "mill-field"), ("Élan (north)", "elan-north"), ("数", ""), ("a" * 40, "a" * 30)],
)
def test_codes_are_made_of_names(name, code):
    assert code_of(name) == code


@given(st.text(max_size=80))
def test_a_code_never_begins_or_ends_with_a_hyphen_and_fits(name):
    code = code_of(name)
    assert code == code.strip("-") and len(code) <= 30 and code.isascii()


def test_the_nearest_name_is_found_and_a_far_one_is_not():
    assert nearest("medum box", ["medium box", "deep box"]) == "medium box"
    assert nearest("quilt", ["medium box", "deep box"]) is None


def test_a_suggestion_falls_back_on_what_the_caller_says():
    assert suggestion("Crek", ["Creek"], otherwise="Add it") == "Did you mean 'Creek'? Write that"
    assert suggestion("Ridge", ["Creek"], otherwise="Add it") == "Add it"


def test_things_are_found_by_name_or_code_and_the_name_wins():
    names = Names({"creek": "Hill", "hill": "Bottom"})
    assert (names.code("HILL"), names.code("creek"), names.code("bottom"), names.code("x")) == (
        *("creek", "creek", "hill"),
        None,
    )
