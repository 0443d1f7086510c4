"""The colonies of a sheet with the gear they stand in, and what lies in stores, into the books.

Takes records, yards by code, day and who; writes through apiary.colonies and the ledger, inside the caller's
transaction. A colony the books know is left as it is; a store with books is corrected to the count told.
"""

from apiary import colonies
from apiary.models import Colony, HiveSet
from inventory import ledger
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from inventory.loading.changes import CHANGED, NEW, SAME
from inventory.loading.known import is_box, is_honey_comb
from inventory.models import GearSet, Movement, Part
from inventory.stock import on_hand


def post_colonies(rows, yards, changes, *, day, who):
    """Starts those that are new, mothers first; gives (colony, lines) of the gear each stands in."""
    sets = HiveSet.objects.in_bulk(field_name="code")
    there = {colony.tag: colony for colony in Colony.objects.select_related("yard", "hive_set")}
    gear_of, began = _gear_of_sets(), start_days(rows, day)
    stocks = []
    for row in mothers_first(rows):
        if row.tag in there:
            changes.say("colonies", row.tag, SAME, _differences(row, there[row.tag], yards, sets), at=row.row)
            continue
        there[row.tag] = colony = colonies.start(
            tag=row.tag,
            yard=yards[row.yard],
            hive_set=sets[row.hive_set],
            day=began[row.tag],
            who=who,
            origin=row.origin,
            mother=there.get(row.mother),
            strength=row.strength,
        )
        lines = _lines_of(row, sets[row.hive_set], gear_of)
        detail = f"{yards[row.yard]}, {sets[row.hive_set]}"
        detail += f", {row.supers} {row.super_depth} supers" if row.supers else ""
        detail = detail if lines else f"{detail}; no gear set says what it stands in"
        changes.say("colonies", row.tag, NEW, detail, at=row.row)
        if lines:
            stocks.append((colony, lines))
    return stocks


def start_days(rows, day):
    """Tag -> day the colony began: as told, else the day of loading, but never after a daughter began."""
    days = {row.tag: row.started_on or day for row in rows}
    untold = {row.tag for row in rows if row.started_on is None}
    for row in reversed(mothers_first(rows)):
        if row.mother in untold:
            days[row.mother] = min(days[row.mother], days[row.tag])
    return days


def mothers_first(rows):
    """The rows in an order in which no daughter stands before her mother."""
    waiting, ordered, done = list(rows), [], set()
    tags = {row.tag for row in rows}
    while waiting:
        ready = [row for row in waiting if row.mother not in tags or row.mother in done]
        if not ready:
            raise ValueError("mothers go round in a circle")  # reading.py refuses such a sheet
        ordered += ready
        done |= {row.tag for row in ready}
        waiting = [row for row in waiting if row.tag not in done]
    return ordered


def _differences(row, colony, yards, sets):
    """A word where sheet and books tell a living colony differently: her page is the place to change that."""
    words = []
    if colony.yard != yards[row.yard]:
        words.append(f"stands in {colony.yard}, not {yards[row.yard]}")
    if colony.hive_set != sets[row.hive_set]:
        words.append(f"stands in {colony.hive_set}, not {sets[row.hive_set]}")
    if colony.strength != row.strength:
        words.append(f"is {colony.strength}, not {row.strength}")
    return f"by the books it {' and '.join(words)}: left so, book what happened instead" if words else ""


def _gear_of_sets():
    """Hive set code -> {part code: pieces}."""
    filled = GearSet.objects.exclude(hive_set="").prefetch_related("lines__part")
    return {one.hive_set: {line.part.code: line.quantity for line in one.lines.all()} for one in filled}


def _lines_of(row, hive_set, gear_of):
    pieces = dict(gear_of.get(hive_set.code, {}))
    if row.supers:
        for part, quantity in super_pieces(row.super_depth, hive_set.width).items():
            pieces[part] = pieces.get(part, 0) + row.supers * quantity
    return [Line(part, quantity) for part, quantity in pieces.items()]


def super_pieces(depth, width):
    """{part code: pieces} of one super on a colony: its box, and drawn combs from wall to wall."""
    parts = list(Part.objects.filter(depth=depth))
    box = next(part for part in parts if is_box(part) and part.width == width)
    comb = next(part for part in parts if is_honey_comb(part))
    return {box.code: 1, comb.code: width}


def post_gear(rows, yards, stocks, changes, *, day, who, key):
    """Opens stores without books and colonies, in one act; corrects stores that have books, an act each."""
    by_yard: dict[str, list] = {}
    for row in rows:
        by_yard.setdefault(row.yard, []).append(row)
    names = dict(Part.objects.values_list("code", "name"))
    opened = list(stocks)
    for code, told in by_yard.items():
        yard = yards[code]
        if _has_books(yard):
            _count(yard, told, names, changes, day=day, who=who, key=f"{key}-{yard.pk}")
            continue
        for row in told:
            changes.say("gear", _named(yard, row, names), NEW, str(row.quantity), at=row.row)
        lines = [_line(row) for row in told if row.quantity]
        opened += [(yard, lines)] if lines else []
    if opened:
        ledger.open_stocks(stocks=opened, day=day, who=who, key=key, note="from a sheet")


def _has_books(yard):
    return (
        Movement.objects.filter(source__yard=yard).exists()
        or Movement.objects.filter(target__yard=yard).exists()
    )


def _count(yard, told, names, changes, *, day, who, key):
    booked = on_hand(yard, as_of=day)
    differs = False
    for row in told:
        was = booked.get(Gear(part=row.part, condition=Condition(row.condition)), 0)
        differs = differs or was != row.quantity
        word = SAME if was == row.quantity else CHANGED
        detail = "" if word == SAME else f"the book has {was}, corrected to the {row.quantity} told"
        changes.say("gear", _named(yard, row, names), word, detail, at=row.row)
    if differs:
        lines = [_line(row) for row in told]
        ledger.correct(location=yard, counted=lines, day=day, who=who, key=key, note="from a sheet")


def _line(row):
    return Line(row.part, row.quantity, Condition(row.condition))


def _named(yard, row, names):
    condition = "" if row.condition == Condition.SOUND else f", {row.condition}"
    return f"{yard}: {names[row.part]}{condition}"
