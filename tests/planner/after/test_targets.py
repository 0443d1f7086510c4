"""What is planned for each yard: its own nine seasons of ten, or its share of what there is; out, home, and what stays."""

import numpy as np

from planner.after.targets import STAYS_WEEKS, at_level, courses_of, own_stock, shares
from planner.after.wants import Wants
from planner.sizing.records import Problem, Stock

BOX = "box-medium-10"


def wants(kept=None, found=None, pulled=None, asked=None, periods=16):
    def table(rows):
        return {key: np.array(each, dtype=float) for key, each in (rows or {}).items()}

    first = next(iter((kept or found or pulled).values()))
    return Wants(
        weights=np.full(len(first), 1 / len(first)),
        periods=periods,
        kept=table(kept),
        found=table(found),
        pulled=table(pulled),
        asked=table(asked or kept),
    )


def spell(first, last, pieces, periods=16):
    return [pieces if first <= week <= last else 0 for week in range(periods)]


def test_gear_goes_out_when_wanted_and_home_when_it_is_wanted_no_more():
    course = courses_of(wants({("creek", BOX): [spell(3, 6, 8)]}), {})["creek", BOX]
    assert [(w, n) for w, n in enumerate(course.out) if n] == [(3, 8)]
    assert [(w, n) for w, n in enumerate(course.home) if n] == [(7, 8)]
    assert sum(course.out) == sum(course.home)


def test_gear_wanted_again_within_some_weeks_stays():
    twice = [a + b for a, b in zip(spell(1, 2, 8), spell(2 + STAYS_WEEKS, 15, 8), strict=True)]
    course = courses_of(wants({("creek", BOX): [twice]}), {})["creek", BOX]
    assert sum(course.out) == 8 and sum(course.home) == 0


def test_the_yards_own_store_and_what_deadouts_free_there_go_first():
    made = wants({("creek", BOX): [spell(5, 15, 8)]}, {("creek", BOX): [spell(4, 15, 2)]})
    course = courses_of(made, {("creek", BOX): np.array([3.0] * 16)})["creek", BOX]
    assert sum(course.out) - sum(course.home) == 3


def test_what_lies_at_a_yard_and_is_not_wanted_there_comes_home():
    course = courses_of(wants(found={("creek", BOX): [spell(4, 15, 2)]}), {})["creek", BOX]
    assert [(w, n) for w, n in enumerate(course.home) if n] == [(4, 2)]


def test_supers_pulled_come_home_though_the_next_flow_asks_for_as_many():
    kept = [a + b for a, b in zip(spell(2, 5, 8), spell(7, 10, 8), strict=True)]
    made = wants(
        {("creek", BOX): [kept]}, pulled={("creek", BOX): [[8 if w in (6, 11) else 0 for w in range(16)]]}
    )
    course = courses_of(made, {})["creek", BOX]
    assert [(w, n) for w, n in enumerate(course.out) if n] == [(2, 8), (7, 8)]
    assert [(w, n) for w, n in enumerate(course.full) if n] == [(6, 8), (11, 8)]


def crossing():
    """Two yards that want 0 and 20 by turns: means 10 and 10, together always 20."""
    rows = np.zeros((2, 10, 1))
    rows[0, :, 0] = [0, 20, 0, 20, 0, 20, 0, 20, 0, 20]
    rows[1, :, 0] = 20 - rows[0, :, 0]
    return rows


def test_each_yard_gets_what_nine_of_its_seasons_in_ten_ask_for_where_there_is_as_much():
    assert shares(crossing(), np.full(10, 0.1)).tolist() == [[20], [20]]
    assert shares(crossing(), np.full(10, 0.1), np.array([40])).tolist() == [[20], [20]]


def test_where_there_is_less_they_share_what_all_use_together_by_mean_need_and_the_rest_stays():
    assert shares(crossing(), np.full(10, 0.1), np.array([39])).tolist() == [[10], [10]]


def test_never_more_is_planned_than_there_is():
    for there in range(40):
        assert shares(crossing(), np.full(10, 0.1), np.array([there])).sum() <= there


def test_pulls_are_planned_by_each_yards_own_nine_of_ten():
    kept = {("creek", BOX): [spell(2, 5, n) for n in (4, 8)], ("hill", BOX): [spell(2, 5, n) for n in (8, 4)]}
    off = {key: [[n if w == 6 else 0 for w in range(16)] for n in (4, 8)] for key in kept}
    found = courses_of(wants(kept, pulled=off), {}, {BOX: np.full(16, 99)})
    assert [found[key].full[6] for key in kept] == [8, 8]


def test_the_level_is_the_least_value_so_many_seasons_do_not_exceed():
    rows = np.array([[float(n)] for n in range(1, 11)])
    assert at_level(rows, np.full(10, 0.1), 0.9).tolist() == [9.0]
    assert at_level(rows, np.full(10, 0.1), 1.0).tolist() == [10.0]


def test_stock_at_yards_counts_from_its_week_and_the_sheds_own_does_not():
    stock = (
        Stock(part=BOX, location="creek", quantity=3, period=2),
        Stock(part=BOX, location="shed", quantity=9),
    )
    own = own_stock(Problem(periods=4, parts=(), locations=("shed", "creek"), scenarios=(), stock=stock))
    assert {key: rows.tolist() for key, rows in own.items()} == {("creek", BOX): [0, 0, 3, 3]}
