"""Winter and deadouts: whole colonies, and no piece of gear comes from nowhere or vanishes."""

import datetime as dt
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.projection.colonies import allot, base_gear, deadouts, round_half_up, standing_colonies
from planner.season.operation import ColonyGroup
from planner.season.scenarios import SeasonScenario, draw
from tests.planner.operations import operation


def test_deadouts_conserve_gear(projected):
    for projection in projected():
        assert projection.deadouts
        for dead in projection.deadouts:
            assert dead.held.keys() == dead.returned.keys() == dead.lost.keys()
            for part, pieces in dead.held.items():
                assert dead.returned[part] + dead.lost[part] == pieces
                assert 0 <= dead.returned[part] <= pieces
                assert isinstance(dead.returned[part], int)


def test_the_dead_and_the_living_are_all_there_were(projected):
    for projection in projected(target_colonies=0):
        dead = sum(found.colonies for found in projection.deadouts)
        week = max(found.week for found in projection.deadouts)
        assert projection.total(0) - dead == projection.total(week)


def test_a_deadout_holds_its_set_s_gear(projected):
    whole = operation()
    sets = {facts.code: facts for facts in whole.sets}
    for dead in projected(whole, count=3)[0].deadouts:
        boxes = sets[dead.hive_set].gear["box-deep-10"]
        assert dead.held["box-deep-10"] == boxes * dead.colonies


def test_a_bad_winter_returns_more_gear(projected):
    projections = sorted(projected(count=40), key=lambda p: sum(dead.colonies for dead in p.deadouts))
    boxes = [sum(dead.returned["box-deep-10"] for dead in p.deadouts) for p in projections]
    assert boxes[-1] > boxes[0]
    assert sum(boxes[20:]) > sum(boxes[:20])


def test_deadouts_are_found_at_the_first_visit_of_spring(projected, answers):
    # ISO week 13 of 2026 is period 16 of a season that starts on 1 December 2025, a week of the fortnightly round.
    # The summer's are found half-way to week 36, at the visit after week 24; the weak are united before week 36.
    weeks = {(dead.why, dead.week) for p in projected() for dead in p.deadouts}
    assert weeks == {("winter", 16), ("summer", 28), ("united", 38)}


def test_comb_suffers_more_than_boxes(projected):
    told = {"deadout_sound_share": 1, "comb_moth_share": 0.5, "summer_united_share": 0}
    for dead in projected(count=1, **told)[0].deadouts:
        assert dead.lost["box-deep-10"] == 0
        assert dead.lost["comb-deep-brood"] >= dead.held["comb-deep-brood"] // 2


def test_nothing_sound_returns_nothing(projected):
    for dead in projected(count=1, deadout_sound_share=0, summer_united_share=0)[0].deadouts:
        assert set(dead.returned.values()) == {0}


def test_united_colonies_give_back_all_of_their_gear(projected):
    told = {"deadout_sound_share": 0, "summer_loss_share": 0.3, "summer_united_share": 1}
    united = [dead for p in projected(**told) for dead in p.deadouts if dead.why == "united"]
    assert united
    assert all(dead.returned == dead.held and dead.honey_lb == 0 for dead in united)


def test_the_books_go_before_the_set_and_treated_comb_counts_as_the_set_s():
    facts = next(facts for facts in operation().sets if facts.code == "one-deep-10")
    group = ColonyGroup(yard="alder", hive_set="one-deep-10", strength="fair", colonies=2)
    assert base_gear(group, facts)["comb-deep-brood"] == 20
    booked = {"box-deep-10": 2, "comb-deep-brood": 8, "comb-deep-brood-treated": 9, "box-medium-10": 3}
    assert base_gear(replace(group, gear=booked), facts) == {"box-deep-10": 2, "comb-deep-brood": 17}


@given(st.integers(0, 60), st.lists(st.integers(0, 12), min_size=1, max_size=8))
def test_allotting_gives_all_and_stays_within_weights_where_it_can(total, weights):
    parts = allot(total, weights)
    if not sum(weights) or not total:
        assert parts == [0] * len(weights)
        return
    assert sum(parts) == total
    if total <= sum(weights):
        assert all(part <= weight for part, weight in zip(parts, weights, strict=True))


@pytest.mark.parametrize(("number", "rounded"), [(0.4, 0), (0.5, 1), (2.5, 3)])
def test_halves_go_up(number, rounded):
    assert round_half_up(number) == rounded


def test_a_pallet_carries_four_so_a_deadout_gives_back_a_quarter(answers):
    facts = replace(
        next(facts for facts in operation().sets if facts.code == "one-deep-10"),
        gear={"box-deep-10": 1, "comb-deep-brood": 10, "pallet-4": 1, "cover-migratory-10": 1},
    )
    group = ColonyGroup(yard="alder", hive_set="one-deep-10", strength="fair", colonies=16)
    assert base_gear(group, facts)["pallet-4"] == 4
    whole = operation(sets=(facts,), colonies=(group,))
    told = answers(deadout_sound_share=1)
    key = ("alder", "one-deep-10", "fair")
    scenario = SeasonScenario(
        code="s", probability=1, survivors={key: 8}, flow={}, year_flow=1, split_success=0.7
    )
    (dead,) = deadouts(whole, told, standing_colonies(whole, told, scenario))
    assert (dead.held["pallet-4"], dead.held["cover-migratory-10"]) == (2, 8)


def test_losses_come_in_their_order_and_each_from_those_that_stand(answers):
    whole = operation(day=dt.date(2026, 5, 4))  # summer first, then the winter
    told = answers(start=whole.day, summer_loss_share=0.4)
    for scenario in draw(whole, told, count=10, seed=1):
        for standing in standing_colonies(whole, told, scenario):
            key = standing.yard, standing.hive_set, standing.strength
            weeks = {loss.why: loss.week for loss in standing.losses}
            assert weeks.get("united", 0) <= weeks.get("winter", 51)
            assert standing.at(0) == standing.before
            assert standing.after == standing.at(51) == scenario.survivors[key] >= 0
