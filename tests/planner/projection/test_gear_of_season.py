"""Second boxes, renewed combs and small gear."""

from dataclasses import replace

from tests.planner.operations import operation


def in_set(code):
    whole = operation()
    counts = {}
    for group in whole.colonies:
        key = group.yard, group.strength
        counts[key] = counts.get(key, 0) + group.colonies
    template = whole.colonies[0]
    groups = tuple(
        replace(template, yard=yard, strength=strength, hive_set=code, colonies=count)
        for (yard, strength), count in counts.items()
    )
    return operation(colonies=groups)


def test_only_singles_get_a_second_box_and_weak_ones_none(projected):
    for projection in projected(count=3):
        whole = operation()
        survivors = [need for need in projection.second_boxes if need.strength != "split"]
        assert {need.set_code for need in survivors} == {"one-deep-10"}
        assert {need.strength for need in survivors} == {"strong", "fair"}
        assert whole.sets


def test_two_deeps_get_none_but_their_splits_do(projected):
    boxes = [need for p in projected(in_set("two-deeps-10"), count=3) for need in p.second_boxes]
    assert {need.strength for need in boxes} == {"split"}


def test_a_keeper_of_singles_gets_none(projected):
    assert not projected(count=1, second_box=False)[0].second_boxes


def test_wintered_nucs_get_their_hive(projected):
    boxes = list(projected(in_set("nuc-5"), count=1, second_box=False)[0].second_boxes)
    assert {need.set_code for need in boxes} == {"nuc-5"}


def test_strong_colonies_come_before_fair_ones(projected):
    weeks = {}
    for need in projected(count=1)[0].second_boxes:
        weeks.setdefault(need.strength, set()).add(need.week)
    assert weeks["strong"] == {20}
    assert weeks["fair"] == {22}
    assert min(weeks["split"]) > 26


def test_small_gear_is_one_a_colony_and_only_where_used(projected):
    projection = projected(count=1)[0]
    guards = sum(need.colonies for need in projection.small_gear if need.kind == "guard")
    assert guards == projection.total(40)
    kinds = {need.kind.partition("/")[0] for need in projection.small_gear}
    assert kinds == {"excluder", "feeder", "guard", "reducer"}
    none = projected(count=1, excluders=False, feeders=False, guards=False, reducers=False)[0]
    assert none.small_gear == ()


def test_feeders_go_round_the_yards(projected):
    projection = projected(count=1)[0]
    by_week = {}
    for need in projection.small_gear:
        if need.kind == "feeder":
            by_week[need.first] = by_week.get(need.first, 0) + need.colonies
    assert len(by_week) == 3
    assert max(by_week.values()) < projection.total(40) / 2


def test_combs_are_renewed_by_brood_box(projected):
    projection = projected(in_set("two-deeps-10"), count=1)[0]
    alive = 110 - sum(dead.colonies for dead in projection.deadouts)
    assert projection.culled_combs == {"deep": alive * 2 * 2}
    assert projected(count=1, comb_culled=0)[0].culled_combs == {}
