"""Frames that go with a box: nobody counts single frames on a hive, so a box that is missing takes its own along.

Takes counted boxes on colonies and the gear booked there; gives Differences of frames nobody counted.
"""

from collections import defaultdict
from fractions import Fraction

from inventory.reconcile.records import Difference

BOXES = ("box", "nuc box")


def frames_along(rows, gear, pieces):
    """`gear` is {(place, part, condition): booked}. Of each depth the share of frames that the missing boxes held."""
    counted = {row.key for row in rows}
    booked: dict[tuple, int] = defaultdict(int)
    gone: dict[tuple, int] = defaultdict(int)
    for (place, part, _), quantity in gear.items():
        if pieces[part].kind in BOXES:
            booked[place, pieces[part].depth] += quantity
    for row in rows:
        if pieces[row.part].kind in BOXES:
            gone[row.place, pieces[row.part].depth] -= row.gap
    found = []
    for (place, part, condition), quantity in gear.items():
        hive, piece = (place, pieces[part].depth), pieces[part]
        if piece.kind != "frame" or (place, part, condition) in counted or gone[hive] <= 0:
            continue
        taken = round(Fraction(quantity * min(gone[hive], booked[hive]), booked[hive] or 1))
        if taken and booked[hive]:
            found.append(
                Difference(
                    place=place, part=part, condition=condition, booked=quantity, counted=quantity - taken
                )
            )
    return tuple(found)
