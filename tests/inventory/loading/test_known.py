"""What the books tell a sheet they know already."""

import pytest

from apiary.models import Colony
from inventory import loading
from inventory.models import Part
from inventory.sheets import filled
from inventory.sheets.examples import example
from tests.inventory.loading.made import DAY, load

pytestmark = pytest.mark.django_db


def test_books_tell_what_they_know():
    load()
    Colony.objects.filter(tag="M-02").update(ended_on=DAY, ended_why="died")
    known = loading.known_by_books()
    assert known.yards == {"shed": "Shed", "mill-field": "Mill Field (invented)"}
    assert (known.shed, known.stands["mill-field"], known.has_keeper) == ("shed", 16, True)
    assert (known.colonies, known.ended) == ({"M-01": "mill-field"}, frozenset({"M-02"}))
    assert known.offers["example-kit"] == ("example", "Floor and cover")
    assert known.super_boxes == {
        (depth, width) for depth in ("deep", "medium", "shallow") for width in (8, 10)
    }
    assert known.units["sugar"] == "lb" and known.sets["nuc-5"].is_nuc


def test_the_books_bring_their_own_catalogue():
    Part.objects.filter(code="jar").delete()
    assert "jar" in loading.known_by_books().parts


def test_a_sheet_read_against_its_own_books_reads_again():
    load()
    content = filled(example(), loading.known_by_books())
    assert loading.read(content, day=DAY).sheet == example()
