"""The row of hives with what is about to go on, in how few questions."""

import pytest
from django.test import RequestFactory

from inventory.forms import GoingOnForm, PullForm
from inventory.forms.boxes import HiveRow
from inventory.templatetags.boxrow import box_row
from inventory.yardwork.boxsets import super_of
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def context():
    return {"request": RequestFactory().get("/acts/super-up/?yard=creek")}


def make_hives(number, **fields):
    yard = makers.make_yard()
    bees = [makers.make_colony(yard=yard, gear=True) for _ in range(number)]
    return [HiveRow(colony=colony, **fields) for colony in bees]


def test_a_whole_yard_is_one_question(context, django_assert_num_queries):
    hives = make_hives(12)
    box = super_of("super-medium-10")
    form = GoingOnForm(hives=hives, box=box, booked=0, day=makers.DAY)
    with django_assert_num_queries(1):
        row = box_row(context, form, box)
    assert (len(row["stacks"]), row["address"]) == (12, "/acts/super-up/?yard=creek")


def test_every_hive_shows_its_number_of_boxes_and_one_that_does_not_fit_shows_none(context):
    fit, misfit = make_hives(1)[0], make_hives(1, fits=False)[0]
    box = super_of("super-medium-10")
    form = GoingOnForm(hives=[fit, misfit], box=box, booked=0, day=makers.DAY, every=2)
    one, other = box_row(context, form, box)["stacks"]
    assert (one["number"], one["path"].count("M"), len(one["marks"].split())) == (2, 2, 10)
    assert one["height"] - one["drawing"].height == one["rise"] > 200
    assert (other["number"], other["path"], other["marks"], other["rise"]) == (0, "", "", 0)


def test_supers_that_come_off_are_marked_on_the_hive(context):
    (hive,) = make_hives(1, usual=2)
    makers.put(hive.colony, {"box-medium-10": 2, "comb-medium-honey": 20})
    form = PullForm(hives=[hive], target=hive.colony.yard, day=makers.DAY)
    (stack,) = box_row(context, form, super_of("super-medium-10"))["stacks"]
    assert (stack["number"], stack["path"].count("M"), stack["rise"]) == (1, 1, 0)
