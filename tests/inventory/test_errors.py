"""Every refusal of the ledger says a sentence, and a breach of the books is a bug, not a refusal."""

from string import Formatter

import pytest

from inventory import errors
from inventory.errors import AppendOnly, DoesNotFit, Refused, Several

NAMED = sorted(
    name
    for name in errors.__all__
    if isinstance(getattr(errors, name), type) and issubclass(getattr(errors, name), Refused)
)


@pytest.mark.parametrize("name", sorted(set(NAMED) - {"Refused", "Several"}))
def test_each_refusal_carries_its_figures_and_ends_as_a_sentence(name):
    refusal = getattr(errors, name)
    figures = {field: field for _, field, _, _ in Formatter().parse(refusal.sentence) if field}
    problem = refusal(**figures)
    assert figures
    assert all(getattr(problem, figure) == figure for figure in figures)
    assert str(problem).endswith(".")
    assert len(str(problem)) > 30


def test_a_misfit_carries_both_widths():
    problem = DoesNotFit(part="deep box", onto="A1", width=8, wanted_width=10)
    assert str(problem) == (
        "deep box does not fit colony A1: it is 8 frames wide and the hive takes 10. "
        "Widths never mix: choose gear for 10 frames."
    )


def test_an_edit_of_the_books_is_a_bug():
    assert not issubclass(AppendOnly, Refused)
    assert issubclass(Several, Refused)
