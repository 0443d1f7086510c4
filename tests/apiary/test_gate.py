"""The gate: refusals come with a page of our own and a sentence, before anything is opened or booked."""

import pytest
from django.urls import reverse

from apiary.rights import HELPER, READER
from tests.makers import make_colony, make_person, make_shed, make_yard, put

pytestmark = pytest.mark.django_db


@pytest.fixture
def mine():
    return make_yard("fern-hollow")


@pytest.fixture
def far():
    return make_yard("long-acre", gate="4417")


@pytest.fixture
def helper(client, mine):
    person = make_person("sam", role=HELPER, yards=[mine])
    client.force_login(person)
    return client


def refused(answer):
    """The sentence of a refusal."""
    assert answer.status_code == 403
    assert "Not yours to open" in answer.content.decode()
    return str(answer.context["why"])


def test_a_helper_is_told_that_a_page_is_the_keepers(helper):
    assert refused(helper.get(reverse("season"))) == "This is for the keeper alone."
    assert refused(helper.post(reverse("load-sheet"))) == "This is for the keeper alone."


def test_a_yard_elsewhere_is_refused_by_name_and_nothing_of_it_is_shown(helper, far):
    answer = helper.get(reverse("yard", args=["long-acre"]))
    assert "Long Acre is not among the yards given to you" in refused(answer)
    assert "4417" not in answer.content.decode()


def test_a_colony_elsewhere_is_refused_in_the_address_and_in_its_query(helper, far):
    colony = make_colony("L-01", yard=far)
    refused(helper.get(reverse("colony", args=[colony.pk])))
    refused(helper.get(reverse("act-place"), {"colony": colony.pk}))
    refused(helper.post(reverse("act-end", args=[colony.pk]), {"why": "died"}))
    colony.refresh_from_db()
    assert colony.ended_on is None


@pytest.mark.parametrize("field", ["target", "form-2-target", "row_3_into"])
def test_a_form_that_names_a_store_elsewhere_is_refused_and_books_nothing(helper, mine, far, field):
    put(mine, {"box-deep-10": 4})
    sent = {field: far.code, "n__box-deep-10__sound": 2, "key": "k", "day": "2025-05-01"}
    answer = helper.post(f"{reverse('act-move')}?yard={mine.code}", sent)
    assert "Long Acre" in refused(answer)


def test_a_form_that_names_a_colony_elsewhere_by_tag_or_number_is_refused(helper, mine, far):
    colony = make_colony("L-01", yard=far)
    for named in ("L-01", colony.pk):
        refused(helper.post(f"{reverse('act-use')}?yard={mine.code}", {"row-0-colony": named}))


def test_numbers_of_pieces_are_no_colonies(helper, mine, far):
    make_shed()
    colony = make_colony(yard=far)
    answer = helper.post(f"{reverse('act-use')}?yard={mine.code}", {f"n__colony-{colony.pk}": colony.pk})
    assert answer.status_code == 422


def test_a_number_longer_than_any_row_has_is_passed_on(helper, mine):
    assert helper.get(reverse("act-place"), {"colony": "9" * 30}).status_code == 200


def test_a_reader_looks_and_never_sends(client, mine):
    client.force_login(make_person("kim", role=READER, yards=[mine]))
    assert client.get(reverse("home")).status_code == 200
    assert "look here, not book" in refused(client.post(reverse("home")))


def test_a_helper_without_a_yard_is_told_to_ask_for_one(client, mine):
    client.force_login(make_person("sam", role=HELPER))
    assert "No yard is given to your name yet" in refused(client.get(reverse("home")))


def test_who_has_no_role_is_told_so_and_can_leave(client):
    client.force_login(make_person(role=None))
    assert "ask for a role" in refused(client.get(reverse("home")))
    assert client.post(reverse("sign-out")).status_code == 302


def test_the_tables_behind_the_pages_are_for_who_set_the_house_up(client):
    office = reverse("admin:index")
    assert client.get(office).status_code == 302
    assert client.get(reverse("admin:login")).url.startswith(reverse("sign-in"))
    client.force_login(make_person("second keeper", is_staff=True))
    assert "set this house up" in refused(client.get(office))
    client.force_login(make_person("first", is_staff=True, is_superuser=True))
    assert client.get(office).status_code == 200
