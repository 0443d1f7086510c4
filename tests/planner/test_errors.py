"""The planner's refusals read as sentences that say what to do."""

import datetime as dt

import pytest

from planner import errors

FIGURES = {
    "NoShed": {},
    "NoColonies": {"day": dt.date(2027, 1, 15)},
    "NoOffers": {"day": dt.date(2027, 1, 15)},
    "SetWithoutGear": {"sets": "Tall and thin"},
    "NoSuchSeason": {"name": "Winter 1999", "known": "none yet"},
    "NotDone": {"run": 3, "status": "failed"},
    "AlreadyApproved": {"run": 3, "day": dt.date(2027, 1, 15)},
    "Overtaken": {"run": 3, "other": 4},
    "NothingToOrder": {"run": 3},
    "OfferGone": {"offers": "mill-mediums"},
    "AlreadyOver": {"run": 3, "status": "done"},
}


@pytest.mark.parametrize("name", FIGURES)
def test_a_refusal_is_a_sentence_with_its_figures(name):
    text = str(getattr(errors, name)(**FIGURES[name]))
    assert text.endswith(".")
    assert "{" not in text
    for figure in FIGURES[name].values():
        told = f"{figure.day} {figure:%B %Y}" if isinstance(figure, dt.date) else str(figure)
        assert told in text


@pytest.mark.parametrize("status", ["infeasible", "unbounded", "time_limit", "broken"])
def test_no_order_says_in_plain_words_what_happened(status):
    text = str(errors.NoOrderFound(status=status, reason=None))
    assert status not in text or status == "broken"
    assert ": " in text


def test_the_solvers_own_reason_is_passed_on():
    refusal = errors.NoOrderFound(status="infeasible", reason="13 feeders must be there")
    assert str(refusal).endswith("13 feeders must be there")
