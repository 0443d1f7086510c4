"""Pages ask the database no more often where there is more to show."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from inventory import ledger
from inventory.ledger import Line
from inventory.models import Holding
from tests import makers

pytestmark = pytest.mark.django_db
MOST = 15


@pytest.fixture
def questions(client):
    """How many questions a yard's page asks, once all is warm."""
    client.force_login(makers.make_person("keeper", is_superuser=True))

    def count(yard):
        address = reverse("yard", args=[yard.code])
        client.get(address)
        with CaptureQueriesContext(connection) as asked:
            assert client.get(address).status_code == 200
        return len(asked)

    return count


def filled(code, colonies):
    """A yard with so many colonies, each with its gear, one of them dead, and a store."""
    yard = makers.make_yard(code, stands=colonies)
    makers.make_window(yard)
    makers.put(yard, {"box-medium-10": colonies, "comb-medium-honey": 9 * colonies})
    for number in range(colonies):
        makers.make_colony(f"{code}-{number}", yard=yard, gear=True)
    makers.make_dead_colony(tag=f"{code}-dead", yard=yard, gear=True)
    return yard


def test_a_yards_page_asks_as_often_for_sixty_colonies_as_for_five(questions):
    few, many = filled("few", 5), filled("many", 60)
    assert Holding.objects.filter(location__colony__yard=many).count() > 300
    assert questions(few) == questions(many) <= MOST


def test_a_yards_page_asks_no_more_often_after_many_acts(questions):
    yard = filled("few", 5)
    before = questions(yard)
    shed = makers.make_shed()
    makers.put(shed, {"box-deep-10": 60})
    for number in range(40):
        told = {"lines": [Line("box-deep-10", 1)], "day": makers.DAY, "who": None, "key": f"load {number}"}
        ledger.move(source=shed, target=yard, **told)
    assert questions(yard) == before
