"""Apiary's pages: each works, says what it should, and refuses who is not signed in."""

import datetime as dt

import pytest
from django.contrib.auth import get_user_model
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from apiary import people
from tests.makers import make_colony, make_dead_colony, make_order, make_person, make_window, make_yard, put

pytestmark = pytest.mark.django_db
GIVEN = {
    "name": "Robin Ash",
    "password": "forty frames of foundation",
    "again": "forty frames of foundation",
}


@pytest.fixture
def door(client):
    client.force_login(make_person())
    return client


@pytest.fixture
def link():
    return people.path_of(people.make_link(people.first_keeper(), now=timezone.now()))


@pytest.mark.parametrize("name", ["home", "yards", "more"])
def test_a_stranger_is_sent_to_the_door(client, name):
    answer = client.get(reverse(name))
    assert answer.status_code == 302
    assert answer.url.startswith(reverse("sign-in"))


def test_the_link_asks_for_name_and_password(client, link):
    answer = client.get(link)
    assert answer.status_code == 200
    assert b"Password again" in answer.content
    assert "no-store" in answer.headers["Cache-Control"]


def test_the_link_lets_in_and_then_never_again(client, link):
    answer = client.post(link, GIVEN)
    assert answer.url == reverse("home")
    assert client.get(reverse("home")).status_code == 200
    client.logout()
    given = {"username": "Robin Ash", "password": GIVEN["password"]}
    assert client.post(reverse("sign-in"), given).url == reverse("home")
    client.logout()
    answer = client.post(link, GIVEN)
    assert answer.status_code == 410
    assert b"has been used" in answer.content


def test_two_passwords_that_differ_leave_the_link_good(client, link):
    answer = client.post(link, {**GIVEN, "again": "something else"})
    assert b"two passwords differ" in answer.content
    assert not get_user_model().objects.get().has_usable_password()
    assert client.post(link, GIVEN).status_code == 302


def test_a_person_with_a_password_is_let_in_by_one_press(client):
    person = make_person("demo")
    link = people.path_of(people.make_link(person, now=timezone.now()))
    assert b"Password again" not in client.get(link).content
    assert client.post(link).url == reverse("home")
    assert get_user_model().objects.get(pk=person.pk).check_password("long enough to guess")


def test_an_old_link_is_refused_with_what_to_do(client):
    long_ago = timezone.now() - dt.timedelta(days=9)
    link = people.path_of(people.make_link(make_person(), now=long_ago))
    answer = client.get(link)
    assert answer.status_code == 410
    assert b"too old" in answer.content
    assert b"have a new link printed" in answer.content


def test_name_and_password_sign_in_and_out(client):
    make_person("robin")
    answer = client.post(reverse("sign-in"), {"username": "robin", "password": "long enough to guess"})
    assert answer.url == reverse("home")
    assert client.post(reverse("sign-out")).url == reverse("sign-in")
    assert client.get(reverse("home")).status_code == 302


def test_a_wrong_password_is_refused(client):
    make_person("robin")
    answer = client.post(reverse("sign-in"), {"username": "robin", "password": "a guess"})
    assert answer.status_code == 200
    assert b"No one here has this name and password" in answer.content


def test_signing_in_leads_to_no_other_site(client):
    make_person("robin")
    given = {"username": "robin", "password": "long enough to guess", "next": "//elsewhere.example/"}
    assert client.post(reverse("sign-in"), given).url == reverse("home")


def test_signing_out_by_a_link_is_refused(door):
    assert door.get(reverse("sign-out")).status_code == 405


def test_this_week_begins_with_first_steps(door):
    content = door.get(reverse("home")).content
    assert b"First steps" in content
    assert b"Load your sheet" in content


def test_this_week_lists_yards_and_what_the_order_waits_for(door):
    make_colony(yard=make_yard("fern-hollow"))
    content = door.get(reverse("home")).content.decode()
    assert "First steps" not in content
    assert "Fern Hollow" in content
    assert "No winter order yet" in content


def test_this_week_names_an_order_that_is_owed(door):
    make_yard()
    order = make_order()
    content = door.get(reverse("home")).content.decode()
    assert order.reference in content
    assert "10 still owed. Due since" in content


def test_yards_are_listed_with_their_sum(door):
    make_colony(yard=make_yard("fern-hollow", stands=10))
    make_yard("long-acre", stands=24)
    answer = door.get(reverse("yards"))
    assert answer.context["sums"]["stands"] == 34
    assert answer.context["sums"]["living"] == 1
    assert b"Long Acre" in answer.content


def test_without_yards_the_list_says_where_they_come_from(door):
    assert b"Yards come with your sheet" in door.get(reverse("yards")).content


def test_a_yard_shows_stacks_store_flow_and_a_caution(door):
    yard = make_yard("fern-hollow", gate="4417", emergency="2 Fern Lane", access="left track")
    make_window(yard, name="clover", gain_lb=68)
    make_colony("F-1", yard=yard, gear=True)
    put(yard, {"box-medium-10": 14})
    content = door.get(reverse("yard", args=["fern-hollow"])).content.decode()
    for words in ("4417", "2 Fern Lane", "left track", "F-1", "14", "68 lb", "Caution"):
        assert words in content


