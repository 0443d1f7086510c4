"""Super up, pull and a brood box more by their pages: one number for all, exceptions, misfits, undo."""

import pytest
from django.urls import reverse
from django.utils import timezone

from apiary.models import Colony
from inventory import stock
from inventory.forms.boxes import Named
from inventory.gear import Gear
from inventory.models import Act, GearSet
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db
UP, PULL, BROOD = reverse("act-super-up"), reverse("act-pull"), reverse("act-brood-box")
AT = "?yard=fern-hollow"


def has(ground, *codes):
    gear = stock.on_hand(ground)
    return tuple(gear.get(Gear(part=code), 0) for code in codes)


@pytest.fixture
def hives(yard):
    makers.put(yard, {"box-medium-10": 6, "comb-medium-honey": 60})
    return [makers.make_colony(f"F-{number:02}", yard=yard, gear=True) for number in (1, 2, 3)]


@pytest.fixture
def small(yard):
    return makers.make_colony("F-08", yard=yard, hive_set="one-deep-8", gear=True)


def own(colony):
    return f"own__{colony.pk}"


def test_it_works_for_a_whole_yard(client, keeper, yard, hives):
    answer = send(client, UP + AT)
    assert said(answer) == [
        "Supered up 3 colonies with 3 supers, 30 drawn combs, from the store of Fern Hollow."
    ]
    assert [has(hive, "box-medium-10", "comb-medium-honey") for hive in hives] == [(1, 10)] * 3
    act = Act.objects.get(name="super up")
    assert (act.who, act.day) == (keeper, timezone.localdate())
    assert answer.redirect_chain == [(reverse("yard", args=["fern-hollow"]), 302)]


def test_the_sheet_tells_what_is_about_to_happen(client, keeper, hives, small):
    words = text(client.get(UP + AT))
    assert "6 in the store, with 60 drawn combs and 0 frames with foundation" in words
    assert "3 mediums go on, 3 stay in the store" in words
    assert "Super up 3 colonies" in words
    assert "F-08 takes none: the mediums here are 10-frame and do not fit." in words
    assert "Caution: lifting" in words


def test_exceptions_get_numbers_of_their_own(client, keeper, yard, hives):
    send(client, UP + AT, every=1, **{own(hives[1]): 0, own(hives[2]): 2})
    assert [has(hive, "box-medium-10")[0] for hive in hives] == [1, 0, 2]


def test_a_tag_pressed_becomes_an_exception_and_books_nothing(client, keeper, hives):
    page = client.post(UP + AT, {**opened(client, UP + AT), "every": "2", "add": str(hives[1].pk)})
    assert (page.status_code, Act.objects.filter(name="super up").exists()) == (200, False)
    (row,) = page.context["form"].exceptions
    assert (row.hive.colony, row.field.value()) == (hives[1], "2")
    assert page.context["form"].faults == []
    fields = {**opened(client, UP + AT), "every": "2", own(hives[1]): "0", "add": f"as-others-{hives[1].pk}"}
    page = client.post(UP + AT, fields)
    assert page.context["form"].exceptions == []
    assert "6 mediums go on, 0 stay in the store" in text(page)


def test_a_hive_that_does_not_fit_cannot_become_an_exception(client, keeper, hives, small):
    page = client.post(UP + AT, {**opened(client, UP + AT), "add": str(small.pk)})
    assert page.context["form"].exceptions == []
    send(client, UP + AT, **{own(small): 1})
    assert has(small, "box-medium-10", "box-medium-8") == (0, 0)


def test_beyond_the_book_goes_on_and_is_found_with_one_press(client, keeper, yard, hives):
    page = client.post(UP + AT, {**opened(client, UP + AT), "every": "3", "add": ""})
    assert "9 mediums go on, 3 beyond the book, booked as found" in text(page)
    answer = send(client, UP + AT, every=3)
    assert said(answer)[0].endswith("33 pieces beyond the book booked as found.")
    assert has(yard, "box-medium-10", "comb-medium-honey") == (0, 0)


def test_the_whole_act_is_undone_from_its_message(client, keeper, yard, hives):
    answer = send(client, UP + AT)
    undo = reverse("books-reverse", args=[Act.objects.get(name="super up").pk])
    assert f'action="{undo}"' in answer.content.decode()
    client.post(undo)
    assert has(yard, "box-medium-10", "comb-medium-honey") == (6, 60)


def test_a_form_sent_twice_posts_once(client, keeper, yard, hives):
    fields = {**opened(client, UP + AT), "every": "1"}
    client.post(UP + AT, fields)
    again = client.post(UP + AT, fields, follow=True)
    assert said(again)[-1].startswith("This was sent before and is booked once.")
    assert has(yard, "box-medium-10") == (3,)


@pytest.mark.parametrize("every", ["11", "-1", "x", ""])
def test_a_number_that_is_none_is_told_at_its_row(client, keeper, hives, every):
    answer = send(client, UP + AT, every=every)
    assert answer.status_code == 422
    assert answer.context["form"]["every"].errors
    assert not Act.objects.filter(name="super up").exists()


def test_nothing_told_is_refused(client, keeper, hives):
    answer = send(client, UP + AT, every=0)
    assert answer.status_code == 422
    assert faults(answer) == ["Nothing was given to super up: name at least one part and how many."]


