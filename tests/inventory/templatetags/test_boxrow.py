"""The row of hives with what is about to go on, in how few questions."""

import pytest
from django.template.loader import render_to_string
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


def test_a_deadout_that_still_holds_gear_is_drawn_closed_and_takes_no_number(
    context, django_assert_num_queries
):
    (hive,) = make_hives(1)
    yard, box = hive.colony.yard, super_of("super-medium-10")
    dead = makers.make_dead_colony(tag="A-00", yard=yard, gear=True)
    makers.make_dead_colony(tag="A-01", yard=yard)  # worked: nothing of it stands there
    form = GoingOnForm(hives=[hive], box=box, booked=0, day=makers.DAY)
    with django_assert_num_queries(2):
        row = box_row({**context, "yard": yard}, form, box)
    first, second = sorted(row["stacks"], key=lambda stack: stack["colony"] != dead)
    assert (first["colony"], first["ended"], first["dead"], first["rise"]) == (dead, "Dead", True, 0)
    assert "number" not in first and second["colony"] == hive.colony
    words = render_to_string("inventory/box_row.html", row)
    assert words.count("data-hive=") == 1
    assert 'class="dead">Dead</span>' in words and "A-00, dead, its entrance closed" in words
