"""The week of most use, by hand (see small.py)."""

import datetime as dt

from planner.plan.facts import Facts
from planner.plan.peaks import peak_of
from tests.planner.plan import small


def facts(plan=None):
    return Facts(
        operation=small.operation(),
        assumptions=small.assumptions(),
        problem=small.problem(),
        plan=plan or small.plan(),
    )


def test_the_peak_is_the_week_with_most_in_use():
    peak = peak_of(small.FLAT, facts())
    assert (peak.week, peak.starts_on, peak.words) == (26, dt.date(2027, 6, 1), "early June")
    assert (peak.mean, peak.low, peak.high, peak.served) == (14, 8, 20, 14)
    assert peak.returned == 2
    assert peak.yards == ("Creek", "Hill")


def test_what_is_used_up_has_no_week_but_a_season():
    peak = peak_of("sugar", facts())
    assert (peak.week, peak.words, peak.mean) == (None, "over the season", 45)


def test_what_no_season_asks_for_has_no_peak():
    assert peak_of("guard-10", facts()) is None


def test_what_the_plan_leaves_out_shows_beside_what_is_asked():
    scenarios = [small.solved(number, wanted) for number, wanted in enumerate(small.WANTED)]
    scenarios[3]["served"][1]["units"] = 0
    peak = peak_of(small.BOX, facts(small.plan(scenarios=scenarios)))
    assert (peak.mean, peak.served) == (14, 12)
