"""Sheets for the field as the browser prints them: pages at both papers, whole rows, each tag once, room for a pencil,
a square that reads back from the paper, little ink; and the same sheets on a phone.
"""

from dataclasses import replace

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from apiary.models import Colony
from tests import makers
from tests.browser.conftest import hard_to_use, too_wide
from tests.browser.papers import POINTS_A_MM, dark_share, printed, square_on
from tests.outside.squares import read
from tests.planner import made
from tests.planner.after import made as after_made

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
PAPERS = {"a4": (595, 842), "letter": (612, 792)}  # points, ISO 216 and ANSI/ASME Y14.1
PIXELS_A_MM = 96 / 25.4
MARGIN_MM = 13  # under the last row
WRITING_MM = 8  # least height of a line to write on with a pencil: common practice, no source
PAGES = {1: {1}, 8: {1, 2}, 40: {3, 4}, 120: {10, 11, 12}}
ROWS = """() => [...document.querySelectorAll('.hives tbody tr')].map((row) => {
  const tag = row.querySelector('th b').getBoundingClientRect(), all = row.getBoundingClientRect();
  return [row.querySelector('th b').textContent, (all.bottom - tag.top) * 0.75]; })"""
LINES = """() => [...document.querySelectorAll('.leaf td.write, .leaf p.filled, .leaf .asked > p')]
  .map((one) => one.matches('td') ? one.getBoundingClientRect().height : parseFloat(getComputedStyle(one).lineHeight))"""
CUT = """() => { for (const sheet of document.styleSheets) if (sheet.href.includes('print.css'))
  sheet.insertRule('@media print { .rows tr { break-inside: auto !important; } .hives .drawing { display: none; } }', sheet.cssRules.length); }"""


def yard_of(number):
    """A yard with so many hives, one in three supered."""
    yard = makers.make_yard("mill-race", stands=number, gate="4417", emergency="7 Mill Race, second gate")
    for count in range(1, number + 1):
        colony = makers.make_colony(f"M-{count:03}", yard=yard, gear=True)
        if count % 3 == 0:
            makers.put(colony, {"box-medium-10": 2, "comb-medium-honey": 18})
    return yard


def opened(sheet, live_server, name, *args, paper, query=""):
    sheet.goto(f"{live_server.url}{reverse(name, args=args)}?paper={paper}{query}")
    return sheet


def all_sheets():
    """(name, arguments, rest of the query) of each kind of sheet with all it can show."""
    load = "&source=fern-hollow&target=shed&n__box-medium-10__sound=6&n__comb-medium-honey__sound=60"
    dead = Colony.objects.get(tag="F-10").pk
    return [
        ("print-yard", ["fern-hollow"], ""),
        ("print-yards", [], ""),
        ("print-count", ["fern-hollow"], "&how=booked&hives=boxes"),
        ("print-haul", [], load),
        ("print-deadout", [dead], ""),
        ("print-deadouts", [], ""),
    ]


def cut_rows(sheet, told, paper):
    """Tags whose row does not end above the margin of the page on which it begins."""
    sheet.emulate_media(media="print")
    width = PAPERS[paper][0] / POINTS_A_MM - 20
    sheet.set_viewport_size({"width": round(width * PIXELS_A_MM), "height": 1000})
    rows = dict(sheet.evaluate(ROWS))
    sheet.emulate_media(media="null")
    ends = PAPERS[paper][1] - MARGIN_MM * POINTS_A_MM + 3
    return [word.text for word in told.words if word.text in rows and word.top + rows[word.text] > ends]


@pytest.mark.parametrize(
    "number", [pytest.param(each, marks=[pytest.mark.long] if each > 40 else []) for each in sorted(PAGES)]
)
def test_each_hive_of_a_yard_is_printed_once_in_a_whole_row_on_few_pages(
    sheet, live_server, tmp_path, number
):
    yard = yard_of(number)
    tags = [f"M-{count:03}" for count in range(1, number + 1)]
    for paper, (width, height) in PAPERS.items():
        opened(sheet, live_server, "print-yard", yard.code, paper=paper)
        told = printed(sheet, tmp_path / f"{paper}.pdf")
        assert len(told.sizes) in PAGES[number], paper
        assert {(round(w), round(h)) for w, h in told.sizes} == {(width, height)}
        assert [tag for tag in tags if len(told.pages_of(tag)) != 1] == []
        assert cut_rows(sheet, told, paper) == []
        for page in range(1, len(told.sizes) + 1):
            for words in ("Mill Race", "4417", "second gate", f"Page {page} of {len(told.sizes)}"):
                assert words in told.text(page), (paper, page, words)
    assert sheet.said == []


def test_rows_that_may_be_cut_are_noticed(sheet, live_server, tmp_path):
    """The check above, held against a sheet whose rows may break."""
    opened(sheet, live_server, "print-yard", yard_of(40).code, paper="a4")
    sheet.evaluate(CUT)
    assert cut_rows(sheet, printed(sheet, tmp_path / "cut.pdf"), "a4") != []


