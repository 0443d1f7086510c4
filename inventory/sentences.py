"""What an act did, in one sentence: for the message after it and for the books.

Takes an act and its movements; gives words. Changes nothing.
"""

from inventory import bee_sentences
from inventory.deadouts import telling
from inventory.gear import Comb, Condition, Kind, Reason
from inventory.models import Location
from inventory.pieces import many
from inventory.syrup import RATIONS

HEADS = {
    "opening stock": "Opening stock",
    "load sheet": "Sheet loaded",
    "receive": "Received",
    "move": "Moved",
    "haul": "Hauled",
    "lend": "Lent",
    "get back": "Got back",
    "feed": "Fed",
    "place": "Placed on a colony",
    "take off": "Taken off a colony",
    "assemble": "Assembled",
    "draw": "Comb drawn",
    "salvage": "Hive salvaged",
    "scrap": "Scrapped",
    "burn": "Burnt",
    "use": "Used up",
    "mend": "Mended",
    "mark": "Set aside",
    "correct": "Counted",
    "reverse": "Reversed",
    **bee_sentences.HEADS,
    **telling.HEADS,
    "super up": "Supered up",
    "pull": "Supers pulled",
    "brood box": "Brood boxes added",
}


def head_of(act):
    """The act's name as a head."""
    return HEADS.get(act.name, act.name.capitalize())


def amount(rows):
    """12 pieces and 50 lb: movements summed by the unit they are counted in."""
    sums: dict[str, int] = {}
    for row in rows:
        sums[row.part.unit] = sums.get(row.part.unit, 0) + row.quantity
    words = [f"{number:,} {many(unit, number)}" for unit, number in sums.items()]
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words) or "nothing"


def sentence_of(act):
    """What happened, with places and amounts; what was booked as found is added."""
    rows = list(
        act.movements.select_related(
            "part", "hold", "source__yard", "source__colony", "target__yard", "target__colony"
        ).order_by("id")
    )
    rows, held = telling.come_off(act, rows)
    told = TELLERS.get(act.name, _plain)(act, [row for row in rows if not row.found])
    told += held
    found = [row for row in rows if row.found]
    if found and act.name != "reverse":
        told += f" {amount(found).capitalize()} beyond the book booked as found."
    return told


def _carried(verb):
    def tell(_act, rows):
        return f"{verb} {amount(rows)} from {rows[0].source} to {rows[0].target}."

    return tell


def _hauled(_act, rows):
    drops: dict = {}
    for row in rows:
        drops.setdefault(row.target, []).append(row)
    words = [f"{amount(part)} to {target}" for target, part in drops.items()]
    return f"Hauled from {rows[0].source}: {', '.join(words)}."


def _lent(act, rows):
    loan = act.loan
    until = f", due back {loan.due_on:%-d %B %Y}" if loan.due_on else ", with no day to be back"
    return f"Lent {amount(rows)} of {rows[0].source} to {loan.to}{until}."


def _came_back(act, rows):
    kept = [row for row in rows if row.target.is_inside]
    mend = [row for row in kept if row.condition == Condition.TO_MEND]
    lost = [row for row in rows if row.target.kind == Location.Kind.LOST]
    words = [f"{amount(kept)} back in the store of {kept[0].target}"] if kept else []
    words += [f"{amount(mend)} of it to mend"] if mend else []
    words += [f"{amount(lost)} given up for lost"] if lost else []
    return f"From {act.loan_back.loan.to}: {', '.join(words)}."


def _fed(act, rows):
    given = list(act.feedings.all())
    ration = RATIONS[given[0].feed]
    whole = ration.amount(sum(row.quantity for row in given))
    colonies = "1 colony" if len(given) == 1 else f"{len(given)} colonies"
    return f"Fed {colonies} {whole} of {ration.words.lower()}: {amount(rows)} of {rows[0].part} of {rows[0].source}."


def _drawn(_act, rows):
    combs = [row for row in rows if row.target.is_inside]
    hives = len({row.target_id for row in combs})
    return f"Comb drawn: {amount(combs)} on {'1 colony' if hives == 1 else f'{hives} colonies'}."


def _gone(verb):
    def tell(_act, rows):
        return f"{verb} {amount(rows)} of {rows[0].source}."

    return tell


def _received(_act, rows):
    kept = [row for row in rows if row.target.is_inside]
    broken = [row for row in kept if row.condition != Condition.SOUND]
    scrapped = [row for row in rows if not row.target.is_inside]
    words = f"Received {amount(rows)}" + (f" into the store of {kept[0].target}" if kept else "")
    words += f", of them {amount(broken)} to mend" if broken else ""
    return words + (f", {amount(scrapped)} scrapped." if scrapped else ".")


