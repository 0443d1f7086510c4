"""An evening booked: all of it or nothing, once, in the order of its days, the same as its acts one by one."""

import datetime as dt

import pytest
from django.db import transaction
from hypothesis import HealthCheck, event, given, settings
from hypothesis import strategies as st

from inventory import stock
from inventory.catching_up.acts import post_row
from inventory.catching_up.known import Known
from inventory.catching_up.posting import EveningRefused, acts_of, post_evening, undo_evening
from inventory.catching_up.reading import read_rows
from inventory.errors import LoanCameBack, NothingGiven, Refused
from inventory.gear import Gear
from inventory.ledger import Return, take_back
from inventory.models import Act, Feeding, Holding, Loan, Movement
from tests import makers
from tests.inventory.catching_up.made import DAY, row

pytestmark = pytest.mark.django_db
LATER = DAY + dt.timedelta(days=3)


def evening(*rows, **changed):
    return post_evening(rows, **{"who": None, "key": "evening", **changed})


def boxes(ground):
    return stock.on_hand(ground).get(Gear(part="box-medium-10"), 0)


def yard(code="fern-hollow"):
    return makers.Yard.objects.get(code=code)


def test_rows_are_booked_on_their_own_days_in_the_order_of_the_days(outfit):
    acts = evening(
        row(1, "place", "F-01", "box-medium-10", 2, "fern-hollow", day=LATER),
        row(2, "haul", "shed", "box-medium-10", 2, "fern-hollow"),
    )
    assert [(act.name, act.day) for act in acts] == [("haul", DAY), ("place", LATER)]
    assert acts_of("evening") == acts
    assert boxes(yard()) == 0


def test_the_same_form_sent_twice_books_once(outfit):
    rows = [row(1, "haul", "shed", "box-medium-10", 2, "fern-hollow"), row(2, "feed", "F-01", "2:1", 1)]
    first = evening(*rows)
    assert evening(*rows) == first
    assert (boxes(yard()), Feeding.objects.count()) == (2, 1)


def test_one_bad_row_and_nothing_is_booked_with_every_fault_by_row(outfit):
    before = Act.objects.count()
    with pytest.raises(EveningRefused) as refused:
        evening(
            row(1, "haul", "shed", "box-medium-10", 2, "fern-hollow"),
            row(2, "place", "F-01", "box-deep-8", 1),
            row(3, "haul", "shed", "box-medium-10", 1, "shed"),
            row(4, "place", "F-99", "box-medium-10", 1),
            row(5, "place", "F-01", "box-medium-10", 1, day=dt.date(2999, 1, 1)),
            row(6, "feed", "F-01", "2:1", 1, day=dt.date(2025, 3, 1)),
        )
    faults = refused.value.faults
    assert list(faults) == [2, 3, 4, 5, 6]
    assert "8 frames wide" in faults[2][0] and "both ends" in faults[3][0] and "F-99" in faults[4][0]
    assert "still to come" in faults[5][0] and "started on" in faults[6][0]
    assert (Act.objects.count(), boxes(yard()), Feeding.objects.count()) == (before, 0, 0)
    assert str(refused.value).startswith("row 2: ")


def test_what_the_book_has_not_is_asked_about_then_booked_as_found(outfit):
    rows = [
        row(1, "haul", "shed", "box-medium-10", 25, "fern-hollow"),
        row(2, "mend", "shed", "box-medium-10", 1),
    ]
    with pytest.raises(EveningRefused) as refused:
        evening(*rows)
    assert [(problem.wanted, problem.booked) for problem in refused.value.short] == [(25, 20)]
    evening(*rows, found_allowed=True)
    assert boxes(yard()) == 25
    assert [movement.quantity for movement in stock.found_gear()] == [5]


def test_a_check_books_nothing_and_the_same_key_books_afterwards(outfit):
    rows = [row(1, "haul", "shed", "box-medium-10", 2, "fern-hollow")]
    assert len(evening(*rows, only_check=True)) == 1
    assert boxes(yard()) == 0
    assert len(evening(*rows)) == 1


def test_an_empty_table_is_refused_and_so_is_a_key_too_long(outfit):
    with pytest.raises(NothingGiven):
        evening(row(1, "haul"))
    with pytest.raises(ValueError, match="50 letters"):
        evening(row(1, "haul"), key="k" * 51)


def test_a_helper_books_no_row_of_a_yard_that_is_not_theirs(outfit):
    helper = makers.make_person("helper", role="helper", yards=[yard()])
    with pytest.raises(EveningRefused) as refused:
        evening(row(1, "place", "F-01", "box-medium-10", 1, "shed"), who=helper)
    assert "'shed' is not a store of the books" in refused.value.faults[1][0]
    with pytest.raises(EveningRefused) as refused:
        evening(row(1, "take-off", "F-01", "box-deep-10", 1), row(2, "feed", "L-01", "2:1", 1), who=helper)
    assert list(refused.value.faults) == [2]


