"""A doubt is a plain record that cannot be changed."""

import dataclasses

import pytest

from planner.beliefs.doubt import PLUS, Doubt


def test_a_doubt_says_judgement_unless_it_has_a_source():
    doubt = Doubt(key="x", name="a thing", said="a thing is {value}")
    assert (doubt.kind, doubt.source) == (PLUS, "judgement")
    with pytest.raises(dataclasses.FrozenInstanceError):
        doubt.low = 1
