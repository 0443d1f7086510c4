"""The books in money: reads movements, prices paid and told prices; gives the Posted lines of the moving average.

Reads all of the books up to a day, so that what was carried over is right; only movements that cross the border of
one's own are read. A mistake reversed as of its own day never was; one reversed later counts until that day.
Gear lent is still one's own. Changes nothing.
"""

from collections import Counter, defaultdict
from dataclasses import dataclass

from django.db.models import Q

from inventory.gear import Comb, Kind, Reason
from inventory.models import Act, Location, Movement, Part, Recipe, ToldPrice, ToldRest, ValueBasis
from inventory.receipts import receipts_of
from inventory.value import Came, Left, Made, Passed, Rest, carry, priced

OWN = (*Location.INSIDE, Location.Kind.LENT)
LEFT = {
    Location.Kind.SCRAP: "scrapped",
    Location.Kind.BURNT: "burnt",
    Location.Kind.LOST: "lost",
    Location.Kind.SOLD: "sold",
    Location.Kind.USED: "used up",
}
RECEIVED, OPENING, BACK, BROKEN = "received", "opening stock", "brought back", "broken on arrival"
MORE, LESS, UNDONE = "found or counted more", "counted less", "taken back as a mistake"
ALIKE = {Reason.DRAWN: "drawn by bees"}
ASSEMBLED = "assembled"
NO_WEAR = {Kind.FEED, Kind.CONSUMABLE, Kind.FOUNDATION}


@dataclass(frozen=True, kw_only=True)
class Row:
    """A movement that crosses the border of one's own, as far as value goes."""

    pk: int
    day: object
    act: int
    part: int
    quantity: int
    source: str
    target: str
    reason: str
    undoes: int | None


def posted_lines(*, last=None):
    """Posted lines of the whole books up to a day, parts by id as text."""
    worth = prices()
    return carry(events(worth, last=last), worth)


def pools(*, last=None, without=None):
    """{part's id: (pieces, cents)} on the evening of a day; what an act `without` wrote off counts as still there."""
    left_out = None if without is None else str(without.pk)
    sums: dict[str, tuple[int, int]] = defaultdict(lambda: (0, 0))
    for line in posted_lines(last=last):
        if line.key != left_out:
            pieces, cents = sums[line.part]
            sums[line.part] = (pieces + line.pieces, cents + line.cents)
    return {int(part): pool for part, pool in sums.items()}


def prices():
    """{part's id as text: cents a piece of opening or found stock}: told, else the list price."""
    listed = Part.objects.values_list("pk", "list_price_cents")
    told = dict(ToldPrice.objects.values_list("part_id", "cents"))
    return {str(part): told.get(part, cents) for part, cents in listed}


def basis():
    """What was agreed with the accountant; where nothing was told, as the row comes."""
    return ValueBasis.objects.filter(pk=1).first() or ValueBasis(pk=1)


def lives():
    """{part's id as text: years} of gear in service: no feed, no consumables, nothing waiting to be put together."""
    rows = Part.objects.exclude(kind__in=NO_WEAR).exclude(flat=True).exclude(comb=Comb.BARE)
    return {str(part): years for part, years in rows.values_list("pk", "years_of_life")}


def rests():
    """The rest values told: cents a piece by part's id as text, a share of cost for all others."""
    told = {str(part): cents for part, cents in ToldRest.objects.values_list("part_id", "cents")}
    return Rest(cents=told, percent=basis().rest_percent)


def events(worth, *, last=None):
    """What carry() is told, from the books up to a day."""
    skipped, undoing = _reversals()
    rows = _rows(last, skipped, undoing)
    paid = _paid(skipped)
    benched = [row for row in rows if Location.Kind.BENCH in (row.source, row.target)]
    counted = [row for row in rows if _is_count(row)]
    passed = [row for row in rows if row.source and row.target]
    apart = {id(row) for row in (*benched, *counted, *passed)}
    plain = [row for row in rows if id(row) not in apart]
    return [*_plain(plain, paid, worth), *_counted(counted), *_passed(passed, paid), *_made(benched)]


def _reversals():
    """(acts that never were: reversed as of their own day, and their reversals; {reversal: act} of later ones)."""
    skipped, undoing = set(), {}
    pairs = Act.objects.filter(reverses__isnull=False).values_list(
        "pk", "day", "reverses_id", "reverses__day"
    )
    for back, back_day, act, day in pairs:
        if back_day == day:
            skipped |= {back, act}
        else:
            undoing[back] = act
    return skipped, undoing


def _rows(last, skipped, undoing):
    kinds = dict(Location.objects.exclude(kind__in=OWN).values_list("pk", "kind"))
    found = Movement.objects.filter(Q(source__in=kinds) | Q(target__in=kinds)).order_by("day", "id")
    if last is not None:
        found = found.filter(day__lte=last)
    names = ("pk", "day", "act_id", "part_id", "quantity", "source_id", "target_id", "reason")
    rows = []
    for pk, day, act, part, quantity, source, target, reason in found.values_list(*names).iterator():
        if act not in skipped:
            line = {"pk": pk, "day": day, "act": act, "part": part, "quantity": quantity, "reason": reason}
            ends = _halves(kinds.get(source, ""), kinds.get(target, ""))
            rows += [Row(source=a, target=b, undoes=undoing.get(act), **line) for a, b in ends]
    return rows


