"""The keeper, yards with their stores, and flows of a sheet into the tables.

Takes records and the gathering of changes; writes inside the caller's transaction.
"""

from apiary.models import FlowWindow, Yard
from apiary.operation import operation, tell_operation
from inventory.loading.changes import CHANGED, differing, saved, say_saved
from inventory.locations import store_of

KEEPER_FIELDS = ("name", "address", "region", "money", "truck_lb")
YARD_FIELDS = (
    *("name", "region", "stands", "drive_minutes", "miles", "gate", "emergency", "access"),
    "visit_every_days",
)
FLOW_FIELDS = ("first_week", "last_week", "gain_lb", "spread")


def post_keeper(row, changes):
    if row is None:
        return
    keeper = operation()
    values = {field: getattr(row, field) for field in KEEPER_FIELDS}
    changed = differing(keeper, values)
    tell_operation(**values)
    say_saved(
        keeper, changed, kind="keeper", changes=changes, name=row.name, is_new=keeper.pk is None, at=row.row
    )


def post_yards(rows, changes):
    """Every yard by code afterwards, those of the books too; each of the sheet has its store."""
    yards = Yard.objects.in_bulk(field_name="code")
    for row in rows:
        values = {field: getattr(row, field) for field in YARD_FIELDS}
        if row.is_shed:
            values["is_shed"] = True  # a sheet that is silent does not unmake the shed
        yard = yards.setdefault(row.code, Yard(code=row.code))
        saved(yard, values, kind="yards", changes=changes, name=row.name, at=row.row)
        store_of(yard)
    return yards


def post_flows(rows, yards, changes):
    """The flows of a yard the sheet speaks of become those of the sheet; other yards keep theirs."""
    told = {row.yard for row in rows}
    there = {
        (window.yard.code, window.name): window
        for window in FlowWindow.objects.filter(yard__code__in=told).select_related("yard")
    }
    for row in rows:
        window = there.pop((row.yard, row.name), None)
        window = window or FlowWindow(yard=yards[row.yard], name=row.name)
        values = {field: getattr(row, field) for field in FLOW_FIELDS}
        name = f"{yards[row.yard]}: {row.name}"
        saved(window, values, kind="flows", changes=changes, name=name, at=row.row)
    for window in there.values():
        changes.say("flows", window, CHANGED, "taken out: the sheet has it no more")
        window.delete()
