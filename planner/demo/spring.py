"""The invented spring: patties fed, deadouts worked, nucs hived, queens, splits, nucs sold, hives moved.

Takes the Year; writes through the acts of the books and the yards, as a keeper would.
"""

from apiary.queens import QueenFrom
from inventory import ledger
from inventory.ledger import Line
from inventory.models import Sale
from inventory.yardwork.moving import move_colonies
from inventory.yardwork.requeening import requeen
from inventory.yardwork.selling import Terms, got_back, sell
from inventory.yardwork.splitting import Daughters, SplitPlan, hive_nuc, split
from planner.demo import buying, dead
from planner.demo.telling import FAIR, STRONG, WEAK

MOST_SPLITS = 7


def told(year):
    """March to the middle of May."""
    buying.dry_goods(year)
    weak = year.living(14, strength=WEAK)
    portions = [(colony, 2) for colony in weak[:8]]
    year.act(ledger.feed, after=14, ration="patty", portions=portions, source=year.shed)
    buying.spring_order(year)
    _deadouts(year, year.living(20, strength=WEAK)[:6])
    year.act(ledger.assemble, after=40, recipe="assemble-frame-medium", times=45, at=year.shed)
    year.act(ledger.assemble, after=41, recipe="fit-foundation-medium", times=45, at=year.shed)
    fair = year.living(50, strength=FAIR, new=False)
    year.act(requeen, after=52, colonies=fair[:3], queen=QueenFrom.BOUGHT, note="old queens (invented)")
    _nucs_hived(year)
    buying.cancelled(year)
    _splits(year)
    _nucs_sold(year)
    _hives_moved(year)


def _deadouts(year, weak):
    """One hive whose brood nobody looked at keeps its combs back until the inspector has written."""
    for colony in weak[:4]:
        deadout = dead.worked(year, colony, after=24, cause="starved")
        dead.frozen(year, deadout, after=26)
    dead.salvaged(year, weak[4], after=24, note="starved")
    unseen = dead.worked(year, weak[5], after=28, cause="unknown", brood_seen=False)
    dead.released_on_word(year, unseen, after=43)
    dead.frozen(year, unseen, after=46)


def _nucs_hived(year):
    for nuc in year.living(58, hive_set="nuc-5", new=False)[:2]:
        year.act(
            hive_nuc,
            after=58,
            colony=nuc,
            hive_set=year.hive_set("one-deep-10"),
            source=year.shed,
            into=year.shed,
        )


def _splits(year):
    """A strong colony in four gives a split of five combs into one deep; frames with foundation fill up both."""
    room = {yard: year.room(yard, 66) for yard in year.yards}
    mothers: list = []
    for mother in year.living(60, hive_set="two-deeps-10", strength=STRONG, new=False):
        if len(mothers) < MOST_SPLITS and room[mother.yard] > 0 and year.random.random() < 0.3:
            room[mother.yard] -= 1
            mothers.append(mother)
    plan = SplitPlan(hive_set=year.hive_set("one-deep-10"), source=year.shed, queen=QueenFrom.CELL)
    daughters = [Daughters(mother=mother, tags=(f"{mother.tag}-a",)) for mother in mothers]
    year.act(split, after=66, daughters=daughters, plan=plan)


def _nucs_sold(year):
    """Two nucs made for sale, one of them swapped for an empty box and frames, which the buyer brings by and by."""
    mothers = [
        colony
        for colony in year.living(68, hive_set="two-deeps-10", strength=STRONG, new=False)
        if not colony.daughters.exists() and year.room(colony.yard, 68) > 1
    ][:2]
    plan = SplitPlan(hive_set=year.hive_set("nuc-5"), source=year.shed, refill=True)
    daughters = [Daughters(mother=mother, tags=(f"{mother.tag}-n",)) for mother in mothers]
    year.act(split, after=68, daughters=daughters, plan=plan)
    nucs = [daughter for mother in mothers for daughter in mother.daughters.order_by("tag")]
    swap = Terms(
        buyer="R. Fernley (invented)",
        price_cents=32000,
        deposit_cents=8000,
        owed=(Line("nuc-box-5", 2), Line("frame-deep-foundation", 10)),
        back_by=year.day(96),
    )
    act = year.act(sell, after=90, colonies=nucs, terms=swap, goes=None, stays_at=year.shed)
    sale = Sale.objects.get(act_key=act.key)
    boxes = [Line("nuc-box-5", 2), Line("frame-deep-foundation", 10)]
    year.act(got_back, after=95, sale=sale, into=year.shed, lines=boxes, refund_cents=8000)


def _hives_moved(year):
    """Two hives to the yard with most room, for its clover."""
    target = max(year.yards, key=lambda yard: year.room(yard, 98))
    source = max((y for y in year.yards if y != target), key=lambda yard: len(year.living(98, yard=yard)))
    taken = year.living(98, yard=source, hive_set="two-deeps-10", strength=FAIR)[:2]
    year.act(move_colonies, after=98, colonies=taken, yard=target, note="one trailer, strapped (invented)")