def test_an_unknown_yard_has_the_house_page(door):
    answer = door.get(reverse("yard", args=["nowhere"]))
    assert answer.status_code == 404
    assert b"No such sheet" in answer.content


def test_a_colony_shows_its_history_and_gear(door):
    colony = make_colony("F-1", gear=True)
    content = door.get(reverse("colony", args=[colony.pk])).content.decode()
    for words in ("F-1", "started", "Deep box", "9⅝", "16¼"):
        assert words in content


def test_a_dead_colony_warns_first(door):
    content = door.get(reverse("colony", args=[make_dead_colony(gear=True).pk])).content.decode()
    assert "Caution: this colony is dead" in content
    assert "inspector" in content


def test_a_deadout_whose_gear_is_worked_warns_no_more_and_offers_no_second_salvage(door):
    worked = make_dead_colony(yard=make_yard())
    content = door.get(reverse("colony", args=[worked.pk])).content.decode()
    assert "Caution: this colony is dead" not in content
    assert reverse("act-deadout") not in content
    assert reverse("act-correct") in content


def test_an_unknown_colony_is_not_found(door):
    assert door.get(reverse("colony", args=[99])).status_code == 404


def test_no_page_has_inline_style_or_script(door):
    yard = make_yard("fern-hollow")
    make_window(yard)
    colony = make_colony(yard=yard, gear=True)
    addresses = [reverse(name) for name in ("home", "yards", "more")]
    addresses += [reverse("yard", args=["fern-hollow"]), reverse("colony", args=[colony.pk])]
    for address in addresses:
        content = door.get(address).content.decode()
        assert " style=" not in content and "<style" not in content
        assert " onclick=" not in content and "<script>" not in content


def test_the_policy_lets_nothing_from_elsewhere_in(door):
    policy = door.get(reverse("home")).headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy


def test_a_yard_page_asks_as_much_for_twenty_colonies_as_for_two(door, django_assert_max_num_queries):
    yard = make_yard("fern-hollow")
    for number in range(20):
        make_colony(f"F-{number}", yard=yard, gear=True)
    with django_assert_max_num_queries(12):
        door.get(reverse("yard", args=["fern-hollow"]))


def test_too_many_wrong_passwords_lock_the_name_out(client, settings):
    settings.AXES_FAILURE_LIMIT = 3
    make_person("robin")
    wrong, right = {"username": "robin", "password": "a guess"}, "long enough to guess"
    answers = [client.post(reverse("sign-in"), wrong).status_code for _try in range(3)]
    assert answers[-1] == 429
    answer = client.post(reverse("sign-in"), {"username": "robin", "password": right})
    assert answer.status_code == 429
    assert b"Locked for a while" in answer.content


def test_a_form_sent_without_its_token_gets_the_house_page():
    strict = Client(enforce_csrf_checks=True)
    answer = strict.post(reverse("sign-in"), {"username": "robin", "password": "a guess"})
    assert answer.status_code == 403
    assert b"Nothing was booked" in answer.content


def test_a_fault_of_ours_says_that_nothing_was_half_done(door, monkeypatch):
    def break_down(*args, **kwargs):
        raise RuntimeError("a fault made for this test")

    monkeypatch.setattr("apiary.views.places.weeks_of", break_down)
    door.raise_request_exception = False
    answer = door.get(reverse("home"))
    assert answer.status_code == 500
    assert b"booked whole or not at all" in answer.content


def test_yards_tell_what_died_in_twelve_months_and_what_does_not_count_as_a_loss(door):
    yard, today = make_yard(), timezone.localdate()
    long_ago, lately = today - dt.timedelta(days=500), today - dt.timedelta(days=40)
    make_colony(yard=yard, day=long_ago)
    make_dead_colony(yard=yard, day=long_ago, ended=lately)
    make_dead_colony(yard=yard, day=long_ago, ended=lately, why="united")
    text = door.get(reverse("yards")).content.decode()
    assert "Of 2 that could be lost since" in text
    assert "1 died or were lost" in text
    assert "50\N{NO-BREAK SPACE}%" in text


def test_yards_without_a_colony_tell_no_losses(door):
    make_yard()
    assert b"Losses in twelve months" not in door.get(reverse("yards")).content


def test_a_dead_hive_that_holds_gear_waits_this_week_and_leads_to_its_salvage(door):
    yard = make_yard("fern-hollow")
    make_dead_colony(tag="F-10", yard=yard, gear=True)
    make_dead_colony(tag="F-11", yard=yard)  # nothing left on it
    text = door.get(reverse("home")).content.decode()
    assert "Hives to take apart" in text
    assert "F-10" in text and "F-11" not in text
    assert f"{reverse('act-deadout')}?yard=fern-hollow" in text
    assert "against robbing" in text


def test_no_hive_waits_where_all_dead_ones_were_emptied(door):
    make_dead_colony(yard=make_yard())
    assert b"Hives to take apart" not in door.get(reverse("home")).content
