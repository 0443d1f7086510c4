"""What a suspicion reaches, 24 months back: kin, neighbours, the yard's store, pieces that were on the hive."""

import datetime as dt

import pytest
from django.db import transaction
from django.utils import timezone
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from apiary import colonies
from inventory import ledger
from inventory.deadouts.holds import held_lots, open_cases
from inventory.deadouts.reach import months_before, reach
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.locations import place_of
from inventory.proof import prove
from inventory.stock import on_hand
from tests import makers
from tests.inventory.deadouts.conftest import at, hive_of, work

pytestmark = pytest.mark.django_db
FOUND = dt.date(2025, 8, 1)
HELD = Condition.HELD


def moved(source, target, part, number, day, key=None):
    """From a store or a living colony to another place, by the act that is meant for it."""
    told = {"lines": [Line(part, number)], "day": day, "who": None, "key": key or makers.fresh_key()}
    if hasattr(source, "tag"):
        return ledger.take_off(colony=source, target=target, **told)
    if hasattr(target, "tag"):
        return ledger.place(source=source, colony=target, **told)
    return ledger.move(source=source, target=target, **told)


def told(reached):
    return {each.head: (each.why, each.pieces) for each in reached.held}


@pytest.fixture
def alone():
    """A yard with nothing but the hive that dies."""
    return makers.make_yard("long-acre")


@pytest.fixture
def dead(alone):
    return hive_of("L-01", alone, {"box-deep-10": 2, "box-medium-10": 3, "comb-medium-honey": 27})


@pytest.mark.parametrize(
    ("day", "before"),
    [
        (dt.date(2025, 8, 1), dt.date(2023, 8, 1)),
        (dt.date(2024, 2, 29), dt.date(2022, 2, 28)),
        (dt.date(2025, 1, 31), dt.date(2023, 1, 31)),
    ],
)
def test_two_years_back_is_the_same_day_or_the_last_of_its_month(day, before):
    assert months_before(day) == before


def test_a_hive_alone_with_no_past_reaches_nothing(dead, shed):
    assert reach(dead, found_on=FOUND).held == ()


def test_boxes_in_the_shed_that_were_on_the_hive_are_held_and_no_more(dead, shed):
    makers.put(shed, {"box-medium-10": 50})
    moved(dead, shed, "box-medium-10", 3, dt.date(2025, 7, 10))
    work(dead, shed, suspected=True, day=FOUND)
    assert at(shed)["box-medium-10"] == 50  # fifty and three lie there, three may be of the hive
    assert at(shed, HELD)["box-medium-10"] == 3
    lots = held_lots(part=makers.part("box-medium-10"), location=shed)
    assert [lot.why for found in lots.values() for lot in found] == [
        "was on L-01 (foulbrood suspected) since 1 August 2023"
    ]


def test_what_left_the_hive_more_than_two_years_ago_is_not_reached(alone, shed):
    old = hive_of("L-09", alone, {"box-medium-10": 3}, day=dt.date(2022, 4, 1))
    moved(old, shed, "box-medium-10", 3, dt.date(2023, 7, 31))
    assert reach(old, found_on=FOUND).held == ()
    assert [each.pieces for each in reach(old, found_on=dt.date(2025, 7, 31)).held] == [3]


def test_pieces_are_followed_through_loads_to_stores_and_hives(dead, shed, yard):
    other = hive_of("F-05", yard, {"box-deep-10": 1})
    moved(dead, shed, "box-medium-10", 2, dt.date(2025, 7, 1))
    moved(shed, yard, "box-medium-10", 2, dt.date(2025, 7, 5))
    moved(yard, other, "box-medium-10", 1, dt.date(2025, 7, 6))
    work(dead, shed, suspected=True, day=FOUND)
    assert at(yard, HELD) == {"box-medium-10": 1}
    assert at(other, HELD) == {"box-medium-10": 1}
    assert at(other) == {"box-deep-10": 1}  # what never was on the hive stays sound


