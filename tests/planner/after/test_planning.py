"""A whole small order followed: what leaves the shed is there, arrives in time or is listed, comes back or stays."""

from collections import defaultdict
from dataclasses import replace

import pytest

from planner.after.planning import After
from planner.after.records import EXTRA, AfterSection
from planner.plan.json_form import _plain, _value


def test_no_load_is_over_the_truck(section):
    assert section.loads
    for load in section.loads:
        for leg in (load.out, load.home):
            assert leg.lb <= section.truck_lb and leg.cubic_ft <= section.truck_cubic_ft


def test_loads_ride_on_visits_unless_they_say_so(after, section):
    for load in section.loads:
        assert load.rides == EXTRA or load.week in after.visits(load.yard)


def test_all_that_is_wanted_arrives_by_its_week_or_is_listed(after):
    told = defaultdict(int)
    for row in after.late:
        told[row.chunk.want.yard, after.kind(row.chunk.want.part)] += row.pieces
    for want, pieces in after.answer.short:
        told[want.yard, after.kind(want.part)] += pieces
    wanted = defaultdict(lambda: defaultdict(int))
    for course in after.courses.values():
        for week, pieces in enumerate(course.out):
            wanted[course.yard, after.kind(course.part)][week] += pieces
    brought = defaultdict(lambda: defaultdict(int))
    for yard, trip in after.trips:
        for (part, _full), pieces in trip.out.items():
            brought[yard, after.kind(part)][trip.week] += pieces
    for key, by_week in wanted.items():
        for week in range(52):
            due = sum(n for at, n in by_week.items() if at <= week)
            there = sum(n for at, n in brought[key].items() if at <= week)
            assert there >= due - told[key], (key, week)


def test_what_goes_out_comes_back_or_stays(after):
    """At each yard and kind: brought less taken home is what is there at the end, and never more goes than was there."""
    for (yard, kind), net in after.brought.items():
        own = sum(rows for (at, part), rows in after.own.items() if at == yard and after.kind(part) == kind)
        found = sum(
            rows.max(axis=0)
            for (at, part), rows in after.planned.found.items()
            if at == yard and after.kind(part) == kind
        )
        assert ((net + own + found) >= -1e-6).all(), (yard, kind)


def test_the_shed_never_gives_what_it_does_not_have(after):
    """Pieces out, all yards, up to any week: no more than stock, deliveries, homecomings and the bench gave by then."""
    facts = after.facts
    have = defaultdict(int)
    for row in facts.problem.stock:
        if row.location == facts.shed:
            have[row.part] += row.quantity
    made = defaultdict(int)
    bench = after.answer.bench
    for number, rows in bench.finished.items():
        made[bench.jobs[number].code] += sum(pieces for _week, pieces in rows)
    out, home = defaultdict(int), defaultdict(int)
    for _yard, trip in after.trips:
        for (part, _full), pieces in trip.out.items():
            out[part] += pieces
        for (part, _full), pieces in trip.home.items():
            home[part] += pieces
    boxes = "box-medium-10"
    assert out[boxes] <= have[boxes] + home[boxes] + made[f"assemble-{boxes}"] + section_in_season(
        after, boxes
    )


def section_in_season(after, part):
    from_prices = [
        line.packs * units
        for scenario in after.facts.plan.scenarios
        for line in scenario.later
        for code, units in after.facts.offers[line.offer].parts.items()
        if code == part
    ]
    bought = sum(line.units.get(part, 0) for line in after.facts.plan.here_and_now)
    return bought + sum(from_prices)


def test_gear_in_pieces_never_rides_and_tokens_neither(section, after):
    for load in section.loads:
        for line in (*load.out.carried, *load.home.carried):
            assert line.part.startswith("syrup-") or not after.facts.parts[line.part].flat
            assert line.pieces > 0 and line.name


def test_the_check_tells_planned_and_fresh_seasons(section):
    assert (section.planned.seasons, section.fresh.seasons) == (8, 5)
    assert 0 <= section.planned.enough_in_100 <= 100
    assert 0.7 < section.planned.on_time_share <= 1


def test_without_fresh_seasons_it_is_checked_on_those_planned_with(after):
    assert after.section(None).fresh is None


def test_supers_pulled_are_full_and_come_home_the_same_week(section):
    home = defaultdict(int)
    for load in section.loads:
        for line in load.home.carried:
            if line.full:
                home[load.week, load.yard] += line.pieces
    assert home == {(row.week, row.yard): row.supers for row in section.pulls}
    for row in section.pulls:
        assert row.extracted_by > row.day and row.hours == pytest.approx(row.supers * 25 / 60, abs=0.06)


def test_sentences_say_loads_check_bench_and_feed(section):
    said = " ".join(section.sentences)
    for words in (
        "loads within 1,500 lb",
        "seasons of 100 this hauling plan is enough",
        "at the bench",
        "gallons of syrup",
        "supers to pull",
    ):
        assert words in said


def test_a_truck_that_takes_not_even_one_piece_is_told_and_the_rest_is_still_planned(followed):
    """Full deeps and mediums weigh 50 to 90 lb (extension teaching, from memory): a truck of 40 lb takes none."""
    after, _fresh = followed
    small = After(
        facts=replace(after.facts, operation=replace(after.facts.operation, truck_lb=40)),
        projections=after.projections,
    )
    section = small.section(None)
    assert any("full of honey" in name for name in section.too_large)
    assert any(said.startswith("The truck takes not even one of these") for said in section.sentences)
    assert section.loads and section.bench.jobs and section.pulls
    assert not any(line.full for load in section.loads for line in load.home.carried)
    assert all(leg.lb <= 40 for load in section.loads for leg in (load.out, load.home))


def test_trips_kept_free_are_counted_with_the_plan(after, section):
    judged = after.judged(after.facts.problem, after.facts.plan)
    without = judged.check({})
    assert section.planned.trips_in_100 >= max(without.trips_in_100, 95)
    assert {(row.yard, row.week): row.trips for row in section.free} == judged.free()


def test_the_section_is_written_and_read_back_the_same(section):
    assert _value(_plain(section), AfterSection, "after") == section
