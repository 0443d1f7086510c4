"""Count then correct makes the book equal the count, on the evening of its day, in one act."""

import datetime as dt
from io import StringIO

import pytest
from django.core.management import call_command
from django.utils import timezone
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from apiary.models import Yard
from inventory import counting, ledger, stock
from inventory.counting import posting
from inventory.errors import (
    BookMoved,
    CountBelowLater,
    CountClosed,
    DoesNotFit,
    HeldCountedFree,
    NothingGiven,
    Refused,
    Several,
)
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from inventory.locations import store_of
from inventory.models import Act, Count, Holding
from inventory.proof import prove
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
PARTS = ("box-medium-10", "comb-medium-honey", "stand", "cover-10")
CONDITIONS = [condition.value for condition in Condition]


def post(count, **fields):
    return counting.post_count(count, who=None, **fields)


def test_the_book_becomes_the_count_and_the_count_remembers_the_book(shed, counted):
    count = counted(shed, {"box-medium-10": 18, "stand": 12, "comb-medium-honey": 200})
    act = post(count)
    assert stock.on_hand(shed) == {
        Gear(part="box-medium-10"): 18,
        Gear(part="comb-medium-honey"): 200,
        Gear(part="stand"): 12,
    }
    count.refresh_from_db()
    assert (count.status, count.act, act.key) == (Count.Status.POSTED, act, count.key)
    booked = {line.part.code: (line.booked, line.quantity) for line in count.lines.select_related("part")}
    assert booked == {"box-medium-10": (20, 18), "stand": (10, 12), "comb-medium-honey": (200, 200)}


def test_posting_again_changes_nothing(shed, counted):
    count = counted(shed, {"stand": 12})
    assert post(count) == post(count)
    assert Act.objects.filter(name="correct").count() == 1


def test_a_count_of_an_earlier_day_is_compared_with_the_book_of_that_day(shed, yard, counted):
    later = DAY + dt.timedelta(days=9)
    ledger.move(source=shed, target=yard, lines=[Line("stand", 4)], day=later, who=None, key="m")
    count = counted(shed, {"stand": 9})
    assert [row.words for row in counting.compared(count)] == ["1 missing"]
    post(count)
    assert stock.on_hand(shed, as_of=DAY)[Gear(part="stand")] == 9
    assert stock.on_hand(shed)[Gear(part="stand")] == 5


def test_fewer_than_were_taken_away_since_is_refused_by_name_and_day(shed, yard, counted):
    later = DAY + dt.timedelta(days=9)
    ledger.move(source=shed, target=yard, lines=[Line("stand", 4)], day=later, who=None, key="m")
    count = counted(shed, {"stand": 3})
    makers.put(shed, {"stand": 5}, condition="to mend")
    counting.enter(count, [(shed, "stand", "to mend", 5)])
    with pytest.raises(CountBelowLater, match="3 of Hive stand counted, but by 10 April 2025"):
        post(count)
    count.refresh_from_db()
    assert count.status == Count.Status.DRAFT


def test_a_count_of_a_yard_takes_its_hives_and_the_frames_of_a_missing_box_along(shed, yard, colony, counted):
    makers.put(yard, {"stand": 3})
    count = counted(yard, {"stand": 2}, with_colonies=True)
    counting.enter(count, [(colony, "box-medium-10", "sound", 0), (colony, "box-deep-10", "sound", 2)])
    along = [(row.part.code, row.words, row.along) for row in counting.compared(count) if row.along]
    assert along == [("comb-medium-honey", "10 missing", True)]
    act = post(count)
    assert act.movements.count() == 3
    held = stock.on_hand(colony)
    assert Gear(part="box-medium-10") not in held and Gear(part="comb-medium-honey") not in held
    assert held[Gear(part="box-deep-10")] == 2
    assert stock.on_hand(yard)[Gear(part="stand")] == 2


def test_held_floors_counted_after_a_refused_haul_lie_where_they_were_counted(shed):
    """The refused act had made the yard's store and rolled it back; the proof sees a count that came to nothing."""
    fresh, keeper = makers.make_yard("untouched"), makers.make_person("keeper")
    with pytest.raises(Refused):
        ledger.move(source=fresh, target=shed, lines=[Line("floor-10", 4)], day=DAY, who=keeper, key="m")
    makers.make_colony(yard=makers.make_yard("another"), gear=True)
    store_of(Yard.objects.get(pk=fresh.pk))
    draft = counting.begin(location=fresh, day=timezone.localdate(), who=keeper, key="c")
    counting.enter(draft, [(fresh, "floor-10", Condition.HELD, 2)])
    counting.post_count(draft, who=keeper)
    there = Holding.objects.filter(location=fresh.store, part__code="floor-10", condition=Condition.HELD)
    assert (there.get().quantity, prove().faults) == (2, ())
    there.delete()
    assert "Untouched" in " ".join(prove().faults)


