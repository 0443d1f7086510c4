"""The cells of title blocks: what a yard or a colony says of itself at the head of its sheet.

Takes rows; gives lists of (label, value) in the order in which they may be needed: gate and emergency first.
"""

from django.utils.formats import date_format


def counted(number, one, many):
    """1 colony, 7 colonies."""
    return f"{number:,} {one if number == 1 else many}"


def yard_cells(yard):
    cells = [("Gate", yard.gate or "none"), ("Emergency", yard.emergency or "no address written down")]
    if yard.drive_minutes or yard.miles:
        cells.append(("From home", f"{yard.drive_minutes} min, {yard.miles:.0f} mi"))
    if yard.stands:
        over = yard.living - yard.stands
        cells.append(
            ("Stands", f"{yard.living} of {yard.stands}" + (f", {over} too many" if over > 0 else ""))
        )
    return cells


def colony_cells(colony):
    cells = [("Yard", colony.yard), ("Strength", colony.get_strength_display())]
    cells.append(("Origin", _origin(colony)))
    cells.append(("Since", date_format(colony.started_on, "j M Y")))
    if colony.ended_on:
        cells.append((colony.get_ended_why_display().capitalize(), date_format(colony.ended_on, "j M Y")))
    return cells


def _origin(colony):
    word = colony.get_origin_display()
    return f"{word} of {colony.mother}" if colony.mother else word
