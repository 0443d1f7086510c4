"""One sheet, one transaction: keeper, yards, flows, suppliers, prices, colonies, gear; all of it or nothing.

Takes a Sheet, the day, who and the file's digest; gives Loaded. An act without movements keeps the digest,
so that the same file posts once, also when it is sent twice at the same moment.
"""

from django.db import transaction

from apiary.errors import Refused
from inventory.ledger.posting import lock_books, post, refuse_future
from inventory.loading.bees import post_colonies, post_gear
from inventory.loading.changes import Changes, Loaded
from inventory.loading.ground import post_flows, post_keeper, post_yards
from inventory.loading.prices import post_offers, post_suppliers
from inventory.models import Act

ACT = "load sheet"


def first_load(digest):
    """The act by which this very file was posted before, or None."""
    return Act.objects.filter(key=_key(digest)).first()


def load(sheet, *, day, who, digest):
    """Posts the sheet, or nothing where this very file was posted before. Raises Refused, nothing posted."""
    with transaction.atomic():
        lock_books()
        first = first_load(digest)
        if first is not None:
            return Loaded(day=day, first_on=first.day)
        changes = _post(sheet, day=day, who=who, key=_key(digest))
    return Loaded(day=day, changes=changes, posted=True)


def dry_run(sheet, *, day, who=None, digest=""):
    """What `load` would change: the posting itself, undone. What the trade refuses is told, not raised."""
    first = first_load(digest) if digest else None
    if first is not None:
        return Loaded(day=day, first_on=first.day)
    try:
        with transaction.atomic():
            lock_books()
            changes = _post(sheet, day=day, who=who, key=_key(digest))
            transaction.set_rollback(True)
    except Refused as refusal:
        return Loaded(day=day, refusals=tuple(str(problem) for problem in refusal.problems))
    return Loaded(day=day, changes=changes)


def _key(digest):
    return f"sheet-{digest[:40]}"


def _post(sheet, *, day, who, key):
    refuse_future(day)
    changes = Changes()
    post_keeper(sheet.keeper, changes)
    yards = post_yards(sheet.yards, changes)
    post_flows(sheet.flows, yards, changes)
    stocks = post_colonies(sheet.colonies, yards, changes, day=day, who=who)
    post_gear(sheet.gear, yards, stocks, changes, day=day, who=who, key=f"{key}-gear")
    suppliers = post_suppliers(sheet.suppliers, changes)
    post_offers(sheet.offers, suppliers, changes)
    post(ACT, list, day=day, who=who, key=key, note=_note(day, changes.all))
    return tuple(changes.all)


def _note(day, all_changes):
    told = Loaded(day=day, changes=tuple(all_changes)).counts
    return "; ".join(f"{kind}: {new} new, {changed} changed" for kind, new, changed, _ in told)[:200]
