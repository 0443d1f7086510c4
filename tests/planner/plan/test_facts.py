"""What the reasons are read from: chains, owned pieces, days."""

import datetime as dt
from dataclasses import replace

from planner.plan.facts import Facts
from planner.season.operation import OnOrder, PartFacts, StockLine
from tests.planner.plan import small


def facts(**changed):
    return Facts(
        operation=small.operation(**changed),
        assumptions=small.assumptions(),
        problem=small.problem(),
        plan=small.plan(),
    )


def test_the_chain_of_a_box_in_pieces_holds_the_box():
    assert facts().chain(small.FLAT) == {small.FLAT: 1.0, small.BOX: 1.0}
    assert facts().chain(small.BOX) == {small.BOX: 1.0}


def test_what_is_used_up_ends_the_chain_and_is_counted_where_it_is_used():
    parts = tuple(
        replace(part, kind="consumable") if part.code == small.FLAT else part
        for part in small.operation().parts
    )
    nails = facts(parts=parts)
    assert nails.chain(small.FLAT) == {small.FLAT: 1.0}
    assert nails.used_in_making(small.FLAT)[:, -1].tolist() == [0, 2, 0, 10]
    assert not nails.used_in_making(small.BOX).any()


def test_combs_of_treated_colonies_are_owned_as_what_they_are_planned_as():
    combs = (
        PartFacts(code="comb-medium-brood", name="medium drawn brood comb", kind="frame", comb="drawn"),
        PartFacts(
            code="comb-medium-honey-treated", name="was on a treated colony", kind="frame", comb="drawn"
        ),
    )
    stock = (StockLine(part="comb-medium-honey-treated", yard="shed", condition="sound", quantity=40),)
    (owned,) = facts(parts=combs, stock=stock).owned("comb-medium-brood")
    assert owned.sound == 40


def test_days_of_what_is_on_the_way_are_told_once_each():
    day = dt.date(2027, 2, 1)
    coming = tuple(OnOrder(part=small.BOX, quantity=2, due=day, reference=ref) for ref in ("a", "b"))
    assert facts(on_order=coming).due(small.FLAT) == [day]


def test_weeks_count_from_the_day_of_the_order():
    assert facts().day(24) == dt.date(2027, 5, 18)
