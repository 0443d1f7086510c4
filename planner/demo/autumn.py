"""The invented autumn: feed, treatment, weak hives united, an evening caught up, deadouts, a count, a slip undone.

Takes the Year; writes through the acts of the books and the yards. It ends with what this week's sheet asks about:
a deadout to work, combs held back, gear lent and overdue, pieces found, an order half owed, yards due to be counted.
"""

from inventory import counting, ledger, stock
from inventory.catching_up.posting import post_evening
from inventory.catching_up.rows import Typed
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from inventory.yardwork import undo
from inventory.yardwork.uniting import unite
from planner.demo import buying, dead
from planner.demo.telling import FAIR, WEAK, sound_at


def told(year):
    """From September to the day of the order."""
    buying.sugar(year)
    _fed(year)
    _united(year)
    _an_evening(year)
    year.act(ledger.use, after=205, at=year.shed, lines=[Line("treatment", 40)])
    year.act(ledger.burn, after=210, at=year.shed, lines=[Line("comb-deep-brood", 12)], note="wax moth")
    _lent(year)
    _deadouts(year)
    year.act(ledger.scrap, after=230, at=year.shed, lines=[Line("cover-10", 2, Condition.TO_MEND)])
    _a_slip(year)
    _counted(year)
    buying.still_owed(year)
    _still_found(year)


def _fed(year):
    """Two gallons of heavy syrup to each colony in one deep."""
    light = year.living(198, hive_set="one-deep-10")[:24]
    portions = [(colony, 8) for colony in light]
    year.act(ledger.feed, after=198, ration="syrup-2-1", portions=portions, source=year.shed)


def _united(year):
    """A weak colony goes onto a fair one of its yard, its gear into the shed."""
    for colony in year.living(203, strength=WEAK):
        others = year.living(203, yard=colony.yard, hive_set="two-deeps-10", strength=FAIR)
        if others:
            told = {"colony": colony, "into": others[0], "goes_on": (), "store_at": year.shed}
            year.act(unite, after=203, note="too small for the winter", **told)
            return


def _an_evening(year):
    """Three things of one week, told in one table."""
    shed, tag = year.shed.name, year.living(206, yard=year.yards[2], strength=FAIR)[0].tag
    rows = [
        Typed(number=1, day=f"{year.day(206):%Y-%m-%d}", act="feed", place=tag, gear="2:1", quantity="1.5"),
        Typed(number=2, act="use", place=shed, gear="bucket", quantity="3"),
        Typed(
            number=3,
            day=f"{year.day(208):%Y-%m-%d}",
            act="to-mend",
            place=shed,
            gear="feeder-10",
            quantity="2",
        ),
    ]
    post_evening(rows, who=year.who, key=year.key(), note="caught up on one evening (invented)")


def _lent(year):
    """Two nuc boxes, and nobody has brought them back yet."""
    year.act(
        ledger.lend,
        after=212,
        source=year.shed,
        to="Bee school (invented)",
        lines=[Line("nuc-box-5", 2)],
        due_on=year.day(250),
    )


def _deadouts(year):
    """Three worked, one of them with its combs held back; one still to be worked."""
    weak = year.living(215, strength=WEAK)
    for colony in weak[:2]:
        dead.frozen(year, dead.worked(year, colony, after=220, cause="mites"), after=222)
    dead.salvaged(year, weak[2], after=220, note="mites and virus")
    dead.worked(year, weak[3], after=224, cause="unknown", brood_seen=False)
    dead.waiting(year, weak[4], after=228, note="robbed")


def _a_slip(year):
    """Guards booked to the wrong yard, and taken back the next morning."""
    lines = [Line("guard-10", 20)]
    slip = year.act(
        ledger.move, after=235, source=year.shed, target=year.yards[0], lines=lines, note="a slip"
    )
    undo(slip, who=year.who, key=year.key(), day=year.day(236))


def _counted(year):
    """The shed beside the book, two excluders short; one yard's count is begun and not yet posted."""
    count = counting.begin(location=year.shed, day=year.day(240), who=year.who, key=year.key())
    booked = {gear: n for gear, n in stock.on_hand(year.shed, as_of=year.day(240)).items() if n > 0}
    booked[Gear(part="excluder-10")] -= 2
    counting.enter(count, [(year.shed, gear.part, gear.condition, n) for gear, n in booked.items()])
    counting.post_count(count, who=year.who)
    yard = year.yards[1]
    draft = counting.begin(location=yard, day=year.day(250), who=year.who, key=year.key(), blind=True)
    part = next(iter(sound_at(yard)), "stand")
    counting.enter(draft, [(yard, part, Condition.SOUND, sound_at(yard).get(part, 0))])


def _still_found(year):
    """A guard went onto a hive from a store that had none by the book."""
    yard = year.yards[3]
    colony = year.living(252, yard=yard, hive_set="two-deeps-10")[0]
    lines = [Line("guard-10", sound_at(yard).get("guard-10", 0) + 1)]
    year.act(ledger.place, after=252, source=yard, colony=colony, lines=lines, found_allowed=True)
