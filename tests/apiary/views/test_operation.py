"""The page of the operation: filled in, kept, refused with the reason, and suppliers listed beside it."""

import pytest
from django.urls import reverse

from apiary.models import Keeper
from tests import makers

pytestmark = pytest.mark.django_db
TOLD = {
    "name": "Invented Apiary",
    "address": "1 Example Lane\nNowhere",
    "phone": "555 0100",
    "email": "bees@example.org",
}


@pytest.fixture(autouse=True)
def keeper(client):
    client.force_login(makers.make_person("keeper"))


def test_what_is_told_is_kept_and_stands_on_the_page(client):
    answer = client.post(reverse("operation"), TOLD, follow=True)
    assert "Kept: this stands on every order from now on." in answer.content.decode()
    row = Keeper.objects.get()
    assert (row.name, row.address.splitlines(), row.phone) == (
        TOLD["name"],
        ["1 Example Lane", "Nowhere"],
        "555 0100",
    )
    assert "bees@example.org" in client.get(reverse("operation")).content.decode()


@pytest.mark.parametrize(("field", "value"), [("name", ""), ("email", "no address"), ("address", "x" * 501)])
def test_a_wrong_line_is_told_and_nothing_is_kept(client, field, value):
    makers.make_keeper(name="As it was")
    answer = client.post(reverse("operation"), {**TOLD, field: value})
    assert answer.status_code == 422 and answer.context["form"].errors[field]
    assert Keeper.objects.get().name == "As it was"


def test_suppliers_are_listed_with_the_number_they_know_the_keeper_by(client):
    makers.make_supplier("mill-end", customer_number="K-4711", address="2 Sawmill Road")
    makers.make_supplier("far-end")
    words = client.get(reverse("operation")).content.decode()
    assert "knows you as K-4711" in words
    assert "no customer number told; address missing" in words


def test_a_helper_does_not_see_it(client):
    yard = makers.make_yard("fern-hollow")
    client.force_login(makers.make_person("sam", role="helper", yards=[yard]))
    assert client.get(reverse("operation")).status_code == 403
