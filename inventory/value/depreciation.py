"""Straight-line depreciation by years of life, for the accountant to judge. Pure.

Takes Posted lines, years of life of each part that wears, the year, the convention and what is left of a piece in the
end; gives a row a part and year it came. Pieces that leave are taken to be the oldest; comb drawn by bees keeps the year its frame came. What is
counted at cost stays at cost: the moving average is another measure, and the two need not agree.
"""

import datetime as dt
from collections import defaultdict
from dataclasses import dataclass, field, fields, replace

from inventory.value.records import money
from inventory.value.spread import part_of_whole

MONTHS = 12


@dataclass(frozen=True, kw_only=True)
class Convention:
    """`monthly`: by months, the month it came counts whole and the month it goes not at all; else whole years,
    the year it came counts whole and the year it goes not at all. A year begins in month `begins`."""

    monthly: bool = False
    begins: int = 1

    def year_of(self, day):
        """The year a day belongs to, named by the calendar year it begins in."""
        return day.year if day.month >= self.begins else day.year - 1

    def month_of(self, day):
        """Which month of its year, from 0."""
        return (day.month - self.begins) % MONTHS


@dataclass(frozen=True, kw_only=True)
class Rest:
    """What gear is still worth at the end of its life: cents a piece where told, else a share of what it cost."""

    cents: dict = field(default_factory=dict)
    percent: int = 0

    def of(self, part, layer):
        """Cents of a layer that never wear; no more than it cost."""
        if part in self.cents:
            return min(layer.cents, layer.pieces * self.cents[part])
        return part_of_whole(layer.cents, self.percent, 100)


NO_REST = Rest()


@dataclass(frozen=True, kw_only=True)
class Layer:
    """Pieces of a part that came on one day."""

    day: dt.date
    pieces: int
    cents: int


@dataclass(kw_only=True)
class ScheduleRow:
    """One part and the year it came: of what is there at the end, cost − before − this year = net; what went during
    the year stands apart, with its own share of the year and the rest that was written off."""

    part: str
    came: int
    years: int
    pieces: int = 0
    cost_cents: int = 0
    before_cents: int = 0
    year_cents: int = 0
    gone: int = 0
    gone_cost_cents: int = 0
    gone_year_cents: int = 0
    gone_net_cents: int = 0

    @property
    def net_cents(self):
        return self.cost_cents - self.before_cents - self.year_cents

    def __add__(self, other):
        sums = {f.name: getattr(self, f.name) + getattr(other, f.name) for f in fields(self)[3:]}
        return ScheduleRow(part=self.part, came=self.came, years=self.years, **sums)

    @property
    def cost(self):
        return money(self.cost_cents)

    @property
    def before(self):
        return money(self.before_cents)

    @property
    def this_year(self):
        return money(self.year_cents)

    @property
    def net(self):
        return money(self.net_cents)

    @property
    def gone_year(self):
        return money(self.gone_year_cents)

    @property
    def gone_net(self):
        return money(self.gone_net_cents)


def worn(cents, *, came, years, convention, rest=0, through=None, gone=None):
    """Cents depreciated by the end of year `through`, or by the day the pieces were gone; never the `rest` of them."""
    cents -= rest
    if years < 1:
        return cents
    until = convention.year_of(gone) if gone else through
    since = until - convention.year_of(came)
    if convention.monthly:
        upto = convention.month_of(gone) if gone else MONTHS
        periods, of = since * MONTHS + upto - convention.month_of(came), years * MONTHS
    else:
        periods, of = since + (0 if gone else 1), years
    return part_of_whole(cents, min(max(periods, 0), of), of)


def schedule(posted, lives, *, year, convention, rest=NO_REST, carries=("drawn by bees",)):
    """ScheduleRows of one year. `lives`: {part: years} of the parts that wear, others do not count;
    `carries` names the makings that take the age of what went in along."""
    layers, gone = _layers(posted, lives, carries, year=year, convention=convention)
    rows: dict[tuple, ScheduleRow] = {}

    def row_of(part, layer):
        came = convention.year_of(layer.day)
        return rows.setdefault((part, came), ScheduleRow(part=part, came=came, years=lives[part]))

    def told_of(part, layer):
        told = {"came": layer.day, "years": lives[part], "convention": convention}
        return told | {"rest": rest.of(part, layer)}

    for part, stack in layers.items():
        for layer in stack:
            told = told_of(part, layer)
            before, row = worn(layer.cents, through=year - 1, **told), row_of(part, layer)
            row.pieces += layer.pieces
            row.cost_cents += layer.cents
            row.before_cents += before
            row.year_cents += worn(layer.cents, through=year, **told) - before
    for part, on, layer in gone:
        told = told_of(part, layer)
        before, row = worn(layer.cents, through=year - 1, **told), row_of(part, layer)
        by_then = max(before, worn(layer.cents, gone=on, **told))
        row.gone += layer.pieces
        row.gone_cost_cents += layer.cents
        row.gone_year_cents += by_then - before
        row.gone_net_cents += layer.cents - by_then
    return tuple(rows[key] for key in sorted(rows))


def _layers(posted, lives, carries, *, year, convention):
    """Layers there at the end of the year, and those that left in it: (part, day, layer)."""
    stacks: dict[str, list[Layer]] = defaultdict(list)
    left: dict[tuple, list[Layer]] = {}
    gone: list[tuple] = []
    on_the_way: dict[str, list[Layer]] = defaultdict(list)
    for line in posted:
        if convention.year_of(line.day) > year:
            continue
        carried = line.why in carries
        if line.pieces < 0 and line.part in lives:
            taken = _take(stacks[line.part], -line.pieces, newest=bool(line.undoes))
            if carried:
                on_the_way[line.key] += taken
                continue
            left[line.key, line.part] = taken
            if convention.year_of(line.day) == year and not line.undoes:
                gone += [(line.part, line.day, layer) for layer in taken]
        elif line.pieces > 0 and line.part in lives:
            stacks[line.part] += _arrived(line, carried, on_the_way, left, gone)
            stacks[line.part].sort(key=lambda layer: layer.day)
    return stacks, gone


def _arrived(line, carried, on_the_way, left, gone):
    """The layers of what came: as old as what it was made of, or as what was taken out by mistake."""
    if line.undoes and (line.undoes, line.part) in left:
        back = left[line.undoes, line.part]
        for layer in back:
            if (entry := next((e for e in gone if e[0] == line.part and e[2] is layer), None)) is not None:
                gone.remove(entry)
        return back
    before = on_the_way.pop(line.key, []) if carried else []
    if sum(layer.pieces for layer in before) == line.pieces:
        return before
    return [Layer(day=line.day, pieces=line.pieces, cents=line.cents)]


def _take(stack, pieces, *, newest=False):
    """Takes pieces off the oldest layers (or the newest), cutting one where it must."""
    taken = []
    while pieces and stack:
        at = -1 if newest else 0
        layer = stack[at]
        if layer.pieces <= pieces:
            taken.append(stack.pop(at))
            pieces -= layer.pieces
            continue
        cents = part_of_whole(layer.cents, pieces, layer.pieces)
        taken.append(replace(layer, pieces=pieces, cents=cents))
        stack[at] = replace(layer, pieces=layer.pieces - pieces, cents=layer.cents - cents)
        pieces = 0
    return taken
