"""Freezing times against wax moth, checked against Charrière and Imdorf 1999, as printed in the BEEBOOK volume II,
wax moth, 5.8.1: 2 hours at -15 °C, 3 at -12 °C, 4.5 at -7 °C, from when the core is cold."""

import itertools
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.deadouts.freezing import celsius_of, fahrenheit_of, hours_at, schedule_in

DEGREES = st.decimals(min_value=-80, max_value=40, places=1)
PUBLISHED = ((Decimal(-15), Decimal(2)), (Decimal(-12), Decimal(3)), (Decimal(-7), Decimal("4.5")))


@pytest.mark.parametrize(("celsius", "hours"), PUBLISHED)
def test_at_a_published_temperature_the_published_time_holds(celsius, hours):
    assert hours_at(celsius) == hours


@pytest.mark.parametrize("celsius", ["-6.9", "0", "4", "35"])
def test_what_is_not_cold_enough_has_no_time(celsius):
    assert hours_at(Decimal(celsius)) is None


@pytest.mark.parametrize(("celsius", "hours"), [("-14.9", 3), ("-13", 3), ("-11.9", "4.5"), ("-30", 2)])
def test_between_two_published_temperatures_the_longer_time_holds(celsius, hours):
    assert hours_at(Decimal(celsius)) == Decimal(hours)


@given(DEGREES, DEGREES)
def test_colder_is_never_longer(one, other):
    colder, warmer = sorted((one, other))
    if hours_at(warmer) is not None:
        assert hours_at(colder) <= hours_at(warmer)


@given(st.decimals(min_value=-15, max_value=-7, places=2))
def test_no_time_is_shorter_than_the_straight_line_between_the_published_ones(celsius):
    for (cold, short), (warm, long) in itertools.pairwise(PUBLISHED):
        if cold <= celsius <= warm:
            assert hours_at(celsius) >= short + (long - short) * (celsius - cold) / (warm - cold)


@pytest.mark.parametrize(("fahrenheit", "celsius"), [("5", -15), ("10.4", -12), ("19.4", -7), ("32", 0)])
def test_fahrenheit_is_celsius_by_the_exact_rule(fahrenheit, celsius):
    assert celsius_of(Decimal(fahrenheit), "F") == celsius
    assert fahrenheit_of(celsius) == Decimal(fahrenheit)


def test_the_schedule_is_told_in_either_scale():
    assert [degrees for degrees, _hours in schedule_in("C")] == [-15, -12, -7]
    assert [str(degrees) for degrees, _hours in schedule_in("F")] == ["5", "10.4", "19.4"]


def test_another_scale_is_refused():
    with pytest.raises(ValueError, match="choose C or F"):
        celsius_of(0, "K")
