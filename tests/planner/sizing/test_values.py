"""Values that need to know the codes and the horizon."""

from planner.sizing import values
from planner.sizing.faults import WRONG, Checks
from planner.sizing.forms import Known

KNOWN = Known(frozenset({"box"}), frozenset({"shed"}), frozenset({"mill"}), 3)
NOTHING = Known(None, None, None, None)


def test_codes_are_not_judged_where_their_own_list_is_faulty():
    assert values.part(Checks(), "x", "lid", NOTHING) == "lid"
    assert values.part(Checks(), "x", "lid", KNOWN) is WRONG


def test_periods_are_judged_against_the_horizon_where_it_is_known():
    assert values.period(Checks(), "x", 7, NOTHING) == 7
    assert values.period(Checks(), "x", 3, KNOWN) is WRONG
    assert values.lead(Checks(), "x", 2, KNOWN) == 2
    assert values.lead(Checks(), "x", 3, KNOWN) is WRONG


def test_a_cost_may_be_one_number_or_one_a_period():
    assert values.amount_or_list(Checks(), "x", 2, KNOWN) == 2.0
    assert values.amount_or_list(Checks(), "x", [1, 2, 3], KNOWN) == (1.0, 2.0, 3.0)
    assert values.amount_or_list(Checks(), "x", [1, 2], KNOWN) is WRONG


def test_null_is_a_value_only_where_it_may_be_one():
    assert values.or_null(values.amount)(Checks(), "x", None, KNOWN) is None
    assert values.amount(Checks(), "x", None, KNOWN) is WRONG
    assert values.or_null(values.location)(Checks(), "x", "barn", KNOWN) is WRONG
