"""Each refusal about bees and gear is one sentence that says what to do."""

import pytest

from apiary.errors import Refused
from inventory.yardwork import refusals

ALL = [
    word
    for word in vars(refusals).values()
    if isinstance(word, type) and word.__module__ == refusals.__name__
]


@pytest.mark.parametrize("refusal", ALL, ids=lambda refusal: refusal.__name__)
def test_a_refusal_tells_what_and_what_to_do(refusal):
    assert issubclass(refusal, Refused)
    what, sign, advice = refusal.sentence.partition(": ")
    assert what
    assert sign
    assert advice.endswith(".")


def test_there_are_some():
    assert len(ALL) >= 15
