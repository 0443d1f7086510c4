"""Pages of held-back gear: why it lies there, the inspector's word, release by the keeper alone."""

import pytest
from django.urls import reverse

from inventory.deadouts.holds import case_of
from inventory.gear import Condition
from inventory.models import InspectorWord
from tests import makers
from tests.inventory.deadouts.conftest import at, hive_of, work
from tests.inventory.views.sending import said, send, text

pytestmark = pytest.mark.django_db
HELD = Condition.HELD
WORD = {"inspector": "R. Alder (invented)", "written_on": "2025-06-10", "words": "Treated, may be used."}


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


@pytest.fixture
def store(db):
    return makers.make_shed()


@pytest.fixture
def case(yard, store):
    return work(hive_of("F-07", yard), store, suspected=True)


def release_page(case):
    return f"{reverse('act-release')}?yard=shed&case={case.pk}"


def test_every_place_tells_what_it_holds_and_why(client, case):
    words = text(client.get(reverse("held")))
    assert "Foulbrood suspected in F-07, found on 1 June 2025" in words
    assert "16 × deep drawn brood comb" in words


def test_with_nothing_held_the_page_says_so(client, store):
    assert "Nothing is held back" in text(client.get(reverse("held")))


def test_boxes_are_released_on_the_written_word(client, store, case):
    changed = {"n__box-deep-10__held": "2", "verdict": "treated", **WORD}
    answer = send(client, release_page(case), **changed)
    assert said(answer)[0] == "Released 2 pieces at Shed on the written word."
    assert at(store) == {"box-deep-10": 2}
    assert InspectorWord.objects.get().words == "Treated, may be used."


def test_combs_are_refused_by_name(client, store, case):
    answer = send(
        client, release_page(case), **{"n__comb-deep-brood__held": "2", "verdict": "treated", **WORD}
    )
    assert answer.status_code == 422
    assert "frames and combs wait until the inspector has written" in text(answer)
    assert at(store) == {}


@pytest.mark.parametrize("left_out", ["inspector", "written_on", "words", "verdict"])
def test_the_word_must_be_whole(client, store, case, left_out):
    changed = {"n__box-deep-10__held": "2", "verdict": "treated", **WORD, left_out: None}
    answer = send(client, release_page(case), **changed)
    assert answer.status_code == 422 and left_out in answer.context["form"].errors


def test_only_rows_held_for_the_case_are_offered(client, store, case):
    makers.put(store, {"excluder-10": 2})
    codes = {row.part.code for row in client.get(release_page(case)).context["form"].rows}
    assert codes == {"box-deep-10", "comb-deep-brood", "frame-deep-foundation", "floor-10", "cover-10"}


def test_a_case_nobody_knows_is_not_found(client, store, case):
    assert client.get(f"{reverse('act-release')}?yard=shed&case=999").status_code == 404


def test_without_a_place_all_that_is_held_is_shown(client, case):
    assert "Held back" in text(client.get(reverse("act-release")))


@pytest.mark.parametrize(("verdict", "case_word"), [("cleared", "cleared"), ("confirmed", "confirmed")])
def test_the_inspectors_word_is_written_down(client, store, case, verdict, case_word):
    page = reverse("deadout-word", args=[case.pk])
    answer = send(client, page, verdict=verdict, **WORD)
    assert "Wrote down the word of R. Alder (invented) on F-07" in said(answer)[0]
    assert case_of(case) == case_word
    assert "Treated, may be used." in text(client.get(reverse("deadout", args=[case.pk])))


@pytest.mark.parametrize("role", ["helper", "reader"])
def test_nobody_but_the_keeper_opens_the_word_or_the_release(client, case, yard, role):
    client.force_login(makers.make_person("other", role=role, yards=[yard, makers.make_shed()]))
    assert client.get(reverse("deadout-word", args=[case.pk])).status_code == 403
    assert client.post(release_page(case)).status_code == 403
    assert "Release" not in text(client.get(reverse("held")))


def test_held_gear_of_other_yards_is_not_told_to_a_helper(client, case):
    client.force_login(makers.make_person("hand", role="helper", yards=[makers.make_yard("long-acre")]))
    assert "F-07" not in text(client.get(reverse("held")))
