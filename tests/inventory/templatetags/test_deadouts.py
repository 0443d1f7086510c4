"""What deadouts add to templates."""

from fractions import Fraction

import pytest

from inventory.templatetags.deadouts import cents, deadouts_waiting, percent
from tests import makers
from tests.inventory.deadouts.conftest import hive_of, work

pytestmark = pytest.mark.django_db


def test_a_share_has_one_decimal():
    assert percent(Fraction(89_124, 544_879)) == "16.4"


@pytest.mark.parametrize(("money", "words"), [("USD", "$1,234.50"), ("CAD", "1,234.50 CAD")])
def test_cents_are_told_in_the_keepers_money(money, words):
    makers.make_keeper(money=money)
    assert cents(123_450) == words


def test_what_waits_is_told_to_those_of_the_yard():
    mine, far, shed = makers.make_yard("fern-hollow"), makers.make_yard("long-acre"), makers.make_shed()
    case = work(hive_of("F-01", mine), shed, suspected=True)
    other = work(hive_of("L-01", far), shed, fate="sound")
    helper = makers.make_person("hand", role="helper", yards=[mine])
    keeper = makers.make_person("keeper")
    waits = deadouts_waiting({"user": helper})
    assert (waits["to_call"], waits["to_freeze"]) == ([case], [])
    assert deadouts_waiting({"user": keeper})["to_freeze"] == [other]
