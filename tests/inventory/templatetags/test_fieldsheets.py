"""What printed sheets draw and link to: living and dead hives, the store, links only where they lead somewhere."""

from types import SimpleNamespace

import pytest
from django.urls import reverse

from apiary import colonies
from apiary.models import Access, Colony
from inventory.templatetags.fieldsheets import colony_prints, printed_colonies, printed_store, yard_prints
from tests import makers

pytestmark = pytest.mark.django_db
KEEPER = "keeper"


def looking(role=KEEPER, yards=()):
    person = makers.make_person(role, role=role, yards=yards)
    return {"user": person, "request": SimpleNamespace(user=person)}


def words(told):
    return [str(link["word"]) for link in told["links"]]


def test_each_hive_that_stands_there_is_a_row_with_its_drawing():
    yard = makers.make_yard("fern-hollow")
    makers.make_colony("F-01", yard=yard, gear=True)
    makers.make_dead_colony(tag="F-02", yard=yard, gear=True)
    makers.make_dead_colony(tag="F-03", yard=yard)
    rows = printed_colonies(yard, makers.DAY.replace(month=7))["stacks"]
    assert [(row["colony"].tag, row["ended"]) for row in rows] == [("F-01", ""), ("F-02", "Dead")]
    assert all(row["drawing"].shapes for row in rows)


def test_the_store_tells_the_book_and_leaves_lines_free():
    yard = makers.make_yard("fern-hollow")
    makers.put(yard, {"box-medium-10": 4})
    told = printed_store(yard)
    assert [(row.part.code, row.booked) for row in told["rows"]] == [("box-medium-10", 4)]
    assert len(told["spare"]) >= 3


def test_a_yard_leads_to_its_sheet_its_count_and_its_tags_and_the_shed_to_its_count():
    context = looking()
    assert words(yard_prints(context, makers.make_yard())) == [
        "Yard sheet to print",
        "Count sheet to print",
        "Colony tags to print",
    ]
    assert words(yard_prints(context, makers.make_shed())) == ["Count sheet to print"]


def test_a_reader_finds_no_count_sheet_they_cannot_open():
    yard = makers.make_yard()
    context = looking(Access.Role.READER, [yard])
    assert "Count sheet to print" not in words(yard_prints(context, yard))


def test_a_hive_leads_to_its_deadout_sheet_unless_it_left_in_another_way():
    context = looking()
    living = makers.make_colony("F-01")
    assert colony_prints(context, living)["links"][0]["address"] == reverse("print-deadout", args=[living.pk])
    sold = colonies.end(makers.make_colony("F-02"), why=Colony.Ended.SOLD, day=makers.DAY, who=None)
    assert words(colony_prints(context, sold)) == []
    assert words(colony_prints(context, makers.make_dead_colony(tag="F-03"))) == ["Deadout sheet to print"]
