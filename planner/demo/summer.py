"""The invented summer: supers hauled, put on and pulled, brood boxes, comb drawn, gear lent, a bear, pieces found.

Takes the Year; writes through the acts of the books and the yards. Moderate: a few of each, whole yards in one act.
"""

from apiary.models import Colony
from inventory import counting, ledger, stock
from inventory.gear import Condition, Gear
from inventory.ledger import Line, Return
from inventory.yardwork.boxes import add_brood_box, super_up
from inventory.yardwork.lost_yard import Cause, lose_yard
from inventory.yardwork.pulling import pull
from inventory.yardwork.selling import Terms, sell
from planner.demo.telling import FAIR, STRONG, all_at, sound_at

BOX, COMB, EXCLUDER = "box-medium-10", "comb-medium-honey", "excluder-10"
COMBS_IN_A_SUPER = 9
YARDS_WITH_EXCLUDERS = 2
FOUNDATION = "frame-deep-foundation"


def told(year):
    """From the middle of May to the end of August."""
    _brood_boxes(year)
    _supers_out(year)
    loan = _lent(year)
    _comb_drawn(year)
    _supers_found(year)
    _bear(year)
    returns = [Return(part="feeder-10", sound=3, to_mend=1), Return(part="excluder-10", sound=5, lost=1)]
    year.act(ledger.take_back, after=128, loan=loan, into=year.shed, returns=returns)
    _colony_sold(year)
    _supers_home(year)


def _brood_boxes(year):
    """Two colonies in one deep have outgrown it."""
    takers = year.living(78, hive_set="one-deep-10", strength=FAIR, new=False)[:2]
    boxes = dict.fromkeys(takers, 1)
    year.act(add_brood_box, after=78, colonies=boxes, source=year.shed)


