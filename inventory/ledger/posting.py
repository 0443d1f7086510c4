"""How every act is written: one transaction, the books locked first, resends harmless, nothing below zero.

Takes the name of an act and a function that gives its entries once the books are locked; gives the Act.
Writes Act, Movement (sealed by digests), Holding, Evening and BookSeal together; knows no trade rule but one, that
nothing comes off a hive under an open case of foulbrood but held back.
"""

from dataclasses import dataclass

from django.db import transaction
from django.utils import timezone

from apiary.colonies import refuse_future, seal_told
from apiary.models import Colony
from apiary.rights import KEEPER, NotYours, refuse_elsewhere, role_of, yards_of
from inventory.deadouts.coming_off import coming_off, write_reasons
from inventory.deadouts.holds import Held
from inventory.errors import KeyTaken, NotEnough, refuse
from inventory.gear import Condition, Reason
from inventory.ledger.balances import balances_from, net_changes
from inventory.ledger.digest import digest_of, digest_of_act, is_marked, mark_of
from inventory.ledger.evenings import carry, keep_more
from inventory.locations import outside
from inventory.models import Act, BookSeal, Holding, Location, Movement, OrderLine, Part
from inventory.orders import settle

LOOSE = (Location.Kind.BENCH, Location.Kind.CORRECTION)  # ends over which held pieces could become sound ones


@dataclass(frozen=True, kw_only=True)
class Entry:
    """One movement to be: so many pieces of one gear from here to there, for a reason."""

    part: Part
    quantity: int
    source: Location
    target: Location
    reason: Reason
    condition: Condition = Condition.SOUND
    order_line: OrderLine | None = None
    found: bool = False
    held: Held | None = None


def post(name, entries_of, *, day, who, key, note="", reverses=None, found_allowed=False):
    """Writes the act; where its key was seen before, gives that first act and writes nothing."""
    key = _key(key)
    with transaction.atomic():
        seal = lock_books()
        first = Act.objects.filter(key=key).first()
        if first is not None:
            return _resent(first, name)
        refuse_future(day)
        entries = list(entries_of())
        _refuse_elsewhere(entries, who)
        _refuse_loosened(entries, who)
        if reverses is None:
            entries = coming_off(entries)
        entries = _covering(entries, day, found_allowed) + entries
        told = {"name": name, "day": day, "who": who, "note": note, "reverses": reverses}
        act = Act(key=key, recorded_at=timezone.now(), **told)
        act.digest = digest_of_act(act, seal.act_head, seal_told(key))
        act.save()
        _write(act, entries, seal)
        write_reasons(act, entries)
        settle({entry.order_line.order for entry in entries if entry.order_line})
    return act


def lock_books():
    """The seal's row, locked until the transaction ends: writers go one after another.

    On SQLite the transaction itself is immediate and holds the lock.
    """
    seal = BookSeal.objects.select_for_update().filter(pk=1).first()
    if seal is None:
        BookSeal.objects.get_or_create(pk=1, defaults={"mark": mark_of(0, "", 0, "")})
        seal = BookSeal.objects.select_for_update().get(pk=1)
    return seal


def turned(*, part, quantity, source, target, was, becomes, reason):
    """Entries for pieces whose condition changes on the way: over the workbench, so each row has one condition."""
    if was == becomes and source != target:
        return [
            Entry(part=part, quantity=quantity, source=source, target=target, condition=was, reason=reason)
        ]
    bench = outside(Location.Kind.BENCH)
    common = {"part": part, "quantity": quantity, "reason": reason}
    return [
        Entry(source=source, target=bench, condition=was, **common),
        Entry(source=bench, target=target, condition=becomes, **common),
    ]


def _key(key):
    key = str(key)
    if not 1 <= len(key) <= 64:
        raise ValueError(f"the key of an act has 1 to 64 letters, got {key!r}")
    return key


