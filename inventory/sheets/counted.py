"""The counts of a workbook as records: for each place the day it was counted and the pieces found there.

Takes typed rows, the names of yards and parts and the living colonies; gives records. Faults and notes go to the
findings. A row without a number was not counted and is left out; a zero is a count.
"""

from inventory.sheets.layout import COUNTED, PLACES
from inventory.sheets.names import Names, alike
from inventory.sheets.records import CountedRow, CountRow
from inventory.sheets.yards import part_of, place_of


def counts_of(place_rows, rows, names, known, findings, *, day):
    """A CountRow for each place of which something was counted."""
    places = _places(place_rows, names, known, findings, day=day)
    lines: dict[str, dict] = {code: {} for code in places}
    colonies = Names({tag: tag for tag in known.colonies})
    parts = Names(known.parts)
    for row in rows:
        if row.values.get("quantity", "") is None:
            continue
        if "quantity" in row.values and not names.by_code:
            continue
        yard = place_of(row, names, known.shed, COUNTED, findings)
        part = part_of(row, parts, COUNTED, findings)
        tag = _tag(row, colonies, findings)
        if yard and yard not in places:
            what = f"{row.values['yard']!r} does not stand on the sheet {PLACES.title}"
            findings.fault(COUNTED.title, row.cell("yard"), what, "Add it there with the day it was counted")
        elif yard and part and tag is not None and row.whole(("condition", "quantity")):
            _keep(lines[yard], row, tag, part, findings)
    counted = [(code, row) for code, row in places.items() if lines[code]]
    for _code, row in counted:
        if row.values["day"] is None:
            what = "Counted on is empty"
            findings.fault(
                PLACES.title, row.cell("day"), what, "Write the day on whose evening it was counted"
            )
    return tuple(_count(row, code, lines[code]) for code, row in counted)


def _count(row, code, lines):
    values = {"yard": code, "day": row.values["day"], "note": row.values["note"], "row": row.number}
    return CountRow(**values, lines=tuple(lines.values()))


def _places(rows, names, known, findings, *, day):
    """Yard code -> its row."""
    places: dict = {}
    for row in rows:
        yard = place_of(row, names, known.shed, PLACES, findings)
        if yard is None or not row.whole(("day", "note")):
            continue
        first = places.setdefault(yard, row)
        if first is not row:
            what = f"this place stands in row {first.number} already"
            findings.fault(
                PLACES.title, row.cell("yard"), what, "Send each of its days in a workbook of its own"
            )
        elif day and row.values["day"] and row.values["day"] > day:
            what = f"{row.values['day']} is still to come"
            findings.fault(PLACES.title, row.cell("day"), what, "Write the day it was counted")
    return places


def _tag(row, colonies, findings):
    """The colony's tag as the books spell it, empty for the store; None, and a fault, where nobody knows it."""
    text = row.values.get("tag")
    if not text:
        return text
    tag = colonies.code(text)
    if tag is None:
        remedy = colonies.suggestion(text, otherwise="Write the tag of a living colony, or leave it empty")
        findings.fault(COUNTED.title, row.cell("tag"), f"the colony {text!r} is not known", remedy)
    return tag


def _keep(lines, row, tag, part, findings):
    one = CountedRow(
        tag=tag,
        part=part,
        condition=row.values["condition"],
        quantity=row.values["quantity"],
        row=row.number,
    )
    first = lines.setdefault((alike(tag), part, one.condition), one)
    if first is not one:
        what = f"this part and condition stands in row {first.row} already"
        findings.fault(COUNTED.title, row.cell("part"), what, "Add the two counts in one row")
