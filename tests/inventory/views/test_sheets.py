"""The pages of a keeper's workbook: sent, tried, posted once; exactly the file that was tried."""

import dataclasses
import datetime as dt
import io

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from openpyxl import load_workbook

from apiary.errors import FutureDay
from apiary.models import Colony, Yard
from inventory import loading, uploads
from inventory.models import Count, Movement
from inventory.sheets import filled, opening
from inventory.sheets.examples import example
from inventory.sheets.kinds import KINDS
from tests.inventory.sheets.workbooks import altered
from tests.makers import make_catalogue, make_person

pytestmark = pytest.mark.django_db
PAGE = reverse("load-sheet")


@pytest.fixture(autouse=True)
def own_folder(settings, tmp_path):
    settings.DATA_DIR = tmp_path
    make_catalogue()


@pytest.fixture
def keeper(client):
    person = make_person()
    client.force_login(person)
    return person


def send(client, content, name="my-gear.xlsx"):
    return client.post(PAGE, {"file": SimpleUploadedFile(name, content)})


def test_the_pages_are_for_those_signed_in(client):
    for address in (PAGE, reverse("sheet-template"), reverse("load-sheet-tried", args=["a" * 64])):
        assert client.get(address).status_code == 302
    assert client.post(PAGE).status_code == 302


def test_the_template_is_downloaded_with_the_names_of_the_books(client, keeper):
    answer = client.get(reverse("sheet-template"))
    assert answer["Content-Disposition"] == 'attachment; filename="my-gear.xlsx"'
    book = load_workbook(io.BytesIO(answer.content))
    assert book["Lists"]["A2"].value == loading.known_by_books().parts[book["Lists"]["C2"].value]


def test_it_works(client, keeper):
    tried = client.get(send(client, altered({})).url)
    page = tried.content.decode()
    assert "my-gear.xlsx" in page and "Would post: 15 new." in page and "Post the workbook" in page
    assert not Movement.objects.exists() and not Yard.objects.exists()

    answer = client.post(tried.request["PATH_INFO"], follow=True)
    assert answer.redirect_chain[-1][0] == reverse("yards")
    assert "Posted: 15 new." in answer.content.decode()
    assert Colony.objects.get(tag="M-01").events.get().who == keeper


def test_sent_or_confirmed_twice_it_posts_once(client, keeper):
    address = send(client, altered({})).url
    client.post(address)
    count = Movement.objects.count()
    assert "nothing was posted again" in client.post(address, follow=True).content.decode()
    page = client.get(address).content.decode()
    assert "This very file was posted on" in page and "Post the workbook" not in page
    assert Movement.objects.count() == count


def test_every_fault_is_shown_with_sheet_cell_what_and_remedy(client, keeper):
    content = altered({("Gear", "quantity", 2): "forty", ("Flows", "yard", 2): "Mil Field (invented)"})
    address = send(client, content).url
    page = client.get(address).content.decode()
    assert '<th scope="row">Gear</th><td>D2</td><td>&#x27;forty&#x27; is text, not a number</td>' in page
    assert "Did you mean &#x27;Mill Field (invented)&#x27;? Write that" in page
    assert "Post the workbook" not in page


def test_a_faulty_file_cannot_be_posted_by_hand(client, keeper):
    address = send(client, altered({("Gear", "quantity", 2): "forty"})).url
    assert "Nothing was posted" in client.post(address).content.decode()
    assert not Yard.objects.exists()


@pytest.mark.parametrize(
    "content, what",
    [
        (b"", "The file is empty"),
        (b"tag,yard\n", "This is a text file"),
        (b"PK\x03\x04", "The file is damaged"),
    ],
)
def test_a_file_that_is_no_workbook_is_told_so(client, keeper, content, what):
    assert what in client.get(send(client, content).url).content.decode()


def test_no_file_and_a_file_too_large_are_refused_at_once(client, keeper):
    nothing = client.post(PAGE, {})
    large = send(client, b"PK" + b"\0" * opening.LARGEST)
    assert (nothing.status_code, large.status_code) == (422, 422)
    assert "The file has 10.0 MB, more than 10" in large.content.decode()
    assert not list(uploads._folder().iterdir())


def test_notes_are_shown_and_stop_nothing(client, keeper):
    page = client.get(send(client, altered({("Yards", "stands", 3): 1})).url).content.decode()
    assert "has 2 colonies, but stands for 1" in page and "Post the workbook" in page


