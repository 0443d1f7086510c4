"""A season's losses in the published measures, checked against published counts.

Colony balance of the United States: USDA NASS, Honey Bee Colonies, release of 1 August 2017; the loss by this
measure was published by the Bee Informed Partnership, 2017, as 35.39 %. Winter loss by cause of 2017/18: Gray et al.
2019, Journal of Apicultural Research 58: 26,379 queen problems, 54,525 dead, 8,220 disaster of 544,879: 16.4 %.
"""

from fractions import Fraction

import pytest

from apiary.losses import ColonyBalance
from inventory.deadouts.figures import YardLosses, percent, season_losses

NASS = ColonyBalance(start=2_801_470, increase=736_920 + 217_320 + 124_660 + 586_240, end=2_886_030)
WINTER = {"queen problems": 26_379, "dead": 54_525, "disaster": 8_220}


def yard(name, *, start, end, increase=0, removed=0):
    balance = ColonyBalance(start=start, increase=increase, removed=removed, end=end)
    return YardLosses(yard=name, balance=balance, causes={"unknown": balance.dead})


def test_the_balance_of_the_united_states_gives_the_published_loss():
    report = season_losses([YardLosses(yard="all", balance=NASS, causes={"unknown": NASS.dead})])
    assert (report.whole.at_risk, report.whole.dead) == (4_466_610, 1_580_580)
    assert percent(report.total, places=2) == "35.39"


def test_losses_of_two_halves_are_not_added():
    summer, winter = Fraction(723_650, 3_755_710), Fraction(856_930, 3_742_960)
    assert percent(summer + winter) == "42.2"  # what adding would say
    assert percent(
        season_losses([YardLosses(yard="all", balance=NASS, causes={"unknown": NASS.dead})]).total
    ) == ("35.4")


def test_causes_sum_to_the_published_winter_loss():
    balance = ColonyBalance(start=544_879, end=544_879 - sum(WINTER.values()))
    report = season_losses([YardLosses(yard="all", balance=balance, causes=WINTER)])
    assert percent(report.total) == "16.4"
    assert [(row.cause, percent(row.share)) for row in report.causes] == [
        ("dead", "10.0"),
        ("queen problems", "4.8"),
        ("disaster", "1.5"),
    ]
    assert sum(row.share for row in report.causes) == report.total


def test_total_and_average_are_told_apart_and_differ():
    report = season_losses([yard("large", start=90, end=81), yard("small", start=10, end=5)])
    assert (report.total, report.average) == (Fraction(14, 100), Fraction(3, 10))


def test_a_yard_without_a_colony_at_risk_has_no_loss_and_does_not_weigh():
    report = season_losses([yard("full", start=10, end=9), yard("empty", start=0, end=0)])
    assert report.rows[1].loss is None
    assert report.average == Fraction(1, 10)


def test_where_nothing_was_at_risk_nothing_is_told():
    report = season_losses([])
    assert (report.total, report.average, report.causes) == (None, None, ())


def test_causes_that_do_not_sum_to_the_dead_are_a_bug():
    with pytest.raises(ValueError, match="1 died, but causes are told of 2"):
        YardLosses(yard="a", balance=ColonyBalance(start=2, end=1), causes={"queen": 2})


def test_half_a_last_place_is_rounded_up():
    assert percent(Fraction(1, 8), places=0) == "13"
    assert percent(Fraction(1, 2000)) == "0.1"
