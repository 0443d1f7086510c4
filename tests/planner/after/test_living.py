"""Seasons lived through: a lack is answered on the next visit, what lies idle comes home for it, nothing is made up."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.after.living import live
from tests.planner.after.test_targets import BOX, spell, wants

CREEK, HILL = ("creek", BOX), ("hill", BOX)
EVERY_OTHER = set(range(0, 16, 2))


def lived(made, *, pool, brought=None, trips=None, own=None, extract_weeks=1):
    seasons = len(made.weights)
    return live(
        made,
        own or {},
        {BOX: np.zeros((seasons, made.periods)) + pool},
        {key: np.array(rows, dtype=float) for key, rows in (brought or {}).items()},
        kind=lambda part: part,
        trips=trips or {"creek": EVERY_OTHER, "hill": EVERY_OTHER},
        extract_weeks=extract_weeks,
    )


def brought_by_week(found, key):
    return [(week, round(n, 6)) for week, n in enumerate(found.out[key][0]) if n > 1e-9]


def test_what_is_planned_is_brought_and_in_time():
    found = lived(wants({CREEK: [spell(4, 9, 8)]}), pool=8, brought={CREEK: spell(4, 9, 8)})
    assert brought_by_week(found, CREEK) == [(4, 8)]
    assert (found.late[0], found.wanted[0], found.prompt[0], found.waits) == (0, 8, True, [None])


def test_what_a_visit_is_seen_to_lack_comes_on_the_next_from_the_shed():
    found = lived(wants({CREEK: [spell(4, 9, 12)]}), pool=20, brought={CREEK: spell(4, 9, 8)})
    assert brought_by_week(found, CREEK) == [(4, 8), (6, 4)]
    assert (found.late[0], found.prompt[0], found.waits) == (4, False, [None])


def test_nothing_is_brought_before_it_is_planned_or_seen():
    found = lived(wants({CREEK: [spell(4, 9, 12)]}), pool=20)
    assert brought_by_week(found, CREEK) == [(6, 12)]


def test_no_more_is_brought_than_there_is():
    found = lived(wants({CREEK: [spell(4, 9, 12)]}), pool=5, brought={CREEK: spell(4, 9, 8)})
    assert sum(n for _week, n in brought_by_week(found, CREEK)) == 5
    assert found.waits == [None]  # there is no piece that lies idle: the order is too small, not the hauling


def test_where_too_little_is_there_the_yards_share_it():
    made = wants({CREEK: [spell(4, 9, 6)], HILL: [spell(4, 9, 3)]})
    found = lived(made, pool=6, brought={CREEK: spell(4, 9, 6), HILL: spell(4, 9, 3)})
    assert (brought_by_week(found, CREEK), brought_by_week(found, HILL)) == ([(4, 4)], [(4, 2)])


def test_a_lack_seen_goes_before_what_is_only_planned():
    made = wants({CREEK: [spell(4, 9, 6)], HILL: [spell(10, 12, 0)]})
    found = lived(made, pool=6, brought={HILL: spell(6, 12, 6)})
    assert (brought_by_week(found, CREEK), brought_by_week(found, HILL)) == ([(6, 6)], [(12, 6)])


def test_what_lies_idle_at_one_yard_comes_home_for_another():
    made = wants({CREEK: [spell(4, 13, 6)], HILL: [spell(4, 13, 0)]})
    found = lived(made, pool=6, brought={HILL: spell(2, 13, 6)})
    assert brought_by_week(found, CREEK) == [(6, 6)]
    assert found.waits == [None]


def test_a_yard_waits_too_long_where_gear_lies_idle_at_one_that_is_seldom_visited():
    made = wants({CREEK: [spell(4, 13, 6)], HILL: [spell(4, 13, 0)]})
    found = lived(
        made, pool=6, brought={HILL: spell(2, 13, 6)}, trips={"creek": EVERY_OTHER, "hill": {2, 10, 15}}
    )
    assert found.waits == [("creek", BOX, 6, 6.0)]
    assert brought_by_week(found, CREEK) == [(12, 6)]


def test_a_piece_another_use_takes_is_not_idle():
    made = wants(
        {CREEK: [spell(4, 9, 6)], HILL: [spell(4, 9, 2)]},
        asked={CREEK: [spell(4, 9, 6)], HILL: [spell(4, 9, 8)]},
    )
    found = lived(made, pool=8, brought={CREEK: spell(4, 9, 2), HILL: spell(4, 9, 6)})
    assert (found.late[0], found.waits) == (0, [None])


def test_less_than_a_piece_or_a_tenth_is_not_short():
    made = wants({CREEK: [spell(4, 9, 20)]})
    assert lived(made, pool=30, brought={CREEK: spell(4, 9, 19)}).prompt[0]
    assert not lived(made, pool=30, brought={CREEK: spell(4, 9, 18)}).prompt[0]


def test_the_yards_own_store_and_what_deadouts_free_there_count():
    made = wants({CREEK: [spell(4, 9, 8)]}, {CREEK: [spell(3, 15, 3)]})
    found = lived(made, pool=8, own={CREEK: np.array([5.0] * 16)})
    assert (brought_by_week(found, CREEK), found.late[0]) == ([], 0)


@pytest.mark.parametrize(("extract_weeks", "again"), [(1, 8), (3, 10)])
def test_full_supers_serve_again_once_they_are_extracted(extract_weeks, again):
    made = wants(
        {CREEK: [spell(2, 5, 8)], HILL: [spell(6, 13, 8)]},
        pulled={CREEK: [[8 if week == 6 else 0 for week in range(16)]]},
    )
    plan = {CREEK: spell(2, 5, 8), HILL: spell(6, 13, 8)}
    found = lived(made, pool=8, brought=plan, extract_weeks=extract_weeks)
    assert brought_by_week(found, HILL) == [(again, 8)]


PIECES = st.lists(st.integers(0, 12), min_size=16, max_size=16)


@settings(max_examples=40, deadline=None)
@given(PIECES, PIECES, PIECES, PIECES, st.integers(0, 20))
def test_yards_never_hold_more_than_there_is_and_never_less_than_nothing_is_late(a, b, plan_a, plan_b, pool):
    made = wants({CREEK: [a], HILL: [b]})
    found = lived(made, pool=pool, brought={CREEK: plan_a, HILL: plan_b})
    assert 0 <= found.late[0] <= found.wanted[0] + 1e-9
    assert all((rows >= -1e-9).all() for rows in found.out.values())
    first = min(
        (week for week in range(16) if week % 2 == 0 and (plan_a[week] or plan_b[week])), default=None
    )
    if first is not None:
        assert sum(rows[0, : first + 1].sum() for rows in found.out.values()) <= pool + 1e-9
