"""The suppliers and the lines of their price lists as records, kits and price steps put together.

Takes typed rows and the names known; gives records. Faults and notes go to the findings.
"""

from inventory.sheets.layout import KITS, PRICE_STEPS, PRICES, SUPPLIERS
from inventory.sheets.names import Names, alike, code_of, suggestion
from inventory.sheets.records import OfferRow, SupplierRow
from inventory.sheets.yards import coded, found, part_of

IN_SUPPLIERS = "Add it to the sheet Suppliers, or write a name that stands there"
PLAIN = ("name", "price_rule", "open_from", "open_until", "lead_weeks", "max_packs")


def suppliers_of(rows, known, findings):
    """The suppliers, and Names of every supplier that the sheet or the books know."""
    pairs = list(coded(rows, SUPPLIERS, known.suppliers, findings))
    keys = [column.key for column in SUPPLIERS.columns]
    suppliers = tuple(
        SupplierRow(**{**row.values, "code": code, "row": row.number})
        for row, code in pairs
        if row.whole(keys)
    )
    return suppliers, Names({**known.suppliers, **{code: row.values["name"] for row, code in pairs}})


def offers_of(rows, kit_rows, suppliers, known, findings):
    parts = Names(known.parts)
    listed = _listed(rows, suppliers, known, findings)
    kits = _kits(kit_rows, listed, suppliers, parts, findings)
    offers = []
    for (supplier, form), (row, code) in listed.items():
        content = _content(row, kits.get((supplier, form), {}), parts, findings)
        prices = _prices(row, findings)
        sound = _sound_days(row, findings)
        if content and prices and sound and row.whole([column.key for column in PRICES.columns]):
            plain = {key: row.values[key] for key in PLAIN}
            offers.append(
                OfferRow(code=code, supplier=supplier, parts=content, prices=prices, row=row.number, **plain)
            )
    return tuple(offers)


def _listed(rows, suppliers, known, findings):
    """(supplier, form of the offer's name) -> row and code."""
    listed: dict[tuple[str, str], tuple] = {}
    codes: dict[str, int] = {}  # code -> row
    held = {(supplier, alike(name)): code for code, (supplier, name) in known.offers.items()}
    for row in rows:
        supplier = found(
            *(row, "supplier", suppliers, PRICES, findings), what="the supplier", otherwise=IN_SUPPLIERS
        )
        if supplier is None or "name" not in row.values:
            continue
        key = (supplier, alike(row.values["name"]))
        code = (
            row.values.get("code") or held.get(key) or code_of(f"{supplier}-{row.values['name']}", length=50)
        )
        if key in listed:
            what = f"this supplier's {row.values['name']!r} stands in row {listed[key][0].number} already"
            findings.fault(
                PRICES.title, row.cell("name"), what, "Keep one of the two, or give it another name"
            )
            continue
        if code in codes:
            what = f"the code {code!r} belongs to row {codes[code]} already"
            findings.fault(PRICES.title, row.cell("code"), what, "Write another code")
        elif known.offers.get(code, (supplier,))[0] != supplier:
            what = f"the code {code!r} belongs to an offer of another supplier in the books"
            findings.fault(PRICES.title, row.cell("code"), what, "Write another code")
        codes.setdefault(code, row.number)
        listed[key] = (row, code)
    return listed


def _kits(rows, listed, suppliers, parts, findings):
    """(supplier, form of the offer's name) -> part code -> units."""
    kits: dict[tuple[str, str], dict[str, int]] = {}
    for row in rows:
        supplier = found(
            *(row, "supplier", suppliers, KITS, findings), what="the supplier", otherwise=IN_SUPPLIERS
        )
        part = part_of(row, parts, KITS, findings)
        if supplier is None or "offer" not in row.values:
            continue
        key = (supplier, alike(row.values["offer"]))
        if key not in listed:
            what = f"this supplier has no {row.values['offer']!r} on Prices"
            offers = [other.values["name"] for (of, _), (other, _) in listed.items() if of == supplier]
            remedy = suggestion(row.values["offer"], offers, otherwise="Add it there, or take this row out")
            findings.fault(KITS.title, row.cell("offer"), what, remedy)
            continue
        content = kits.setdefault(key, {})
        if part in content and part is not None:
            findings.fault(
                KITS.title, row.cell("part"), "the kit names this part already", "Add the two in one row"
            )
        elif part and "units" in row.values:
            content[part] = row.values["units"]
    return kits


def _content(row, kit, parts, findings):
    """Part code -> units of one offer; None where it makes no sense."""
    text, units = row.values.get("part"), row.values.get("units")
    if not text:
        if not kit and "part" in row.values:
            what = "no part is named, here or on Kits"
            findings.fault(PRICES.title, row.cell("part"), what, "Write the part, or the kit's parts on Kits")
        return kit or None
    part = part_of(row, parts, PRICES, findings)
    if kit:
        what = "the offer names a part here and a kit on Kits"
        findings.fault(PRICES.title, row.cell("part"), what, "Keep one of the two")
    if units is None and "units" in row.values:
        findings.fault(
            PRICES.title,
            row.cell("units"),
            "how many a pack holds is not said",
            "Write a whole number, 1 or more",
        )
    return {part: units} if part and units and not kit else None


def _prices(row, findings):
    """((from packs, price), ...) rising in packs; None where a step is half said or out of order."""
    if "price_1" not in row.values:
        return None
    steps = [(1, row.values["price_1"])]
    sound = True
    for number in range(2, PRICE_STEPS + 1):
        packs, price = row.values.get(f"from_{number}"), row.values.get(f"price_{number}")
        if packs is None and price is None:
            continue
        if packs is None or price is None:
            lacking = f"from_{number}" if packs is None else f"price_{number}"
            if lacking in row.values:
                findings.fault(
                    *(PRICES.title, row.cell(lacking), f"price step {number} is half said"),
                    "Write both the packs and the price, or neither",
                )
            sound = False
        elif packs <= steps[-1][0]:
            what = f"{packs} packs is no more than the step before it ({steps[-1][0]})"
            findings.fault(PRICES.title, row.cell(f"from_{number}"), what, "Write the steps in rising order")
            sound = False
        else:
            if price > steps[-1][1]:
                findings.note(PRICES.title, row.cell(f"price_{number}"), "the price rises with more packs")
            steps.append((packs, price))
    return tuple(steps) if sound else None


def _sound_days(row, findings):
    start, end = row.values.get("open_from"), row.values.get("open_until")
    if start and end and end < start:
        what = f"the price ends on {end}, before it begins on {start}"
        findings.fault(PRICES.title, row.cell("open_until"), what, "Write a later day, or leave it empty")
        return False
    return True
