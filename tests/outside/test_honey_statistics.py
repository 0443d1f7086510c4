"""Crops and prices against the US honey statistics (USDA NASS, Honey, 2015 to 2025; the series lies in data/)."""

import csv
from pathlib import Path

import numpy as np
import pytest

from planner.projection.project import project
from planner.season.questions import question_of
from planner.season.scenarios import draw
from tests.outside import seasons

SERIES = Path(__file__).parent / "data" / "honey_us.csv"


def years():
    lines = [line for line in SERIES.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(lines)]


@pytest.mark.parametrize("row", years(), ids=lambda row: str(int(row["year"])))
def test_a_years_colonies_and_yield_project_to_its_production(row):
    """NASS: production = colonies x yield, to 0.1 % of what is printed. A colony here stands for a thousand, all are
    full ones, the year is average and every super wanted is there."""
    told = seasons.operation(colonies=int(row["colonies"]), gain_lb=row["yield_lb"])
    assumptions = seasons.answers(told, target_colonies=int(row["colonies"]))
    projected = project(told, assumptions, seasons.average(told, assumptions))
    assert projected.total(30) == row["colonies"]
    assert projected.crop_lb == pytest.approx(row["production"], rel=1e-3)


@pytest.mark.parametrize(
    ("state", "colonies", "yield_lb", "production"),
    [("N. Dakota", 511, 75, 38_325), ("S. Dakota", 212, 87, 18_444)],
)
def test_a_states_colonies_and_yield_project_to_its_production(state, colonies, yield_lb, production):
    """USDA NASS, Honey, 2024: state rows of 2023, exact."""
    told = seasons.operation(colonies=colonies, gain_lb=yield_lb)
    assumptions = seasons.answers(told, target_colonies=colonies)
    projected = project(told, assumptions, seasons.average(told, assumptions))
    assert projected.crop_lb == pytest.approx(production), state


def test_an_ordinary_crop_and_the_price_of_honey_lie_in_the_series():
    crops, prices = [row["yield_lb"] for row in years()], [row["price"] for row in years()]
    assert min(crops) <= question_of("crop_ordinary").default <= max(crops)
    assert min(prices) <= question_of("honey_price").default <= max(prices)


def test_crops_swing_from_year_to_year_as_a_states_do():
    """NASS 2014 to 2023, derived: variation of a state's yield between years 0.04 to 0.27, median 0.14."""
    told = seasons.operation(colonies=120, gain_lb=50, yards=6)
    drawn = draw(told, seasons.answers(told), count=400, seed=7)
    year = np.array([scenario.year_flow for scenario in drawn])
    assert year.mean() == pytest.approx(1, abs=0.02)
    assert 0.04 <= year.std() <= 0.27


def test_projected_yields_lie_among_the_states():
    """NASS, 2014 to 2023: state yields of 18 (Maine, 2023) to 112 lb (2014): nineteen projected years of twenty lie
    there, and their mean is the flow asked for."""
    told = seasons.operation(colonies=120, gain_lb=50, yards=6)
    assumptions = seasons.answers(told, survival_share=1, summer_loss_share=0)
    crops = [
        project(told, assumptions, scenario).crop_lb / 120
        for scenario in draw(told, assumptions, count=100, seed=7)
    ]
    assert sum(18 <= crop <= 112 for crop in crops) >= 95
    assert np.mean(crops) == pytest.approx(50, rel=0.05)
