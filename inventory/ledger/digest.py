"""The chain that seals the books: each movement's digest covers its own fields, its act and the digest before.

Takes a movement with its act and ends; gives sha256 in hex. Reads and writes no table.
"""

import datetime as dt
import hashlib
import json


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
