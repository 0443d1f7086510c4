"""The winter order as a workbook to print and file: Summary, Order, Why, Requirement, Hauling, Assembly, Feed, Money,
Trial, Bad years, Beliefs, Assumptions; a sheet whose section was not worked out is left out. Pure.

`workbook_of` takes a Report and gives the bytes of an .xlsx file. Every sum is a formula; no text is ever one.
"""

from planner.workbook.book import workbook_of

__all__ = ["workbook_of"]
