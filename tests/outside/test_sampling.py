"""What sampled seasons can prove, against closed forms and published optima: bias, statistical gap, bounds."""

import numpy as np
import pytest

from planner.season.scenarios import SPAN_OF_TEN
from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.trial.judging import Judge
from planner.trial.replications import Batch, limit_of, statistical_gap
from planner.trial.seasons import Fresh
from planner.trial.statistics import mean_of, t_quantile, worst_mean
from tests.outside import two_stage
from tests.outside.published import case

# A closed form is met by a mean over random batches within its own reach 999 times of 1000; the seed is fixed.
SURE = 0.999
BATCHES = 60


def newsvendor(draws, data):
    """Pieces left over cost `overage`, pieces missing `underage`: bought at the overage, worth that and the underage
    together where wanted. Cost = underage x wanted - objective."""
    over, under = data["overage"], data["underage"]
    return problem_of(
        {
            "periods": 1,
            "parts": [{"code": "piece"}],
            "locations": ["here"],
            "suppliers": [{"code": "seller"}],
            "offers": [two_stage.offer("buy", {"piece": 1}, over)],
            "scenarios": [
                {
                    "code": f"draw-{k}",
                    "probability": 1 / len(draws),
                    "uses": [two_stage.use("wanted", float(wanted), over + under, {"piece": 1})],
                }
                for k, wanted in enumerate(draws)
            ],
        }
    )


def cost(draws, data, objective):
    return data["underage"] * float(np.mean(draws)) - objective


def test_the_sampled_newsvendors_cost_at_the_expected_order_statistics_is_its_expectation():
    """Given their order the sampled optimum is linear in the draws: at k/11 it is 0.3636, below the true 0.4 (Mak,
    Morton and Wood, 1999: the sampled optimum of a minimum is biased downward)."""
    known = case("saa-newsvendor")
    draws = [k / 11 for k in range(1, 11)]
    found = cost(draws, known.data, solve(newsvendor(draws, known.data), gap=0.0).objective)
    assert found == pytest.approx(known.answer["sampled_optimum"], abs=1e-8)
    assert found < known.answer["true_optimum"]


def test_batches_of_a_newsvendor_show_the_bias_and_the_gap_of_its_closed_form():
    """Mak, Morton and Wood, Operations Research Letters 24 (1999) 47-56; the figures by uniform order statistics."""
    known = case("saa-newsvendor")
    rng = np.random.default_rng(11)
    optima, gaps = [], []
    for _ in range(BATCHES):
        planned, fresh = rng.random(10), rng.random(10)
        order = solve(newsvendor(planned, known.data), gap=0.0)
        batch = newsvendor(fresh, known.data)
        best = solve(batch, gap=0.0)
        optima.append(cost(fresh, known.data, best.objective))
        gaps.append(best.bound - float(np.mean(Judge(batch).worths(order.packs()))))
    bias, gap = mean_of(optima, level=SURE), mean_of(gaps, level=SURE)
    assert bias.low <= known.answer["sampled_optimum"] <= bias.high
    assert gap.low <= known.answer["gap"] <= gap.high
    assert min(gaps) >= -1e-9


def test_the_limit_of_five_batches_is_the_formulas():
    """Mak, Morton and Wood (1999); the t quantile by scipy and by quadrature of its density."""
    known = case("saa-mmw")
    mean, most = limit_of(known.data["batch_gaps"], level=1 - known.data["alpha"])
    assert mean == pytest.approx(known.answer["mean_gap"])
    assert most == pytest.approx(known.answer["upper_limit"], rel=1e-8)
    assert t_quantile(0.95, 4) == pytest.approx(known.answer["t_quantile"], rel=1e-8)


@pytest.mark.parametrize("size", case("st-orderstat").data["n"])
def test_the_worst_of_so_many_seasons_lies_as_deep_as_order_statistics_say(size):
    """Harter, Expected values of normal order statistics, Biometrika 48 (1961) 151-165 (from memory)."""
    rng = np.random.default_rng(size)
    worst = mean_of([worst_mean(row, 1 / size) for row in rng.normal(size=(3000, size))], level=SURE)
    depth = case("st-orderstat").published[str(size)][0]
    assert worst.low <= -depth <= worst.high


def test_best_and_worst_of_ten_years_lie_twice_the_expected_maximum_apart():
    """Harter (1961): 1.53875 standard deviations either way for ten."""
    assert pytest.approx(2 * case("st-orderstat").published["10"][0], abs=0.003) == SPAN_OF_TEN


def sampled_loads(data, rng, count):
    """So many of the million load triples."""
    grid, costs = data["marginal_grid"], data["base_cost"]
    loads = (grid["start"] + grid["step"] * rng.integers(0, grid["count"], (count, 3))).tolist()
    op_cost = [[each * multiple for multiple in data["multipliers"]] for each in costs]
    return two_stage.power(data, op_cost, [(1 / count, load) for load in loads])


def test_the_power_plants_of_a_million_scenarios_lie_within_their_sampled_interval():
    """Linderoth, Shapiro and Wright (2006), LandS: 225.62 (from memory), 225.6294 computed exactly. The mean of batch
    optima bounds the cost from below, the sampled plants' cost on fresh loads from above."""
    known = case("sp-lands3")
    rng = np.random.default_rng(3)
    order = solve(problem_of(sampled_loads(known.data, rng, 60)), gap=0.0).packs()
    problem = problem_of(sampled_loads(known.data, rng, 1500))
    fresh = Fresh(problem=problem, batches=tuple((first, first + 100) for first in range(0, 1500, 100)))
    worths = Judge(problem).worths(order)
    optima = mean_of([-solve(fresh.batch(n), gap=0.0).objective for n in range(15)], level=SURE)
    judged = mean_of([-worth for worth in worths], level=SURE)
    assert optima.low <= known.answer["RP"] <= judged.high
    assert case("sp-lands3").published["RP"][0] == pytest.approx(known.answer["RP"], abs=0.02)
    batches = [
        Batch(problem=fresh.batch(number), worths=worths[first:end])
        for number, (first, end) in enumerate(fresh.batches)
    ]
    gap = statistical_gap(batches[:5], solve=solve)
    assert (gap.batches, gap.seasons) == (5, 100)
    assert 0 <= gap.mean <= gap.most
    assert judged.value - known.answer["RP"] <= gap.most + judged.reach
