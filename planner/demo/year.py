"""The invented year of the demo: from the day its sheet was filled in to the day of the order, told in acts.

Takes the keeper, the opening day and a seed; writes only through the acts of colonies and ledger, as a keeper
would: deadouts salvaged, an order received in two parts, supers out and back, splits, feed, a count, a mistake.
"""

import datetime as dt
from itertools import count

import numpy as np

from apiary import colonies
from apiary.models import Colony, HiveSet, Yard
from inventory import ledger, stock
from inventory.gear import Condition
from inventory.ledger import Line, Piece
from inventory.models import Offer, Supplier
from inventory.orders import OrderItem, owed_lines, place_order

BOX, COMB = "box-medium-10", "comb-medium-honey"
COMBS_IN_A_SUPER = 9
MOST_SPLITS = 9


class Year:
    """Hands each act its day, its person and a key of its own, the same at every telling."""

    def __init__(self, *, who, opened_on, seed):
        self.who, self.opened_on = who, opened_on
        self.random = np.random.default_rng(seed)
        self.numbers = count(1)
        self.splits_left = MOST_SPLITS
        self.shed = Yard.objects.get(is_shed=True)
        self.yards = list(Yard.objects.filter(is_shed=False).order_by("code"))

    def day(self, after):
        return self.opened_on + dt.timedelta(days=after)

    def act(self, act, *, after, **told):
        """One act of the ledger, so many days after the opening."""
        key = f"invented-{self.opened_on:%Y}-{next(self.numbers)}"
        return act(day=self.day(after), who=self.who, key=key, **told)

    def living(self, after):
        return list(
            Colony.objects.alive(on=self.day(after)).select_related("yard", "hive_set").order_by("tag")
        )

    def some(self, rows, share):
        """About that share of the rows, drawn."""
        return [row for row in rows if self.random.random() < share]


def live_through(*, who, opened_on, seed):
    """Tells the whole year. Gives the number of acts."""
    year = Year(who=who, opened_on=opened_on, seed=seed)
    _spring_deadouts(year)
    _order_comes_in_two_parts(year)
    _splits(year)
    fleet = _supers_out(year)
    _supers_back(year, fleet)
    _autumn(year)
    return next(year.numbers) - 1


def _deadouts(year, dead, *, after, note):
    for colony in dead:
        held = stock.on_colony(colony)
        colonies.end(colony, why=Colony.Ended.DIED, day=year.day(after), who=year.who, note=note)
        pieces = [_sorted_piece(gear, pieces) for gear, pieces in held.items()]
        year.act(
            ledger.salvage,
            after=after + 1,
            colony=colony,
            into=year.shed,
            pieces=pieces,
            note="brood looked at, no sign of disease",
        )


def _sorted_piece(gear, pieces):
    """Two old brood combs in ten are melted down, the rest goes back into the shed."""
    old = pieces // 5 if gear.part.startswith("comb") else 0
    return Piece(part=gear.part, condition=gear.condition, sound=pieces - old, scrapped=old)


def _spring_deadouts(year):
    weak = [colony for colony in year.living(20) if colony.strength == Colony.Strength.WEAK]
    _deadouts(year, weak[:6], after=24, note="starved")


