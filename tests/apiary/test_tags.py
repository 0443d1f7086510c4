"""New tags are counted on in the keeper's own way of writing them."""

import pytest

from apiary.tags import following, free_tags, usual_tag
from tests import makers


@pytest.mark.parametrize(
    ("tag", "taken", "fresh"),
    [
        ("CR-3", ["CR-3"], ["CR-4", "CR-5"]),
        ("CR-09", ["CR-09", "cr-10"], ["CR-11", "CR-12"]),
        ("17", ["17", "18"], ["19", "20"]),
        ("Queenie", ["Queenie"], ["Queenie-2", "Queenie-3"]),
        ("", [], ["1", "2"]),
    ],
)
def test_tags_count_on_past_those_that_are_taken(tag, taken, fresh):
    assert following(tag, taken, 2) == fresh


@pytest.mark.django_db
def test_free_tags_follow_the_highest_of_their_kind():
    yard = makers.make_yard()
    for tag in ("CR-2", "CR-10", "HI-40", "Old"):
        makers.make_colony(tag, yard=yard)
    assert free_tags("CR-2", 2) == ["CR-11", "CR-12"]
    assert free_tags("Old") == ["Old-2"]
    assert free_tags("new-1") == ["new-2"]


def test_a_yard_s_usual_tag_is_like_most_of_its_tags():
    assert usual_tag(["E-1", "F-03", "F-04", "Old"]) == "F-03"
    assert usual_tag([]) == ""
