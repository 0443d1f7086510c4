"""Names of columns and rows."""

from hypothesis import given
from hypothesis import strategies as st

from planner.programme.names import Names


def test_codes_that_come_out_alike_get_a_number():
    names = Names()
    assert names.name("packs", "a-b") == "packs_a_b"
    assert names.name("packs", "a b") == "packs_a_b__2"
    assert names.name("packs", "a_b") == "packs_a_b__3"


@given(st.lists(st.text(max_size=60), max_size=30))
def test_no_name_is_given_twice_and_each_is_plain(codes):
    names = Names()
    made = [names.name("use", code) for code in codes] + [names.name("use", code, 1) for code in codes]
    assert len(set(made)) == len(made)
    assert all(name.isascii() and name.replace("_", "a").isalnum() for name in made)