def _supers_out(year):
    """A load to each yard that lacks them, a super on each full hive in one act, a second on the strong ones."""
    wanted = {yard: _takers(year, yard, 85) for yard in year.yards}
    drops = [(yard, _lacking(year, yard, wanted[yard])) for yard in year.yards]
    left = sound_at(year.shed)
    loads = [load for load in (_cut(yard, boxes, left) for yard, boxes in drops) if load is not None]
    for number in range(0, len(loads), 2):
        load = loads[number : number + 2]
        year.act(ledger.haul, after=86 + number // 2, source=year.shed, drops=load, note="tied down")
    for yard in year.yards[:YARDS_WITH_EXCLUDERS]:
        _excluders_on(year, yard, wanted[yard])
    for number, after in ((1, 92), (2, 106)):
        for yard in year.yards:
            there = sound_at(yard)
            most = min(there.get(BOX, 0), there.get(COMB, 0) // COMBS_IN_A_SUPER)
            on = [colony for colony, boxes in wanted[yard].items() if boxes >= number][:most]
            if on:
                told = {"colonies": dict.fromkeys(on, 1), "source": yard, "combs": COMBS_IN_A_SUPER}
                year.act(super_up, after=after, **told)


def _takers(year, yard, after):
    """{colony: supers} of a yard's full hives."""
    hives = [colony for colony in year.living(after, yard=yard) if not colony.hive_set.is_nuc]
    return {colony: 2 if colony.strength == STRONG else 1 for colony in hives}


def _lacking(year, yard, wanted):
    return max(0, sum(wanted.values()) - sound_at(yard).get(BOX, 0))


def _cut(yard, boxes, left):
    """The drop of a yard as far as the shed has it, taken off what is `left` there; None for nothing."""
    boxes = min(boxes, left.get(BOX, 0), left.get(COMB, 0) // COMBS_IN_A_SUPER)
    excluders = min(boxes, left.get(EXCLUDER, 0))
    lines = [(BOX, boxes), (COMB, boxes * COMBS_IN_A_SUPER), (EXCLUDER, excluders)]
    for part, number in lines:
        left[part] = left.get(part, 0) - number
    return (yard, [Line(part, number) for part, number in lines if number]) if boxes else None


def _excluders_on(year, yard, hives):
    for colony in list(hives)[: sound_at(yard).get(EXCLUDER, 0)]:
        year.act(ledger.place, after=91, source=yard, colony=colony, lines=[Line(EXCLUDER, 1)])


def _lent(year):
    """To a neighbour until the clover ends. Gives the loan."""
    lines = [Line("feeder-10", 4), Line(EXCLUDER, min(6, sound_at(year.shed).get(EXCLUDER, 0)))]
    act = year.act(
        ledger.lend,
        after=100,
        source=year.shed,
        to="Neighbour at the mill (invented)",
        lines=lines,
        due_on=year.day(130),
    )
    return act.loan


def _comb_drawn(year):
    """What stands as foundation in brood boxes since the splits is comb by now."""
    draws = [(colony, _foundation_on(colony)) for colony in year.living(110)]
    year.act(ledger.draw_comb, after=110, draws=draws, use="brood", treated=False)


def _foundation_on(colony):
    number = stock.on_colony(colony)
    return [Line(gear.part, n, gear.condition) for gear, n in number.items() if gear.part == FOUNDATION]


def _supers_found(year):
    """Two yards had more in their stores than the book: one came off the last load, one was simply missing."""
    for yard, came_from in ((year.yards[1], year.shed), (year.yards[5], None)):
        colony = year.living(114, yard=yard, hive_set="two-deeps-10")[0]
        short = sound_at(yard).get("reducer-10", 0) + 1
        lines = [Line("reducer-10", short)]
        act = year.act(ledger.place, after=114, source=yard, colony=colony, lines=lines, found_allowed=True)
        found = act.movements.get(found=True)
        if came_from is None:
            counting.settle(found, who=year.who, note="from before the books (invented)")
        else:
            counting.answer(found, who=year.who, key=year.key(), came_from=came_from)


def _bear(year):
    """Two hives torn apart; half of the boxes and the floors can be mended."""
    yard = max(year.yards, key=lambda yard: len(year.living(118, yard=yard)))
    hives = year.living(118, yard=yard, hive_set="two-deeps-10", strength=FAIR, new=False)[-2:]
    saved = [Line("box-deep-10", 2), Line("floor-10", 2), Line("cover-10", 1)]
    told = {"yard": yard, "colonies": hives, "cause": Cause.BEAR, "saved": saved, "into": year.shed}
    year.act(lose_yard, after=118, why=Colony.Ended.LOST, saved_as=Condition.TO_MEND, **told)


def _colony_sold(year):
    """A hive with all that stands on it; the buyer owes a deep box with its frames."""
    yard = year.yards[4]
    hive = year.living(140, yard=yard, hive_set="one-deep-10")[:1] or year.living(140, yard=yard)[:1]
    terms = Terms(
        buyer="Orchard at the ford (invented)",
        price_cents=26000,
        deposit_cents=6000,
        owed=(Line("box-deep-10", 1), Line(FOUNDATION, 10)),
        back_by=year.day(254),
    )
    year.act(sell, after=140, colonies=hive, terms=terms, goes=None, stays_at=year.shed)


def _supers_home(year):
    """Pulled in August yard by yard, extracted, and half of them home to the shed; what broke is mended."""
    for yard in year.yards:
        supers = {colony: _supers_on(colony) for colony in year.living(165, yard=yard)}
        if any(supers.values()):
            year.act(pull, after=165, colonies=supers, target=yard)
        for colony in supers:
            if any(gear.part == EXCLUDER for gear in stock.on_colony(colony)):
                lines = [Line(EXCLUDER, 1)]
                year.act(ledger.take_off, after=165, colony=colony, target=yard, lines=lines)
    for number, yard in enumerate(year.yards[::2]):
        load = all_at(yard)
        if load and number:
            year.act(ledger.haul, after=172, source=yard, drops=[(year.shed, load)], note="tied down")
        elif load:
            year.act(ledger.move, after=172, source=yard, target=year.shed, lines=load)
    year.act(ledger.mark, after=174, at=year.shed, lines=[Line(BOX, 5)], becomes=Condition.TO_MEND)
    year.act(ledger.use, after=178, at=year.shed, lines=[Line("jar", 24)])
    year.act(ledger.mend, after=200, at=year.shed, lines=[Line(BOX, 8)])


def _supers_on(colony):
    return stock.on_colony(colony).get(Gear(part=BOX), 0)
