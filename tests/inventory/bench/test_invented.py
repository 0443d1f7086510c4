"""Invented years: never more taken than there is, mistakes put right whole, the same by the same seed."""

import datetime as dt
from collections import Counter

import pytest

from inventory.bench.invented import Ground, Years

FIRST, LAST = dt.date(2021, 4, 1), dt.date(2023, 4, 1)
GROUND = Ground(
    shed=1,
    yards={2: (10, 11, 12), 3: (13, 14, 15), 4: ()},
    outside={"correction": 90, "bench": 91},
    parts=tuple(range(1, 41)),
)


def acts(movements=3000, seed=1):
    return list(Years(GROUND, seed=seed).acts(movements, first=FIRST, last=LAST))


@pytest.mark.parametrize("movements", [40, 1000, 3000])
def test_there_are_as_many_movements_as_asked_for(movements):
    assert sum(len(act.rows) for act in acts(movements)) == movements


def test_days_never_go_back_and_stay_within_bounds():
    days = [act.day for act in acts()]
    assert days == sorted(days)
    assert days[0] >= FIRST and days[-1] <= LAST


def test_nothing_inside_is_ever_below_zero_after_an_act():
    balances = Counter()
    for act in acts():
        for part, condition, pieces, here, there, _ in act.rows:
            assert pieces > 0 and here != there
            balances[here, part, condition] -= pieces
            balances[there, part, condition] += pieces
        assert all(n >= 0 for (place, *_), n in balances.items() if place < 90)


def test_a_reversal_puts_back_what_the_act_before_moved():
    told = acts()
    found = [(told[n - act.reverses], act) for n, act in enumerate(told) if act.reverses]
    assert found
    for first, back in found:
        assert [(p, c, n, b, a, w) for p, c, n, a, b, w in first.rows] == back.rows
        assert first.day == back.day


def test_few_kinds_of_gear_are_put_on_colonies_and_all_kinds_of_acts_come():
    told = acts()
    on_bees = {row[0] for act in told for row in act.rows if row[4] in range(10, 16)}
    assert 1 < len(on_bees) <= 12
    assert {act.name for act in told} == {"open stock", "move", "place", "take off", "mark", "reverse"}


def test_the_same_seed_gives_the_same_and_another_another():
    assert acts() == acts()
    assert acts() != acts(seed=2)


def test_more_happens_in_may_than_in_january():
    months = Counter(act.day.month for act in acts() if act.name != "open stock")
    assert months[5] > 3 * months[1]
