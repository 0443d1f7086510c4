"""Why held-back gear is held back: the lots that lie at each place, each with its reason, by all of the books.

Takes a place and a part, or none for all; gives lots. Lots follow the movements: what was burnt, moved or scrapped
takes the gravest first, a release takes the lots it was written for. Pieces that lay together under several reasons
cannot be told apart: what stays behind remembers the cases it lay beside. Tells hives under an open case too.
Writes nothing.
"""

from dataclasses import dataclass

from apiary.errors import told
from apiary.rights import KEEPER, role_of
from inventory.deadouts.refusals import KeeperUndoes
from inventory.gear import Condition, Reason
from inventory.locations import location_of
from inventory.models import Act, Hold, Holding, InspectorWord, Location, Movement

GRAVITY = {reason: number for number, reason in enumerate(Hold.Reason.values)}
OF_A_CASE = (Hold.Reason.FOULBROOD, Hold.Reason.REACHED)


@dataclass(frozen=True, kw_only=True)
class Held:
    """What a movement's pieces are held back for; `deadout` where it is not that of the act."""

    reason: str
    why: str
    deadout: object = None


@dataclass
class Lot:
    """Pieces held back for one reason. `deadout` is None where they were set aside by hand."""

    quantity: int
    reason: str
    why: str
    deadout: object = None
    beside: frozenset = frozenset()

    @property
    def gravity(self):
        return GRAVITY[self.reason]

    @property
    def cases(self):
        """Deadouts of which these may be pieces, foulbrood suspected."""
        own = {self.deadout} if self.reason == Hold.Reason.FOULBROOD else set()
        return self.beside | own


def held_lots(*, part=None, location=None):
    """{(location's key, part's key): [Lot, the gravest first]} of all that is held back now."""
    parts = [part.pk] if part is not None else _parts_held()
    lots: dict[tuple, list[Lot]] = {}
    for row in _held_movements(parts):
        leaving = _leave(lots, row)
        if row.target.is_inside:
            _arrive(lots.setdefault((row.target_id, row.part_id), []), row, leaving)
    if location is not None:
        place = location_of(location).pk
        lots = {key: found for key, found in lots.items() if key[0] == place}
    return {key: sorted(found, key=lambda lot: -lot.gravity) for key, found in lots.items() if found}


def lots_at(location, part):
    """The lots of one part at one place, the gravest first."""
    place = location_of(location)
    return held_lots(part=part, location=place).get((place.pk, part.pk), [])


def why_held(location, part):
    """In words why a part is held back at a place; without a place, wherever it is."""
    lots = lots_at(location, part) if location is not None else _all_lots(part)
    words = list(dict.fromkeys(lot.why for lot in lots))
    return "; ".join(words[:3]) or "disease is suspected"


def case_of(deadout):
    """suspected, confirmed or cleared by the inspector's words that stand; empty where no foulbrood is suspected."""
    verdicts = set(deadout.words.standing().values_list("verdict", flat=True))
    if InspectorWord.Verdict.CONFIRMED in verdicts:
        return "confirmed"
    if not deadout.suspected:
        return ""
    return "cleared" if InspectorWord.Verdict.CLEARED in verdicts else "suspected"


def open_cases(places):
    """{place's key: Held} of hives that a case still open reached: what comes off them is held back for it.

    A case ends with the word that clears it; at one hive once all it held back there was released on a written word.
    """
    rows = Hold.objects.filter(
        reason__in=OF_A_CASE, movement__target__in=places, movement__condition=Condition.HELD
    )
    rows = rows.filter(
        movement__target__kind=Location.Kind.COLONY,
        movement__act__reversed_by__isnull=True,
        deadout__act__reversed_by__isnull=True,
    )
    cases, found = {}, {}
    for row in rows.select_related("deadout__colony", "movement__target").order_by("id"):
        place, deadout = row.movement.target, row.deadout
        if (place.pk, deadout) not in cases:
            is_open = case_of(deadout) in ("suspected", "confirmed")
            cases[place.pk, deadout] = is_open and not _let_go(place, deadout)
        if cases[place.pk, deadout]:
            found[place.pk] = Held(reason=Hold.Reason.REACHED, why=row.why, deadout=deadout)
    return found


def _let_go(place, deadout):
    """Something was released there on a word about this case, and nothing is held for it there any more."""
    words = deadout.words.standing().filter(act__movements__source=place)
    if not words.filter(act__movements__reason=Reason.RELEASED).exists():
        return False
    lots = (lot for found in held_lots(location=place).values() for lot in found)
    return not any(lot.deadout == deadout for lot in lots)


def refuse_loosening(act, who):
    """KeeperUndoes where undoing an act would let held gear go or unsay an inspector's word, and it is not the keeper."""
    binding = (
        Hold.objects.filter(movement__act=act).exists() or InspectorWord.objects.filter(act=act).exists()
    )
    if binding and who is not None and role_of(who) != KEEPER:
        raise KeeperUndoes(act=act)


def _all_lots(part):
    lots = [lot for found in held_lots(part=part).values() for lot in found]
    return sorted(lots, key=lambda lot: -lot.gravity)


def _parts_held():
    held = Holding.objects.filter(condition=Condition.HELD, quantity__gt=0)
    return list(held.order_by().values_list("part", flat=True).distinct())


def _held_movements(parts):
    undone = Act.objects.filter(reversed_by__isnull=False)
    rows = Movement.objects.filter(part__in=parts, condition=Condition.HELD, act__reverses__isnull=True)
    ends = ("source", "target", "act", "hold__deadout__colony", "act__inspector_word")
    return rows.exclude(act__in=undone).select_related(*ends).order_by("day", "id")


def _leave(lots, row):
    """Takes the moved pieces from the lots at the source; gives them as lots. Nothing where they come from outside."""
    there = lots.get((row.source_id, row.part_id), [])
    there.sort(key=_order_of(row))
    cases = frozenset().union(*(lot.cases for lot in there))
    left, taken = row.quantity, []
    while left and there:
        lot = there[0]
        quantity = min(left, lot.quantity)
        taken.append(Lot(quantity, lot.reason, lot.why, lot.deadout, lot.beside))
        lot.quantity -= quantity
        left -= quantity
        if not lot.quantity:
            there.pop(0)
    if there and row.reason not in (Reason.HELD, Reason.RELEASED):
        for lot in (*there, *taken):
            lot.beside |= cases
    return taken


def _order_of(row):
    """Which lots go first: those a release was written for, the lightest where graver reasons take their place."""
    if row.reason == Reason.RELEASED:
        word = getattr(row.act, "inspector_word", None)
        case = word.deadout_id if word is not None else None
        return lambda lot: (_case(lot) != case, lot.gravity)
    if row.reason == Reason.HELD:
        return lambda lot: lot.gravity
    return lambda lot: -lot.gravity


def _case(lot):
    return lot.deadout.pk if lot.deadout is not None else None


def _arrive(there, row, leaving):
    hold = getattr(row, "hold", None)
    if hold is not None:
        there.append(Lot(row.quantity, hold.reason, hold.why, hold.deadout))
        return
    there.extend(leaving)
    rest = row.quantity - sum(lot.quantity for lot in leaving)
    if rest:
        there.append(Lot(rest, Hold.Reason.HAND, f"set aside by hand on {told(row.day)}"))
