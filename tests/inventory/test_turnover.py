"""Opening + in − out = closing, of a place and of a part, whatever was booked in between."""

import datetime as dt

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inventory import ledger
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.turnover import of_part, of_place
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


def on(days):
    return DAY + dt.timedelta(days=days)


def key():
    return makers.fresh_key()


@pytest.fixture
def outfit(db):
    """A shed with 20 stands; 8 went to the yard on day 5, 3 of them came back on day 9, 2 were scrapped on day 12."""
    shed, yard = makers.make_shed(), makers.make_yard("fern-hollow")
    makers.put(shed, {"stand": 20})
    ledger.move(source=shed, target=yard, lines=[Line("stand", 8)], day=on(5), who=None, key=key())
    ledger.move(source=yard, target=shed, lines=[Line("stand", 3)], day=on(9), who=None, key=key())
    ledger.scrap(at=shed, lines=[Line("stand", 2)], day=on(12), who=None, key=key())
    return shed, yard


def figures(row):
    return (row.opening, row.came, row.went, row.closing)


def test_a_place_over_a_period(outfit):
    shed, yard = outfit
    (row,) = of_place(shed, since=on(5), until=on(12))
    assert figures(row) == (20, 3, 10, 13) and row.agrees
    (row,) = of_place(yard, since=on(6), until=on(9))
    assert figures(row) == (8, 0, 3, 5)


def test_the_first_morning_and_the_last_evening_belong_to_the_period(outfit):
    shed, _ = outfit
    (row,) = of_place(shed, since=on(5), until=on(5))
    assert figures(row) == (20, 0, 8, 12)
    (row,) = of_place(shed, since=on(6), until=on(8))
    assert figures(row) == (12, 0, 0, 12)


def test_gear_that_came_and_went_inside_the_period_has_a_row(outfit):
    _, yard = outfit
    makers.put(yard, {"cover-10": 1}, day=on(6))
    ledger.scrap(at=yard, lines=[Line("cover-10", 1)], day=on(7), who=None, key=key())
    rows = {row.address: figures(row) for row in of_place(yard, since=on(6), until=on(8))}
    assert rows == {"stand": (8, 0, 0, 8), "cover-10": (0, 1, 1, 0)}


def test_conditions_are_told_apart(outfit):
    shed, _ = outfit
    ledger.mark(at=shed, lines=[Line("stand", 4)], becomes="to mend", day=on(13), who=None, key=key())
    rows = {row.condition: figures(row) for row in of_place(shed, since=on(13), until=on(13))}
    assert rows == {Condition.SOUND: (13, 0, 4, 9), Condition.TO_MEND: (0, 4, 0, 4)}


def test_a_part_by_store_and_the_outfit_without_its_inner_moves(outfit):
    rows, whole = of_part(makers.part("stand"), since=on(1), until=on(20))
    told = {row.name: figures(row) for row in rows}
    assert told == {"Fern Hollow, store": (0, 8, 3, 5), "Shed, store": (20, 3, 10, 13)}
    assert figures(whole) == (20, 0, 2, 18) and whole.agrees


def test_hives_stand_together_and_moves_between_them_are_in_neither(outfit):
    shed, yard = outfit
    one, other = (makers.make_colony(tag, yard=yard) for tag in ("F-01", "F-02"))
    for colony, day in ((one, 13), (other, 14)):
        ledger.place(source=shed, colony=colony, lines=[Line("stand", 2)], day=on(day), who=None, key=key())
    ledger.take_off(colony=one, target=yard, lines=[Line("stand", 1)], day=on(15), who=None, key=key())
    rows, whole = of_part(makers.part("stand"), since=on(14), until=on(20))
    told = {row.name: figures(row) for row in rows}
    assert told["On hives"] == (2, 2, 1, 3)
    assert all(row.agrees for row in rows) and whole.agrees


def test_a_place_or_part_of_which_nothing_is_known_has_no_rows(outfit):
    assert of_place(makers.make_yard("mill"), since=on(1), until=on(2)) == []
    rows, whole = of_part(makers.part("excluder-10"), since=on(1), until=on(2))
    assert rows == [] and figures(whole) == (0, 0, 0, 0)


moves = st.lists(
    st.tuples(st.integers(0, 20), st.sampled_from(["there", "back", "scrap", "buy"]), st.integers(1, 9)),
    max_size=8,
)


@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(moves=moves, since=st.integers(0, 20), length=st.integers(0, 20))
def test_opening_and_in_less_out_is_closing_on_any_days(db, moves, since, length):
    one, other = makers.make_yard(), makers.make_yard()
    makers.put(one, {"stand": 200})
    makers.put(other, {"stand": 200})
    for day, what, number in moves:
        told = {"lines": [Line("stand", number)], "day": on(day), "who": None, "key": key()}
        if what == "scrap":
            ledger.scrap(at=one, **told)
        elif what == "buy":
            makers.put(one, {"stand": number}, day=on(day))
        else:
            ends = (one, other) if what == "there" else (other, one)
            ledger.move(source=ends[0], target=ends[1], **told)
    period = {"since": on(since), "until": on(since + length)}
    rows, whole = of_part(makers.part("stand"), **period)
    assert all(row.agrees for row in (*rows, *of_place(one, **period), *of_place(other, **period), whole))
