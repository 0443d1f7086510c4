"""The whole workbook from a report. Takes a Report, gives .xlsx bytes; sums are formulas, nothing names a person."""

from inventory.printed.cells import bytes_of, new_book, paper_for
from planner.workbook.after import write_after
from planner.workbook.assumptions import write_assumptions
from planner.workbook.bad_years import write_bad_years
from planner.workbook.beliefs import write_beliefs
from planner.workbook.money import write_money
from planner.workbook.order import write_order
from planner.workbook.requirement import write_requirement
from planner.workbook.summary import write_summary
from planner.workbook.trial import write_trial
from planner.workbook.why import write_why


def workbook_of(report, *, paper=None):
    """`paper`: A4 or Letter; left out, Letter where the money is North American."""
    paper = paper or paper_for(report.money)
    book = new_book()
    summary, order = book.active, book.create_sheet("Order")
    summary.title = "Summary"
    write_summary(summary, report, write_order(order, report, paper), paper)
    write_why(book.create_sheet("Why"), report, paper)
    write_requirement(book.create_sheet("Requirement"), report, paper)
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
    write_assumptions(book.create_sheet("Assumptions"), report, paper)
    return bytes_of(book, name="Winter order", day=report.day)
