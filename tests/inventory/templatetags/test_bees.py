"""A colony's family and queen on its page; buyers on This week, the late ones said to be so."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from apiary import colonies
from apiary.models import Access
from inventory.ledger import Line
from inventory.yardwork.selling import Terms, sell
from tests import makers
from tests.inventory.views.sending import text

pytestmark = pytest.mark.django_db
MAY = dt.date(2025, 5, 10)


@pytest.fixture
def keeper(client):
    person = makers.make_person("keeper", is_superuser=True)
    client.force_login(person)
    return person


@pytest.fixture
def mother():
    return makers.make_colony("F-01", yard=makers.make_yard("fern-hollow"))


def born(mother, tag, *, yard=None, act_key=""):
    words = {"hive_set": makers.make_hive_set(), "day": MAY, "who": None, "act_key": act_key}
    return colonies.split(mother, tag=tag, yard=yard or mother.yard, **words)


def seen(client, colony):
    return client.get(reverse("colony", args=[colony.pk]))


def test_a_colony_shows_mother_daughters_and_queen(client, keeper, mother):
    daughter = born(mother, "F-02")
    colonies.requeen(daughter, queen="cell", day=MAY, who=None)
    page = seen(client, daughter)
    assert "Mother F-01 Daughters none Queen a queen cell given, since 10 May 2025" in text(page)
    assert f'href="{reverse("colony", args=[mother.pk])}"' in page.content.decode()
    assert "Mother not told Daughters F-02 Queen not told" in text(seen(client, mother))


def test_a_daughter_of_an_undone_split_is_none(client, keeper, mother):
    born(mother, "F-02", act_key="split")
    colonies.undo("split", who=None, day=MAY)
    assert "Daughters none" in text(seen(client, mother))


def test_a_helper_follows_only_colonies_of_their_yards(client, mother):
    far = makers.make_yard("far")
    daughter = born(mother, "F-02", yard=far)
    client.force_login(makers.make_person("helper", role=Access.Role.HELPER, yards=[far]))
    page = seen(client, daughter)
    assert "Mother F-01" in text(page)
    assert reverse("colony", args=[mother.pk]) not in page.content.decode()


def test_a_sold_colony_names_its_buyer_and_this_week_waits_for_what_comes_back(client, keeper, mother):
    nuc = makers.make_colony("N-1", yard=mother.yard, hive_set="nuc-5", gear=True)
    terms = Terms(buyer="Invented Neighbour", owed=(Line("nuc-box-5", 1),), back_by=MAY)
    sell(colonies=[nuc], terms=terms, goes=None, stays_at=mother.yard, day=MAY, who=None, key="s")
    assert "Sold to Invented Neighbour, 10 May 2025" in text(seen(client, nuc))
    week = text(client.get(reverse("home")))
    assert "Buyers to bring back" in week
    assert "Due since 10 May." in week
    assert timezone.localdate() > MAY
