"""The sheets Hauling (the loads of a week begin a printed page), Assembly (by week) and Feed.

Takes the workbook, the report's section of what follows the order and the paper; adds the sheets. Sums are formulas.
"""

import itertools

from openpyxl.worksheet.pagebreak import Break

from inventory.printed.cells import (
    BESIDE,
    BOLD,
    COUNT,
    DAY,
    HEAD,
    PLAIN,
    TENTH,
    figure,
    formula,
    head_row,
    rule,
    text,
    title,
)
from planner.after.sheet import FULL, rides_words
from planner.plan.words import day_words
from planner.workbook.page import ends, opens, said

LOAD_WIDTHS = (46, 12, 12, 26)
ASSEMBLY_WIDTHS = (14, 13, 46, 14, 14)
FEED_WIDTHS = (14, 24, 12, 11, 11, 14, 12)
ROWS_A_PAGE = 41  # a load is not broken over two pages where one holds it
CAUTION = (
    "Caution: lift with two, or frame by frame; a full deep weighs 80 to 90 lb, a full medium 50 to 60. Tie every stack "
    "down, stay within what your door plate allows, and pull the straps again after the first miles."
)


def write_after(book, section, paper):
    write_hauling(book.create_sheet("Hauling"), section, paper)
    write_assembly(book.create_sheet("Assembly"), section, paper)
    write_feed(book.create_sheet("Feed"), section, paper)


def write_hauling(sheet, section, paper):
    title(
        sheet, "Hauling", f"The truck takes {section.truck_lb:,} lb and {section.truck_cubic_ft} cubic feet."
    )
    row = 3
    for sentence in (*section.sentences[: section.hauling], CAUTION):
        row = said(sheet, row, sentence, LOAD_WIDTHS, font=PLAIN)
    row = _free(sheet, row + 1, section.free) if section.free else row
    for week, loads in itertools.groupby(section.loads, key=lambda load: load.day):
        top = _new_page(sheet, row)
        text(sheet, row, 1, f"Week of {day_words(week)}", font=HEAD)
        row += 1
        for load in loads:
            if row > top + 1 and row + _rows_of(load) - top > ROWS_A_PAGE:
                top = _new_page(sheet, row)
            row = _load(sheet, row, load)
    ends(sheet, LOAD_WIDTHS, last_row=row - 1, paper=paper, wide=False, repeat=2, frozen=None)


def _new_page(sheet, row):
    sheet.row_breaks.append(Break(id=row - 1))
    return row


def _rows_of(load):
    return 3 + sum(len(leg.carried) + 2 for leg in (load.out, load.home) if leg.carried)


def _free(sheet, row, free):
    """Days to keep free for second trips."""
    head_row(sheet, row, ("Keep a day free for", "Trips", "Week of", "Seasons of 100"), right=(2, 3, 4))
    for each in free:
        row += 1
        text(sheet, row, 1, f"{each.yard_name}, {each.what}")
        figure(sheet, row, 2, each.trips, COUNT)
        figure(sheet, row, 3, each.day, DAY)
        figure(sheet, row, 4, each.in_100, COUNT)
        rule(sheet, row, 4)
    return row + 2


def _load(sheet, row, load):
    text(sheet, row, 1, f"Load {load.number}: {load.yard_name}", font=BOLD)
    text(sheet, row + 1, 1, rides_words(load).capitalize())
    row = _leg(sheet, row + 2, "Out", load.out)
    return _leg(sheet, row, "Home", load.home) + 1


def _leg(sheet, row, way, leg):
    if not leg.carried:
        return row
    head_row(sheet, row, (way, "How many", "Unit", "Loaded"), right=(2,), beside=(3,))
    for line in leg.carried:
        row += 1
        text(sheet, row, 1, f"{line.name}{FULL if line.full else ''}")
        figure(sheet, row, 2, line.pieces, COUNT)
        text(sheet, row, 3, line.unit, align=BESIDE)
        rule(sheet, row, 4)
    row += 1
    text(sheet, row, 1, f"{leg.lb:,} lb, {leg.cubic_ft:g} cubic feet", font=BOLD)
    return row + 1


