"""Bad years in the objective against Rockafellar and Uryasev's own formula, tried on every order there is.

Rockafellar and Uryasev, Optimization of conditional value-at-risk, Journal of Risk 2 (2000) 21-41: the mean of the
worst share is the most over a mark of mark - mean shortfall below it / share.
"""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.sizing.reading import problem_of
from planner.solution import solve
from tests.outside import two_stage

PRICE, VALUE, LEFT = 10.0, 25.0, 3.0
MOST = 8


def boxes(wanted, chances, weight, share, *, most=MOST):
    """Whole boxes bought before it is known how many are wanted; those idle at the end are worth a little."""
    return problem_of(
        {
            "periods": 2,
            "parts": [{"code": "box", "end_value": LEFT}],
            "locations": ["here"],
            "suppliers": [{"code": "seller"}],
            "offers": [two_stage.offer("buy", {"box": 1}, PRICE) | {"whole": True, "max_packs": most}],
            "bad_years": {"weight": weight, "share": share},
            "scenarios": [
                {
                    "code": f"year-{k}",
                    "probability": chance,
                    "uses": [two_stage.use("super", float(units), VALUE, {"box": 1})],
                }
                for k, (chance, units) in enumerate(zip(chances, wanted, strict=True))
            ],
        }
    )


def worths_of(bought, wanted):
    """By hand: sold at the value, the rest at what is left, less the price."""
    return [
        VALUE * min(bought, units) + LEFT * (bought - min(bought, units)) - PRICE * bought for units in wanted
    ]


def worst(worths, chances, share):
    """The formula of 2000, the mark tried at every worth, where its most lies."""
    return max(
        mark - sum(p * max(mark - worth, 0) for p, worth in zip(chances, worths, strict=True)) / share
        for mark in worths
    )


def weighed(bought, wanted, chances, weight, share):
    worths = worths_of(bought, wanted)
    mean = sum(p * worth for p, worth in zip(chances, worths, strict=True))
    return (1 - weight) * mean + weight * worst(worths, chances, share)


@settings(max_examples=25, deadline=None)
@given(
    st.lists(st.tuples(st.integers(0, MOST), st.integers(1, 5)), min_size=2, max_size=5),
    st.sampled_from((0.0, 0.3, 0.7, 1.0)),
    st.sampled_from((0.1, 0.25, 0.5, 1.0)),
)
def test_the_order_found_is_the_best_of_all_orders_by_the_formula(years, weight, share):
    wanted = [units for units, _ in years]
    whole = sum(parts for _, parts in years)
    chances = [parts / whole for _, parts in years]
    plan = solve(boxes(wanted, chances, weight, share), gap=0.0)
    best = max(weighed(bought, wanted, chances, weight, share) for bought in range(MOST + 1))
    assert plan.objective == pytest.approx(best, abs=1e-5)
    found = sum(plan.packs().values())
    assert weighed(found, wanted, chances, weight, share) == pytest.approx(best, abs=1e-5)


@pytest.mark.parametrize("way", ["direct", "two-phase"])
@pytest.mark.parametrize("share", [0.1, 0.25, 0.5])
def test_two_kinds_of_gear_under_one_budget_agree_with_every_pair(share, way):
    """Two newsvendors that share money; every pair of whole packs is tried."""
    wanted, chances, weight, budget = ((4, 1), (0, 5), (3, 3), (6, 0)), (0.3, 0.3, 0.2, 0.2), 0.6, 60
    data = {
        "periods": 1,
        "parts": [{"code": "box"}, {"code": "feeder"}],
        "locations": ["here"],
        "suppliers": [{"code": "seller"}],
        "offers": [
            two_stage.offer(f"buy-{code}", {code: 1}, PRICE) | {"whole": True} for code in ("box", "feeder")
        ],
        "budget": budget,
        "bad_years": {"weight": weight, "share": share},
        "scenarios": [
            {
                "code": f"year-{k}",
                "probability": chances[k],
                "uses": [
                    two_stage.use("super", float(pair[0]), VALUE, {"box": 1}),
                    two_stage.use("feed", float(pair[1]), VALUE, {"feeder": 1}),
                ],
            }
            for k, pair in enumerate(wanted)
        ],
    }

    def value(pair):
        worths = [
            sum(VALUE * min(n, w) for n, w in zip(pair, want, strict=True)) - PRICE * sum(pair)
            for want in wanted
        ]
        mean = sum(p * worth for p, worth in zip(chances, worths, strict=True))
        return (1 - weight) * mean + weight * worst(worths, chances, share)

    pairs = [pair for pair in itertools.product(range(7), repeat=2) if PRICE * sum(pair) <= budget]
    found = solve(problem_of(data), gap=1e-6, way=way)
    assert found.objective == pytest.approx(max(map(value, pairs)), abs=1e-6)
    assert found.bound >= found.objective - 1e-9
