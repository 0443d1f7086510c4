"""How an act is written: all or nothing, once for a key, nothing below zero on any day."""

import datetime as dt

import pytest
from django.utils import timezone

from apiary.rights import HELPER, NotYours
from inventory import ledger, stock
from inventory.errors import FutureDay, KeyTaken, NotEnough, Several
from inventory.gear import Condition, Gear, Reason
from inventory.ledger import Line
from inventory.models import Act, BookSeal, Holding, Movement
from inventory.proof import prove
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"stand": 10, "floor-10": 4})
    return shed


@pytest.fixture
def yard(db):
    return makers.make_yard("creek")


def move(shed, yard, quantity, *, part="stand", day=DAY, key="k", **options):
    return ledger.move(
        source=shed, target=yard, lines=[Line(part, quantity)], day=day, who=None, key=key, **options
    )


def stands(ground, **when):
    return stock.on_hand(ground, **when).get(Gear(part="stand"), 0)


def test_an_act_writes_its_row_its_movements_and_the_balances_together(shed, yard):
    who = makers.make_person()
    act = ledger.move(
        source=shed, target=yard, lines=[Line("stand", 3)], day=DAY, who=who, key="k", note="to lend a hand"
    )
    assert (act.name, act.day, act.who, act.note) == ("move", DAY, who, "to lend a hand")
    assert [(row.quantity, row.reason) for row in act.movements.all()] == [(3, Reason.MOVED)]
    assert (stands(shed), stands(yard)) == (7, 3)


def test_a_resend_gives_the_first_act_and_changes_nothing(shed, yard):
    first = move(shed, yard, 3)
    again = move(shed, yard, 9)
    assert again == first
    assert (stands(shed), Act.objects.count()) == (7, 2)


def test_a_resend_is_harmless_even_where_the_act_would_be_refused_now(shed, yard):
    first = move(shed, yard, 8)
    assert move(shed, yard, 8) == first


def test_a_key_that_belongs_to_another_act_is_refused(shed, yard):
    move(shed, yard, 3)
    with pytest.raises(KeyTaken):
        ledger.scrap(at=shed, lines=[Line("stand", 1)], day=DAY, who=None, key="k")


@pytest.mark.parametrize("key", ["", "x" * 65])
def test_a_key_of_no_or_too_many_letters_is_a_bug(shed, yard, key):
    with pytest.raises(ValueError, match="key"):
        move(shed, yard, 1, key=key)


def test_more_than_the_book_has_is_refused_with_its_figures(shed, yard):
    with pytest.raises(NotEnough) as refused:
        move(shed, yard, 12)
    problem = refused.value
    assert (problem.wanted, problem.booked, problem.day, str(problem.location)) == (12, 10, DAY, "Shed")
    assert str(problem) == (
        "Shed: 12 of hive stand wanted, but on 1 April 2025 the book says 10. "
        "Count what is there, or give another day or place."
    )


def test_every_shortage_of_an_act_is_told(shed, yard):
    with pytest.raises(Several) as refused:
        ledger.move(
            source=shed,
            target=yard,
            lines=[Line("stand", 11), Line("floor-10", 5)],
            day=DAY,
            who=None,
            key="k",
        )
    assert [problem.wanted for problem in refused.value.problems] == [11, 5]


def test_a_refused_act_leaves_no_trace(shed, yard):
    before = (BookSeal.objects.get().head, Act.objects.count(), list(Holding.objects.values()))
    with pytest.raises(NotEnough):
        move(shed, yard, 12)
    assert (BookSeal.objects.get().head, Act.objects.count(), list(Holding.objects.values())) == before


def test_a_back_dated_act_is_refused_where_a_later_day_would_fall_below_zero(shed, yard):
    later = DAY + dt.timedelta(days=10)
    move(shed, yard, 8, day=later)
    with pytest.raises(NotEnough) as refused:
        move(shed, yard, 3, day=DAY, key="late")
    assert (refused.value.day, refused.value.booked) == (later, 2)
    move(shed, yard, 2, day=DAY, key="fits")
    assert (stands(shed), stands(shed, as_of=DAY)) == (0, 8)


def test_gear_cannot_leave_before_it_came(shed, yard):
    with pytest.raises(NotEnough):
        move(shed, yard, 1, day=DAY - dt.timedelta(days=1))


def test_a_day_still_to_come_is_refused(shed, yard):
    tomorrow = timezone.localdate() + dt.timedelta(days=1)
    with pytest.raises(FutureDay):
        move(shed, yard, 1, day=tomorrow)


