"""File names: safe on every desktop, whatever was typed."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.printed import file_name


@pytest.mark.parametrize(
    ("words", "name"),
    [
        (("order", 7, "North Woodware (invented)"), "order-7-north-woodware-invented.xlsx"),
        (("Müller & Söhne",), "muller-sohne.xlsx"),
        (("../../etc/passwd",), "etc-passwd.xlsx"),
        (('a"; x=\r\n',), "a-x.xlsx"),
        (("CON",), "order-con.xlsx"),
        (("מכוורת",), "order.xlsx"),
    ],
)
def test_only_letters_figures_and_hyphens_are_left(words, name):
    assert file_name(*words, ending="xlsx") == name


@given(st.text(max_size=300))
def test_any_words_give_a_short_safe_name(words):
    assert re.fullmatch(r"[a-z0-9][a-z0-9-]{0,90}\.zip", file_name(words, ending="zip"))
