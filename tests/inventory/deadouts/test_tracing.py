"""Pieces followed from place to place: an upper bound, never more than left, never more than came."""

import datetime as dt
from collections import defaultdict

from hypothesis import given
from hypothesis import strategies as st

from inventory.deadouts.tracing import Way, trace


def day(number):
    return dt.date(2025, 1, 1) + dt.timedelta(days=number)


def way(number, to, quantity, part="comb", becomes=None):
    return Way(day=day(number), part=part, quantity=quantity, to=to, becomes=becomes or part)


def onward_of(ways):
    """What a list of (from, Way) says left a place from a day on."""
    return lambda place, part, since: [
        each for source, each in ways if source == place and each.part == part and each.day >= since
    ]


def test_pieces_stay_where_they_came_to():
    assert trace([way(1, "shed", 5)], onward_of([])) == {("shed", "comb"): 5}


def test_they_may_have_gone_on_or_stayed():
    onward = onward_of([("shed", way(3, "yard", 2)), ("shed", way(4, "hive", 9))])
    assert trace([way(1, "shed", 5)], onward) == {
        ("shed", "comb"): 5,
        ("yard", "comb"): 2,
        ("hive", "comb"): 5,  # nine went, five at most were of ours
    }


def test_what_left_before_they_came_was_not_theirs():
    assert trace([way(5, "shed", 5)], onward_of([("shed", way(3, "yard", 2))])) == {("shed", "comb"): 5}


def test_other_parts_are_not_theirs():
    assert trace([way(1, "shed", 5)], onward_of([("shed", way(3, "yard", 2, part="box"))])) == {
        ("shed", "comb"): 5
    }


def test_over_a_bench_the_part_changes():
    onward = onward_of(
        [("shed", way(2, "shed", 3, part="frame", becomes="framed")), ("shed", way(3, "y", 2, "framed"))]
    )
    assert trace([way(1, "shed", 4, part="frame")], onward) == {
        ("shed", "frame"): 4,
        ("shed", "framed"): 3,
        ("y", "framed"): 2,
    }


def test_a_circle_ends():
    onward = onward_of([("a", way(2, "b", 1)), ("b", way(3, "a", 1))])
    assert trace([way(1, "a", 1)], onward) == {("a", "comb"): 1, ("b", "comb"): 1}


@given(
    st.lists(
        st.tuples(st.sampled_from("abcd"), st.sampled_from("abcd"), st.integers(1, 9)).filter(
            lambda m: m[0] != m[1]
        ),
        max_size=12,
    ),
    st.integers(1, 9),
    st.randoms(use_true_random=False),
)
def test_wherever_marked_pieces_really_went_the_bound_holds_them(moves, left, random):
    """Ours are marked and mixed with others; whatever is picked up at random, no place has more of ours than told."""
    ours, others = defaultdict(int), defaultdict(lambda: 20)
    ours["a"] = left
    ways = []
    for number, (source, target, wanted) in enumerate(moves, start=1):
        pile = ["ours"] * ours[source] + ["other"] * others[source]
        taken = random.sample(pile, min(wanted, len(pile)))
        if not taken:
            continue
        ways.append((source, way(number, target, len(taken))))
        for kind, counts in (("ours", ours), ("other", others)):
            counts[source] -= taken.count(kind)
            counts[target] += taken.count(kind)
    told = trace([way(0, "a", left)], onward_of(ways))
    assert all(number <= told.get((place, "comb"), 0) for place, number in ours.items() if number)
