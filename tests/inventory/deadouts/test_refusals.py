"""Every refusal carries its figures and ends in what to do."""

import inspect
from string import Formatter

import pytest

from apiary.errors import Refused
from inventory.deadouts import refusals

ALL = [
    kind
    for _name, kind in inspect.getmembers(refusals, inspect.isclass)
    if issubclass(kind, Refused) and kind is not Refused
]


@pytest.mark.parametrize("kind", ALL)
def test_each_is_one_sentence_made_of_its_figures(kind):
    figures = {name: f"<{name}>" for _, name, _, _ in Formatter().parse(kind.sentence) if name}
    told = str(kind(**figures))
    assert all(figure in told for figure in figures.values())
    assert kind is refusals.NoCareNeeded or told.endswith(".")


@pytest.mark.parametrize("kind", ALL)
def test_a_figure_left_out_is_a_bug(kind):
    if "{" in kind.sentence:
        with pytest.raises(TypeError, match="lacks"):
            kind()
