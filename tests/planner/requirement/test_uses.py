"""A projection in gear: every need one use, alike ones together, ties in order."""

import pytest

from planner.requirement.arrivals import arrivals_of
from planner.requirement.super_uses import HONEY_BIN_LB, merged
from planner.requirement.tokens import DRAWING, RESTED
from planner.requirement.uses import uses_of


@pytest.fixture
def made(season_gear, projected):
    gear, projection = season_gear(), projected(count=1)[0]
    return gear, projection, uses_of(gear, projection)


def units(uses, kind):
    return sum(use.units for use in uses if use.code.startswith(kind))


def test_all_supers_are_there_but_those_not_worth_their_handling(made):
    _gear, projection, uses = made
    worth = sum(need.colonies for need in projection.supers if need.honey_lb > HONEY_BIN_LB)
    assert worth <= units(uses, "super/") <= sum(need.colonies for need in projection.supers)


def test_merging_keeps_colonies_and_honey(made):
    _gear, projection, _uses = made
    rows = list(merged(projection.supers))
    assert sum(colonies for _, _, colonies, _ in rows) == sum(need.colonies for need in projection.supers)
    honey = sum(need.colonies * need.honey_lb for need in projection.supers)
    assert sum(colonies * lb for _, _, colonies, lb in rows) == pytest.approx(honey)
    assert len(rows) < len(projection.supers)


def test_a_second_super_is_worth_less_than_the_first(made):
    _gear, _projection, uses = made
    worth = {}
    for use in uses:
        if use.code.startswith("super/elm/clover/strong"):
            worth[use.code.split("/")[4]] = use.value
    assert worth["2"] <= worth["1"]


def test_splits_tie_nuc_hive_and_supers_together(made):
    _gear, projection, uses = made
    by_code = {use.code: use for use in uses}
    split = projection.splits[0]
    attempt, hive = by_code[f"split/{split.yard}"], by_code[f"hive/{split.yard}"]
    assert (attempt.units, attempt.value) == (split.attempts, -30)
    assert attempt.last + 1 == hive.first == split.hive_week
    assert hive.needs_use == attempt.code
    assert hive.per * attempt.units == pytest.approx(hive.units)
    for use in uses:
        if "/split" in use.code and use.code.startswith(("super/", "second-box/")):
            assert use.needs_use == f"hive/{use.location}"
            assert use.per * by_code[use.needs_use].units == pytest.approx(use.units)


def test_nucs_sold_spend_their_combs_and_their_box_unless_it_comes_back(season_gear, projected):
    for returns in (True, False):
        given = {"nucs_sold": 6, "nuc_box_returns": returns}
        gear, projection = season_gear(**given), projected(count=1, **given)[0]
        nucs = [use for use in uses_of(gear, projection) if use.code.startswith("nuc/")]
        assert sum(use.units for use in nucs) == 6
        box = {} if returns else {"nuc-box-5": 1}
        assert nucs[0].spends == {"comb-deep-brood": 5, **box}
        assert nucs[0].keeps == ({"nuc-box-5": 1} if returns else {})
        # A box lent on deposit is away four weeks.
        assert nucs[0].last - nucs[0].first == (3 if returns else 0)
        assert nucs[0].value == 150


def test_combs_swapped_frame_for_frame_are_not_spent(season_gear, projected):
    given = {"nucs_sold": 6, "nuc_box_returns": False, "nuc_combs_return": True}
    gear, projection = season_gear(**given), projected(count=1, **given)[0]
    nuc = next(use for use in uses_of(gear, projection) if use.code.startswith("nuc/"))
    assert nuc.spends == {"nuc-box-5": 1}
    assert nuc.keeps == {"comb-deep-brood": 5}


def test_feed_and_consumables_are_musts_that_spend(made):
    _gear, projection, uses = made
    musts = [use for use in uses if use.must]
    sugar = sum(use.units for use in musts if "sugar" in use.spends)
    assert sugar == pytest.approx(sum(need.colonies * need.sugar_lb for need in projection.feed))
    spent = {part for use in musts for part in use.spends}
    assert spent == {"sugar", "patty", "treatment", "jar", "bucket", RESTED}
    assert all(not use.keeps for use in musts)


def test_deadouts_and_drawing_arrive(made):
    gear, projection, _uses = made
    arrivals = arrivals_of(gear, projection)
    boxes = sum(dead.returned["box-deep-10"] for dead in projection.deadouts)
    assert sum(a.quantity for a in arrivals if a.part == "box-deep-10") == boxes
    drawn = {a.period: a.quantity for a in arrivals if a.part == DRAWING}
    assert sum(drawn.values()) == sum(drawing.frames for drawing in projection.drawing)
    assert min(drawn) == 20


def test_a_season_stays_compact(season_problem):
    problem = season_problem(count=10)
    assert sum(len(scenario.uses) for scenario in problem.scenarios) / 10 < 165


def test_codes_are_unique_in_a_scenario(season_problem):
    for scenario in season_problem(count=5).scenarios:
        codes = [use.code for use in scenario.uses]
        assert len(codes) == len(set(codes))
