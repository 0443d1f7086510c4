"""The past winters of a sheet into their table, from which planning learns how many colonies come through.

Takes records, yards by code and the gathering of changes; writes through apiary/winters.py, inside the caller's
transaction. A winter the sheet does not name stays.
"""

from apiary.winters import tell_winter
from inventory.loading.changes import CHANGED, NEW, SAME


def post_winters(rows, yards, changes):
    for row in rows:
        yard = yards[row.yard] if row.yard else None
        told, was = tell_winter(autumn=row.autumn, yard=yard, went_in=row.went_in, came_out=row.came_out)
        now = (row.went_in, row.came_out)
        becomes = NEW if was is None else SAME if was == now else CHANGED
        words = f"{now[0]} in, {now[1]} out"
        if becomes == CHANGED:
            words = f"{was[0]} in, {was[1]} out becomes {words}"
        changes.say("winters", told, becomes, "" if becomes == SAME else words, at=row.row)
