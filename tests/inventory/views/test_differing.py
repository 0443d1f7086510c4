"""The page of a count: what differs, numbered by what may explain it."""

import pytest

from inventory import counting
from inventory.views.differing import sum_words
from tests import makers

pytestmark = pytest.mark.django_db


def draft(place, numbers):
    count = counting.begin(location=place, day=makers.DAY, who=None, key=makers.fresh_key())
    return counting.enter(count, [(place, part, "sound", n) for part, n in numbers.items()])


def test_more_and_missing_are_summed_apart(shed):
    count = draft(shed, {"box-deep-10": 10, "sugar": 45, "box-deep-8": 3})
    rows = counting.compared(count)
    assert sum_words(rows) == "2 more, 5 missing"
    assert sum_words(rows[2:]) == ""


def test_a_difference_names_the_explanations_that_explain_it(client, keeper, shed, yard):
    draft(yard, {"box-deep-10": 2})
    count = draft(shed, {"box-deep-10": 6, "sugar": 45})
    page = client.get(f"/counts/{count.pk}/")
    numbers = {row.part.code: found for row, found in page.context["rows"]}
    assert numbers == {"box-deep-10": [1], "sugar": []}
    assert 'href="#why-1"' in page.content.decode()


def test_both_ends_of_what_was_not_booked_are_explained_by_it(client, keeper, yard, colony):
    count = counting.begin(location=yard, day=makers.DAY, who=None, key="k", with_colonies=True)
    rows = [(yard, "box-deep-10", "sound", 1), (colony, "box-deep-10", "sound", 1)]
    counting.enter(count, rows)
    page = client.get(f"/counts/{count.pk}/")
    assert [found for row, found in page.context["rows"] if not row.along] == [[1], [1]]


def test_where_nothing_explains_it_the_page_says_so(client, keeper, shed):
    count = draft(shed, {"sugar": 45})
    assert "Nothing in the books explains it." in client.get(f"/counts/{count.pk}/").content.decode()