def _halves(source, target):
    """From the bench straight out, or from outside onto it: as if over one's own store."""
    if source and target and Location.Kind.BENCH in (source, target):
        return [(source, ""), ("", target)]
    return [(source, target)]


def _paid(skipped):
    """{movement's id: cents} of all receipts."""
    cents: dict[int, int] = {}
    for receipt in receipts_of(without=skipped):
        cents.update({int(key): paid for key, paid in priced(receipt.delivery).items()})
    return cents


def _is_count(row):
    """A count's difference or found gear: all of a day and part together are one difference."""
    return Location.Kind.CORRECTION in (row.source, row.target) and row.reason != Reason.OPENING


def _plain(rows, paid, worth):
    """One event for the rows of an act alike in part and ends."""
    sums: dict[tuple, list] = defaultdict(lambda: [0, 0])
    for row in rows:
        total = sums[row.day, row.act, row.undoes, str(row.part), row.source, row.target]
        total[0] += row.quantity
        total[1] += paid.get(row.pk, 0)
    for (day, act, undoes, part, source, target), (pieces, cents) in sums.items():
        line = {"day": day, "part": part, "pieces": pieces, "key": str(act)}
        back = str(undoes) if undoes else ""
        if target in LEFT and not (undoes and target == Location.Kind.SOLD):
            yield Left(why=LEFT[target], **line)
        elif target:
            yield Left(why=UNDONE, undoes=back, **line)
        elif source == Location.Kind.SUPPLIER:
            yield Came(why=RECEIVED, cents=cents, **line)
        elif source == Location.Kind.CORRECTION:
            yield Came(why=OPENING, cents=pieces * worth[part], **line)
        elif undoes:
            yield Came(why=UNDONE, undoes=back, **line)
        else:
            yield Came(why=BACK, **line)


def _counted(rows):
    net: Counter[tuple] = Counter()
    for row in rows:
        net[row.day, str(row.part)] += row.quantity if row.source else -row.quantity
    for (day, part), pieces in net.items():
        if pieces > 0:
            yield Came(day=day, part=part, pieces=pieces, why=MORE, key=f"count {day}")
        elif pieces < 0:
            yield Left(day=day, part=part, pieces=-pieces, why=LESS, key=f"count {day}")


def _passed(rows, paid):
    """Broken on arrival and thrown away; taken back later it is the same the other way round."""
    by_act: Counter[tuple] = Counter()
    for row in rows:
        line = {"day": row.day, "part": str(row.part), "pieces": row.quantity, "key": f"broken {row.act}"}
        if row.source == Location.Kind.SUPPLIER:
            by_act[row.act, row.part] += paid.get(row.pk, 0)
            yield Passed(cents=paid.get(row.pk, 0), why=RECEIVED, gone=BROKEN, **line)
        elif row.target == Location.Kind.SUPPLIER:
            cents = by_act[row.undoes, row.part]
            by_act[row.undoes, row.part] = 0
            yield Passed(cents=cents, why=UNDONE, gone=UNDONE, **line)


def _made(rows):
    """The bench, act by act: what went in and what came out of it; a change of condition makes nothing."""
    depths = dict(Part.objects.values_list("pk", "depth"))
    net: dict[tuple, Counter] = defaultdict(Counter)
    for row in rows:
        depth = depths[row.part] if row.reason == Reason.DRAWN else ""
        ends = net[row.day, row.act, row.undoes, row.reason, depth]
        ends[row.part] += row.quantity if row.target == "" else -row.quantity
    minutes, rate = _minutes(), basis().work_cents_per_hour
    for (day, act, undoes, reason, depth), ends in net.items():
        takes = tuple((str(part), -n) for part, n in sorted(ends.items()) if n < 0)
        makes = tuple((str(part), n) for part, n in sorted(ends.items()) if n > 0)
        work = 0 if undoes or reason != Reason.ASSEMBLED else sum(minutes.get(p, 0) * n for p, n in makes)
        why, key = ALIKE.get(reason, ASSEMBLED), f"{act} {reason} {depth}"
        if takes and makes:
            yield Made(
                day=day, takes=takes, makes=makes, why=why, key=key, work_cents=round(work * rate / 60)
            )
        for part, pieces in makes if not takes else ():
            yield Came(day=day, part=part, pieces=pieces, why=why, key=key)
        for part, pieces in takes if not makes else ():
            yield Left(day=day, part=part, pieces=pieces, why=why, key=key)


def _minutes():
    """{part's id as text: minutes of work a piece}, of parts that a recipe alone makes."""
    result = {}
    for recipe in Recipe.objects.prefetch_related("lines"):
        makes = [line for line in recipe.lines.all() if line.makes]
        if len(makes) == 1:
            result[str(makes[0].part_id)] = recipe.minutes / makes[0].makes
    return result
