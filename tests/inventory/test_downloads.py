"""A page answers with the workbook of its table: what it shows, all rows of it, for whom it is."""

import io

import pytest
from django.test import RequestFactory
from openpyxl import load_workbook

from inventory.downloads import asked_for, link_to, rows_a_page
from inventory.printed.table_book import HEADS
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def keeper(client):
    client.force_login(makers.make_person("keeper", is_superuser=True))
    return client


def sheet_of(response):
    assert response.status_code == 200, response.content
    assert "spreadsheetml" in response["Content-Type"]
    return load_workbook(io.BytesIO(b"".join(response.streaming_content))).active


def test_gear_downloads_as_it_is_narrowed_and_sorted(keeper):
    makers.put(makers.make_shed(), {"box-deep-10": 1200, "box-medium-10": 30, "comb-medium-honey": 7})
    response = keeper.get("/gear/?kind=box&sort=quantity&download=gear")
    assert response["Content-Disposition"].startswith('attachment; filename="gear-')
    sheet = sheet_of(response)
    heads = [cell.value for cell in sheet[HEADS]]
    pieces = [sheet.cell(row, heads.index("All") + 1).value for row in range(HEADS + 1, sheet.max_row + 1)]
    assert pieces == [30, 1200, 1230]
    assert "kind box" in sheet["A2"].value


def test_a_workbook_holds_every_row_not_only_the_page(keeper):
    for _ in range(30):
        makers.make_order()
    page = keeper.get("/orders/").content.decode()
    assert "Page 1 of 2" in page
    assert "?download=orders" in page
    assert sheet_of(keeper.get("/orders/?page=2&download=orders")).max_row == HEADS + 30


def test_an_unknown_table_is_the_page_itself(keeper):
    response = keeper.get("/gear/?download=nothing")
    assert response.status_code == 200
    assert "html" in response["Content-Type"]


def test_a_helper_downloads_no_price_and_no_other_yard(client):
    near, far = makers.make_yard("near"), makers.make_yard("far")
    makers.put(near, {"box-deep-10": 3})
    makers.put(far, {"box-deep-10": 50})
    client.force_login(makers.make_person("hand", role="helper", yards=[near]))
    sheet = sheet_of(client.get("/gear/?download=gear"))
    words = [str(cell.value) for row in sheet.iter_rows() for cell in row]
    assert "Value at list" not in words
    assert "3" in words and "50" not in words and "53" not in words


def test_who_may_not_open_the_page_gets_no_workbook(client):
    client.force_login(makers.make_person("hand", role="helper", yards=[makers.make_yard("near")]))
    assert client.get("/sales/?download=sales").status_code == 403


def test_the_link_keeps_what_was_chosen_but_the_page():
    request = RequestFactory().get("/gear/?kind=box&page=3&download=old")
    assert link_to(request, "gear") == "?kind=box&download=gear"
    assert asked_for(request) == "old"
    assert rows_a_page(request, 25) > 100_000
    assert rows_a_page(RequestFactory().get("/gear/"), 25) == 25
    assert asked_for(RequestFactory().post("/gear/?download=gear")) == ""
