"""A count on paper: the places of a yard with what may lie there, blind or beside the book, before any count is begun.

Takes a yard, a day, and how it is counted; gives the places with their rows under heads. Begins no count.
"""

from apiary.models import Yard
from inventory.counting.sheet import sheet_before_count
from inventory.pieces import by_head


def places_to_count(yard: Yard, *, day, blind, with_colonies=False):
    """[(place, [(head, rows)])]: the yard's store first, then each hive where they are counted too."""
    sheet = sheet_before_count(yard, day=day, blind=blind, with_colonies=with_colonies)
    return [(place.location, by_head(place.rows)) for place in sheet.places]
