"""Gear lent and got back: who has it and until when is written beside the act.

Takes a store and lines, or a loan and what became of its pieces; gives the Act. What came back is sound or to mend,
what never will is lost. No more comes back than is out.
"""

from dataclasses import dataclass, fields

from django.db import transaction

from inventory.errors import (
    BackBeforeLent,
    DueBeforeLent,
    HeldBack,
    MoreThanLent,
    NoBorrower,
    NothingGiven,
    NotLent,
    NotWhole,
    Refused,
    UnknownCondition,
    UnknownPart,
    refuse,
)
from inventory.gear import Condition, Reason
from inventory.ledger.lines import checked, condition_of, part_of, parts_by_code, whole
from inventory.ledger.posting import Entry, post, turned
from inventory.ledger.rules import store
from inventory.loans import out_of
from inventory.locations import outside
from inventory.models import Loan, LoanBack, Location, Part

LONGEST = Loan._meta.get_field("to").max_length or 0
BACK = {
    "sound": (Condition.SOUND, Reason.RETURNED),
    "to_mend": (Condition.TO_MEND, Reason.RETURNED),
}


def lend(*, source, to, lines, day, who, key, due_on=None, found_allowed=False, note=""):
    """Pieces of a store go to a person, due back on a day or open-ended. Held-back gear is never lent."""
    to = " ".join(str(to).split())

    def entries():
        here, away = store(source), outside(Location.Kind.LENT)
        if not 1 <= len(to) <= LONGEST:
            raise NoBorrower(longest=LONGEST)
        if due_on is not None and due_on < day:
            raise DueBeforeLent(due_on=due_on, day=day)
        told = checked(lines, act="lend")
        held = [line for line in told if line.condition == Condition.HELD]
        refuse(HeldBack(part=line.part, act="lent", location=here) for line in held)
        for line in told:
            yield Entry(
                part=line.part,
                quantity=line.quantity,
                condition=line.condition,
                source=here,
                target=away,
                reason=Reason.LENT,
            )

    with transaction.atomic():
        act = post("lend", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)
        Loan.objects.get_or_create(act=act, defaults={"to": to, "due_on": due_on})
    return act


@dataclass(frozen=True, kw_only=True)
class Return:
    """What became of one part of a loan; `condition` is how it was lent. Never negative, not all zero."""

    part: Part | str
    condition: Condition = Condition.SOUND
    sound: int = 0
    to_mend: int = 0
    lost: int = 0


def take_back(*, loan, into, returns, day, who, key, note=""):
    """Pieces of a loan come back into a store, sound or to mend, or are given up for lost."""

    def entries():
        current = Loan.objects.select_related("act").get(pk=loan.pk)
        there = store(into)
        _refuse_closed(current, day)
        told = _checked(current, returns, day)
        return [entry for part, was, counts in told for entry in _come_back(part, was, counts, there)]

    with transaction.atomic():
        act = post("get back", entries, day=day, who=who, key=key, note=note)
        LoanBack.objects.get_or_create(act=act, defaults={"loan": loan})
    return act


def _refuse_closed(loan, day):
    if type(loan.act).objects.filter(reverses=loan.act).exists():
        raise NotLent(to=loan.to)
    if day < loan.act.day:
        raise BackBeforeLent(to=loan.to, lent_on=loan.act.day, day=day)


def _checked(loan, returns, day):
    catalogue, out = parts_by_code(), out_of(loan)
    problems: list[Refused] = []
    told = []
    names = [field.name for field in fields(Return) if field.name not in ("part", "condition")]
    for back in returns:
        try:
            part, was = part_of(back.part, catalogue), condition_of(back.part, back.condition)
            counts = {name: whole(part, getattr(back, name), lowest=0) for name in names}
        except (UnknownPart, NotWhole, UnknownCondition) as problem:
            problems.append(problem)
            continue
        wanted, there = sum(counts.values()), out.get((part, was), 0)
        out[part, was] = there - wanted
        if wanted > there:
            problems.append(MoreThanLent(to=loan.to, out=there, part=part, day=day, wanted=wanted))
        elif wanted:
            told.append((part, was, counts))
    refuse(problems)
    if not told:
        raise NothingGiven(act="get back")
    return told


def _come_back(part, was, counts, there):
    lent, entries = outside(Location.Kind.LENT), []
    for name, (becomes, reason) in BACK.items():
        if counts[name]:
            entries += turned(
                part=part,
                quantity=counts[name],
                source=lent,
                target=there,
                was=was,
                becomes=becomes,
                reason=reason,
            )
    if counts["lost"]:
        away = outside(Location.Kind.LOST)
        entries.append(
            Entry(
                part=part,
                quantity=counts["lost"],
                condition=was,
                source=lent,
                target=away,
                reason=Reason.LOST,
            )
        )
    return entries
