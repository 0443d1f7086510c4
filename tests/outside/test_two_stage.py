"""Two-stage stochastic programmes through `size`, against their published optimum and first-stage plan."""

import pytest

from planner.sizing.reading import problem_of
from planner.solution import solve
from tests.outside import two_stage
from tests.outside.conftest import packs
from tests.outside.published import case

CROPS = tuple(f"plant-{crop}" for crop in two_stage.CROPS)
PLANTS = tuple(f"plant-{i}" for i in range(4))

PROGRAMMES = {
    # Higle, Stochastic Programming: Optimization When Uncertainty Matters, INFORMS TutORials, 2005 (from memory)
    "sp-dakota": (two_stage.assemble, ("resource-0", "resource-1", "resource-2"), 1),
    # Bertsimas and Freund, Data, Models and Decisions, 2000, sec. 7.2 (answer from memory)
    "sp-gemstone": (two_stage.assemble, ("resource-0",), 1),
    # Louveaux and Smeers, Optimal Investments for Electricity Generation, 1988
    "sp-lands": (two_stage.three_loads, PLANTS, -1),
    # SMPS test set; its sibling in Linderoth, Shapiro and Wright, The Empirical Behavior of Sampling Methods, 2006
    # (answer computed)
    "sp-lands2": (two_stage.independent_loads, PLANTS, -1),
    # Birge and Louveaux, Introduction to Stochastic Programming, 1997, sec. 1.1 (published as a cost: -108,390)
    "sp-farmer": (two_stage.farm, CROPS, -1),
    # Birge and Louveaux, Introduction to Stochastic Programming, 1997, ch. 5, Example 1
    "sp-bl-simple": (two_stage.two_machines, ("x1", "x2"), -1),
}


@pytest.mark.parametrize("name", PROGRAMMES)
def test_what_is_bought_before_the_scenario_shows_is_published(name, solver, sized):
    encode, offers, sign = PROGRAMMES[name]
    published = case(name)
    plan = sized(encode(published.data), solver)
    assert plan["objective"] == published.figure("RP", sign=sign)
    assert [packs(plan, offer) for offer in offers] == published.plan("x")
    weighted = sum(
        scenario["probability"] * line["objective"]
        for scenario, line in zip(encode(published.data)["scenarios"], plan["scenarios"], strict=True)
    )
    assert weighted == pytest.approx(plan["objective"])


def test_generators_available_in_part_over_1280_scenarios(solver, sized):
    """Infanger, Monte Carlo (importance) sampling within a Benders decomposition algorithm, 1992 (24,642.32 from
    memory): expected cost = missed cost x expected loads - objective."""
    published = case("sp-apl1p")
    problem = two_stage.generators(published.data)
    assert len(problem["scenarios"]) == published.answer["n_scenarios"]
    plan = sized(problem, solver)
    law = published.data["requirement"]
    loads = 3 * sum(p * v for p, v in zip(law["p"], law["v"], strict=True))
    assert published.data["unserved"] * loads - plan["objective"] == published.figure("RP")
    assert [packs(plan, f"built-{g}") for g in range(2)] == published.plan("x")


def test_the_mean_season_promises_more_than_the_farm_can_keep(solver, sized):
    """Birge and Louveaux, Introduction to Stochastic Programming, 1997, sec. 4.2: EV -118,600 with 120, 80, 300 acres."""
    published = case("sp-farmer")
    mean = [
        sum(p * tons for p, tons in zip(published.data["prob"], crop, strict=True))
        for crop in zip(*published.data["yields"], strict=True)
    ]
    plan = sized(two_stage.farm(published.data, [(1, mean)]), solver)
    assert plan["objective"] == published.figure("EV", sign=-1)
    assert [packs(plan, offer) for offer in CROPS] == published.plan("x_ev")


def test_knowing_the_year_is_worth_what_is_published(solver, sized):
    """Birge and Louveaux, Introduction to Stochastic Programming, 1997, sec. 4.2: WS -115,405.56, EVPI 7,015.56."""
    published = case("sp-farmer")
    known = [
        sized(two_stage.farm(published.data, [(1, row)]), solver)["objective"]
        for row in published.data["yields"]
    ]
    waited = sum(p * objective for p, objective in zip(published.data["prob"], known, strict=True))
    assert waited == published.figure("WS", sign=-1)
    assert waited + published.answer["RP"] == published.figure("EVPI")


MEAN_PLANS = {
    # Birge and Louveaux, Introduction to Stochastic Programming, 1997, sec. 4.2: EEV -107,240, so VSS 1,150
    "sp-farmer": ("x_ev", "EEV"),
    # the same, ch. 5, Example 1: EEV -568.92, VSS 286.92
    "sp-bl-simple": ("x_ev", "EEV"),
    # Higle, Stochastic Programming: Optimization When Uncertainty Matters, 2005: EEV 1,545 (from memory)
    "sp-dakota": ("x_ev", "EEV"),
    # Bertsimas and Freund, Data, Models and Decisions, 2000, sec. 7.2 (computed)
    "sp-gemstone": ("x_ev", "EEV"),
    # Louveaux and Smeers, Optimal Investments for Electricity Generation, 1988 (computed)
    "sp-lands": ("x_ev", "EEV"),
}


@pytest.mark.parametrize("name", MEAN_PLANS)
def test_what_would_be_bought_for_the_mean_season_is_worth_what_is_published(name, solver):
    """The packs of the mean season fixed, all else decided anew in each scenario."""
    encode, offers, sign = PROGRAMMES[name]
    bought, worth = MEAN_PLANS[name]
    published = case(name)
    packs_fixed = {(offer, 0): packs for offer, packs in zip(offers, published.answer[bought], strict=True)}
    plan = solve(problem_of(encode(published.data)), solver=solver, gap=1e-7, packs=packs_fixed)
    assert plan.objective == published.figure(worth, sign=sign, slack=1e-4)
    assert plan.objective < published.answer["RP"] * sign


@pytest.mark.parametrize("name", PROGRAMMES)
def test_cuts_in_two_phases_come_to_what_is_published(name):
    """The same programmes by cuts (the L-shaped method) instead of in one piece."""
    encode, offers, sign = PROGRAMMES[name]
    published = case(name)
    plan = solve(problem_of(encode(published.data)), gap=1e-7, way="two-phase")
    assert plan.objective == published.figure("RP", sign=sign, slack=1e-4)
    bought = plan.packs()
    assert [bought.get((offer, 0), 0) for offer in offers] == published.plan("x")
    assert plan.bound >= plan.objective


def test_generators_available_in_part_by_cuts():
    """Infanger, Monte Carlo (importance) sampling within a Benders decomposition algorithm, 1992 (24,642.32 from
    memory), by cuts over its 1,280 scenarios."""
    published = case("sp-apl1p")
    plan = solve(problem_of(two_stage.generators(published.data)), gap=1e-7, way="two-phase", prices=False)
    law = published.data["requirement"]
    loads = 3 * sum(p * v for p, v in zip(law["p"], law["v"], strict=True))
    assert published.data["unserved"] * loads - plan.objective == published.figure("RP", slack=1e-4)
    built = [plan.packs()[f"built-{g}", 0] for g in range(2)]
    assert built == pytest.approx(published.answer["x"], rel=1e-4)
