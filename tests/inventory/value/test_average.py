"""The moving average, against worked examples of textbooks and on random events."""

import datetime as dt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.value import Came, Left, Made, Passed, books_of, carry, value_by_part

DAY = dt.date(2025, 7, 1)
END = dt.date(2026, 7, 1)


def day(number):
    return DAY + dt.timedelta(days=number)


def came(number, pieces, cents, part="box", **more):
    return Came(day=day(number), part=part, pieces=pieces, cents=cents, why="received", **more)


def left(number, pieces, part="box", **more):
    return Left(day=day(number), part=part, pieces=pieces, why="sold", **more)


def worth(events, *, as_of=END, prices=None):
    rows = value_by_part(carry(events, prices or {}), as_of=as_of)
    return {part: (amount.pieces, amount.cents) for part, amount in rows.items()}


def cost_of_sales(events):
    return [-line.cents for line in carry(events, {}) if line.pieces < 0]


def test_units_bought_three_times_and_sold_twice():
    """Franklin, Graybeal and Cooper, Principles of Accounting, Volume 1 (OpenStax, 2019), chapter 10, perpetual
    weighted average, from memory: 150 at $21; 120 sold; 225 at $27; 180 sold; 210 at $33. Sold at a cost of
    $2,520 and $4,733; 285 left, $8,902."""
    events = [came(0, 150, 315000), left(5, 120), came(10, 225, 607500), left(15, 180), came(25, 210, 693000)]
    assert [round(cents / 100) for cents in cost_of_sales(events)] == [2520, 4733]
    pieces, cents = worth(events)["box"]
    assert (pieces, round(cents / 100)) == (285, 8902)


def test_units_of_an_october():
    """A solved textbook exercise on the perpetual weighted average, read second hand: 300 at $8, 175 sold,
    375 at $10, 280 sold: $9.50 a unit after the purchase, $2,660 the cost of the second sale, $2,090 left."""
    events = [came(0, 300, 240000), left(12, 175), came(21, 375, 375000), left(28, 280)]
    assert worth(events, as_of=day(21))["box"] == (500, 475000)
    assert cost_of_sales(events)[1] == 266000
    assert worth(events)["box"] == (220, 209000)


def test_units_of_a_january():
    """A solved textbook exercise on the moving average, read second hand: 9,200 at $9.71, 6,300 at $10.23, 7,400
    sold, 8,200 at $10.69, 11,100 sold: 5,200 left, $53,602 to the nearest dollar."""
    events = [
        came(0, 9200, 8933200),
        came(5, 6300, 6444900),
        left(6, 7400),
        came(25, 8200, 8765800),
        left(30, 11100),
    ]
    pieces, cents = worth(events)["box"]
    assert (pieces, round(cents / 100)) == (5200, 53602)


def test_the_last_piece_takes_all_that_is_left():
    assert worth([came(0, 3, 100), left(1, 1), left(2, 1), left(3, 1)]) == {}
    assert cost_of_sales([came(0, 3, 100), left(1, 1), left(2, 1), left(3, 1)]) == [33, 34, 33]


def test_within_a_day_what_came_counts_before_what_left():
    assert cost_of_sales([left(0, 2), came(0, 4, 400)]) == [200]


def test_found_pieces_come_at_the_average_or_at_the_price_told():
    found = Came(day=day(1), part="box", pieces=2, why="found")
    assert worth([came(0, 4, 400), found]) == {"box": (6, 600)}
    assert worth([found], prices={"box": 70}) == {"box": (2, 140)}


def made(number, takes, makes, **more):
    return Made(day=day(number), takes=takes, makes=makes, why="assembled", **more)


def test_what_is_made_is_worth_what_went_in_and_the_work_told():
    events = [
        came(0, 4, 400),
        came(0, 10, 300, part="nail"),
        made(1, (("box", 2), ("nail", 5)), (("hive", 1),)),
    ]
    assert worth(events)["hive"] == (1, 350)
    events[-1] = made(1, (("box", 2), ("nail", 5)), (("hive", 1),), work_cents=25)
    assert worth(events)["hive"] == (1, 375)