def _assembled(_act, rows):
    made = [row for row in rows if row.target.is_inside]
    names = ", ".join(f"{row.quantity:,} × {row.part}" for row in made)
    return f"Assembled {names} at {made[0].target}."


def _salvaged(_act, rows):
    kept = [row for row in rows if row.target.kind == Location.Kind.STORE]
    held = [row for row in kept if row.condition == Condition.HELD]
    words = [f"{amount(kept)} to the store of {kept[0].target}"] if kept else []
    words += [f"{amount(held)} of it held back"] if held else []
    for kind in (Location.Kind.SCRAP, Location.Kind.BURNT, Location.Kind.LOST):
        gone = [row for row in rows if row.target.kind == kind]
        words += (
            [f"{amount(gone)} {'scrapped' if kind == Location.Kind.SCRAP else kind.value}"] if gone else []
        )
    colony = next(str(row.source) for row in rows if row.source.kind == Location.Kind.COLONY)
    return f"Salvaged {colony}: {', '.join(words)}."


def _turned(verb):
    def tell(_act, rows):
        after = [row for row in rows if row.target.is_inside]
        becomes = f" as {after[0].condition}" if after[0].reason != Reason.MENDED else ""
        return f"{verb} {amount(after)} at {after[0].target}{becomes}."

    return tell


def _counted(_act, rows):
    if not rows:
        return "Counted: the book was right."
    more = [row for row in rows if row.target.is_inside]
    less = [row for row in rows if row.source.is_inside]
    place = (more[0].target if more else less[0].source) if rows else ""
    words = [f"{amount(more)} more"] if more else []
    words += [f"{amount(less)} missing"] if less else []
    return f"Counted {place}: {', '.join(words)}."


def _boxes_told(rows, end):
    """4 boxes, and the colonies they stood or stand on by their number: for acts over a whole yard."""
    boxes = sum(row.quantity for row in rows if row.part.kind == Kind.BOX)
    hives = {getattr(row, f"{end}_id") for row in rows if getattr(row, end).kind == Location.Kind.COLONY}
    return boxes, f"{len(hives)} {'colony' if len(hives) == 1 else 'colonies'}"


def _boxes_on(word, verb):
    def tell(_act, rows):
        boxes, hives = _boxes_told(rows, "target")
        frames = [row for row in rows if row.part.kind == Kind.FRAME]
        combs = sum(row.quantity for row in frames if row.part.comb == Comb.DRAWN)
        foundation = sum(row.quantity for row in frames) - combs
        inside = " and ".join(
            f"{number:,} {what}"
            for number, what in ((combs, "drawn combs"), (foundation, "frames with foundation"))
            if number
        )
        what = word if boxes == 1 else {"brood box": "brood boxes"}.get(word, f"{word}s")
        words = f"{verb} {hives} with {boxes} {what}" + (f", {inside}" if inside else "")
        return f"{words}, from the store of {rows[0].source}."

    return tell


def _pulled(_act, rows):
    off = [row for row in rows if row.target.kind == Location.Kind.STORE]
    boxes, hives = _boxes_told(off, "source")
    drawn = sum(row.quantity for row in rows if row.reason == Reason.DRAWN and row.target.is_inside)
    words = (
        f"Pulled {boxes} {'super' if boxes == 1 else 'supers'} off {hives} into the store of {off[0].target}"
    )
    return words + (f", {drawn:,} frames drawn out by now." if drawn else ".")


def _reversed(act, _rows):
    return f"Reversed: {head_of(act.reverses).lower()}, of {act.reverses.day:%-d %B %Y}."


def _plain(act, rows):
    return f"{head_of(act)}: {amount(rows)}."


TELLERS = {
    "move": _carried("Moved"),
    "haul": _hauled,
    "lend": _lent,
    "get back": _came_back,
    "feed": _fed,
    "draw": _drawn,
    "place": _carried("Placed"),
    "take off": _carried("Took"),
    "receive": _received,
    "assemble": _assembled,
    "salvage": _salvaged,
    "scrap": _gone("Scrapped"),
    "burn": _gone("Burnt"),
    "use": _gone("Used up"),
    "mend": _turned("Mended"),
    "mark": _turned("Set aside"),
    "correct": _counted,
    "reverse": _reversed,
    **bee_sentences.TELLERS,
    **telling.TELLERS,
    "super up": _boxes_on("super", "Supered up"),
    "pull": _pulled,
    "brood box": _boxes_on("brood box", "Built up"),
}