def test_the_keeper_says_store_box_filling_and_spacing(client, keeper, shed, yard, hives):
    makers.put(shed, {"box-medium-8": 2, "frame-medium-foundation": 16})
    eight = makers.make_colony("F-09", yard=yard, hive_set="one-deep-8", gear=True)
    address = f"{UP}{AT}&source=shed&super=super-medium-8"
    answer = send(client, address, fill="foundation")
    assert said(answer)[0].startswith("Supered up 1 colony with 1 super, 8 frames with foundation")
    assert has(eight, "box-medium-8", "frame-medium-foundation") == (1, 8)
    send(client, UP + AT, combs="8")
    assert has(hives[0], "comb-medium-honey") == (8,)


def test_a_past_day_knows_who_stood_there_then(client, keeper, yard, hives):
    late = makers.make_colony("F-20", yard=yard, day=timezone.localdate())
    form = client.get(f"{UP}{AT}&day=2025-05-01").context["form"]
    assert late not in [hive.colony for hive in form.hives]
    assert len(form.hives) == 3


def test_a_yard_without_bees_and_gear_sets_without_a_super_say_so(client, keeper, shed, yard):
    assert "No living colony stands in Fern Hollow" in text(client.get(UP + AT))
    makers.make_colony(yard=yard)
    GearSet.objects.filter(code__startswith="super-").delete()
    page = client.get(UP + AT)
    assert "No super is among your gear sets" in text(page)
    assert send(client, UP + AT).status_code == 422
    assert send(client, PULL + AT).status_code == 422


def test_without_a_yard_the_first_with_bees_is_taken(client, keeper, shed, hives):
    assert client.get(UP).context["yard"].code == "fern-hollow"


def test_a_few_questions_tell_a_yard_of_any_size(client, keeper, yard, hives, django_assert_max_num_queries):
    for number in range(10, 30):
        makers.make_colony(f"F-{number}", yard=yard, gear=True)
    for address in (UP, PULL, BROOD):
        with django_assert_max_num_queries(35):
            client.get(address + AT)


def test_supers_are_pulled_off_those_that_have_them(client, keeper, shed, yard, hives):
    for hive, number in zip(hives, (1, 2, 0), strict=True):
        if number:
            makers.put(hive, {"box-medium-10": number, "frame-medium-foundation": 10 * number})
    words = text(client.get(PULL + AT))
    assert "3 on these hives by the book" in words
    assert "2 supers come off" in words and "Pull from 2 colonies" in words
    assert "F-03: no super on it by the book." in words
    answer = send(client, PULL + AT, every=2, target="shed")
    assert said(answer) == [
        "Pulled 3 supers off 2 colonies into the store of Shed, 30 frames drawn out by now."
    ]
    assert has(shed, "box-medium-10", "comb-medium-honey") == (3, 70)


def test_an_unbooked_super_is_pulled_as_an_exception(client, keeper, shed, yard, hives):
    page = client.post(PULL + AT, {**opened(client, PULL + AT), "add": str(hives[0].pk), own(hives[0]): "1"})
    assert "1 super comes off, 1 beyond the book, booked as found" in text(page)
    answer = send(client, PULL + AT, target="shed", drawn="no", **{own(hives[0]): 1})
    assert said(answer)[0].endswith("11 pieces beyond the book booked as found.")


def test_supers_go_to_a_place(client, keeper, hives):
    answer = send(client, PULL + AT, target="", **{own(hives[0]): 1})
    assert answer.status_code == 422
    assert answer.context["form"]["target"].errors


def test_a_second_brood_box_goes_to_those_in_one(client, keeper, yard, hives):
    single = makers.make_colony("F-04", yard=yard, hive_set="one-deep-10", gear=True)
    makers.put(yard, {"box-deep-10": 2, "comb-deep-brood": 20})
    words = text(client.get(BROOD + AT))
    assert "1 deep goes on, 1 stays in the store" in words
    assert "F-01, F-02 and F-03: more than one box already" in words
    answer = send(client, BROOD + AT)
    assert said(answer) == [
        "Built up 1 colony with 1 brood box, 10 drawn combs, from the store of Fern Hollow."
    ]
    assert Colony.objects.get(pk=single.pk).hive_set.code == "two-deeps-10"
    act = Act.objects.get(name="brood box")
    page = client.get(reverse("books-reverse", args=[act.pk]))
    assert "what was told of colonies no longer counts" in text(page)
    client.post(reverse("books-reverse", args=[act.pk]))
    assert Colony.objects.get(pk=single.pk).hive_set.code == "one-deep-10"
    assert "undone, it does not count" in text(client.get(reverse("books-act", args=[act.pk])))


@pytest.mark.parametrize(
    ("number", "words"),
    [(0, ""), (1, "a"), (2, "a and b"), (3, "a, b and c"), (10, "a, b, c, d, e, f, g, h and 2 more")],
)
def test_a_sentence_names_a_few(number, words):
    assert str(Named("abcdefghij"[:number])) == words


def test_the_yards_page_leads_there(client, keeper, yard):
    page = client.get(reverse("yard", args=["fern-hollow"])).content.decode()
    for address in (UP, PULL, BROOD):
        assert f'href="{address}{AT}"' in page
