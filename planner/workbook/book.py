"""The whole workbook from a report. Takes a Report, gives .xlsx bytes; sums are formulas, nothing names a person."""

import datetime as dt
import io

from openpyxl import Workbook

from planner.workbook.after import write_after
from planner.workbook.assumptions import write_assumptions
from planner.workbook.bad_years import write_bad_years
from planner.workbook.beliefs import write_beliefs
from planner.workbook.cells import PLAIN
from planner.workbook.money import write_money
from planner.workbook.order import write_order
from planner.workbook.requirement import write_requirement
from planner.workbook.summary import write_summary
from planner.workbook.trial import write_trial
from planner.workbook.why import write_why

LETTER_MONEYS = ("USD", "CAD", "MXN")


def workbook_of(report, *, paper=None):
    """`paper`: A4 or Letter; left out, Letter where the money is North American."""
    paper = paper or ("Letter" if report.money in LETTER_MONEYS else "A4")
    book = Workbook()
    book._named_styles["Normal"].font = PLAIN
    summary = book.active
    summary.title = "Summary"
    order, why, requirement, assumptions = (
        book.create_sheet(name) for name in ("Order", "Why", "Requirement", "Assumptions")
    )
    sums = write_order(order, report, paper)
    write_summary(summary, report, sums, paper)
    write_why(why, report, paper)
    write_requirement(requirement, report, paper)
    write_assumptions(assumptions, report, paper)
    if report.after is not None:
        write_after(book, report.after, paper)
    if report.budgets is not None:
        write_money(book.create_sheet("Money"), report, paper)
    if report.trial is not None:
        write_trial(book.create_sheet("Trial"), report, paper)
    if report.bad_years is not None:
        write_bad_years(book.create_sheet("Bad years"), report, paper)
    if report.beliefs is not None:
        write_beliefs(book.create_sheet("Beliefs"), report, paper)
    book.properties.creator = ""
    book.properties.title = "Winter order"
    book.properties.created = dt.datetime.combine(report.day, dt.time())
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()
