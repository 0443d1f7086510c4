"""The chain that seals the books: each movement's digest covers its own fields, its act and the digest before.

Takes a movement with its act and ends; gives sha256 in hex, and the seal's mark, which only the site's secret key
can make: without it a cut or rewritten chain can not be sealed anew. Reads and writes no table.
"""

import datetime as dt
import hashlib
import json

from django.conf import settings
from django.utils.crypto import constant_time_compare, salted_hmac


def digest_of(movement, before):
    """The digest of a movement that follows the row whose digest is `before` ('' for the first)."""
    act = movement.act
    fields = [
        before,
        act.key,
        act.name,
        act.day.isoformat(),
        act.who_id,
        act.note,
        act.reverses_id,
        act.recorded_at.astimezone(dt.UTC).isoformat(timespec="microseconds"),
        movement.day.isoformat(),
        movement.part_id,
        str(movement.condition),
        movement.quantity,
        *_end(movement.source),
        *_end(movement.target),
        str(movement.reason),
        movement.order_line_id,
        movement.found,
    ]
    return hashlib.sha256(json.dumps(fields, ensure_ascii=True).encode("ascii")).hexdigest()


def _end(location):
    return (str(location.kind), location.yard_id, location.colony_id)


def mark_of(length, head, secret=None):
    """The mark of a seal that says so many movements and this last digest."""
    return salted_hmac("inventory.seal", f"{length} {head}", secret=secret, algorithm="sha256").hexdigest()


def is_marked(seal):
    """True where the seal carries the mark of what it says, by the secret key or one that was in use before."""
    return any(
        constant_time_compare(seal.mark, mark_of(seal.length, seal.head, secret))
        for secret in (settings.SECRET_KEY, *settings.SECRET_KEY_FALLBACKS)
    )
