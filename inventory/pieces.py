"""The rows of an act's sheet: each piece of gear that lies at a place, with the name of its field.

Takes a yard (its store) or colony and a day; gives rows in the order in which a hand meets them. Changes nothing.
"""

from dataclasses import dataclass
from itertools import groupby

from inventory.errors import Refused
from inventory.gear import Condition, Kind
from inventory.ledger.lines import Line
from inventory.ledger.rules import refuse_unfit
from inventory.locations import location_of
from inventory.models import Part
from inventory.stock import on_hand

HEADS = (
    ("Boxes", (Kind.BOX, Kind.NUC_BOX)),
    ("Frames and comb", (Kind.FRAME, Kind.FOUNDATION)),
    ("Floors and covers", (Kind.FLOOR, Kind.INNER_COVER, Kind.COVER, Kind.STAND)),
    ("Excluders, feeders, guards", (Kind.EXCLUDER, Kind.FEEDER, Kind.REDUCER, Kind.GUARD)),
    ("Feed and consumables", (Kind.FEED, Kind.CONSUMABLE)),
)
PLACE_OF_KIND = {kind: number for number, (_, kinds) in enumerate(HEADS) for kind in kinds}
MARK = "__"
MANY = {"piece": "pieces", "box": "boxes", "set": "sets", "bottle": "bottles", "quart": "quarts"}


def many(unit, number=2):
    """The unit as it follows a number: 1 piece, 2 pieces, 50 lb."""
    return unit if number == 1 else MANY.get(unit, unit)


@dataclass(frozen=True, kw_only=True)
class Row:
    """One part in one condition, and how many the book has of it at the place."""

    part: Part
    condition: Condition = Condition.SOUND
    booked: int = 0

    @property
    def key(self):
        return f"{self.part.code}{MARK}{self.condition.name.lower()}"

    @property
    def name(self):
        """The part in words that begin a line; its condition where it is not sound."""
        name = self.part.name[:1].upper() + self.part.name[1:]
        return name if self.condition == Condition.SOUND else f"{name}, {self.condition}"

    @property
    def counted_in(self):
        """Its unit, where that is not the piece."""
        return "" if self.part.unit == "piece" else many(self.part.unit)

    @property
    def booked_words(self):
        unit = "" if self.part.unit == "piece" else f" {many(self.part.unit, self.booked)}"
        return f"{self.booked:,}{unit} by the book"

    @property
    def head(self):
        return HEADS[PLACE_OF_KIND[Kind(self.part.kind)]][0]

    def line(self, quantity):
        return Line(self.part, quantity, self.condition)


def rows_at(ground, *, as_of=None, also=()):
    """A Row for each gear at a place, or at several together; those named in `also` (keys of rows) too, where nothing
    is booked."""
    parts = Part.objects.in_bulk(field_name="code")
    booked: dict[tuple, int] = {}
    for place in ground if isinstance(ground, (list, tuple)) else [ground]:
        for gear, quantity in on_hand(place, as_of=as_of).items():
            key = (gear.part, gear.condition)
            booked[key] = booked.get(key, 0) + quantity
    wanted = [pair for pair in map(pair_of, also) if pair is not None and pair[0] in parts]
    rows = [
        Row(part=parts[code], condition=condition, booked=booked.get((code, condition), 0))
        for code, condition in dict.fromkeys([*booked, *wanted])
    ]
    return sorted(rows, key=order_of)


def order_of(row):
    return (PLACE_OF_KIND[Kind(row.part.kind)], row.part.code, list(Condition).index(row.condition))


def pair_of(key):
    """(part's code, condition) of a row's key; None where it is no key."""
    code, mark, word = str(key).rpartition(MARK)
    return (code, Condition[word.upper()]) if mark and word.upper() in Condition.__members__ else None


def by_head(rows):
    """[(head, rows)] in the order of the heads."""
    return [(head, list(group)) for head, group in groupby(rows, key=lambda row: row.head)]


def fitting(rows, colony):
    """(rows that may go onto the colony, sentences why the others may not)."""
    fit, why, location = [], [], location_of(colony)
    for row in rows:
        try:
            refuse_unfit([row.line(1)], location)
        except Refused as refusal:
            why.append(str(refusal))
        else:
            fit.append(row)
    return fit, why
