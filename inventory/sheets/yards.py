"""The keeper, yards and flows of a workbook as records, checked against each other and against the books.

Takes typed rows; gives records and the names later sheets may use. Faults go to the findings.
"""

from inventory.sheets.layout import FLOWS, KEEPER, YARDS
from inventory.sheets.names import Names, alike, code_of
from inventory.sheets.records import FlowRow, KeeperRow, YardRow

IN_YARDS = "Add it to the sheet Yards, or write a name that stands there"
IN_LISTS = "Write one that stands on the sheet Lists"


def keeper_of(rows, known, findings):
    if not rows:
        if not known.has_keeper:
            findings.fault(KEEPER.title, "A2", "nobody is named", "Write the keeper's name into row 2")
        return None
    for row in rows[1:]:
        findings.fault(KEEPER.title, row.cell("name"), "there is a second row", "Keep one row")
    keys = [column.key for column in KEEPER.columns]
    return KeeperRow(**rows[0].values, row=rows[0].number) if rows[0].whole(keys) else None


def coded(rows, table, known, findings):
    """Rows of named things with a code each: as written, else as the books have it, else made of the name.

    Gives (row, code) pairs; a row whose name or code is taken already is a fault and left out.
    """
    names: dict[str, int] = {}  # form of a name -> row
    codes: dict[str, int] = {}
    held = Names(known)
    for row in rows:
        if "name" not in row.values:
            continue
        name, written = row.values["name"], row.values.get("code", "")
        code = written or held.code(name) or code_of(name)
        if not code:
            findings.fault(
                table.title, row.cell("name"), f"no code can be made of {name!r}", "Write a code too"
            )
        elif alike(name) in names:
            first = names[alike(name)]
            findings.fault(
                table.title,
                row.cell("name"),
                f"{name!r} stands in row {first} already",
                "Keep one of the two",
            )
        elif code in codes:
            what = f"the code {code!r} belongs to row {codes[code]} already"
            findings.fault(table.title, row.cell("code"), what, "Write another code")
        elif written and held.code(name) not in (None, written) and alike(name) not in map(alike, known):
            what = f"the books know {name!r} by the code {held.code(name)!r}"
            findings.fault(table.title, row.cell("code"), what, "Write that code or leave it empty")
        else:
            names[alike(name)] = codes[code] = row.number
            yield row, code


def yards_of(rows, known, findings, *, is_there=True):
    """The yards, and Names of every yard that the sheet or the books know. `is_there`: the workbook has the sheet."""
    pairs = list(coded(rows, YARDS, known.yards, findings))
    keys = [column.key for column in YARDS.columns]
    yards = tuple(
        YardRow(**{**row.values, "code": code, "row": row.number}) for row, code in pairs if row.whole(keys)
    )
    if is_there:
        _check_shed(pairs, known, findings)
    by_code = {**known.yards, **{code: row.values["name"] for row, code in pairs}}
    return yards, Names(by_code)


def _check_shed(pairs, known, findings):
    sheds = [(row, code) for row, code in pairs if row.values.get("is_shed")]
    for row, _ in sheds[1:]:
        what = f"row {sheds[0][0].number} is the shed already"
        findings.fault(YARDS.title, row.cell("is_shed"), what, "Mark one row only")
    if sheds and known.shed and sheds[0][1] != known.shed:
        what = f"the books have {known.yards[known.shed]!r} as the shed"
        findings.fault(
            YARDS.title, sheds[0][0].cell("is_shed"), what, "Leave this empty, or change it there first"
        )
    if not sheds and not known.shed:
        what = "no row is marked as the shed"
        findings.fault(
            YARDS.title, "column Shed", what, "Add a row for the home store and write yes under Shed"
        )


def shed_code(yards, known):
    return next((yard.code for yard in yards if yard.is_shed), known.shed)


def found(row, key, names, table, findings, *, what, otherwise):
    """The code of what a cell names; None, and a fault, where nothing of that name is known."""
    text = row.values.get(key)
    if text is None:
        return None
    code = names.code(text)
    if code is None and names.by_code:  # where none is known at all, their own sheet says so once
        remedy = names.suggestion(text, otherwise=otherwise)
        findings.fault(table.title, row.cell(key), f"{what} {text!r} is not known", remedy)
    return code


def part_of(row, parts, table, findings):
    """The code of the part a row names."""
    return found(*(row, "part", parts, table, findings), what="the part", otherwise=IN_LISTS)


def place_of(row, names, shed, table, findings):
    """The code of the yard a row names; the word shed is the shed, whatever it is called."""
    text = row.values.get("yard")
    if text and shed and alike(text) == "shed" and names.code(text) is None:
        return shed
    return found(*(row, "yard", names, table, findings), what="the place", otherwise=IN_YARDS)


def flows_of(rows, names, findings):
    flows: list[FlowRow] = []
    seen: dict[tuple, int] = {}
    keys = [column.key for column in FLOWS.columns]
    for row in rows:
        yard = found(*(row, "yard", names, FLOWS, findings), what="the yard", otherwise=IN_YARDS)
        if yard is None or not row.whole(keys):
            continue
        twin = seen.setdefault((yard, alike(row.values["name"])), row.number)
        if twin != row.number:
            what = f"{row.values['name']!r} of this yard stands in row {twin} already"
            findings.fault(
                FLOWS.title, row.cell("name"), what, "Keep one of the two, or give it another name"
            )
            continue
        flows.append(FlowRow(**{**row.values, "yard": yard, "row": row.number}))
    return tuple(flows)
