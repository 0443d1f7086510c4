"""Evenings kept: they equal a plain count over all movements, whenever acts are told and in whatever order."""

import datetime as dt
from collections import Counter

import pytest

from inventory import ledger, stock
from inventory.errors import NotEnough
from inventory.ledger import Line, evenings
from inventory.models import Evening, Location, Movement
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture(autouse=True)
def short_steps(monkeypatch):
    monkeypatch.setattr(evenings, "STEP", 5)


@pytest.fixture
def ends():
    """A shed with stands enough for sixty days and a yard."""
    shed, creek = makers.make_shed(), makers.make_yard("creek")
    makers.put(shed, {"stand": 100, "box-medium-10": 60})
    return shed, creek


def move(ends, day, quantity=1, part="stand"):
    return ledger.move(
        source=ends[0],
        target=ends[1],
        lines=[Line(part, quantity)],
        day=DAY + dt.timedelta(days=day),
        who=None,
        key=makers.fresh_key(),
    )


def plain(day):
    """All balances of an evening counted over every movement."""
    inside = set(Location.objects.filter(kind__in=Location.INSIDE).values_list("pk", flat=True))
    balances: Counter = Counter()
    for row in Movement.objects.filter(day__lte=day):
        for end, sign in ((row.source_id, -1), (row.target_id, 1)):
            if end in inside:
                balances[end, evenings.gear_key(row.part_id, row.condition)] += sign * row.quantity
    return {key: quantity for key, quantity in balances.items() if quantity}


def flat(balances):
    return {(int(place), gear): n for place, gears in balances.items() for gear, n in gears.items()}


def all_true():
    """Every evening kept, and the answer for every day, by the plain count."""
    for evening in Evening.objects.all():
        assert evening.length == Movement.objects.filter(day__lte=evening.day).count()
        assert flat(evening.balances) == plain(evening.day)
    for number in range(-1, 62):
        day = DAY + dt.timedelta(days=number)
        assert flat(evenings.balances_on(day)) == plain(day)


def test_an_evening_is_kept_for_every_step_and_each_day_is_answered(ends):
    for day in range(1, 41):
        move(ends, day)
    assert 4 <= Evening.objects.count() <= 9
    all_true()


def test_an_act_told_late_is_carried_into_every_evening_since(ends):
    for day in range(1, 41):
        move(ends, day)
    before = Evening.objects.count()
    move(ends, 3, quantity=7, part="box-medium-10")
    move(ends, 20, quantity=2)
    assert Evening.objects.count() == before
    all_true()


def test_a_reversal_and_a_resend_leave_evenings_true(ends):
    wrong = move(ends, 4, quantity=3)
    for day in range(5, 30):
        move(ends, day)
    for _ in range(2):
        ledger.reverse(act=wrong, who=None, key="back")
    all_true()


def test_many_acts_told_late_get_evenings_of_their_own(ends):
    move(ends, 60)
    for day in range(1, 31):
        move(ends, day)
    assert Evening.objects.filter(day__lt=DAY + dt.timedelta(days=30)).count() >= 4
    all_true()


def test_acts_told_backwards_are_answered_alike(ends):
    for day in range(50, 0, -1):
        move(ends, day)
    assert Evening.objects.exists()
    all_true()


def test_however_many_movements_on_one_day_make_no_evening_of_the_last_day(ends):
    for _ in range(25):
        move(ends, 1)
    assert list(Evening.objects.values_list("day", flat=True)) == [DAY] or not Evening.objects.exists()
    move(ends, 2)
    all_true()
    assert Evening.objects.filter(day=DAY + dt.timedelta(days=1)).exists()


def test_books_from_before_evenings_were_kept_get_them_with_the_next_act(ends):
    for day in range(1, 41):
        move(ends, day)
    Evening.objects.all().delete()
    all_true()
    move(ends, 41)
    assert Evening.objects.count() >= 4
    all_true()


def test_a_refused_act_changes_no_evening(ends):
    for day in range(1, 21):
        move(ends, day)
    before = list(Evening.objects.values_list("day", "length", "balances"))
    with pytest.raises(NotEnough):
        move(ends, 2, quantity=95)
    assert list(Evening.objects.values_list("day", "length", "balances")) == before


def test_no_question_of_a_past_day_reads_more_than_half_the_way_to_an_evening(ends, monkeypatch):
    for day in range(1, 61):
        move(ends, day)
    read = []
    real = evenings._move
    monkeypatch.setattr(
        evenings,
        "_move",
        lambda balances, rows, sign=1: read.append(rows.count()) or real(balances, rows, sign),
    )
    for number in range(61):
        stock.by_place(as_of=DAY + dt.timedelta(days=number))
    assert max(read) <= evenings.STEP


def test_what_is_zero_is_left_out():
    balances = {1: {"2 sound": 3}}
    evenings.add(balances, 1, "2 sound", -3)
    assert balances == {}
