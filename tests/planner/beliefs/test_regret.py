"""What an order loses against the best: by hand on a small problem, never below zero, the order kept where it is best."""

import pytest

from planner.beliefs.regret import NotJudged, regret_of, spend_of
from planner.sizing.reading import problem_of
from planner.solution import solve

KEY = ("box", 0)


def newsvendor(value, *, demands=range(1, 11), cost=4.0, must=False):
    """Boxes bought at `cost` before the season, each worth `value` where it is needed, 1 left over."""
    return problem_of(
        {
            "periods": 1,
            "parts": [{"code": "box", "end_value": 1}],
            "locations": ["shed"],
            "suppliers": [{"code": "mill"}],
            "offers": [
                {
                    "code": "box",
                    "supplier": "mill",
                    "parts": {"box": 1},
                    "location": "shed",
                    "prices": [{"from_packs": 1, "price": cost}],
                    "max_packs": 20,
                }
            ],
            "scenarios": [
                {
                    "code": f"s{demand}",
                    "probability": 1 / len(demands),
                    "uses": [
                        {
                            "code": "need",
                            "location": "shed",
                            "first": 0,
                            "last": 0,
                            "units": demand,
                            "value": value,
                            "must": must,
                            "spends": {"box": 1},
                        }
                    ],
                }
                for demand in demands
            ],
        }
    )


def by_hand(value, packs, *, demands=range(1, 11), cost=4.0):
    """Mean money of so many boxes: value of those needed, 1 for those left, less what they cost."""
    return sum(value * min(d, packs) + max(packs - d, 0) - cost * packs for d in demands) / len(demands)


def test_the_regret_of_a_newsvendor_is_what_it_is_by_hand():
    # Critical ratio (textbook newsvendor): value 7: (7-4)/(7-1) = 0.5, buy 5; value 13: 9/12 = 0.75, buy 8.
    held = {KEY: 5}
    found = regret_of(newsvendor(13.0), held, gap=1e-6)
    assert found.packs == {KEY: 8}
    assert found.held == pytest.approx(by_hand(13.0, 5))
    assert found.best == pytest.approx(by_hand(13.0, 8))
    assert found.lost == pytest.approx(by_hand(13.0, 8) - by_hand(13.0, 5))
    assert max(by_hand(13.0, q) for q in range(21)) == pytest.approx(found.best)


def test_at_the_value_it_was_made_for_an_order_loses_nothing():
    plan = solve(newsvendor(13.0), gap=1e-6, prices=False)
    found = regret_of(newsvendor(13.0), plan.packs(), gap=1e-6)
    assert (found.lost, found.packs) == (0, plan.packs())


@pytest.mark.parametrize("value", [1.0, 4.5, 7.0, 9.0, 20.0])
@pytest.mark.parametrize("packs", [0, 3, 12])
def test_regret_is_never_below_zero_and_never_past_the_bound(value, packs):
    found = regret_of(newsvendor(value), {KEY: packs}, gap=1e-6)
    assert 0 <= found.lost <= found.bound - found.held + 1e-6
    assert found.best == pytest.approx(max(by_hand(value, q) for q in range(21)))


def test_few_seasons_are_solved_in_one_piece_and_say_the_same():
    few = newsvendor(13.0, demands=(2, 6))
    found = regret_of(few, {KEY: 2}, gap=1e-6)
    assert found.packs == {KEY: 6}
    assert found.lost == pytest.approx(by_hand(13.0, 6, demands=(2, 6)) - by_hand(13.0, 2, demands=(2, 6)))


def test_a_gain_within_the_gap_leaves_the_order_as_it_is():
    found = regret_of(newsvendor(13.0), {KEY: 7}, gap=0.05)
    assert (found.lost, found.packs) == (0, {KEY: 7})


@pytest.mark.parametrize("demands", [range(1, 11), (2, 6)])
def test_an_order_that_leaves_a_must_undone_cannot_be_judged(demands):
    with pytest.raises(NotJudged):
        regret_of(newsvendor(13.0, demands=demands, must=True), {KEY: 1}, gap=1e-6)


def test_an_order_is_spent_as_priced():
    assert spend_of(newsvendor(7.0), {KEY: 3}) == 12