def test_several_things_made_at_once_share_by_what_a_piece_costs():
    events = [came(0, 1, 100), made(1, (("box", 1),), (("lid", 1), ("floor", 1)))]
    assert worth(events, prices={"lid": 30, "floor": 10}) == {"floor": (1, 25), "lid": (1, 75)}
    assert worth(events) == {"floor": (1, 50), "lid": (1, 50)}


def test_what_is_made_of_what_was_made_that_day_waits_for_it():
    events = [
        made(0, (("frame", 2),), (("fitted", 2),)),
        made(0, (("flat", 2),), (("frame", 2),)),
        came(0, 2, 500, part="flat"),
    ]
    assert worth(events) == {"fitted": (2, 500)}


def test_a_making_that_never_finds_what_it_takes_still_ends():
    assert worth([made(0, (("frame", 1),), (("fitted", 1),))]) == {"fitted": (1, 0), "frame": (-1, 0)}


def test_what_passes_straight_to_scrap_changes_no_pool():
    gone = Passed(day=day(1), part="box", pieces=2, cents=90, why="received", gone="broken on arrival")
    events = [came(0, 4, 400), gone]
    assert worth(events) == {"box": (4, 400)}
    assert books_of(carry(events, {}), first=DAY, last=END).whole.left["broken on arrival"].cents == 90


def test_undoing_a_receipt_takes_what_it_brought_and_undoing_a_loss_brings_it_back():
    first = [came(0, 10, 1000), came(1, 10, 200, key="a")]
    assert worth([*first, left(2, 10, undoes="a")]) == {"box": (10, 1000)}
    events = [came(0, 4, 400), left(1, 1, key="b"), came(2, 4, 4000)]
    back = Came(day=day(3), part="box", pieces=1, why="taken back", undoes="b")
    assert worth([*events, back]) == {"box": (8, 4400)}


@st.composite
def histories(draw):
    """Events over ten days that never take more than is there at their turn."""
    there, events = {"a": 0, "b": 0}, []
    for number in range(draw(st.integers(1, 15))):
        part = draw(st.sampled_from(["a", "b"]))
        what = draw(st.sampled_from(["came", "found", "left", "made"]))
        if what == "came":
            pieces = draw(st.integers(1, 9))
            events.append(came(number, pieces, draw(st.integers(0, 9999)), part=part))
            there[part] += pieces
        elif what == "found":
            events.append(Came(day=day(number), part=part, pieces=1, why="found"))
            there[part] += 1
        elif there[part]:
            pieces = draw(st.integers(1, there[part]))
            there[part] -= pieces
            if what == "left":
                events.append(left(number, pieces, part=part))
                continue
            other = "b" if part == "a" else "a"
            there[other] += pieces
            events.append(made(number, ((part, pieces),), ((other, pieces),)))
    return events, there


@settings(max_examples=150, deadline=None)
@given(histories(), st.integers(0, 14), st.integers(0, 14))
def test_opening_and_in_less_out_is_closing_on_every_stretch(history, one, other):
    events, there = history
    posted = carry(events, {"a": 50, "b": 70})
    first, last = day(min(one, other)), day(max(one, other))
    books = books_of(posted, first=first, last=last)
    before = value_by_part(posted, as_of=first - dt.timedelta(days=1))
    closing = value_by_part(posted, as_of=last)
    for row in books.parts:
        assert row.opening == before.get(row.part, type(row.opening)())
        assert row.closing == closing.get(row.part, type(row.opening)())
        assert row.opening.cents + row.all_in.cents - row.all_out.cents == row.closing.cents
    assert books.whole.closing.cents == sum(amount.cents for amount in closing.values())
    at_end = value_by_part(posted, as_of=END)
    assert all(at_end[part].pieces == n if n else part not in at_end for part, n in there.items())
    assert all(amount.cents >= 0 for amount in at_end.values())
    brought = sum(line.cents for line in posted if line.why in ("received", "found"))
    assert brought == sum(amount.cents for amount in at_end.values()) + sum(
        -line.cents for line in posted if line.why == "sold"
    )


def test_no_event_is_no_value():
    assert worth([]) == {}


@pytest.mark.parametrize("pieces", [5, 9])
def test_more_than_there_is_takes_all_the_money_and_no_more(pieces):
    assert cost_of_sales([came(0, 5, 77), left(1, pieces)]) == [77]
