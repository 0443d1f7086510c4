"""The keeper's page of people, and what a person finds who comes by their link."""

import re

import pytest
from django.contrib.auth import get_user_model
from django.test import Client
from django.urls import reverse

from apiary.models import Access
from apiary.rights import HELPER, READER, role_of
from tests.makers import make_person, make_shed, make_yard

pytestmark = pytest.mark.django_db
CHOSEN = {"name": "Sam Reed", "password": "forty frames of foundation", "again": "forty frames of foundation"}


@pytest.fixture
def yard():
    return make_yard("fern-hollow")


@pytest.fixture
def keeper(client, yard):
    person = make_person("keeper")
    client.force_login(person)
    return person


@pytest.fixture
def sam(yard):
    return make_person("sam", role=HELPER, yards=[yard])


def link_in(answer):
    """The path of the link that a page shows."""
    return re.search(r'href="http://testserver(/sign-in/[^"]+)"', answer.content.decode())[1]


def invite(client, **given):
    return client.post(
        reverse("people"), {"name": "Sam", "role": "helper", "yards": ["fern-hollow"], **given}
    )


def signed_in(person):
    other = Client()
    other.force_login(person)
    return other


def test_everyone_is_listed_with_role_yards_and_state(client, keeper, sam):
    make_person("kim", role=None)
    text = client.get(reverse("people")).content.decode()
    for words in ("keeper", "you, signs in", "sam", "helper", "Fern Hollow", "kim", "nothing"):
        assert words in text


def test_an_invitation_shows_a_link_once_and_the_link_opens_their_yard(client, keeper):
    make_shed()
    answer = invite(client, yards=["fern-hollow", "shed"])
    assert answer.status_code == 200
    assert "no-store" in answer.headers["Cache-Control"]
    assert "<svg" in answer.content.decode()
    link = link_in(answer)
    assert link not in client.get(reverse("people")).content.decode()
    other = Client()
    assert 'value="Sam"' in other.get(link).content.decode()
    assert other.post(link, CHOSEN).url == reverse("yard", args=["fern-hollow"])
    assert other.get(reverse("yard", args=["fern-hollow"])).status_code == 200
    assert other.get(reverse("people")).status_code == 403
    assert Client().post(link, CHOSEN).status_code == 410


def test_who_works_in_several_yards_comes_to_this_week(client, keeper):
    make_yard("long-acre")
    link = link_in(invite(client, yards=["fern-hollow", "long-acre"]))
    assert Client().post(link, CHOSEN).url == reverse("home")


def test_the_link_says_where_it_works(client, keeper):
    assert "known to this machine alone" not in invite(client).content.decode()
    here = client.post(
        reverse("people"), {"name": "Kim", "role": "keeper"}, headers={"host": "127.0.0.1:8000"}
    )
    assert "known to this machine alone" in here.content.decode()


def test_a_faulty_invitation_makes_nobody(client, keeper):
    before = get_user_model().objects.count()
    answer = invite(client, yards=[])
    assert answer.status_code == 422
    assert "Tick at least one yard" in answer.content.decode()
    assert "has this name already" in invite(client, name="KEEPER").content.decode()
    assert get_user_model().objects.count() == before


def test_role_and_yards_change_from_the_next_page_on(client, keeper, sam):
    other = signed_in(sam)
    assert other.get(reverse("act-move")).status_code == 200
    answer = client.post(reverse("person", args=[sam.pk]), {"role": "reader", "yards": ["fern-hollow"]})
    assert answer.url == reverse("people")
    assert Access.objects.get(user=sam).role == READER
    assert other.get(reverse("act-move")).status_code == 403
    assert other.get(reverse("home")).status_code == 200


def test_ending_access_ends_open_sessions_and_the_password(client, keeper, sam):
    other = signed_in(sam)
    assert other.get(reverse("home")).status_code == 200
    assert client.post(reverse("person-end", args=[sam.pk])).url == reverse("person", args=[sam.pk])
    assert other.get(reverse("home")).url.startswith(reverse("sign-in"))
    given = {"username": "sam", "password": "long enough to guess"}
    assert Client().post(reverse("sign-in"), given).status_code == 200
    assert "access ended" in client.get(reverse("people")).content.decode()


def test_a_session_from_before_the_end_stays_closed_when_a_new_link_lets_back_in(client, keeper, sam):
    other = signed_in(sam)
    client.post(reverse("person-end", args=[sam.pk]))
    link = link_in(client.post(reverse("person-link", args=[sam.pk])))
    assert other.get(reverse("home")).status_code == 302
    assert Client().post(link, CHOSEN).url == reverse("yard", args=["fern-hollow"])
    assert role_of(get_user_model().objects.get(pk=sam.pk)) == HELPER


def test_a_new_link_signs_out_the_lost_phone(client, keeper, sam):
    lost = signed_in(sam)
    answer = client.post(reverse("person-link", args=[sam.pk]))
    assert "no-store" in answer.headers["Cache-Control"]
    assert link_in(answer)
    assert lost.get(reverse("home")).status_code == 302


def test_one_s_own_access_is_not_changed_here(client, keeper, yard):
    own = reverse("person", args=[keeper.pk])
    assert "This is you" in client.get(own).content.decode()
    answer = client.post(own, {"role": "reader", "yards": [yard.code]})
    assert answer.status_code == 422
    for name in ("person-end", "person-link"):
        answer = client.post(reverse(name, args=[keeper.pk]), follow=True)
        assert "your own role or access" in answer.content.decode()
    assert role_of(get_user_model().objects.get(pk=keeper.pk)) == "keeper"


def test_who_set_the_house_up_is_shown_and_left_alone(client, keeper):
    first = make_person("first", role=None, is_superuser=True)
    assert "set this house up" in client.get(reverse("person", args=[first.pk])).content.decode()
    assert (
        "stays its keeper"
        in client.post(reverse("person-end", args=[first.pk]), follow=True).content.decode()
    )
    assert get_user_model().objects.get(pk=first.pk).is_active


def test_ending_or_a_new_link_is_never_a_mere_look(client, keeper, sam):
    for name in ("person-end", "person-link"):
        assert client.get(reverse(name, args=[sam.pk])).status_code == 405


def test_an_unknown_person_is_not_found(client, keeper):
    assert client.get(reverse("person", args=[9999])).status_code == 404
