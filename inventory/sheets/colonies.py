"""The colonies and the gear in stores of a workbook as records, checked against yards, sets and parts.

Takes typed rows and the names known; gives records. Faults and notes go to the findings.
"""

from collections import Counter

from inventory.sheets.layout import COLONIES, GEAR, YARDS
from inventory.sheets.names import Names, alike
from inventory.sheets.records import ColonyRow, GearRow
from inventory.sheets.yards import IN_LISTS, IN_YARDS, found, part_of, place_of, shed_code

COLONY_KEYS = [column.key for column in COLONIES.columns]


def colonies_of(rows, names, known, findings, *, day):
    tags = _tags(rows, known, findings)
    sets = Names({code: one.name for code, one in known.sets.items()})
    colonies = []
    for row in rows:
        yard = found(*(row, "yard", names, COLONIES, findings), what="the yard", otherwise=IN_YARDS)
        hive_set = found(*(row, "hive_set", sets, COLONIES, findings), what="the set", otherwise=IN_LISTS)
        sound = _sound(row, tags, known, findings, hive_set=hive_set, day=day)
        if yard and hive_set and sound and row.whole(COLONY_KEYS):
            tag, mother = row.values["tag"], row.values["mother"]
            values = {
                **row.values,
                "yard": yard,
                "hive_set": hive_set,
                "tag": tags[alike(tag)],
                "row": row.number,
            }
            colonies.append(ColonyRow(**values | {"mother": tags[alike(mother)] if mother else ""}))
    _check_lines_of_mothers(rows, findings)
    _check_ages(rows, findings)
    return tuple(colonies)


def _tags(rows, known, findings):
    """How each tag is spelled, by its form: those of the sheet, the books' living ones and those no more."""
    seen: dict[str, int] = {}
    tags = {alike(tag): tag for tag in known.ended} | {alike(tag): tag for tag in known.colonies}
    ended = {alike(tag) for tag in known.ended}
    for row in rows:
        tag = row.values.get("tag")
        if tag is None:
            continue
        first = seen.setdefault(alike(tag), row.number)
        if first != row.number:
            findings.fault(
                COLONIES.title,
                row.cell("tag"),
                f"the tag {tag!r} stands in row {first} already",
                "Give it its own tag",
            )
        elif alike(tag) in ended:
            what = f"by the books the colony {tag!r} is no more"
            findings.fault(
                COLONIES.title, row.cell("tag"), what, "Take the row out, or give the new colony a new tag"
            )
        tags.setdefault(alike(tag), tag)
    return tags


def _sound(row, tags, known, findings, *, hive_set, day):
    """True where mother, day and supers of a colony make sense."""
    before = len(findings.faults)
    mother, started_on = row.values.get("mother"), row.values.get("started_on")
    if mother and alike(mother) == alike(row.values.get("tag", "")):
        findings.fault(
            COLONIES.title, row.cell("mother"), "a colony is not its own mother", "Write the mother's tag"
        )
    elif mother and alike(mother) not in tags:
        remedy = Names({tag: tag for tag in tags.values()}).suggestion(
            mother, otherwise="Write a tag that stands on this sheet, or leave it empty"
        )
        findings.fault(COLONIES.title, row.cell("mother"), f"the mother {mother!r} is not known", remedy)
    if started_on and day and started_on > day:
        what = f"{started_on} is after {day}, the day of loading"
        findings.fault(COLONIES.title, row.cell("started_on"), what, "Write the day the colony began")
    depth = row.values.get("super_depth")
    if hive_set and row.values.get("supers") and depth:
        one = known.sets[hive_set]
        if one.is_nuc or (depth, one.width) not in known.super_boxes:
            what = f"the catalogue has no {depth} super that fits on {one.name!r}"
            findings.fault(
                COLONIES.title, row.cell("supers"), what, "Leave it empty, or pick another set or depth"
            )
    return len(findings.faults) == before


def _check_lines_of_mothers(rows, findings):
    mothers = {
        alike(row.values["tag"]): alike(row.values["mother"])
        for row in rows
        if row.values.get("tag") and row.values.get("mother")
    }
    for row in rows:
        tag = alike(row.values.get("tag") or "")
        ahead, seen = mothers.get(tag), {tag}
        while ahead and ahead not in seen:
            seen.add(ahead)
            ahead = mothers.get(ahead)
        if ahead == tag and len(seen) > 1:
            what = "following the mothers leads back to this colony"
            findings.fault(COLONIES.title, row.cell("mother"), what, "Leave one of these mothers empty")


def _check_ages(rows, findings):
    began = {alike(row.values["tag"]): row.values.get("started_on") for row in rows if row.values.get("tag")}
    for row in rows:
        mother, started_on = began.get(alike(row.values.get("mother") or "")), row.values.get("started_on")
        if mother and started_on and mother > started_on:
            what = f"it began on {started_on}, before its mother did ({mother})"
            findings.fault(
                COLONIES.title, row.cell("started_on"), what, "Mend one of the two days or the mother"
            )


def note_crowded(yards, colonies, known, findings):
    """A yard with more colonies than stands is worth a word: the hives stand all the same."""
    stands = {**known.stands, **{yard.code: yard.stands for yard in yards}}
    names = {**known.yards, **{yard.code: yard.name for yard in yards}}
    there = Counter({**known.colonies, **{colony.tag: colony.yard for colony in colonies}}.values())
    for code, count in sorted(there.items()):
        if count > stands.get(code, count):
            what = f"{names[code]} has {count} colonies, but stands for {stands[code]}"
            findings.note(YARDS.title, "column Stands", what)


def gear_of(rows, names, yards, known, findings):
    parts = Names(known.parts)
    gear: list[GearRow] = []
    seen: dict[tuple, int] = {}
    shed = shed_code(yards, known)
    for row in rows:
        yard = place_of(row, names, shed, GEAR, findings)
        part = part_of(row, parts, GEAR, findings)
        if not (yard and part) or not row.whole([column.key for column in GEAR.columns]):
            continue
        one = GearRow(**{**row.values, "yard": yard, "part": part, "row": row.number})
        first = seen.setdefault((one.yard, one.part, one.condition), row.number)
        if first != row.number:
            what = f"{known.parts[part]}, {one.condition}, at this place stands in row {first} already"
            findings.fault(GEAR.title, row.cell("part"), what, "Add the two counts in one row")
            continue
        gear.append(one)
    return tuple(gear)
