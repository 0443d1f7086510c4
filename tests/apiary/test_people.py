"""People and the one-time link: invited, changed, shown out; the link used once and refused when it is not good."""

import datetime as dt

import pytest
from django.contrib.auth import get_user_model

from apiary import people
from apiary.models import SignInLink
from apiary.rights import HELPER, KEEPER, READER, grounds, role_of
from tests.makers import make_person, make_shed, make_yard

pytestmark = pytest.mark.django_db
NOW = dt.datetime(2026, 11, 2, 6, 12, tzinfo=dt.UTC)
LATER = NOW + dt.timedelta(hours=1)


def test_the_first_keeper_has_no_password_at_all():
    keeper = people.first_keeper()
    assert keeper.is_superuser and not keeper.has_usable_password()
    assert not people.someone_can_sign_in()


def test_the_first_keeper_is_made_once():
    assert people.first_keeper() == people.first_keeper()


def test_once_a_keeper_has_a_password_someone_can_sign_in():
    make_person()
    assert people.someone_can_sign_in()


def test_a_helper_with_a_password_does_not_leave_the_keeper_outside():
    make_person(role=HELPER)
    assert not people.someone_can_sign_in()


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


@pytest.fixture
def keeper():
    return make_person("ash")


def fresh(person):
    """The person as the next page sees them."""
    return get_user_model().objects.get(pk=person.pk)


def test_an_invited_person_has_a_role_yards_a_link_and_no_password():
    yard = make_yard("fern-hollow")
    person, token = people.invite("  Sam   Reed ", role=HELPER, yards=[yard], now=NOW)
    assert person.username == "Sam Reed"
    assert not person.has_usable_password() and not person.is_superuser and not person.is_staff
    assert (role_of(person), list(grounds(person))) == (HELPER, [yard])
    assert people.link_of(token, now=LATER).user == person


def test_a_name_somebody_has_is_not_invited_again_and_nothing_is_half_done():
    make_person("sam")
    with pytest.raises(people.PersonTaken, match="called SAM already"):
        people.invite("SAM", role=HELPER, yards=[], now=NOW)
    assert get_user_model().objects.count() == 1
    assert SignInLink.objects.count() == 0


def test_role_and_yards_change_and_a_keeper_keeps_no_list_of_yards(keeper):
    mine, far = make_yard("fern-hollow"), make_yard("long-acre")
    sam = make_person("sam", role=HELPER, yards=[mine])
    people.change(sam, role=READER, yards=[far], by=keeper)
    assert (role_of(fresh(sam)), list(grounds(fresh(sam)))) == (READER, [far])
    people.change(sam, role=KEEPER, yards=[far], by=keeper)
    assert role_of(fresh(sam)) == KEEPER
    assert list(sam.access.yards.all()) == []


def test_who_has_no_role_yet_is_given_one(keeper):
    person = make_person("sam", role=None)
    people.change(person, role=HELPER, yards=[make_yard()], by=keeper)
    assert role_of(fresh(person)) == HELPER


def test_ending_access_takes_role_password_and_links_at_once(keeper):
    sam = make_person("sam", role=HELPER)
    token = people.make_link(sam, now=NOW)
    people.end(sam, by=keeper, now=LATER)
    sam = fresh(sam)
    assert role_of(sam) == "" and not sam.is_active and not sam.has_usable_password()
    assert sam.access.ended_at == LATER
    with pytest.raises(people.LinkNotGood):
        people.link_of(token, now=LATER)


def test_a_new_link_lets_back_in_with_role_and_yards_as_before(keeper):
    yard = make_yard()
    sam = make_person("sam", role=HELPER, yards=[yard])
    people.end(sam, by=keeper, now=NOW)
    token = people.let_in(fresh(sam), by=keeper, now=LATER)
    people.use_link(token, now=LATER, name="sam", password="forty frames of foundation")
    assert (role_of(fresh(sam)), list(grounds(fresh(sam)))) == (HELPER, [yard])


def test_nobody_changes_or_ends_their_own_access(keeper):
    acts = (
        lambda: people.change(keeper, role=READER, yards=[], by=keeper),
        lambda: people.end(keeper, by=keeper, now=NOW),
        lambda: people.let_in(keeper, by=keeper, now=NOW),
    )
    for act in acts:
        with pytest.raises(people.NotByYourself, match="your own role or access"):
            act()
    assert role_of(fresh(keeper)) == KEEPER and fresh(keeper).has_usable_password()


def test_who_set_the_house_up_stays_its_keeper(keeper):
    first = people.first_keeper()
    for act in (
        lambda: people.change(first, role=READER, yards=[], by=keeper),
        lambda: people.end(first, by=keeper, now=NOW),
        lambda: people.let_in(first, by=keeper, now=NOW),
    ):
        with pytest.raises(people.KeptKeeper, match="stays its keeper"):
            act()
    assert role_of(fresh(first)) == KEEPER


def test_the_first_yard_is_the_only_one_given_the_shed_aside(keeper):
    shed, mine, far = make_shed(), make_yard("fern-hollow"), make_yard("long-acre")
    assert people.first_yard(make_person("sam", role=HELPER, yards=[shed, mine])) == mine
    assert people.first_yard(make_person("kim", role=HELPER, yards=[mine, far])) is None
    assert people.first_yard(keeper) is None
    assert people.first_yard(people.first_keeper()) is None
