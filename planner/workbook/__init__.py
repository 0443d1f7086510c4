"""The winter order as a workbook to print, send and file: Summary, Order, Why, Requirement, Assumptions,
and where it was tried Trial and Bad years. Pure.

`workbook_of` takes a Report and gives the bytes of an .xlsx file. Every sum is a formula; no text is ever one.
"""

from planner.workbook.book import workbook_of

__all__ = ["workbook_of"]
