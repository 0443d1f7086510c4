"""A deadout worked: the colony's end and its hive taken apart, as one act in one transaction.

Takes what was found of each piece and where it goes, why the colony died and whether the brood was looked at; gives
the Act. What the book has and nobody told of is booked as lost. Where foulbrood is suspected, all that the suspicion
reaches is held back in the same act. It is then dated the day it is booked, as what lies where is only known today;
so is that of a hive which an open case has reached, whose gear is held since.
"""

from django.db import transaction
from django.utils import timezone

from apiary import colonies
from apiary.errors import UnknownWord, refuse, told
from apiary.models import Colony
from inventory.deadouts.fates import CAUSES, HIVE_GEAR, KEPT_APART, Seen, reason_to_hold
from inventory.deadouts.holding import Held, as_steps, hold_steps, write_holds
from inventory.deadouts.holds import open_cases
from inventory.deadouts.reach import reach
from inventory.deadouts.refusals import (
    BroodNotSeen,
    BroodNotSpokenOf,
    FoulbroodSuspected,
    NotADeadout,
    PoisonedComb,
    WorkedAlready,
)
from inventory.gear import Condition
from inventory.ledger.posting import lock_books
from inventory.ledger.rules import colony_place, refuse_living, store
from inventory.ledger.salvage import GONE, STORED, sorted_out, told_pieces
from inventory.locations import place_of
from inventory.models import Deadout, Hold, Part
from inventory.stock import on_hand
from inventory.yardwork.whole import together

REFUSED = {"foulbrood": FoulbroodSuspected, "brood": BroodNotSeen, "pesticide": PoisonedComb}
NEITHER_HELD_NOR_BURNT = [name for name in (*STORED, *GONE) if name not in (*KEPT_APART, "lost")]


def work_deadout(
    *, colony, day, cause, brood_seen, suspected=False, into, pieces, who, key, note="", act_note=""
):
    """Ends the colony as dead where it has not ended, and takes its hive apart. Once only."""
    seen = _seen(colony, cause, brood_seen, suspected)
    colonies.refuse_future(day)
    steps = []

    def work(act_key):
        bees = _dead(colony, day, who, act_key, note)
        here = colony_place(bees)
        refuse_living(here, day)
        steps.extend(_taken_apart(bees, here, store(into), pieces, seen, (day, on)))
        if suspected:
            steps.extend(hold_steps(reach(bees, found_on=day)))
        return [step.entry for step in steps]

    with transaction.atomic():
        lock_books()
        on = timezone.localdate() if booked_today(colony, suspected=suspected) else day
        act = together("deadout", work, day=on, who=who, key=key, note=act_note, found_allowed=True)
        if not Deadout.objects.filter(act=act).exists():
            row = Deadout.objects.create(
                act=act,
                colony=colony,
                found_on=day,
                cause=cause,
                brood_seen=brood_seen,
                suspected=suspected,
                note=note,
            )
            write_holds(act, steps, row)
    return act


def booked_today(colony, *, suspected):
    """Whether its deadout is dated the day it is booked, whenever it was found."""
    here = place_of(colony)
    return bool(suspected or open_cases([here]))


def worked(colony):
    """The deadout of a colony, if it was worked; an act that was reversed does not count."""
    return Deadout.objects.standing().filter(colony=colony).first()


def _seen(colony, cause, brood_seen, suspected):
    if cause not in CAUSES:
        raise UnknownWord(word=cause, what="cause of a colony's death", choices=", ".join(CAUSES))
    if not isinstance(brood_seen, bool):
        raise BroodNotSpokenOf(colony=colony)
    return Seen(cause=cause, brood_seen=brood_seen, suspected=bool(suspected))


def _dead(colony, day, who, act_key, note):
    """The colony as it is now, ended as dead by this act where it had not ended."""
    earlier = worked(colony)
    if earlier is not None:
        raise WorkedAlready(colony=colony, found_on=earlier.found_on)
    bees = Colony.objects.get(pk=colony.pk)
    if bees.ended_on is None:
        return colonies.end(bees, why=Colony.Ended.DIED, day=day, who=who, note=note[:150], act_key=act_key)
    if bees.ended_why != Colony.Ended.DIED:
        raise NotADeadout(colony=bees, ended_why=bees.get_ended_why_display())
    return bees


def _taken_apart(bees, here, there, pieces, seen, days):
    """Steps of every piece told of, and of those the book has beyond them, as lost. `days`: found, and booked."""
    day, on = days
    rows = _with_losses(here, told_pieces(pieces), on)
    case = None if seen.suspected else open_cases([here]).get(here.pk)
    if case is not None:
        rows = [(part, was, _all_held(counts, part)) for part, was, counts in rows]
    refuse(
        REFUSED[reason](part=part, colony=bees)
        for part, _was, counts in rows
        if (reason := reason_to_hold(part.comb, seen))
        and any(counts[name] for name in NEITHER_HELD_NOR_BURNT)
    )
    steps = []
    for part, was, counts in rows:
        held = _held(bees, part, was, seen, day) if case is None else _held_for(case, was)
        steps += as_steps(sorted_out(part, was, counts, here, there), held)
    return steps


def _all_held(counts, part):
    """Of a hive under an open case all that would be stored is held back."""
    if part.kind not in HIVE_GEAR:
        return counts
    return counts | {"sound": 0, "to_mend": 0, "held": sum(counts[name] for name in STORED)}


def _held_for(case, was):
    """Pieces that were held back keep the reason they were held for."""
    return None if was == Condition.HELD else case


def _with_losses(here, rows, day):
    """The rows with what the book has more of, on the day and now, added as lost."""
    names = (*STORED, *GONE)
    found: dict[tuple, dict[str, int]] = {}
    for part, was, counts in rows:
        sums = found.setdefault((part, was), dict.fromkeys(names, 0))
        for name in names:
            sums[name] += counts[name]
    now, then = on_hand(here), on_hand(here, as_of=day)
    parts = Part.objects.in_bulk({gear.part for gear in now}, field_name="code")
    for gear, quantity in now.items():
        sums = found.setdefault((parts[gear.part], gear.condition), dict.fromkeys(names, 0))
        sums["lost"] += max(0, min(quantity, then.get(gear, 0)) - sum(sums.values()))
    return [(part, was, sums) for (part, was), sums in found.items()]


def _held(bees, part, was, seen, day):
    """What a piece of this hive is held back for; None where it keeps the reason it was held for before."""
    reason = reason_to_hold(part.comb, seen)
    if not reason and was == Condition.HELD:
        return None
    words = {
        "foulbrood": f"foulbrood suspected in {bees}, found on {told(day)}",
        "brood": f"nobody who knows foulbrood looked at the brood of {bees}, found on {told(day)}",
        "pesticide": f"comb of {bees}, killed by pesticide, found on {told(day)}",
        "": f"held back by hand from {bees}, found on {told(day)} ({seen.cause})",
    }
    return Held(reason=Hold.Reason(reason or "hand"), why=words[reason])
