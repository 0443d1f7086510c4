"""The one-time link: shown once, used once, refused when unknown, used, old or meant for someone who left."""

import datetime as dt

import pytest
from django.contrib.auth import get_user_model

from apiary import people
from apiary.models import SignInLink
from tests.makers import make_person

pytestmark = pytest.mark.django_db
NOW = dt.datetime(2026, 11, 2, 6, 12, tzinfo=dt.UTC)
LATER = NOW + dt.timedelta(hours=1)


def test_the_first_keeper_has_no_password_at_all():
    keeper = people.first_keeper()
    assert keeper.is_superuser and not keeper.has_usable_password()
    assert not people.someone_can_sign_in()


def test_the_first_keeper_is_made_once():
    assert people.first_keeper() == people.first_keeper()


def test_once_someone_has_a_password_someone_can_sign_in():
    make_person()
    assert people.someone_can_sign_in()


def test_a_person_switched_off_does_not_count_as_one_who_can_sign_in():
    make_person(is_active=False)
    assert not people.someone_can_sign_in()


def test_a_link_sets_name_and_password_and_is_used_up():
    token = people.make_link(people.first_keeper(), now=NOW)
    person = people.use_link(token, now=LATER, name="Robin Ash", password="forty frames of foundation")
    person = get_user_model().objects.get(pk=person.pk)
    assert person.username == "Robin Ash"
    assert person.check_password("forty frames of foundation")
    with pytest.raises(people.LinkNotGood, match="has been used"):
        people.use_link(token, now=LATER)


def test_only_the_digest_is_kept():
    token = people.make_link(make_person(), now=NOW)
    link = SignInLink.objects.get()
    assert token not in link.digest
    assert link.digest == people.digest_of(token)
    assert len(token) >= 43  # 32 random bytes, written in base64


def test_looking_at_a_link_does_not_use_it_up():
    token = people.make_link(make_person(), now=NOW)
    people.link_of(token, now=LATER)
    assert people.use_link(token, now=LATER).username == "robin"


def test_a_link_too_old_is_refused():
    token = people.make_link(make_person(), now=NOW)
    with pytest.raises(people.LinkNotGood, match="too old"):
        people.use_link(token, now=NOW + people.LINK_LASTS)


def test_an_unknown_token_is_refused():
    with pytest.raises(people.LinkNotGood, match="not known"):
        people.use_link("a guess", now=NOW)


def test_a_link_of_a_person_switched_off_is_refused():
    person = make_person()
    token = people.make_link(person, now=NOW)
    person.is_active = False
    person.save()
    with pytest.raises(people.LinkNotGood, match="not known"):
        people.use_link(token, now=LATER)


def test_a_new_link_stops_the_one_before():
    person = make_person()
    first = people.make_link(person, now=NOW)
    second = people.make_link(person, now=LATER)
    with pytest.raises(people.LinkNotGood):
        people.use_link(first, now=LATER)
    assert people.use_link(second, now=LATER) == person


def test_a_renewed_link_takes_the_forgotten_password_away():
    person = make_person()
    people.make_link(person, now=NOW, renew=True)
    assert not get_user_model().objects.get(pk=person.pk).has_usable_password()


def test_of_two_who_use_a_link_at_once_one_is_let_in(monkeypatch):
    """Both have looked the link up before either marks it: the second finds the row taken."""
    token = people.make_link(make_person(), now=NOW)
    link = people.link_of(token, now=NOW)
    monkeypatch.setattr(people, "link_of", lambda token, now: link)
    people.use_link(token, now=LATER)
    with pytest.raises(people.LinkNotGood, match="has been used"):
        people.use_link(token, now=LATER)
