"""The invented year, told through the acts: the books hold, and every act there is is in it."""

from io import StringIO

import pytest
from django.core.management import call_command
from django.db.models import Count, Sum

from apiary.models import Colony, Yard
from inventory import sentences
from inventory.models import Act, Holding, Location, Movement

pytestmark = pytest.mark.django_db

INSIDE = (Location.Kind.STORE, Location.Kind.COLONY)


def test_every_act_the_books_can_tell_is_in_it_and_has_its_sentence(lived):
    told = set(Act.objects.values_list("name", flat=True))
    assert set(sentences.HEADS) - told == set(), "the demo's year lacks acts that exist"
    for name in told:
        assert sentences.sentence_of(Act.objects.filter(name=name).first()).endswith("."), name


def test_the_books_prove_themselves(lived):
    out = StringIO()
    call_command("check_books", stdout=out)
    assert "The books are right" in out.getvalue()


def test_it_is_moderate_and_lies_between_the_opening_and_the_day_of_the_order(lived):
    assert 80 < lived.acts < 200
    most = Act.objects.values("name").annotate(n=Count("id")).order_by("-n").first()
    assert most["n"] <= 30, most
    assert not Act.objects.filter(day__lt=lived.opened_on).exists()
    assert not Act.objects.filter(day__gt=lived.order_day).exists()


def test_every_part_is_conserved_over_all_places(lived):
    """What came in less what went out, reckoned from the movements alone, lies in the stores and on the colonies."""
    sums: dict = {}
    ends = ("part", "condition", "source__kind", "target__kind", "quantity")
    for part, condition, source, target, quantity in Movement.objects.order_by().values_list(*ends):
        change = (target in INSIDE) - (source in INSIDE)
        sums[part, condition] = sums.get((part, condition), 0) + change * quantity
    held = Holding.objects.filter(location__kind__in=INSIDE).order_by().values_list("part", "condition")
    lies = {(part, condition): n for part, condition, n in held.annotate(n=Sum("quantity")) if n}
    assert {key: n for key, n in sums.items() if n} == lies


def test_no_yard_ends_with_more_colonies_than_stands_and_the_outfit_keeps_its_size(lived):
    for yard in Yard.objects.filter(is_shed=False):
        assert 5 <= yard.colonies.alive(on=lived.order_day).count() <= yard.stands
    assert 95 <= Colony.objects.alive(on=lived.order_day).count() <= 120