@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_the_square_on_the_paper_reads_back_as_the_address_of_the_page(
    sheet, live_server, outfit, tmp_path, paper
):
    places = {
        ("print-yard", "fern-hollow"): "/yards/fern-hollow/",
        ("print-count", "fern-hollow"): "/acts/correct/?yard=fern-hollow",
    }
    for (name, code), path in places.items():
        opened(sheet, live_server, name, code, paper=paper)
        told = printed(sheet, tmp_path / "one.pdf")
        for page in range(1, len(told.sizes) + 1):
            assert read(square_on(tmp_path / "one.pdf", page))[0] == live_server.url + path, (name, page)


def test_each_kind_of_sheet_fits_its_paper_takes_little_ink_and_gives_room_to_write(
    sheet, live_server, outfit, tmp_path
):
    for name, args, query in all_sheets():
        for paper, (width, height) in PAPERS.items():
            opened(sheet, live_server, name, *args, paper=paper, query=query)
            told = printed(sheet, tmp_path / "one.pdf")
            assert {(round(w), round(h)) for w, h in told.sizes} == {(width, height)}, name
            ink = [dark_share(tmp_path / "one.pdf", page + 1) for page in range(len(told.sizes))]
            assert max(ink) < 0.12, (name, ink)
        sheet.emulate_media(media="print")
        least = min(sheet.evaluate(LINES))
        sheet.emulate_media(media="null")
        assert least >= WRITING_MM * PIXELS_A_MM - 0.1, name


def test_a_count_sheet_with_hives_tells_each_tag_once(sheet, live_server, outfit, tmp_path):
    opened(sheet, live_server, "print-count", "fern-hollow", paper="letter", query="&hives=boxes")
    told = printed(sheet, tmp_path / "one.pdf")
    tags = [f"F-{number:02}" for number in range(1, 11)]
    assert [tag for tag in tags if len(told.pages_of(tag)) != 1] == []


def test_all_yards_begin_on_a_page_of_their_own(sheet, live_server, outfit, tmp_path):
    opened(sheet, live_server, "print-yards", paper="a4")
    told = printed(sheet, tmp_path / "one.pdf")
    names = ["Fern Hollow" in told.text(page + 1) for page in range(len(told.sizes))]
    assert names == sorted(names, reverse=True) and False in names
    assert "Long Acre" in told.text(len(told.sizes))


def test_planned_loads_are_a_page_each_with_a_square_that_opens_them(sheet, live_server, tmp_path):
    section = after_made.section()
    run = made.make_done_run(report=replace(made.make_report(), after=section))
    opened(sheet, live_server, "run-after-print", run.pk, paper="letter")
    told = printed(sheet, tmp_path / "loads.pdf")
    assert len(told.sizes) == len(section.loads)
    for page, load in enumerate(section.loads, start=1):
        assert load.yard_name in told.text(page) and "straps again" in told.text(page)
        text, _level = read(square_on(tmp_path / "loads.pdf", page))
        assert text == live_server.url + reverse("run-after", args=[run.pk])
    assert (too_wide(sheet, [sheet.url]), sheet.said) == ([], [])


def test_every_sheet_is_usable_on_a_phone_and_complains_of_nothing(sheet, live_server, outfit):
    pages = [
        f"{live_server.url}{reverse(name, args=args)}?paper=a4{query}" for name, args, query in all_sheets()
    ]
    assert (too_wide(sheet, pages), sheet.said) == ([], [])


@pytest.mark.parametrize(("scheme", "width"), [("light", 390), ("dark", 1440)])
def test_every_sheet_is_accessible(sheet, live_server, outfit, scheme, width):
    pages = [
        f"{live_server.url}{reverse(name, args=args)}?paper=a4{query}" for name, args, query in all_sheets()
    ]
    assert hard_to_use(sheet, pages, scheme=scheme, width=width) == {}


def test_a_load_just_put_together_is_printed_from_its_page_and_taken_back_to_it(sheet, live_server, outfit):
    sheet.set_viewport_size({"width": 390, "height": 844})
    sheet.goto(f"{live_server.url}{reverse('act-move')}?source=fern-hollow&target=shed")
    sheet.get_by_label("Medium box, 10 frames", exact=True).fill("5")
    sheet.get_by_role("button", name="List to print").click()
    expect(sheet.get_by_role("heading", level=1)).to_have_text("Haul list from Fern Hollow")
    expect(sheet.get_by_text("To Shed", exact=True)).to_be_visible()
    sheet.get_by_role("link", name="Leave").click()
    expect(sheet.get_by_label("Medium box, 10 frames", exact=True)).to_have_value("5")
    assert sheet.said == []


@pytest.mark.parametrize(
    ("start", "taps"),
    [
        ("/yards/fern-hollow/", ["Yard sheet to print"]),
        ("/yards/fern-hollow/", ["Count sheet to print"]),
        ("/yards/", ["Yard sheets to print"]),
        ("/deadouts/", ["Deadout sheets to print"]),
        ("/yards/fern-hollow/", ["F-01", "Deadout sheet to print"]),
        ("/yards/shed/", ["Count sheet to print"]),
    ],
)
def test_each_sheet_is_two_taps_at_most_from_its_page(sheet, live_server, outfit, start, taps):
    sheet.goto(live_server.url + start)
    for tap in taps:
        sheet.get_by_role("link", name=tap).first.click()
    expect(sheet.get_by_role("button", name="Print", exact=True)).to_be_visible()
    expect(sheet.locator("table.leaf").first).to_be_visible()
