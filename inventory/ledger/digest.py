"""The chain that seals the books: each movement's digest covers its own fields, its act and the digest before.

Takes a movement with its act and ends; gives sha256 in hex, and the seal's mark, which only the site's secret key
can make: without it a cut or rewritten chain can not be sealed anew. Reads and writes no table.
"""

import datetime as dt
import functools
import hashlib
import json

from django.conf import settings
from django.utils.crypto import constant_time_compare, salted_hmac


def digest_of(movement, before):
    """The digest of a movement that follows the row whose digest is `before` ('' for the first)."""
    act = movement.act
    fields = (act.key, act.name, act.day, act.who_id, act.note, act.reverses_id, act.recorded_at)
    row = [movement.day, movement.part_id, str(movement.condition), movement.quantity]
    row += [str(movement.reason), movement.order_line_id, movement.found]
    ends = [end_text(str(end.kind), end.yard_id, end.colony_id) for end in (movement.source, movement.target)]
    return digest_of_row(before, act_text(*fields), *row, *ends)


def act_text(key, name, day, who, note, reverses, recorded_at):
    """What a digest covers of the act, as written into each of its rows' digests."""
    stamp = recorded_at.astimezone(dt.UTC).isoformat(timespec="microseconds")
    return _text([key, name, day and day.isoformat(), who, note, reverses, stamp])


def end_text(kind, yard, colony):
    """What it covers of one end."""
    return _text([kind, yard, colony])


def digest_of_row(before, act, day, part, condition, quantity, reason, order_line, found, source, target):
    """The digest of a row from plain values and the texts of its act and ends."""
    text = (
        f"[{_quoted(before)}, {act}, {_day(day)}, {part}, {_quoted(condition)}, {quantity}, {source}, {target}, "
        f"{_quoted(reason)}, {'null' if order_line is None else order_line}, {_FLAGS.get(found, found)}]"
    )
    return hashlib.sha256(text.encode("ascii", "replace")).hexdigest()


def _text(fields):
    return json.dumps(fields, ensure_ascii=True)[1:-1]


@functools.lru_cache(maxsize=4096)
def _day(day):
    return "null" if day is None else f'"{day.isoformat()}"'


_quoted = json.encoder.encode_basestring_ascii
_FLAGS = {True: "true", False: "false"}


def mark_of(length, head, secret=None):
    """The mark of a seal that says so many movements and this last digest."""
    return salted_hmac("inventory.seal", f"{length} {head}", secret=secret, algorithm="sha256").hexdigest()


def is_marked(seal):
    """True where the seal carries the mark of what it says, by the secret key or one that was in use before."""
    return any(
        constant_time_compare(seal.mark, mark_of(seal.length, seal.head, secret))
        for secret in (settings.SECRET_KEY, *settings.SECRET_KEY_FALLBACKS)
    )