@pytest.mark.parametrize("day", ["2025-04-01", dt.datetime(2025, 4, 1, tzinfo=dt.UTC), None])
def test_a_day_that_is_no_date_is_a_bug(shed, yard, day):
    with pytest.raises(TypeError, match="day"):
        move(shed, yard, 1, day=day)


def test_the_field_is_never_blocked_what_the_book_lacks_is_booked_as_found(shed, yard):
    act = move(shed, yard, 12, found_allowed=True)
    rows = [(row.quantity, row.reason, row.found, str(row.source)) for row in act.movements.all()]
    assert rows == [(2, "found", True, "count correction"), (12, "moved", False, "Shed")]
    assert (stands(shed), stands(yard)) == (0, 12)
    assert [row.quantity for row in stock.found_gear()] == [2]


def test_found_pieces_of_a_back_dated_act_keep_later_days_above_zero(shed, yard):
    later = DAY + dt.timedelta(days=10)
    move(shed, yard, 8, day=later)
    act = move(shed, yard, 5, key="late", found_allowed=True)
    assert [row.quantity for row in act.movements.filter(found=True)] == [3]
    assert stands(shed) == 0
    assert prove().faults == ()


def test_nothing_is_found_where_the_book_suffices(shed, yard):
    assert not move(shed, yard, 10, found_allowed=True).movements.filter(found=True).exists()


def test_a_condition_changes_over_the_workbench_so_that_each_row_has_one(shed):
    ledger.mark(at=shed, lines=[Line("stand", 2)], becomes="to mend", day=DAY, who=None, key="k")
    rows = Movement.objects.order_by("-id")[:2]
    assert [(row.condition, str(row.target)) for row in rows] == [("to mend", "Shed"), ("sound", "workbench")]
    assert stock.on_hand(shed)[Gear(part="stand", condition=Condition.TO_MEND)] == 2


def test_a_helper_books_nothing_that_comes_from_or_goes_to_a_yard_not_given_to_them(shed, yard):
    colony = makers.make_colony(yard=yard)
    helper = makers.make_person("sam", role=HELPER, yards=[shed])
    before = Act.objects.count()
    acts = (
        lambda: ledger.move(source=shed, target=yard, lines=[Line("stand", 1)], day=DAY, who=helper, key="1"),
        lambda: ledger.place(
            source=shed, colony=colony, lines=[Line("stand", 1)], day=DAY, who=helper, key="2"
        ),
    )
    for act in acts:
        with pytest.raises(NotYours, match="Creek is not among the yards given to you"):
            act()
    assert (Act.objects.count(), stands(shed), stands(yard)) == (before, 10, 0)
    helper.access.yards.add(yard)
    again = type(helper).objects.get(pk=helper.pk)
    ledger.move(source=shed, target=yard, lines=[Line("stand", 1)], day=DAY, who=again, key="3")
    assert (stands(shed), stands(yard)) == (9, 1)


def test_held_back_pieces_are_let_go_by_nobody_but_the_keeper_neither_by_a_count_nor_by_an_undo(shed):
    helper = makers.make_person("sam", role=HELPER, yards=[shed])
    told = {"day": DAY, "who": helper}
    held = ledger.mark(at=shed, lines=[Line("floor-10", 2)], becomes=Condition.HELD, key="1", **told)
    counted = [Line("floor-10", 0, Condition.HELD)]
    for act in (
        lambda who, key: ledger.correct(location=shed, counted=counted, day=DAY, who=who, key=key),
        lambda who, key: ledger.reverse(act=held, who=who, key=key),
    ):
        with pytest.raises(NotYours, match="let go by the keeper alone"):
            act(helper, "2")
        assert stock.on_hand(shed)[Gear(part="floor-10", condition=Condition.HELD)] == 2
    ledger.reverse(act=held, who=makers.make_person("ash"), key="3")
    assert stock.on_hand(shed)[Gear(part="floor-10")] == 4


def test_a_helper_moves_and_burns_held_back_pieces_they_stay_held_or_are_gone(shed, yard):
    makers.put(shed, {"floor-10": 3}, condition="held back")
    helper = makers.make_person("sam", role=HELPER, yards=[shed, yard])
    held, told = [Line("floor-10", 1, Condition.HELD)], {"day": DAY, "who": helper}
    ledger.move(source=shed, target=yard, lines=held, key="1", **told)
    ledger.burn(at=shed, lines=held, key="2", **told)
    assert stock.on_hand(yard) == {Gear(part="floor-10", condition=Condition.HELD): 1}