def test_an_evening_is_undone_as_one_and_once(outfit):
    evening(
        row(1, "haul", "shed", "box-medium-10", 2, "fern-hollow"),
        row(2, "place", "F-01", "box-medium-10", 2, "fern-hollow"),
        row(3, "brood-box", "F-02", "", 1),
    )
    sets = makers.Colony.objects.get(tag="F-02").hive_set
    assert len(undo_evening("evening", who=None)) == 3
    assert (boxes(outfit), boxes(yard())) == (20, 0)
    assert makers.Colony.objects.get(tag="F-02").hive_set.deep_boxes == 2 <= sets.deep_boxes
    assert undo_evening("evening", who=None) == []


def test_an_evening_that_cannot_be_undone_stays_whole(outfit):
    evening(row(1, "lend", "shed", "excluder-10", 2, "A. Neighbour"), row(2, "use", "shed", "jar", 5))
    take_back(
        loan=Loan.objects.get(),
        into=outfit,
        returns=[Return(part="excluder-10", sound=1)],
        day=LATER,
        who=None,
        key="back",
    )
    with pytest.raises(LoanCameBack):
        undo_evening("evening", who=None)
    assert not Act.objects.filter(reverses__isnull=False).exists()


COLONIES, HIVES = ("F-01", "F-02", "L-01"), ("F-01", "F-02", "L-01", "fern-hollow")
YARDS, PIECES = ("fern-hollow", "long-acre"), ("box-medium-10", "super-medium-10", "excluder-10", "sugar")
DAYS = st.integers(0, 6).map(lambda number: DAY + dt.timedelta(days=number))
FEW = st.integers(1, 4)


def rows_of(act, places, gear, others=("",)):
    return st.tuples(st.just(act), *map(st.sampled_from, (places, gear)), FEW, st.sampled_from(others))


ROWS = st.one_of(
    rows_of("haul", ("shed",), PIECES, YARDS),
    rows_of("haul", YARDS, PIECES, ("shed", "long-acre")),
    rows_of("place", COLONIES, ("box-medium-10", "super-medium-10", "excluder-10"), ("", *YARDS)),
    rows_of("take-off", COLONIES, ("box-deep-10", "comb-deep-brood", "excluder-10"), ("", *YARDS)),
    rows_of("super-up", (*HIVES, "N-01"), ("",)),
    rows_of("pull", HIVES, ("",), ("", *YARDS)),
    rows_of("feed", HIVES, ("1:1", "2:1", "sugar", "patty")),
    rows_of("mend", ("shed",), ("box-medium-10",)),
    rows_of("scrap", ("shed", "F-01"), ("excluder-10", "box-deep-8")),
    rows_of("draw", COLONIES, ("comb-medium-honey",)),
)
TABLES = st.lists(st.tuples(ROWS, DAYS), min_size=1, max_size=5)


class Rolled(Exception):
    """Ends one try."""


def one_by_one(rows, found_allowed):
    """What the acts by themselves book, in the order of their days; None where one of them is refused."""
    told, faults = read_rows(rows, Known())
    if faults:
        return None
    for each in sorted(told, key=lambda each: (each.day, each.number)):
        try:
            post_row(each, who=None, key=makers.fresh_key(), found_allowed=found_allowed)
        except Refused:
            return None
    return books()


def as_evening(rows, found_allowed):
    try:
        evening(*rows, found_allowed=found_allowed)
    except EveningRefused:
        return None
    return books()


def ground(end):
    return f"{end}__kind", f"{end}__yard__code", f"{end}__colony__tag"


def books():
    """All that is booked: balances, movements and shares of feed, places by their names: numbers are not given twice."""
    holdings = Holding.objects.filter(quantity__gt=0)
    where = holdings.values_list(*ground("location"), "part__code", "condition", "quantity")
    moved = Movement.objects.order_by("pk").values_list(
        "day", "part", "condition", "quantity", *ground("source"), *ground("target"), "reason", "found"
    )
    return (
        sorted(where, key=str),
        list(moved),
        list(Feeding.objects.order_by("pk").values_list("colony", "feed", "quantity")),
    )


def rolled(book, rows, found_allowed):
    """What `book` leaves in the books, which are as before afterwards."""
    result = None
    try:
        with transaction.atomic():
            result = book(rows, found_allowed)
            raise Rolled
    except Rolled:
        return result


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(table=TABLES, found_allowed=st.booleans())
def test_an_evening_equals_the_same_acts_one_by_one(outfit, table, found_allowed):
    rows = [row(number, *words, day=day) for number, (words, day) in enumerate(table, start=1)]
    before = books()
    alone, together = rolled(one_by_one, rows, found_allowed), rolled(as_evening, rows, found_allowed)
    event("booked" if together else "refused")
    assert alone == together
    assert books() == before
