"""All the gear there is: stock, arrivals, bought, made and used up, season by season; and how it agrees with the plan."""

from types import SimpleNamespace

import numpy as np

from planner.after.pool import exists_of, pool_of
from planner.sizing.records import Arrival, Problem, Recipe, Scenario, Stock, Use
from tests.planner.after.test_targets import BOX, spell, wants

FLAT = f"{BOX}-flat"


def problem():
    moth = Use(code="moth", location="shed", first=5, last=5, units=2, value=1, spends={BOX: 1})
    return Problem(
        periods=8,
        parts=(),
        locations=("shed", "creek"),
        scenarios=(
            Scenario(
                code="s",
                probability=1,
                uses=(moth,),
                arrivals=(Arrival(part=BOX, location="creek", period=3, quantity=2),),
            ),
        ),
        stock=(Stock(part=BOX, location="shed", quantity=5), Stock(part=BOX, location="creek", quantity=1)),
        recipes=(Recipe(code="nail", takes={FLAT: 1}, makes={BOX: 1}, lead_periods=1),),
        offers=(SimpleNamespace(code="flats", parts={FLAT: 5}, lead_periods=2),),
    )


def plan():
    line = SimpleNamespace(offer="flats", period=0, packs=2)
    season = SimpleNamespace(
        code="s",
        later=[SimpleNamespace(offer="flats", period=4, packs=1)],
        made=[SimpleNamespace(recipe="nail", period=2, units=4)],
        served=[SimpleNamespace(use="moth", units=2)],
    )
    return SimpleNamespace(here_and_now=[line], scenarios=[season])


def test_all_there_is_is_counted_wherever_it_lies():
    found = pool_of(problem(), plan(), {BOX, FLAT})
    assert found[BOX].tolist() == [[6, 6, 6, 12, 12, 10, 10, 10]]
    assert found[FLAT].tolist() == [[0, 0, 6, 6, 6, 6, 11, 11]]


def test_what_does_not_travel_is_not_counted():
    assert set(pool_of(problem(), plan(), {BOX})) == {BOX}


def test_what_lies_at_the_yards_already_is_not_there_to_be_brought():
    made = wants({("creek", BOX): [spell(3, 6, 8)]}, {("creek", BOX): [spell(4, 15, 2)]})
    there = exists_of(
        {BOX: np.full((1, 16), 9.6)}, made, {("creek", BOX): np.full(16, 3.0)}, lambda part: part
    )
    assert there[BOX].tolist() == [6] * 4 + [4] * 12


def test_no_season_puts_to_use_more_than_there_is(after):
    """The pool agrees with the programme that served the seasons: what all yards keep never exceeds it."""
    facts = after.facts
    pool = pool_of(facts.problem, facts.plan, after.gear, kind=after.kind)
    kept: dict = {}
    for (_yard, part), rows in after.planned.kept.items():
        kept[after.kind(part)] = kept.get(after.kind(part), 0) + rows
    assert kept
    for kind, rows in kept.items():
        assert (rows <= pool[kind] + 1e-4).all(), kind
