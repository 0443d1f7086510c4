"""Sheets of tags: each place in words and as the picture of its page's address at the host that was asked."""

import pytest
from django.urls import reverse

from apiary.models import Access
from apiary.pictures import picture_of
from tests import makers

pytestmark = pytest.mark.django_db
HOST = "shed.local:8000"


@pytest.fixture(autouse=True)
def keeper(client, settings):
    settings.ALLOWED_HOSTS = ["*"]
    person = makers.make_person("keeper", is_superuser=True)
    client.force_login(person)
    return person


def page(client, name="tags", *args, host=HOST, **asked):
    answer = client.get(reverse(name, args=args), asked, headers={"host": host})
    assert answer.status_code == 200
    return answer.content.decode()


def test_every_yard_has_its_name_its_address_and_its_picture(client):
    makers.make_shed()
    makers.make_yard("fern-hollow")
    text = page(client)
    for name, code in (("Shed", "shed"), ("Fern Hollow", "fern-hollow")):
        address = f"http://{HOST}/yards/{code}/"
        assert f"<b>{name}</b>" in text and address in text
        assert picture_of(address, f"Yard {name}") in text
    assert text.count("<svg") >= 2


def test_the_colonies_of_a_yard_have_theirs_and_the_dead_have_none(client):
    yard = makers.make_yard("fern-hollow")
    colony = makers.make_colony("F-01", yard=yard)
    makers.make_dead_colony(tag="F-02", yard=yard)
    text = page(client, "yard-tags", "fern-hollow")
    assert picture_of(f"http://{HOST}/colonies/{colony.pk}/", "Fern Hollow F-01") in text
    assert "F-02" not in text


def test_from_the_machine_itself_the_page_cautions_that_no_phone_gets_there(client):
    makers.make_yard("fern-hollow")
    assert "no phone can open these" in page(client, host="localhost:8000")
    assert "no phone can open these" not in page(client)


@pytest.mark.parametrize(
    ("asked", "paper"), [("letter", "letter"), ("a4", "a4"), ("papyrus", "a4"), ("", "a4")]
)
def test_the_paper_is_chosen_and_a4_where_unknown(client, asked, paper):
    assert f'class="tagsheet {paper}"' in page(client, paper=asked)


def test_with_nothing_to_tag_the_page_says_so(client):
    assert "nothing to tag" in page(client)


def test_an_unknown_yard_is_not_found(client):
    assert client.get(reverse("yard-tags", args=["nowhere"])).status_code == 404


def test_a_helper_prints_only_the_yards_given_to_them(client):
    mine, _far = makers.make_yard("fern-hollow"), makers.make_yard("long-acre")
    helper = makers.make_person("helper")
    Access.objects.update_or_create(user=helper, defaults={"role": "helper"})[0].yards.set([mine])
    client.force_login(helper)
    text = page(client)
    assert "Fern Hollow" in text and "Long Acre" not in text
    assert client.get(reverse("yard-tags", args=["long-acre"])).status_code == 403
