"""The evening's table by its page: typed, checked, told row by row, booked once, undone as one."""

import pytest
from django.urls import reverse

from inventory import stock
from inventory.gear import Gear
from inventory.models import Act
from tests import makers
from tests.inventory.views.sending import faults, opened, said, text

pytestmark = pytest.mark.django_db
PAGE = reverse("evening")


def rows(*told):
    """Fields of rows (day, act, where, gear, how many, other)."""
    columns = ("day", "act", "where", "gear", "many", "other")
    return {
        f"{number}-{column}": value
        for number, words in enumerate(told, start=1)
        for column, value in zip(columns, words, strict=False)
    }


def send(client, fields, **more):
    return client.post(PAGE, {**opened(client, PAGE), **fields, **more}, follow=True)


GOOD = rows(
    ("2025-05-20", "haul", "shed", "deep box, 10 frames", "3", "Fern Hollow"),
    ("", "place", "f-01", '"', "1", "fern hollow"),
    ("2025-05-22", "feed", "fern-hollow", "2:1", "1.5"),
)


def test_a_fresh_page_has_empty_rows_and_the_words_of_every_act(client, keeper, shed, colony):
    page = client.get(PAGE)
    assert len(page.context["form"].table) == 12
    words = text(page)
    assert "Super up" in words and "a colony or a whole yard" in words
    html = page.content.decode()
    assert '<option value="F-01">' in html and '<option value="Syrup 2:1">' in html


def test_an_evening_is_booked_and_undone_as_one(client, keeper, shed, yard, colony):
    answer = send(client, GOOD, note="off the paper sheet")
    assert said(answer) == ["Booked 3 acts of 2 days, 20 May to 22 May 2025."]
    acts = list(Act.objects.filter(note="off the paper sheet").order_by("pk"))
    assert [act.name for act in acts] == ["haul", "place", "feed"]
    assert acts[0].who == keeper
    assert stock.on_hand(yard)[Gear(part="box-deep-10")] == 2
    key = acts[0].key.rpartition(":")[0]
    assert f'action="{reverse("evening-undo", args=[key])}"' in answer.content.decode()
    undo = reverse("evening-undo", args=[key])
    assert said(client.post(undo, follow=True)) == ["Undone: 3 acts of the evening."]
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 8
    assert said(client.post(undo, follow=True)) == ["It was undone before."]


def test_the_same_form_sent_twice_books_once(client, keeper, shed, yard, colony):
    fields = {**opened(client, PAGE), **GOOD}
    client.post(PAGE, fields)
    before = Act.objects.count()
    assert client.post(PAGE, fields, follow=True).status_code == 200
    assert Act.objects.count() == before


def test_faults_stand_below_their_rows_and_nothing_typed_is_lost(client, keeper, shed, yard, colony):
    before = Act.objects.count()
    bad = rows(
        ("2025-05-20", "haul", "shed", "deep box, 10 frames", "3", "Fern Hollow"),
        ("", "place", "F-99", "no such thing", "x"),
        ("", "place", "F-01", "deep box, 8 frames", "1"),
    )
    answer = send(client, bad)
    assert answer.status_code == 422
    words = text(answer)
    assert "Row 2: &#x27;F-99&#x27; is no colony" in words or "Row 2: 'F-99' is no colony" in words
    assert "Row 3: deep box, 8 frames does not fit colony F-01" in words
    assert "Nothing was booked: 2 rows are not right yet." in faults(answer)[0]
    assert 'value="no such thing"' in answer.content.decode()
    assert Act.objects.count() == before


def test_a_check_says_what_would_be_booked_and_books_nothing(client, keeper, shed, yard, colony):
    before = Act.objects.count()
    answer = send(client, GOOD, check="rows")
    assert "3 rows can be booked as they stand. Nothing is booked yet." in text(answer)
    assert 'value="deep box, 10 frames"' in answer.content.decode()
    assert Act.objects.count() == before


def test_rows_are_added_without_limit_and_what_was_typed_stays(client, keeper, shed, yard):
    answer = send(client, rows(("2025-05-20", "haul", "shed")), add="rows")
    assert len(answer.context["form"].table) == 13
    far = {
        "300-day": "2025-05-20",
        "300-act": "haul",
        "300-where": "shed",
        "300-gear": "box-deep-10",
        "300-many": "1",
    }
    answer = send(client, {**far, "300-other": "fern hollow"})
    assert said(answer) == ["Booked 1 act of 20 May 2025."]


def test_more_than_the_book_has_is_asked_about_then_booked_as_found(client, keeper, shed, yard):
    many = rows(("2025-05-20", "haul", "shed", "deep box, 10 frames", "12", "Fern Hollow"))
    answer = send(client, many)
    assert "book 4 of deep box, 10 frames as found" in text(answer)
    assert said(send(client, many, found="on")) == ["Booked 1 act of 20 May 2025."]
    assert [row.quantity for row in stock.found_gear()] == [4]


def test_an_empty_table_is_told(client, keeper, shed):
    assert faults(send(client, {}))[0].startswith("Nothing was given to catch up")


def test_no_such_evening_cannot_be_undone_and_one_built_upon_says_why(client, keeper, shed, yard):
    assert client.post(reverse("evening-undo", args=["no-such"])).status_code == 404
    send(client, rows(("2025-05-20", "haul", "shed", "box-deep-10", "3", "Fern Hollow")))
    key = Act.objects.latest("pk").key.rpartition(":")[0]
    send(client, rows(("2025-05-21", "scrap", "fern hollow", "box-deep-10", "3")))
    answer = client.post(reverse("evening-undo", args=[key]), follow=True)
    assert said(answer)[0].startswith("Nothing was undone. ")
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 5


def test_a_helper_sees_and_books_only_their_yards(client, shed, yard, colony):
    other = makers.make_yard("long-acre")
    makers.make_colony("L-01", yard=other)
    client.force_login(makers.make_person("helper", role="helper", yards=[yard, shed]))
    assert '<option value="L-01">' not in client.get(PAGE).content.decode()
    answer = send(client, rows(("2025-05-20", "feed", "L-01", "2:1", "1")))
    assert "is no colony and no yard of the books" in text(answer)
    answer = send(client, rows(("2025-05-20", "feed", "F-01", "2:1", "1")))
    assert said(answer) == ["Booked 1 act of 20 May 2025."]


def test_a_helper_undoes_no_evening_of_another(client, keeper, shed, yard, colony):
    send(client, GOOD)
    key = Act.objects.get(name="haul").key.rpartition(":")[0]
    client.force_login(makers.make_person("sam", role="helper", yards=[shed, yard]))
    answer = client.post(reverse("evening-undo", args=[key]))
    assert answer.status_code == 403
    assert "only what you booked yourself" in text(answer)
    assert not Act.objects.filter(name="reverse").exists()