def _refuse_elsewhere(entries, who):
    """NotYours where gear would come from or go to a yard that was not given to who books it.

    Holding gear back is asked of nobody: a suspicion of foulbrood reaches further than a helper's yards.
    """
    if who is None or yards_of(who) is None:
        return
    moved = [entry for entry in entries if entry.reason != Reason.HELD]
    ends = {end for entry in moved for end in (entry.source, entry.target)}
    colonies = {end.colony_id for end in ends} - {None}
    standing = Colony.objects.filter(pk__in=colonies).values_list("yard", flat=True)
    refuse_elsewhere(who, {end.yard_id for end in ends} | set(standing))


def _refuse_loosened(entries, who):
    """NotYours where anyone but the keeper would turn held-back pieces into others: by the bench, a count or an undo."""
    if who is None or role_of(who) == KEEPER:
        return
    if any(
        entry.condition == Condition.HELD and entry.source.is_inside and entry.target.kind in LOOSE
        for entry in entries
    ):
        raise NotYours(
            "Held-back gear is let go by the keeper alone, on the inspector's written word: nothing was booked. "
            "Where fewer pieces are there than the book says, tell the keeper."
        )


def _resent(first, name):
    if first.name != name:
        raise KeyTaken(earlier=first)
    return first


def _covering(entries, day, found_allowed):
    """Entries that book missing pieces as found, where that is allowed; else NotEnough for every shortage."""
    wanted = {key: -change for key, change in net_changes(entries).items() if change < 0}
    problems, found = [], []
    for key, balances in balances_from(day, wanted).items():
        missing = wanted[key] - min(balance for _, balance in balances)
        if missing <= 0:
            continue
        location, part, condition = key
        if found_allowed:
            found.append(
                Entry(
                    part=part,
                    quantity=missing,
                    condition=condition,
                    source=outside(Location.Kind.CORRECTION),
                    target=location,
                    reason=Reason.FOUND,
                    found=True,
                )
            )
        else:
            problems.append(_shortage(key, wanted[key], balances))
    refuse(problems)
    return found


def _shortage(key, wanted, balances):
    location, part, condition = key
    day, balance = next((day, balance) for day, balance in balances if balance < wanted)
    name = part if condition == Condition.SOUND else f"{part} ({condition})"
    return NotEnough(part=name, location=location, day=day, wanted=wanted, booked=balance, code=part.code)


def _write(act, entries, seal):
    head, rows = seal.head, []
    for entry in entries:
        row = Movement(
            act=act,
            day=act.day,
            part=entry.part,
            condition=entry.condition,
            quantity=entry.quantity,
            source=entry.source,
            target=entry.target,
            reason=entry.reason,
            order_line=entry.order_line,
            found=entry.found,
        )
        head = row.digest = digest_of(row, head)
        rows.append(row)
    Movement.objects.bulk_create(rows)
    changes = net_changes(entries)
    _carry(changes)
    carry(act.day, changes, rows=len(rows))
    _seal(seal, length=seal.length + len(rows), head=head, acts=seal.acts + 1, act_head=act.digest)
    keep_more(act.day)


def _seal(seal, *, length, head, acts, act_head):
    """A seal whose mark was wrong before stays wrong: an act must not heal what was done behind the books' back."""
    mark = mark_of(length, head, acts, act_head) if is_marked(seal) else seal.mark
    seal.length, seal.head, seal.acts, seal.act_head, seal.mark = length, head, acts, act_head, mark
    seal.save(update_fields=["length", "head", "acts", "act_head", "mark"])


def _carry(changes):
    """Adds the changes to the holdings, making those that are new."""
    locations, parts = {key[0].pk for key in changes}, {key[1].pk for key in changes}
    rows = Holding.objects.filter(location__in=locations, part__in=parts)
    there = {(row.location_id, row.part_id, row.condition): row for row in rows}
    changed, fresh = [], []
    for (location, part, condition), change in changes.items():
        row = there.get((location.pk, part.pk, str(condition)))
        if row is None:
            fresh.append(Holding(location=location, part=part, condition=condition, quantity=change))
        elif change:
            row.quantity += change
            changed.append(row)
    Holding.objects.bulk_update(changed, ["quantity"], batch_size=200)
    Holding.objects.bulk_create(fresh)
