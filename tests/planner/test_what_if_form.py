"""The form of a what-if: what is typed, and what is refused."""

import pytest

from planner.what_if_form import AgainForm, WhatIfForm
from tests.planner import made, outfit


@pytest.fixture
def done(db):
    outfit.make_outfit()
    return made.make_done_run(outfit.make_season(), day=outfit.DAY)


def wanted(run, **typed):
    form = WhatIfForm(run, typed)
    assert form.is_valid(), form.errors
    return form.cleaned_data["wanted"]


def test_what_is_left_empty_is_not_supposed(done):
    assert wanted(done) == {}
    assert wanted(done, prices_of="all") == {}


def test_shares_are_typed_per_cent_and_prices_by_supplier(done):
    found = wanted(
        done, survival="55", target="20", budget="900", prices_of="mill", percent="-10", without="bees"
    )
    assert found == {
        "budget": "900",
        "answers": {"survival_share": 0.55, "target_colonies": 20},
        "prices": {"mill": -10},
        "without": ["bees"],
    }


@pytest.mark.parametrize(
    ("field", "typed"),
    [("survival", "120"), ("budget", "-1"), ("percent", "-95"), ("without", "nobody"), ("target", "many")],
)
def test_what_will_not_do_is_told_at_its_field(done, field, typed):
    assert list(WhatIfForm(done, {field: typed}).errors) == [field]


def test_a_day_must_be_a_day():
    assert AgainForm({"day": "soon"}).errors and AgainForm({"day": "2025-03-01"}).is_valid()