def test_what_was_seen_is_what_is_posted(shed, yard, counted):
    count = counted(shed, {"stand": 9})
    shown = counting.token_of(counting.compared(count))
    ledger.move(source=shed, target=yard, lines=[Line("stand", 2)], day=DAY, who=None, key="m")
    with pytest.raises(BookMoved, match="Shed: the book changed while you looked"):
        post(count, shown=shown)
    post(count, shown=counting.token_of(counting.compared(count)))
    assert stock.on_hand(shed)[Gear(part="stand")] == 9


def test_an_empty_count_is_refused(shed):
    count = counting.begin(location=shed, day=DAY, who=None, key="k")
    with pytest.raises(NothingGiven):
        post(count)


def test_a_count_thrown_away_is_not_posted(shed, counted):
    with pytest.raises(CountClosed):
        post(counting.drop(counted(shed, {"stand": 9})))


def test_what_does_not_fit_is_not_found_on_a_hive(colony, counted):
    with pytest.raises(DoesNotFit):
        post(counted(colony, {"box-deep-8": 1}))


def test_a_count_whose_end_fails_leaves_nothing(shed, counted, monkeypatch):
    count = counted(shed, {"stand": 9})

    def stop(*args):
        raise RuntimeError("the power failed")

    monkeypatch.setattr(posting, "_close", stop)
    with pytest.raises(RuntimeError):
        post(count)
    assert not Act.objects.filter(name="correct").exists()
    count.refresh_from_db()
    assert count.status == Count.Status.DRAFT


def test_reversed_the_book_is_as_it_was_and_the_count_stands_no_more(shed, counted):
    count = counted(shed, {"stand": 12})
    ledger.reverse(act=post(count), who=None, key="r")
    assert stock.on_hand(shed)[Gear(part="stand")] == 10
    assert not Count.objects.posted().exists()


numbers = st.dictionaries(
    st.tuples(st.sampled_from(PARTS), st.sampled_from(CONDITIONS)), st.integers(0, 60), min_size=1
)


def lets_go(before, wanted):
    """Whether fewer held-back pieces of a part were counted, and more of it in another condition."""
    more = {
        gear.part for gear, n in wanted.items() if n > before.get(gear, 0) and gear.condition != "held back"
    }
    less = {
        gear.part for gear, n in wanted.items() if n < before.get(gear, 0) and gear.condition == "held back"
    }
    return bool(more & less)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(opening=numbers, told=numbers, late=st.integers(0, 3))
def test_count_then_correct_makes_book_equal_count(db, opening, told, late):
    yard = makers.make_yard()
    makers.make_catalogue()
    for condition in CONDITIONS:
        gear = {part: n for (part, word), n in opening.items() if word == condition and n}
        if gear:
            makers.put(yard, gear, condition=condition)
    day = DAY + dt.timedelta(days=late)
    before = stock.on_hand(yard)
    count = counting.begin(location=yard, day=day, who=None, key=makers.fresh_key())
    counting.enter(count, [(yard, part, word, n) for (part, word), n in told.items()])
    wanted = {Gear(part=part, condition=Condition(word)): n for (part, word), n in told.items()}
    if lets_go(before, wanted):
        with pytest.raises((HeldCountedFree, Several), match="written word"):
            post(count)
        assert stock.on_hand(yard) == before
        return
    post(count)
    after = {**{gear: n for gear, n in before.items() if gear not in wanted}, **wanted}
    assert stock.on_hand(yard) == {gear: n for gear, n in after.items() if n}
    again = counting.begin(location=yard, day=day, who=None, key=makers.fresh_key())
    counting.enter(again, [(yard, part, word, n) for (part, word), n in told.items()])
    assert {row.words for row in counting.compared(again)} == {"agrees"}


def test_the_books_are_proven_after_a_count(shed, yard, colony, counted):
    count = counted(yard, {"stand": 2}, with_colonies=True)
    counting.enter(count, [(colony, "box-medium-10", "sound", 0)])
    post(count)
    out = StringIO()
    call_command("check_books", stdout=out)
    assert out.getvalue().startswith("The books are right:")
