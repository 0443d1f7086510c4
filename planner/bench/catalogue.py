"""Rows of the catalogue's fixture as the planner's facts, for operations that live in no books.

Takes plain objects as the fixture holds them; gives PartFacts, SetFacts, RecipeFacts. Reads no file.
"""

from decimal import Decimal

from planner.season.operation import PartFacts, RecipeFacts, SetFacts


def set_of(row, gear):
    boxes = {depth: row.get(f"{depth}_boxes", 0) for depth in ("deep", "medium", "shallow")}
    return SetFacts(
        code=row["code"],
        name=row["name"],
        width=row["width"],
        boxes={depth: count for depth, count in boxes.items() if count},
        gear=dict(gear),
        is_nuc=row.get("is_nuc", False),
    )


def part_of(row):
    return PartFacts(
        code=row["code"],
        name=row["name"],
        kind=row["kind"],
        depth=row.get("depth", ""),
        width=row.get("width"),
        comb=row.get("comb", ""),
        comb_use=row.get("comb_use", ""),
        treated=row.get("treated", False),
        flat=row.get("flat", False),
        unit=row.get("unit", "piece"),
        weight_lb=float(row["tare_lb"]),
        list_price=Decimal(row["list_price"]),
        years_of_life=row["years_of_life"],
    )


def recipe_of(row):
    return RecipeFacts(
        code=row["code"],
        name=row["name"],
        takes=dict(row["takes"]),
        makes=dict(row["makes"]),
        minutes=float(row["minutes"]),
    )
