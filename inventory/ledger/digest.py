"""The two chains that seal the books: of movements, each with its act, and of acts, each with what it told of colonies.

Takes a movement with its act and ends, or an act and the events under its seal; gives sha256 in hex over that and the
digest before, and the seal's mark, which only the site's secret key can make: without it a cut or rewritten chain can
not be sealed anew. Reads and writes no table.
"""

import datetime as dt
import functools
import hashlib
import json

from django.conf import settings
from django.utils.crypto import constant_time_compare, salted_hmac

# What a digest covers, as act_text and digest_of_row take it; the ends of a movement are told by end_text.
ACT_FIELDS = ("key", "name", "day", "who_id", "note", "reverses_id", "recorded_at")
MOVEMENT_FIELDS = (
    *("day", "part_id", "condition", "quantity", "source_id", "target_id"),
    *("reason", "order_line_id", "found"),
)


def digest_of(movement, before):
    """The digest of a movement that follows the row whose digest is `before` ('' for the first)."""
    row = [movement.day, movement.part_id, str(movement.condition), movement.quantity]
    row += [str(movement.reason), movement.order_line_id, movement.found]
    ends = [end_text(str(end.kind), end.yard_id, end.colony_id) for end in (movement.source, movement.target)]
    return digest_of_row(before, _text_of(movement.act), *row, *ends)


def digest_of_act(act, before, events=()):
    """The digest of an act that follows the one whose digest is `before`, with the events under its seal."""
    told = Told()
    for event in events:
        told.add(*event)
    return act_digest(before, _text_of(act), told.digest)


def act_digest(before, act, told):
    """The same from its text and the digest of what was told, '' where nothing was."""
    return hashlib.sha256(
        f"[{_quoted(before)}, {act}, {_quoted(told)}]".encode("ascii", "replace")
    ).hexdigest()


class Told:
    """What is told of colonies under one act's seal, event by event in their order."""

    def __init__(self):
        self.hash = hashlib.sha256()

    def add(self, colony, day, kind, yard, note, was, who, recorded_at, act_key):
        fields = [colony, day and day.isoformat(), kind, yard, note, was, who, _stamp(recorded_at), act_key]
        self.hash.update(f"[{_text(fields)}]\n".encode("ascii", "replace"))

    @property
    def digest(self):
        digest = self.hash.hexdigest()
        return "" if digest == NOTHING else digest


NOTHING = hashlib.sha256().hexdigest()


def _text_of(act):
    return act_text(act.key, act.name, act.day, act.who_id, act.note, act.reverses_id, act.recorded_at)


def act_text(key, name, day, who, note, reverses, recorded_at):
    """What a digest covers of the act, as written into each of its rows' digests."""
    return _text([key, name, day and day.isoformat(), who, note, reverses, _stamp(recorded_at)])


def _stamp(moment):
    return moment and moment.astimezone(dt.UTC).isoformat(timespec="microseconds")


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


def mark_of(length, head, acts, act_head, secret=None):
    """The mark of a seal that says so many movements and acts and these last digests."""
    told = f"{length} {head} {acts} {act_head}"
    return salted_hmac("inventory.seal", told, secret=secret, algorithm="sha256").hexdigest()


def is_marked(seal):
    """True where the seal carries the mark of what it says, by the secret key or one that was in use before."""
    return any(
        constant_time_compare(seal.mark, mark_of(seal.length, seal.head, seal.acts, seal.act_head, secret))
        for secret in (settings.SECRET_KEY, *settings.SECRET_KEY_FALLBACKS)
    )
