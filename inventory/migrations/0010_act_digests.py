"""Acts are chained too, each with what it told of colonies. Acts there are get their digests in their order.

The chain of the movements stays as it is. The seal is signed for both chains where its mark was right before; a wrong
one stays wrong. What is worked out here is what the ledger worked out when this was written.
"""

import datetime as dt
import hashlib
import json

from django.conf import settings
from django.db import migrations, models
from django.utils.crypto import constant_time_compare, salted_hmac

CHUNK = 5000
ACT = ("key", "name", "day", "who_id", "note", "reverses_id", "recorded_at")
EVENT = ("colony_id", "day", "kind", "yard_id", "note", "was", "who_id", "recorded_at", "act_key")


def chain_acts(apps, schema_editor):
    alias = schema_editor.connection.alias
    acts = apps.get_model("inventory", "Act").objects.using(alias)
    events = apps.get_model("apiary", "ColonyEvent").objects.using(alias)
    length, head, last = 0, "", 0
    while rows := list(acts.filter(pk__gt=last).order_by("pk").values_list("pk", *ACT)[:CHUNK]):
        told = _told(events, rows)
        changed = []
        for pk, *fields in rows:
            head = _sha(f"[{json.dumps(head)}, {_text(fields)}, {json.dumps(told.get(fields[0], ''))}]")
            changed.append((head, pk))
        with schema_editor.connection.cursor() as cursor:
            cursor.executemany("UPDATE inventory_act SET digest = %s WHERE id = %s", changed)
        length, last = length + len(rows), rows[-1][0]
    _sign(apps.get_model("inventory", "BookSeal").objects.using(alias), length, head)


def _told(events, rows):
    """{key: digest of what the act told}, of these acts."""
    texts = {}
    keys = [key for _, key, *_ in rows]
    for start in range(0, len(keys), 500):
        found = events.filter(sealed_by__in=keys[start : start + 500]).order_by("pk")
        for key, *fields in found.values_list("sealed_by", *EVENT):
            texts.setdefault(key, []).append(f"[{_text(fields)}]\n")
    return {key: _sha("".join(lines)) for key, lines in texts.items()}


def _text(fields):
    return json.dumps([_plain(field) for field in fields])[1:-1]


def _plain(field):
    if isinstance(field, dt.datetime):
        return field.astimezone(dt.UTC).isoformat(timespec="microseconds")
    return field.isoformat() if isinstance(field, dt.date) else field


def _sha(text):
    return hashlib.sha256(text.encode("ascii")).hexdigest()


def _sign(seals, length, head):
    seal = seals.filter(pk=1).first()
    if seal is None:
        return
    before = f"{seal.length} {seal.head}"
    keys = (settings.SECRET_KEY, *settings.SECRET_KEY_FALLBACKS)
    was_right = any(constant_time_compare(seal.mark, _mark(before, key)) for key in keys)
    mark = _mark(f"{before} {length} {head}", settings.SECRET_KEY) if was_right else seal.mark
    seals.filter(pk=1).update(acts=length, act_head=head, mark=mark)


def _mark(text, key):
    return salted_hmac("inventory.seal", text, secret=key, algorithm="sha256").hexdigest()


class Migration(migrations.Migration):
    dependencies = [
        ("apiary", "0005_sealed_by"),
        ("inventory", "0009_rest_values"),
    ]

    operations = [
        migrations.AddField(
            model_name="act",
            name="digest",
            field=models.CharField(blank=True, default="", max_length=64),
        ),
        migrations.AddField(
            model_name="bookseal",
            name="acts",
            field=models.PositiveBigIntegerField(default=0),
        ),
        migrations.AddField(
            model_name="bookseal",
            name="act_head",
            field=models.CharField(blank=True, default="", max_length=64),
        ),
        migrations.RunPython(chain_acts, migrations.RunPython.noop),
    ]
