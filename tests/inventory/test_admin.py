"""The office's admin shows the books and lets nobody touch them."""

import pytest
from django.contrib import admin
from django.urls import reverse

from apiary.models import Colony
from inventory.models import Act, BookSeal, Holding, Location, Movement, Order, Part
from tests import makers

pytestmark = pytest.mark.django_db
BOOKS = (Act, Movement, Holding, Location, BookSeal, Order, Colony)


@pytest.fixture
def office(client):
    chief = makers.make_person(is_staff=True, is_superuser=True)
    client.force_login(chief)
    makers.put(makers.make_shed(), {"stand": 3})
    makers.put(makers.make_colony(), {"box-deep-10": 2})
    makers.make_order()
    return client


def address(model, page, *args):
    return reverse(f"admin:{model._meta.app_label}_{model._meta.model_name}_{page}", args=args)


@pytest.mark.parametrize("model", BOOKS)
def test_the_books_are_shown_and_neither_added_to_edited_nor_removed(office, model):
    row = model.objects.first()
    assert office.get(address(model, "changelist")).status_code == 200
    page = office.get(address(model, "change", row.pk))
    assert page.status_code == 200
    assert b'name="_save"' not in page.content
    assert office.get(address(model, "add")).status_code == 403
    assert office.post(address(model, "change", row.pk), {"name": "x"}).status_code == 403
    assert office.post(address(model, "delete", row.pk), {"post": "yes"}).status_code == 403
    assert model.objects.filter(pk=row.pk).exists()


def test_every_list_of_the_admin_opens(office):
    for model in admin.site._registry:
        if model._meta.app_label in ("apiary", "inventory"):
            assert office.get(address(model, "changelist")).status_code == 200


def test_the_catalogue_is_the_keepers_to_edit(office):
    stand = Part.objects.get(code="stand")
    page = office.get(address(Part, "change", stand.pk))
    assert b'name="_save"' in page.content


def test_a_part_the_books_know_is_not_removed(office):
    stand = Part.objects.get(code="stand")
    office.post(address(Part, "delete", stand.pk), {"post": "yes"})
    assert Part.objects.filter(code="stand").exists()