def test_a_bare_frame_of_the_hive_is_known_again_with_its_foundation(alone, shed):
    dead = hive_of("L-02", alone, {"frame-deep": 4})
    makers.put(shed, {"foundation-deep": 10})
    moved(dead, shed, "frame-deep", 4, dt.date(2025, 7, 1))
    told = {"day": dt.date(2025, 7, 3), "who": None, "key": "fit"}
    ledger.assemble(recipe="fit-foundation-deep", times=3, at=shed, **told)
    work(dead, shed, suspected=True, day=FOUND)
    assert at(shed, HELD) == {"frame-deep": 1, "frame-deep-foundation": 3}
    assert at(shed) == {"foundation-deep": 7}


def test_a_load_that_was_reversed_leads_nowhere(dead, shed, yard):
    moved(dead, shed, "box-medium-10", 2, dt.date(2025, 7, 1))
    load = moved(shed, yard, "box-medium-10", 2, dt.date(2025, 7, 5))
    ledger.reverse(act=load, who=None, key="back")
    assert {str(each.location) for each in reach(dead, found_on=FOUND).held} == {"Shed"}


def test_daughters_their_daughters_and_the_mother_are_held(shed, yard):
    far = {"hive_set": "one-deep-10"}
    mother = hive_of("M-01", makers.make_yard("east"), {"box-deep-10": 2}, day=dt.date(2024, 4, 1))
    dead = hive_of(
        "D-01", makers.make_yard("west"), {"box-deep-10": 1}, day=dt.date(2025, 5, 1), mother=mother
    )
    daughter = hive_of(
        "D-02", makers.make_yard("north"), {"box-deep-10": 1}, day=dt.date(2025, 6, 1), mother=dead, **far
    )
    hive_of(
        "D-03", makers.make_yard("south"), {"box-deep-10": 1}, day=dt.date(2025, 7, 1), mother=daughter, **far
    )
    assert told(reach(dead, found_on=FOUND)) == {
        "D-02": ("daughter of D-01, kin of D-01 (foulbrood suspected)", 1),
        "D-03": ("daughter of D-02, kin of D-01 (foulbrood suspected)", 1),
        "M-01": ("mother of D-01 (foulbrood suspected), split on 1 May 2025", 2),
    }


def test_a_mother_of_long_ago_is_not_reached(shed):
    mother = hive_of("M-01", makers.make_yard("east"), {"box-deep-10": 2}, day=dt.date(2022, 4, 1))
    dead = hive_of(
        "D-01", makers.make_yard("west"), {"box-deep-10": 1}, day=dt.date(2023, 5, 1), mother=mother
    )
    assert reach(dead, found_on=FOUND).held == ()


def test_a_nuc_sold_is_told_of_and_cannot_be_held(dead, shed):
    nuc = makers.make_colony("N-01", yard=makers.make_yard("east"), mother=dead, day=dt.date(2025, 5, 1))
    colonies.end(nuc, why="sold", day=dt.date(2025, 5, 20), who=None)
    (gone,) = reach(dead, found_on=FOUND).gone
    assert (gone.head, gone.why) == (
        "N-01, sold on 20 May 2025",
        "daughter of L-01, kin of L-01 (foulbrood suspected)",
    )


def test_the_whole_yard_is_held_its_hives_and_its_store(yard, shed):
    dead, other = hive_of("F-01", yard), hive_of("F-02", yard)
    makers.put(yard, {"box-medium-10": 4, "sugar": 50, "jar": 9})
    work(dead, shed, suspected=True, day=FOUND)
    assert at(other) == {} and at(other, HELD)["box-deep-10"] == 2
    assert at(yard, HELD) == {"box-medium-10": 4}
    assert at(yard) == {"sugar": 50, "jar": 9}  # never on bees
    lots = held_lots(part=makers.part("box-medium-10"), location=yard)
    assert [lot.why for found in lots.values() for lot in found] == [
        "in Fern Hollow, where foulbrood was suspected in F-01 on 1 August 2025"
    ]


def test_a_neighbour_that_has_moved_on_is_reached_where_it_stands_now(yard, shed):
    dead, gone = hive_of("F-01", yard), hive_of("F-02", yard)
    colonies.move(gone, yard=makers.make_yard("east"), day=dt.date(2025, 5, 1), who=None)
    assert (
        told(reach(dead, found_on=FOUND))["F-02"][0] == "stood in Fern Hollow with F-01 (foulbrood suspected)"
    )