def write_assembly(sheet, section, paper):
    bench = section.bench
    under = f"{bench.said} The evenings below begin as soon as the gear is there."
    heads = ("Week of", "Evening", "Work", "Pieces", "Minutes")
    first = row = opens(sheet, "Assembly", under, heads, right=(1, 2, 4, 5), beside=(3,))
    said(sheet, 2, under, ASSEMBLY_WIDTHS)
    for row, evening in enumerate(bench.evenings, first):
        figure(sheet, row, 1, evening.day, DAY)
        figure(sheet, row, 2, evening.evening, COUNT)
        text(sheet, row, 3, evening.name, align=BESIDE)
        figure(sheet, row, 4, evening.pieces, TENTH)
        figure(sheet, row, 5, evening.minutes, COUNT)
        rule(sheet, row, 5)
    if bench.evenings:
        row += 1
        text(sheet, row, 3, "In all", font=BOLD, align=BESIDE)
        formula(sheet, row, 5, f"SUM(E{first}:E{row - 1})", COUNT, font=BOLD)
    row = _jobs(sheet, row + 2, bench.jobs)
    ends(sheet, ASSEMBLY_WIDTHS, last_row=row, paper=paper, wide=False)


def _jobs(sheet, row, jobs):
    head_row(
        sheet,
        row,
        ("Wanted", "Gear there", "Work", "Pieces", "Of them late"),
        right=(1, 2, 4, 5),
        beside=(3,),
    )
    for job in jobs:
        row += 1
        figure(sheet, row, 1, job.wanted_on, DAY)
        figure(sheet, row, 2, job.gear_there_on, DAY)
        text(sheet, row, 3, job.name, align=BESIDE)
        figure(sheet, row, 4, job.pieces, COUNT)
        figure(sheet, row, 5, job.late_pieces, COUNT)
        rule(sheet, row, 5)
    return row


def write_feed(sheet, section, paper):
    under = "Gallons by each yard's own nine seasons of ten; sugar to buy by all yards' together."
    heads = ("Week of", "Yard", "Feeding", "Colonies", "Gallons", "Sugar to water", "Sugar, lb")
    first = row = opens(sheet, "Feed", under, heads, right=(1, 4, 5, 7), beside=(2, 6))
    for row, feed in enumerate(section.feed, first):
        figure(sheet, row, 1, feed.day, DAY)
        text(sheet, row, 2, feed.yard_name, align=BESIDE)
        text(sheet, row, 3, feed.season)
        figure(sheet, row, 4, feed.colonies, COUNT)
        figure(sheet, row, 5, feed.gallons, TENTH)
        text(sheet, row, 6, feed.ratio, align=BESIDE)
        figure(sheet, row, 7, feed.sugar_lb, COUNT)
        rule(sheet, row, 7)
    if section.feed:
        row += 1
        text(sheet, row, 2, "In all", font=BOLD, align=BESIDE)
        for column, letter, style in ((5, "E", TENTH), (7, "G", COUNT)):
            formula(sheet, row, column, f"SUM({letter}{first}:{letter}{row - 1})", style, font=BOLD)
    row = _sugar(sheet, row + 2, section.sugar)
    ends(sheet, FEED_WIDTHS, last_row=row, paper=paper, wide=False)


def _sugar(sheet, row, rows):
    heads = ("Week of", "Sugar for", "", "Needed, lb", "There, lb", "", "To buy, lb")
    head_row(sheet, row, heads, right=(1, 4, 5, 7), beside=(2,))
    for sugar in rows:
        row += 1
        figure(sheet, row, 1, sugar.day, DAY)
        text(sheet, row, 2, "all yards", align=BESIDE)
        figure(sheet, row, 4, sugar.needed_lb, COUNT)
        figure(sheet, row, 5, sugar.on_hand_lb, COUNT)
        formula(sheet, row, 7, f"MAX(0,D{row}-E{row})", COUNT)
        rule(sheet, row, 7)
    return row
