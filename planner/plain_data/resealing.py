"""The chains of digests and the balances, made anew for books whose files the keeper changed on purpose.

Takes the movements, acts and events as they lie in the tables; writes their digests, the seal and the balances only.
It hides what was changed, so loading does it only when told, and says so.
"""

from collections import Counter

from django.db import connection

from inventory.ledger.digest import (
    ACT_FIELDS,
    MOVEMENT_FIELDS,
    act_digest,
    act_text,
    digest_of_row,
    end_text,
)
from inventory.models import Act, BookSeal, Holding, Location, Movement
from inventory.proof.acts import told_by_act

CHUNK = 5000


def seal_anew():
    """Both chains and the seal, unsigned, from what lies in the tables."""
    texts, acts, act_head = _acts()
    length, head = _movements(texts)
    said = {"length": length, "head": head, "acts": acts, "act_head": act_head}
    BookSeal.objects.update_or_create(pk=1, defaults=said)


def balance_anew():
    """Holding as the movements give it; below zero nothing is kept, the proof says where that is so."""
    inside = set(Location.objects.filter(kind__in=Location.INSIDE).values_list("pk", flat=True))
    balances: Counter = Counter()
    rows = Movement.objects.order_by().values_list(
        "source_id", "target_id", "part_id", "condition", "quantity"
    )
    for source, target, part, condition, quantity in rows.iterator(chunk_size=CHUNK):
        for place, change in ((source, -quantity), (target, quantity)):
            if place in inside:
                balances[place, part, condition] += change
    Holding.objects.all().delete()
    Holding.objects.bulk_create(
        (
            Holding(location_id=place, part_id=part, condition=condition, quantity=quantity)
            for (place, part, condition), quantity in sorted(balances.items())
            if quantity > 0
        ),
        batch_size=1000,
    )


def _acts():
    """{act's id: its text}, how many, the last digest."""
    told = told_by_act()
    texts, digests, head = {}, [], ""
    for pk, key, *fields in Act.objects.order_by("id").values_list("pk", *ACT_FIELDS):
        texts[pk] = act_text(key, *fields)
        head = act_digest(head, texts[pk], told[key].digest if key in told else "")
        digests.append((head, pk))
    _write(Act, digests)
    return texts, len(digests), head


def _movements(texts):
    """How many movements, the last digest."""
    places = Location.objects.values_list("pk", "kind", "yard_id", "colony_id")
    ends = {pk: end_text(kind, yard, colony) for pk, kind, yard, colony in places}
    digests, head = [], ""
    rows = Movement.objects.order_by("id").values_list("pk", "act_id", *MOVEMENT_FIELDS)
    for pk, act, day, part, condition, quantity, source, target, reason, line, found in rows:
        head = digest_of_row(
            head, texts[act], day, part, condition, quantity, reason, line, found, ends[source], ends[target]
        )
        digests.append((head, pk))
    _write(Movement, digests)
    return len(digests), head


def _write(model, digests):
    quote = connection.ops.quote_name
    with connection.cursor() as cursor:
        cursor.executemany(
            f"UPDATE {quote(model._meta.db_table)} SET {quote('digest')} = %s WHERE {quote('id')} = %s",
            digests,
        )