def test_one_that_came_after_it_had_left_is_no_neighbour(yard, shed):
    dead = hive_of("F-01", yard)
    colonies.move(dead, yard=makers.make_yard("east"), day=dt.date(2025, 5, 1), who=None)
    hive_of("F-03", yard, day=dt.date(2025, 5, 2))
    assert "F-03" not in told(reach(dead, found_on=FOUND))


def test_what_was_held_for_less_is_held_for_this_now(yard, shed):
    first, second = hive_of("F-01", yard), hive_of("F-02", yard)
    work(first, yard, brood_seen=False, day=dt.date(2025, 7, 1))
    work(second, shed, suspected=True, day=FOUND)
    lots = held_lots(part=makers.part("comb-deep-brood"), location=yard)
    assert {(lot.reason, lot.quantity) for found in lots.values() for lot in found} == {("reached", 16)}


def test_a_helper_of_one_yard_holds_what_lies_in_others(dead, alone, shed):
    moved(dead, shed, "box-medium-10", 3, dt.date(2025, 7, 10))
    hand = makers.make_person("hand", role="helper", yards=[alone])
    work(dead, alone, who=hand, suspected=True, day=FOUND)
    assert at(shed, HELD) == {"box-medium-10": 3}


PARTS = ("box-medium-10", "comb-medium-honey", "comb-deep-brood")
PLACES = ("dead", "other", "shed", "east", "west")
MOVES = st.lists(
    st.tuples(st.sampled_from(PLACES), st.sampled_from(PLACES), st.sampled_from(PARTS), st.integers(1, 4)),
    min_size=1,
    max_size=12,
)


def grounds():
    """Two hives far apart, a shed and two yards' stores, the same gear in each."""
    here = {name: makers.make_yard(name) for name in ("east", "west")} | {"shed": makers.make_shed()}
    here["dead"] = makers.make_colony("D-01", yard=makers.make_yard("long-acre"))
    here["other"] = makers.make_colony("O-01", yard=makers.make_yard("far-field"))
    for ground in here.values():
        makers.put(ground, dict.fromkeys(PARTS, 4))
    return here


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(moves=MOVES, random=st.randoms(use_true_random=False), fate=st.sampled_from(["held", "burnt"]))
def test_nothing_of_a_suspected_case_is_sound_in_any_store_afterwards(db, moves, random, fate):
    """Real pieces go round, each with its own past, which the books do not know. Once one hive is suspected, every
    place holds back at least as many of a part as it has pieces that were ever on that hive."""
    with transaction.atomic():
        here, day = grounds(), dt.date(2025, 5, 1)
        real = {(name, part): [name == "dead"] * 4 for name in PLACES for part in PARTS}
        for number, (source, target, part, pieces) in enumerate(moves, start=1):
            pile = real[source, part]
            if source == target or {source, target} == {"dead", "other"} or not pile:
                continue
            random.shuffle(pile)
            pieces = min(pieces, len(pile))
            moved(here[source], here[target], part, pieces, day + dt.timedelta(days=number))
            taken, real[source, part] = pile[:pieces], pile[pieces:]
            real[target, part] += [was or target == "dead" for was in taken]
        row = work(here["dead"], here["shed"], suspected=True, fate=fate, day=day + dt.timedelta(days=30))
        own = {part: len(real["dead", part]) if fate == "held" else 0 for part in PARTS}
        for name in ("shed", "east", "west", "other"):
            for part in PARTS:
                of_the_hive = sum(real[name, part]) + (own[part] if name == "shed" else 0)
                assert of_the_hive <= at(here[name], HELD).get(part, 0)
        assert on_hand(here["dead"]) == {}
        if open_cases([place_of(here["other"])]):  # what is set on it from now on comes off held back
            clean, after = makers.make_yard("north"), makers.make_yard("south")
            makers.put(clean, {"box-medium-10": 2})
            moved(clean, here["other"], "box-medium-10", 2, timezone.localdate())
            moved(here["other"], after, "box-medium-10", 2, timezone.localdate())
            assert at(after) == {} and at(after, HELD) == {"box-medium-10": 2}
        assert all(lot.deadout == row and lot.why for lots in held_lots().values() for lot in lots)
        assert prove().faults == ()
        transaction.set_rollback(True)
