"""One sheet, one transaction: keeper, yards, flows, suppliers, prices, colonies, gear, winters, drafts of counts; all
of it or nothing.

Takes a Sheet, the day, who and the file's digest; gives Loaded. An act without movements keeps the digest,
so that the same file posts once, also when it is sent twice at the same moment.
"""

from django.db import transaction

from apiary.errors import Refused
from inventory.ledger.posting import lock_books, post, refuse_future
from inventory.loading.bees import post_colonies, post_gear
from inventory.loading.changes import Changes, Loaded
from inventory.loading.counts import draft_counts
from inventory.loading.ground import post_flows, post_keeper, post_yards
from inventory.loading.prices import post_offers, post_suppliers
from inventory.loading.winters import post_winters
from inventory.models import Act

ACT = "load sheet"


def first_load(digest):
    """The act by which this very file was posted before, or None."""
    return Act.objects.filter(key=_key(digest)).first()


class BooksMoved(Refused):
    sentence = "The books have changed since the sheet was tried, and it would post something else now: look at it again"


def load(sheet, *, day, who, digest, shown=None):
    """Posts the sheet, or nothing where this very file was posted before. Raises Refused, nothing posted.

    `shown`: the mark of the dry run that was looked at; BooksMoved where it would post anything else by now."""
    with transaction.atomic():
        lock_books()
        first = first_load(digest)
        if first is not None:
            return Loaded(day=day, first_on=first.day)
        loaded = _post(sheet, day=day, who=who, key=_key(digest), posted=True)
        if shown is not None and shown != loaded.mark:
            raise BooksMoved
    return loaded


def dry_run(sheet, *, day, who=None, digest=""):
    """What `load` would change: the posting itself, undone. What the trade refuses is told, not raised."""
    first = first_load(digest) if digest else None
    if first is not None:
        return Loaded(day=day, first_on=first.day)
    try:
        with transaction.atomic():
            lock_books()
            loaded = _post(sheet, day=day, who=who, key=_key(digest), posted=False)
            transaction.set_rollback(True)
    except Refused as refusal:
        return Loaded(day=day, refusals=tuple(str(problem) for problem in refusal.problems))
    return loaded


def _key(digest):
    return f"sheet-{digest[:40]}"


def _post(sheet, *, day, who, key, posted):
    refuse_future(day)
    changes = Changes()
    post_keeper(sheet.keeper, changes)
    yards = post_yards(sheet.yards, changes)
    post_flows(sheet.flows, yards, changes)
    stocks = post_colonies(sheet.colonies, yards, changes, day=day, who=who)
    post_gear(sheet.gear, yards, stocks, changes, day=day, who=who, key=f"{key}-gear")
    suppliers = post_suppliers(sheet.suppliers, changes)
    complete = {row.code for row in sheet.suppliers if row.complete}
    post_offers(sheet.offers, suppliers, changes, complete=complete, day=day)
    post_winters(sheet.winters, yards, changes)
    drafts = draft_counts(sheet.counts, yards, changes, who=who, key=f"{key}-count")
    post(ACT, list, day=day, who=who, key=key, note=_note(day, changes.all))
    return Loaded(day=day, changes=tuple(changes.all), drafts=drafts, posted=posted)


def _note(day, all_changes):
    told = Loaded(day=day, changes=tuple(all_changes)).counts
    return "; ".join(f"{kind}: {new} new, {changed} changed" for kind, new, changed, _ in told)[:200]
