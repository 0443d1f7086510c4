"""Value of gear in whole cents, pure: records in, records out. Moving average, a year's books, depreciation."""

from inventory.value.average import carry
from inventory.value.books import Books, PartBooks, books_of, value_by_part
from inventory.value.depreciation import Convention, Rest, ScheduleRow, schedule
from inventory.value.paid import Billed, Delivery, Goods, priced
from inventory.value.records import Came, Left, Made, Passed, Posted
from inventory.value.spread import spread

__all__ = [
    "Billed",
    "Books",
    "Came",
    "Convention",
    "Delivery",
    "Goods",
    "Left",
    "Made",
    "PartBooks",
    "Passed",
    "Posted",
    "Rest",
    "ScheduleRow",
    "books_of",
    "carry",
    "priced",
    "schedule",
    "spread",
    "value_by_part",
]
