"""A dead hive on paper: the pieces the book has on it, and how many lines are left for what the book does not know.

Takes a colony, or the hives of which one may be found dead; gives rows in the order a hand meets them. Books nothing.
"""

from apiary.models import Colony
from inventory.models import Part
from inventory.pieces import Row, order_of, rows_at

SPARE = 3  # empty lines under the pieces


def pieces_of(colony: Colony):
    """What the book has on the hive, boxes first."""
    return rows_at(colony)


def pieces_of_any(colonies):
    """What any of these hives stands in by the book, without numbers: for a sheet on which the tag is written."""
    on_them = {"holdings__location__colony__in": colonies, "holdings__quantity__gt": 0}
    parts = Part.objects.filter(**on_them).distinct()
    return sorted((Row(part=part) for part in parts), key=order_of)
