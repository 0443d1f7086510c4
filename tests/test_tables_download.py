"""Every table of every page downloads; the few that need not are named here with the reason."""

import re

import pytest

from tests.test_architecture import RANK, ROOT

BLOCK = re.compile(r"{% download .*?{% enddownload %}", re.S)
BY_PAGE = "the page that shows it has the download around it: "
PAPER = "printed on paper; the rows are on the page it is printed from"
TYPED_IN = "part of a form: its rows are typed in here, and download where they are booked"

# Template: why it shows a table without a download.
WITHOUT = {
    "apiary/table.html": "the lines of any django-tables2 table; each {% render_table %} is asked for itself",
    "inventory/colony_stack.html": BY_PAGE + "apiary/colony.html",
    "inventory/colony_gear.html": BY_PAGE + "apiary/colony.html",
    "inventory/yard_store.html": BY_PAGE + "apiary/yard.html",
    "inventory/yard_stacks.html": BY_PAGE + "apiary/yard.html",
    "inventory/family.html": "four facts about one colony, no list",
    "inventory/deadout_care.html": "three published figures to read before the choice below them",
    "inventory/assemble.html": TYPED_IN,
    "inventory/evening.html": TYPED_IN,
    "inventory/load_sheet.html": "the workbooks to fill in, each a download itself",
    "inventory/sheet_tried.html": "what a workbook the keeper has just sent would do: its rows are in that workbook",
    "inventory/order_send.html": "the order as a letter; it downloads as its own workbook",
    "inventory/print_colonies.html": PAPER,
    "inventory/print_hive.html": PAPER,
    "inventory/print_store.html": PAPER,
    "inventory/print_leaf.html": PAPER,
    "inventory/print_load.html": PAPER,
    "inventory/print_count_rows.html": PAPER,
    "planner/print_load.html": PAPER,
}


def templates():
    """{package/name: text} of every page and piece of one."""
    return {
        f"{package}/{path.relative_to(ROOT / package / 'templates' / package)}": path.read_text(
            encoding="utf-8"
        )
        for package in RANK
        for path in sorted((ROOT / package / "templates" / package).rglob("*.html"))
    }


PAGES = templates()


def bare(text):
    """How many tables stand outside of any download."""
    return len(re.findall(r"<table\b|{% render_table ", BLOCK.sub("", text)))


def test_a_table_without_a_download_is_seen():
    assert bare('{% download "a" title="A" %}<table></table>{% enddownload %}<table class="table">') == 1
    assert bare("{% render_table table %}") == 1


@pytest.mark.parametrize("name", sorted(PAGES))
def test_every_table_downloads_or_is_named_with_its_reason(name):
    assert (bare(PAGES[name]) > 0) == (name in WITHOUT), name


def test_no_name_is_left_of_a_page_that_is_gone():
    assert set(WITHOUT) - set(PAGES) == set()


@pytest.mark.parametrize("name", sorted(name for name, why in WITHOUT.items() if why.startswith(BY_PAGE)))
def test_the_page_named_has_the_download_around_it(name):
    page, piece = WITHOUT[name].removeprefix(BY_PAGE), name.split("/")[1].removesuffix(".html")
    assert any(f"{{% {piece} " in block for block in BLOCK.findall(PAGES[page]))