def test_changes_are_shown_one_by_one(client, keeper):
    client.post(send(client, altered({})).url)
    page = client.get(send(client, altered({("Gear", "quantity", 2): 40})).url).content.decode()
    assert "the book has 42, corrected to the 40 told" in page


def test_what_the_books_refuse_is_told_on_both_ways(client, keeper, monkeypatch):
    address = send(client, altered({})).url
    refused = dataclasses.replace(loading.Loaded(day=dt.date(2026, 1, 1)), refusals=("The books say no.",))
    monkeypatch.setattr(loading, "dry_run", lambda *args, **more: refused)
    page = client.get(address).content.decode()
    assert "The books say no." in page and "Post the workbook" not in page

    def refuse(*args, **more):
        raise FutureDay(day=dt.date(2999, 1, 1), today=dt.date(2026, 1, 1))

    monkeypatch.setattr(loading, "load", refuse)
    assert (
        "Nothing was posted. 1 January 2999 is still to come"
        in client.post(address, follow=True).content.decode()
    )


@pytest.mark.parametrize("digest", ["a" * 64, "x", "..%2F..%2Fsecret", "A" * 64])
def test_a_file_not_kept_here_is_not_found(client, keeper, digest):
    assert client.get(f"/sheet/{digest}/").status_code == 404


def test_a_file_changed_on_disk_after_it_was_tried_is_not_posted(client, keeper):
    address = send(client, altered({})).url
    next(uploads._folder().glob("*.xlsx")).write_bytes(filled(example()))
    assert client.post(address).status_code == 404
    assert not Yard.objects.exists()


def test_an_empty_workbook_of_a_keeper_known_posts_nothing_new(client, keeper):
    client.post(send(client, altered({})).url)
    content = client.get(reverse("sheet-template")).content
    page = client.get(send(client, content).url).content.decode()
    assert "The workbook is empty: nothing to post" in page


def shown(client, address):
    """What the page's button sends."""
    return {"shown": client.get(address).context["tried"].mark}


def test_books_that_moved_since_the_dry_run_are_tried_again(client, keeper):
    address = send(client, altered({})).url
    words = shown(client, address)
    client.post(send(client, altered({("Gear", "quantity", 2): 40})).url)
    page = client.post(address, words, follow=True).content.decode()
    assert "The books have changed since the sheet was tried" in page and "Post the workbook" in page
    assert "Posted: 1 changed." in client.post(address, shown(client, address), follow=True).content.decode()


def test_every_row_is_shown_with_its_place(client, keeper):
    page = client.get(send(client, altered({})).url).content.decode()
    assert "<td>Gear row 2</td><td>new</td><td>42</td>" in page and "<td>Winters row 3</td>" in page


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.code)
def test_each_workbook_is_downloaded_and_sent_back(client, keeper, kind):
    client.post(send(client, altered({})).url)
    answer = client.get(reverse("sheet-to-fill-in", args=[kind.code]))
    assert answer["Content-Disposition"] == f'attachment; filename="{kind.file}"'
    page = client.get(send(client, answer.content, kind.file).url).content.decode()
    assert "Would post: nothing new." in page and kind.file in page


def test_no_such_workbook_and_no_such_place_are_refused(client, keeper):
    assert client.get(reverse("sheet-to-fill-in", args=["honey"])).status_code == 404
    answer = client.get(reverse("sheet-to-fill-in", args=["count"]), {"place": "nowhere"})
    assert answer.status_code == 422 and "nowhere" in answer.content.decode()


def test_a_count_sheet_filled_in_becomes_a_draft_with_its_differences_shown_before(client, keeper):
    client.post(send(client, altered({})).url)
    asked = {"place": "shed", "blind": "on"}
    book = load_workbook(io.BytesIO(client.get(reverse("sheet-to-fill-in", args=["count"]), asked).content))
    for row, quantity in ((2, 40), (3, 5)):
        book["Counted"].cell(row, 6, quantity)
    file = io.BytesIO()
    book.save(file)
    address = send(client, file.getvalue(), "count-sheet.xlsx").url
    page = client.get(address).content.decode()
    assert "<b>2 missing</b>" in page and "Make the drafts" in page and not Count.objects.exists()
    answer = client.post(address, shown(client, address), follow=True)
    assert answer.redirect_chain[-1][0] == reverse("count", args=[Count.objects.get().pk])
    assert "Made 1 draft of counts" in answer.content.decode()
