"""The sheets Hauling, Assembly and Feed: the loads of a week a page, sums as formulas, and none of them without the section."""

from dataclasses import replace

from planner.workbook import workbook_of
from tests.planner import made
from tests.planner.after import made as after_made
from tests.planner.workbook.opened import labelled, written

SHEETS = {"Hauling", "Assembly", "Feed"}


def book(**changed):
    return written(workbook_of(replace(made.make_report(), after=after_made.section(**changed))))


def test_the_loads_of_each_week_begin_a_page():
    sheet = book()["Hauling"]
    breaks = [each.id for each in sheet.row_breaks.brk]
    heads = [row[0].row for row in sheet.iter_rows() if str(row[0].value).startswith("Week of ")]
    assert breaks == [row - 1 for row in heads] and len(heads) == 2
    words = [row[0].value for row in sheet.iter_rows()]
    assert [word for word in words if str(word).startswith("Load ")] == [
        "Load 1: Mill race",
        "Load 2: Mill race",
        "Load 3: Upper meadow",
    ]
    assert words.count("On a due visit") == 2 and words.count("Extra trip, if the first is full") == 1


def test_a_load_is_not_broken_over_two_pages():
    lines = [after_made.carried(f"part-{n}", 1) for n in range(20)]
    loads = [
        after_made.load(n, 16, "mill-race", out=after_made.leg(*lines, lb=9, cubic_ft=1.0)) for n in (1, 2)
    ]
    sheet = book(loads=tuple(loads))["Hauling"]
    at = {row[0].value: row[0].row for row in sheet.iter_rows()}
    assert [each.id + 1 for each in sheet.row_breaks.brk] == [
        at["Week of 7 May 2027"],
        at["Load 2: Mill race"],
    ]


def test_days_to_keep_free_are_told_and_left_out_where_there_are_none():
    sheet = book()["Hauling"]
    assert labelled(sheet, "Mill race, full supers to take home", 2) == 1
    assert labelled(sheet, "Mill race, full supers to take home", 4) == 15
    words = [row[0].value for row in book(free=())["Hauling"].iter_rows()]
    assert "Keep a day free for" not in words


def test_a_load_tells_pieces_weight_and_room():
    sheet = book()["Hauling"]
    assert labelled(sheet, "box medium 10", 2) == 30
    assert labelled(sheet, "box medium 10, full", 2) == 16
    words = [row[0].value for row in sheet.iter_rows()]
    assert "285 lb, 40.8 cubic feet" in words
    assert any(str(word).startswith("Caution: lift with two") for word in words)


def test_minutes_gallons_and_sugar_are_summed_by_formulas():
    opened = book()
    assert [row[4].value for row in opened["Assembly"].iter_rows(min_row=4, max_row=5)] == [
        120,
        "=SUM(E4:E4)",
    ]
    feed = opened["Feed"]
    assert [feed.cell(5, column).value for column in (5, 7)] == ["=SUM(E4:E4)", "=SUM(G4:G4)"]
    assert feed.cell(8, 7).value == "=MAX(0,D8-E8)"


def test_empty_tables_are_still_sheets():
    bench = after_made.bench(jobs=(), evenings=())
    assert set(book(bench=bench, feed=(), sugar=(), loads=()).sheetnames) >= SHEETS


def test_a_report_without_the_section_has_none_of_the_sheets():
    assert not SHEETS & set(written(workbook_of(made.make_report())).sheetnames)
