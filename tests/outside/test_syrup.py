"""Syrup, sugar and stores: the season's feed against published densities, recipes and feeding tables."""

import datetime as dt

import pytest

from planner.projection.feed import STORES_LB_PER_GALLON, SUGAR_LB_PER_GALLON, autumn_gallons
from planner.projection.project import project
from planner.season.questions import question_of, questions_for
from planner.season.regions import REGIONS, region_of
from tests.outside import seasons

LB_PER_GALLON = 8.3454  # of a liquid of 1 g/mL
# g/mL at 20 C by weight of sugar: CRC Handbook, sucrose table (second hand), for 50 %; NBS Circular 440 (from memory)
# for 66.7 %
DENSITY = {"1:1": 1.2296, "2:1": 1.3265}
SUGAR_SHARE = {"1:1": 1 / 2, "2:1": 2 / 3}


def default(key, region="north"):
    return next(question.default for question in questions_for(region) if question.key == key)


@pytest.mark.parametrize(("syrup", "pounds"), [("1:1", 5.13), ("2:1", 7.38)])
def test_a_gallon_of_syrup_takes_the_sugar_its_density_says(syrup, pounds):
    """Derived from the tables: 10.26 lb of 1:1 a gallon, half of it sugar; 11.07 lb of 2:1, two thirds of it."""
    derived = DENSITY[syrup] * LB_PER_GALLON * SUGAR_SHARE[syrup]
    assert round(derived, 2) == pounds
    assert SUGAR_LB_PER_GALLON[syrup] == pytest.approx(derived, abs=0.005)


def test_heavy_syrup_is_two_of_sugar_to_one_of_water_by_weight_in_autumn_and_light_towards_spring():
    """Moeller, Overwintering of Honey Bee Colonies, USDA PRR 169, 1977, part 6; Univ. of Georgia, Honey Bee
    Management."""
    assert default("autumn_syrup") == "2:1"
    assert default("spring_syrup") == "1:1"


def test_a_gallon_of_heavy_syrup_puts_on_seven_pounds_of_stores():
    """Extension rule, second hand: about 7 lb a gallon, 77 % of the 9.07 lb that its sugar would make without loss at
    81.4 % solids (US grades of extracted honey, 1985: at most 18.6 % moisture)."""
    without_loss = SUGAR_LB_PER_GALLON["2:1"] / (1 - 0.186)
    assert round(without_loss, 2) == 9.07
    assert STORES_LB_PER_GALLON["2:1"] / without_loss == pytest.approx(0.77, abs=0.005)


def test_light_syrup_puts_on_less_in_proportion_to_its_sugar():
    """No rule is printed for light syrup: its sugar, by the densities above."""
    by_sugar = {syrup: DENSITY[syrup] * SUGAR_SHARE[syrup] for syrup in DENSITY}
    ratio = STORES_LB_PER_GALLON["1:1"] / STORES_LB_PER_GALLON["2:1"]
    assert ratio == pytest.approx(by_sugar["1:1"] / by_sugar["2:1"], rel=1e-3)


def feed_of(region, **given):
    told = seasons.operation(colonies=20, region=region)
    assumptions = seasons.answers(told, **given)
    return project(told, assumptions, seasons.average(told, assumptions)).feed, assumptions


def test_twenty_colonies_fed_in_the_north_get_the_gallons_of_the_survey():
    """Topitzhofer et al., PNW 745, 2020, table 1: autumn 3 to 4 gallons in Idaho, 3 to 6.5 in Oregon."""
    feed, _ = feed_of("north")
    (autumn,) = [need for need in feed if need.season == "autumn"]
    assert autumn.colonies == 20
    assert 3 <= autumn.gallons <= 6.5
    assert autumn.sugar_lb == pytest.approx(autumn.gallons * 7.38)


def test_spring_feed_and_patties_lie_in_the_surveys_span():
    """The same, tables 1 and 2: spring 1.5 to 8 gallons over both states, patties up to 6 lb in spring and 4 to 8 lb
    in autumn."""
    feed, assumptions = feed_of("north")
    (spring,) = [need for need in feed if need.season == "spring"]
    assert 1.5 <= spring.gallons <= 8
    assert 1.5 <= assumptions.split_feed_gal <= 8
    assert 4 <= assumptions.patty_lb <= 14


def test_twenty_eight_pounds_short_take_four_gallons_and_thirty_pounds_of_sugar():
    """7 lb a gallon (extension rule), 7.38 lb of sugar a gallon (derived above): 28 lb short are 4 gallons."""
    feed, assumptions = feed_of("north", stores_target_lb=90, stores_before_feeding_lb=62)
    assert autumn_gallons(assumptions, 1.0) == pytest.approx(4)
    (autumn,) = [need for need in feed if need.season == "autumn"]
    assert autumn.sugar_lb == pytest.approx(29.5, abs=0.05)


def test_a_hive_that_holds_its_target_is_not_fed():
    feed, _ = feed_of("north", stores_target_lb=60, stores_before_feeding_lb=60)
    assert [need for need in feed if need.season == "autumn"] == []


def test_autumn_feeding_in_the_north_begins_and_ends_before_15_october():
    """Moeller, USDA PRR 169, 1977, part 6."""
    deadline = dt.date(2025, 10, 15).isocalendar().week
    feed, assumptions = feed_of("north")
    assert region_of("north").autumn_feed_week < deadline
    (autumn,) = [need for need in feed if need.season == "autumn"]
    assert assumptions.start + dt.timedelta(weeks=autumn.week + 1) < dt.date(2025, 10, 15)


@pytest.mark.parametrize(
    ("region", "least", "most"), [("south", 40, 40), ("middle", 60, 70), ("north", 80, 90)]
)
def test_stores_wanted_for_winter_are_those_printed_for_the_region(region, least, most):
    """South 40, middle 60, north 80-90 lb (general guidance, second hand); 60 to 70 in an average winter (Tew, 2016);
    90 in the north (Moeller, 1977). Climate and era differ: 30 to 35 (Comstock, 1905), 45 (Phillips and Demuth, 1918),
    so never one constant."""
    assert least <= region_of(region).stores_target_lb <= most


def test_a_harder_winter_never_wants_fewer_stores():
    """General guidance, second hand: monotone in climate."""
    south, middle, north = (region_of(code) for code in ("south", "middle", "north"))
    assert south.stores_target_lb < middle.stores_target_lb < north.stores_target_lb
    assert all(region.stores_before_feeding_lb < region.stores_target_lb for region in REGIONS)


def test_deadout_honey_feeds_the_living_and_saves_syrup():
    """Common practice, no source: honey of a deadout feeds colonies, it is never sold."""
    told = seasons.operation(colonies=20)
    assumptions = seasons.answers(told, deadout_honey_lb=15)
    fed = {}
    for share in (1.0, 0.5):
        feed = project(told, assumptions, seasons.average(told, assumptions, survive=share)).feed
        fed[share] = sum(need.gallons for need in feed if need.season == "spring")
    assert fed[0.5] < fed[1.0] == question_of("spring_feed_gal").default
