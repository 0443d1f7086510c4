"""Roles and yards: what each role may do, which yards and colonies it is offered, and what is refused with a sentence."""

import pytest
from django import forms
from django.contrib.auth.models import AnonymousUser
from django.utils import timezone

from apiary import rights
from apiary.models import Access, Colony, Yard
from apiary.rights import HELPER, KEEPER, READER
from tests.makers import make_colony, make_person, make_yard

pytestmark = pytest.mark.django_db


@pytest.fixture
def mine():
    return make_yard("fern-hollow")


@pytest.fixture
def far():
    return make_yard("long-acre")


@pytest.fixture
def helper(mine):
    return make_person("sam", role=HELPER, yards=[mine])


def test_who_set_the_house_up_is_a_keeper_without_being_told():
    assert rights.role_of(make_person(role=None, is_superuser=True)) == KEEPER


def test_the_role_is_the_one_given(helper):
    assert rights.role_of(helper) == HELPER
    assert rights.role_of(make_person("kim", role=READER)) == READER


def test_who_was_given_no_role_has_none():
    assert (
        rights.role_of(make_person(role=None))
        == rights.role_of(AnonymousUser())
        == rights.role_of(None)
        == ""
    )


def test_a_role_that_was_ended_is_none_and_so_is_that_of_a_person_switched_off(helper):
    Access.objects.filter(user=helper).update(ended_at=timezone.now())
    assert rights.role_of(helper) == ""
    assert rights.role_of(make_person("kim", is_active=False)) == ""


def test_a_helper_may_act_in_the_field_in_yards_given_and_do_none_of_the_keepers_acts(helper, mine, far):
    assert rights.may(helper, "act-move") and rights.may(helper, "act-move", mine)
    assert not rights.may(helper, "act-move", far)
    assert not rights.may(helper, "season") and not rights.may(helper, "load-sheet")


def test_an_address_without_a_row_is_the_keepers_alone(helper):
    assert rights.may(make_person("robin"), "not-in-the-table")
    assert not rights.may(helper, "not-in-the-table")


def test_only_the_keeper_sees_money(helper):
    assert rights.may_see_money(make_person("robin"))
    assert not rights.may_see_money(helper) and not rights.may_see_money(AnonymousUser())


def test_a_helper_is_offered_the_yards_given_and_the_colonies_in_them(helper, mine, far):
    here, away = make_colony(yard=mine), make_colony(yard=far)
    assert list(rights.grounds(helper)) == [mine]
    assert list(rights.hives(helper)) == [here]
    assert rights.yard_codes(helper) == {mine.code}
    keeper = make_person("robin")
    assert rights.yard_codes(keeper) is None
    assert set(rights.grounds(keeper)) == {mine, far}
    assert set(rights.hives(keeper)) == {here, away}
    assert list(rights.grounds(AnonymousUser())) == []
    assert rights.yard_codes(AnonymousUser()) == set()


def test_every_choice_of_a_form_is_narrowed_to_what_is_theirs(helper, mine, far):
    class Asked(forms.Form):
        yard = forms.ModelChoiceField(Yard.objects.all())
        colony = forms.ModelChoiceField(Colony.objects.all())
        note = forms.CharField()

    here = make_colony(yard=mine)
    make_colony(yard=far)
    form = rights.narrow(Asked(), helper)
    assert list(form.fields["yard"].queryset) == [mine]
    assert list(form.fields["colony"].queryset) == [here]
    assert rights.narrow(Asked(), make_person("robin")).fields["yard"].queryset.count() == 2


def test_a_yard_not_given_is_refused_by_its_name(helper, mine, far):
    with pytest.raises(
        rights.NotYours, match="Long Acre is not among the yards given to you: nothing was booked"
    ):
        rights.refuse_elsewhere(helper, [mine, far.pk, None])
    rights.refuse_elsewhere(helper, [mine.pk])
    rights.refuse_elsewhere(make_person("robin"), [mine, far])
    rights.refuse_elsewhere(None, [far])