def _order_comes_in_two_parts(year):
    order = place_order(
        Supplier.objects.get(code="marrowstone"),
        [
            OrderItem(offer=Offer.objects.get(code="mo-excluder"), packs=40),
            OrderItem(offer=Offer.objects.get(code="mo-sheet-m"), packs=2),
            OrderItem(offer=Offer.objects.get(code="mo-framed-d"), packs=14),
        ],
        placed_on=year.day(3),
        reference=f"invented-{year.opened_on:%Y}-spring",
    )
    first = [ledger.Arrival(part=row.part, sound=row.owed // 2) for row in owed_lines(order)]
    year.act(ledger.receive, after=26, order=order, into=year.shed, arrivals=first)
    year.act(ledger.receive, after=38, order=order, into=year.shed)
    year.act(ledger.assemble, after=40, recipe="assemble-frame-medium", times=45, at=year.shed)
    year.act(ledger.assemble, after=41, recipe="fit-foundation-medium", times=45, at=year.shed)


def _splits(year):
    """A strong colony in four gives a split into one deep of its own."""
    one_deep = HiveSet.objects.get(code="one-deep-10")
    strong = [c for c in year.living(60) if c.strength == Colony.Strength.STRONG]
    room = {yard: yard.stands - yard.colonies.alive(on=year.day(66)).count() for yard in year.yards}
    for mother in year.some(strong, 0.3):
        if room[mother.yard] < 1 or not year.splits_left:
            continue
        room[mother.yard] -= 1
        year.splits_left -= 1
        daughter = colonies.start(
            tag=f"{mother.tag}-a",
            yard=mother.yard,
            hive_set=one_deep,
            day=year.day(66),
            who=year.who,
            origin=Colony.Origin.SPLIT,
            mother=mother,
            strength=Colony.Strength.FAIR,
        )
        pieces = {
            "box-deep-10": 1,
            "frame-deep-foundation": 10,
            "floor-10": 1,
            "inner-cover-10": 1,
            "cover-10": 1,
        }
        year.act(
            ledger.place,
            after=66,
            source=year.shed,
            colony=daughter,
            found_allowed=True,
            lines=[Line(part, number) for part, number in pieces.items()],
        )
        drawn = [Line("frame-deep-foundation", 10)]
        year.act(ledger.draw, after=110, colony=daughter, lines=drawn, use="brood")


def _supers_out(year):
    """A load to each yard, then a super on every colony in a full hive and a second on the strong ones."""
    fleet = {}
    for yard in year.yards:
        takers = [c for c in year.living(85) if c.yard_id == yard.pk and c.hive_set.width == 10]
        wanted = {c: 2 if c.strength == Colony.Strength.STRONG else 1 for c in takers}
        _haul_supers(year, yard, sum(wanted.values()))
        for colony, supers in wanted.items():
            on = sum(_place_super(year, colony, after=92 + 14 * number) for number in range(supers))
            if on:
                fleet[colony] = on
    return fleet


def _haul_supers(year, yard, wanted):
    there = stock.on_hand(yard)
    boxes = wanted - sum(n for gear, n in there.items() if gear.part == BOX and gear.condition == "sound")
    left = {gear.part: n for gear, n in stock.on_hand(year.shed).items() if gear.condition == "sound"}
    boxes = min(boxes, left.get(BOX, 0), left.get(COMB, 0) // COMBS_IN_A_SUPER)
    if boxes > 0:
        lines = [Line(BOX, boxes), Line(COMB, boxes * COMBS_IN_A_SUPER)]
        excluders = min(boxes, left.get("excluder-10", 0))
        lines += [Line("excluder-10", excluders)] if excluders else []
        year.act(
            ledger.move, after=86, source=year.shed, target=yard, lines=lines, note="one load, tied down"
        )


def _place_super(year, colony, *, after):
    here = {gear.part: n for gear, n in stock.on_hand(colony.yard).items() if gear.condition == "sound"}
    if here.get(BOX, 0) < 1 or here.get(COMB, 0) < COMBS_IN_A_SUPER:
        return 0
    lines = [Line(BOX, 1), Line(COMB, COMBS_IN_A_SUPER)]
    if here.get("excluder-10", 0) and "excluder-10" not in {g.part for g in stock.on_colony(colony)}:
        lines.append(Line("excluder-10", 1))
    year.act(ledger.place, after=after, source=colony.yard, colony=colony, lines=lines)
    return 1


def _supers_back(year, fleet):
    """Pulled in August, extracted, and home to the shed; what breaks is marked to mend."""
    for colony, supers in fleet.items():
        lines = [Line(BOX, supers), Line(COMB, supers * COMBS_IN_A_SUPER)]
        if any(gear.part == "excluder-10" for gear in stock.on_colony(colony)):
            lines.append(Line("excluder-10", 1))
        year.act(ledger.take_off, after=165, colony=colony, target=colony.yard, lines=lines)
    for yard in year.yards[::2]:
        lines = [Line(gear.part, n, gear.condition) for gear, n in stock.on_hand(yard).items() if n]
        if lines:
            year.act(ledger.move, after=172, source=yard, target=year.shed, lines=lines)
    year.act(ledger.mark, after=174, at=year.shed, lines=[Line(BOX, 5)], becomes="to mend")
    year.act(ledger.mend, after=200, at=year.shed, lines=[Line(BOX, 8)])


def _autumn(year):
    """Feed, guards, a few more deadouts (one still to be worked), a count and a slip put right."""
    year.act(ledger.use, after=205, at=year.shed, lines=[Line("sugar", 200), Line("treatment", 40)])
    weak = [colony for colony in year.living(215) if colony.strength == Colony.Strength.WEAK]
    _deadouts(year, weak[:4], after=220, note="mites and virus")
    for colony in weak[4:5]:
        colonies.end(colony, why=Colony.Ended.DIED, day=year.day(228), who=year.who, note="robbed")
    year.act(ledger.scrap, after=230, at=year.shed, lines=[Line("cover-10", 2, Condition.TO_MEND)])
    slip = year.act(
        ledger.move,
        after=235,
        source=year.shed,
        target=year.yards[0],
        lines=[Line("guard-10", 20)],
        note="a slip",
    )
    year.act(_reversed(slip), after=236)
    counted = stock.on_hand(year.shed)
    excluders = next((n for gear, n in counted.items() if gear.part == "excluder-10"), 0)
    year.act(
        ledger.correct, after=240, location=year.shed, counted=[Line("excluder-10", max(excluders - 2, 0))]
    )


def _reversed(slip):
    """Reversal as an act of the year."""

    def act(*, day, who, key):
        return ledger.reverse(act=slip, day=day, who=who, key=key)

    return act
