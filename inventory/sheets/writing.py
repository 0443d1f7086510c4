"""A Sheet record as cell values: names instead of codes, kits and price steps spread over columns.

Takes records and what the books know; gives per table a list of {column key: value}. Knows no workbook.
"""

from inventory.sheets.layout import (
    COLONIES,
    COUNTED,
    FLOWS,
    GEAR,
    KEEPER,
    KITS,
    PLACES,
    PRICE_STEPS,
    PRICES,
    SUPPLIERS,
    WINTERS,
    YARDS,
)


def cells_of(sheet, known):
    """Table title -> rows of {column key: value}."""
    yards = {**known.yards, **{yard.code: yard.name for yard in sheet.yards}}
    suppliers = {**known.suppliers, **{one.code: one.name for one in sheet.suppliers}}
    sets = {code: one.name for code, one in known.sets.items()}
    return {
        KEEPER.title: [_plain(KEEPER, row) for row in (sheet.keeper,) if row],
        YARDS.title: [_plain(YARDS, row) for row in sheet.yards],
        FLOWS.title: [_plain(FLOWS, row, yard=yards) for row in sheet.flows],
        COLONIES.title: [_plain(COLONIES, row, yard=yards, hive_set=sets) for row in sheet.colonies],
        GEAR.title: [_plain(GEAR, row, yard=yards, part=known.parts) for row in sheet.gear],
        SUPPLIERS.title: [_plain(SUPPLIERS, row) for row in sheet.suppliers],
        PRICES.title: [_price(offer, suppliers, known) for offer in sheet.offers],
        KITS.title: [line for offer in sheet.offers for line in _kit(offer, suppliers, known)],
        WINTERS.title: [_plain(WINTERS, row, yard=yards) for row in sheet.winters],
        PLACES.title: [_plain(PLACES, row, yard=yards) for row in sheet.counts],
        COUNTED.title: [
            {"yard": yards.get(row.yard, row.yard), **_line(line, known), "quantity": line.quantity}
            for row in sheet.counts
            for line in row.lines
        ],
    }


def cells_to_count(places, known):
    """Of the ToCount of each place; what the book has stands beside where it is told."""
    return {
        PLACES.title: [
            {"yard": known.yards.get(place.yard, place.yard), "day": place.day, "note": ""}
            for place in places
        ],
        COUNTED.title: [
            {"yard": known.yards.get(place.yard, place.yard), **_line(line, known), "booked": line.booked}
            for place in places
            for line in place.lines
        ],
    }


def _line(line, known):
    return {
        "tag": line.tag,
        "part": known.parts.get(line.part, line.part),
        "condition": line.condition,
    }


def _plain(table, record, **names):
    """The fields of a record as they are, codes turned into names where names are known."""
    cells = {column.key: getattr(record, column.key) for column in table.columns}
    return cells | {key: by_code.get(cells[key], cells[key]) for key, by_code in names.items()}


def _price(offer, suppliers, known):
    if not 1 <= len(offer.prices) <= PRICE_STEPS:
        raise ValueError(
            f"{offer.code}: the sheet holds 1 to {PRICE_STEPS} price steps, not {len(offer.prices)}"
        )
    cells = {column.key: getattr(offer, column.key, None) for column in PRICES.columns}
    cells["supplier"] = suppliers.get(offer.supplier, offer.supplier)
    if len(offer.parts) == 1:
        ((part, cells["units"]),) = offer.parts.items()
        cells["part"] = known.parts.get(part, part)
    for number, (packs, price) in enumerate(offer.prices, 1):
        cells[f"from_{number}"], cells[f"price_{number}"] = packs, price
    return cells


def _kit(offer, suppliers, known):
    if len(offer.parts) > 1:
        for part, units in offer.parts.items():
            yield {
                "supplier": suppliers.get(offer.supplier, offer.supplier),
                "offer": offer.name,
                "part": known.parts.get(part, part),
                "units": units,
            }
