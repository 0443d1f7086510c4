"""The closed list of acts an evening's table can tell, and which act of the books each is.

Takes a row understood and day, who and key; gives the Act. What needs a decision on the spot (a deadout taken apart,
gear held back, a count, bees sold) has its own sheet and is not here.
"""

from collections.abc import Callable
from dataclasses import dataclass

from apiary.models import Colony
from apiary.queens import QueenFrom
from apiary.tags import following, free_tags
from inventory import ledger
from inventory.errors import NotInWholes
from inventory.gear import Condition, Depth
from inventory.ledger import Line
from inventory.models import RecipeLine
from inventory.yardwork.boxes import add_brood_box, super_up
from inventory.yardwork.boxsets import brood_box_of, brood_boxes, super_of, supers
from inventory.yardwork.ending import end_colonies
from inventory.yardwork.hives import sound_gear_on, standing
from inventory.yardwork.moving import move_colonies
from inventory.yardwork.outfit import usual_set
from inventory.yardwork.pulling import kind_on, pull, supers_on
from inventory.yardwork.refusals import TooManyTags
from inventory.yardwork.requeening import requeen
from inventory.yardwork.splitting import Daughters, SplitPlan, split


@dataclass(frozen=True, kw_only=True)
class RowAct:
    """`place` is what the row's place may be; `other` and `gear` what these columns tell, empty for nothing.

    `counted`: whether it tells how many; else each colony once.
    """

    code: str
    words: str
    place: frozenset
    post: Callable
    gear: str = "pieces"
    other: str = ""
    counted: bool = True

    @property
    def reads(self):
        """How the row reads, for the key beside the table."""
        where = " or ".join(PLACES[each] for each in PLACES if each in self.place)
        return ", ".join(filter(None, (where, GEAR[self.gear], OTHERS[self.other])))


PLACES = {"colony": "a colony", "yard": "a whole yard", "store": "a store"}
GEAR = {
    "": "",
    "pieces": "a part or a set",
    "piece": "a part",
    "super": "which super, or empty for each hive's own; how many each",
    "brood box": "which box, or empty for each hive's own; how many each",
    "comb": "the comb it became",
    "feed": "syrup 1:1, syrup 2:1 (gallons each), dry sugar or patties (lb each)",
    "made": "what was made",
    "queen": f"where the queen is from ({', '.join(str(label) for label in QueenFrom.labels)})",
    "splits": "their set and their tags parted by commas, or empty for the usual set and the next tags; how many splits",
}
OTHERS = {
    "": "",
    "from": "from which store",
    "to": "to which store",
    "yard": "to which yard",
    "person": "to whom",
}
STORE, COLONY, HIVES = frozenset({"store"}), frozenset({"colony"}), frozenset({"colony", "yard"})


def lines_of(row, condition=Condition.SOUND):
    """The row's part, or its set as it stands in use, so many times."""
    return [Line(code, pieces * row.quantity, condition) for code, pieces in row.gear.items()]


def hives_of(row):
    """The colony told, or all that stood in the yard told on the day."""
    return [row.ground] if isinstance(row.ground, Colony) else standing(row.ground, on=row.day)


def _each(row, one_of, all_of, wants=lambda hive_set: True):
    """{colony: boxes}: a colony told gets them whatever it is; of a whole yard those that take and want such a box."""
    if isinstance(row.ground, Colony):
        return {row.ground: row.quantity}
    known = [one_of(row.gear)] if row.gear else all_of()
    bees = [
        one for one in hives_of(row) if any(box.fits(one.hive_set) for box in known) and wants(one.hive_set)
    ]
    return dict.fromkeys(bees, row.quantity)


def _in_one_box(hive_set):
    return sum(getattr(hive_set, f"{depth}_boxes") for depth in Depth) == 1


def _coming_off(row):
    """{colony: supers}: of a whole yard at most as many as the book has on each hive."""
    told = _each(row, super_of, supers)
    if isinstance(row.ground, Colony):
        return told
    known = [super_of(row.gear)] if row.gear else supers()
    gear = sound_gear_on(list(told), as_of=row.day)
    kinds = {one: kind_on(gear[one.pk], one.hive_set, known) for one in told}
    return {one: min(told[one], supers_on(gear[one.pk], one.hive_set, kind)) for one, kind in kinds.items()}


def _haul(row, **how):
    return ledger.haul(source=row.ground, drops=[(row.other, lines_of(row))], **how)


def _place(row, **how):
    return ledger.place(source=row.other, colony=row.ground, lines=lines_of(row), **how)


def _take_off(row, **how):
    return ledger.take_off(colony=row.ground, target=row.other, lines=lines_of(row), **how)


def _super_up(row, **how):
    return super_up(colonies=_each(row, super_of, supers), source=row.other, box=row.gear, **how)


def _brood_box(row, **how):
    told = _each(row, brood_box_of, brood_boxes, wants=_in_one_box)
    return add_brood_box(colonies=told, source=row.other, box=row.gear, **how)


def _pull(row, **how):
    return pull(colonies=_coming_off(row), target=row.other, box=row.gear, **how)


def _draw(row, **how):
    comb, foundation = row.gear
    lines = [Line(foundation, row.quantity)]
    draws = [(row.ground, lines)]
    return ledger.draw_comb(draws=draws, use=comb.comb_use, treated=comb.treated, **how)


def _feed(row, **how):
    portions = [(colony, row.quantity) for colony in hives_of(row)]
    return ledger.feed(ration=row.gear, portions=portions, source=row.other, **how)


def _assemble(row, **how):
    made = RecipeLine.objects.filter(part=row.gear, makes__gt=0)
    line = made.select_related("recipe").order_by("id")[0]
    times, over = divmod(row.quantity, line.makes)
    if over:
        raise NotInWholes(part=row.gear, quantity=row.quantity, makes=line.makes)
    return ledger.assemble(recipe=line.recipe, times=times, at=row.ground, **how)


def _lend(row, **how):
    return ledger.lend(source=row.ground, to=row.other, lines=lines_of(row), **how)


def _split(row, **how):
    """As the sheet begins it: five combs along, filled up with foundation, the mother's gaps too, in the same yard."""
    mother, (hive_set, tags) = row.ground, row.gear or (None, ())
    if len(tags) > row.quantity:
        raise TooManyTags(tags=len(tags), splits=row.quantity, mother=mother)
    plan = SplitPlan(hive_set=hive_set or usual_set([mother]), source=row.other)
    if tags:
        taken = [*Colony.objects.values_list("tag", flat=True), *tags]
        tags = (*tags, *following(tags[-1], taken, row.quantity - len(tags)))
    else:
        tags = tuple(free_tags(mother.tag, row.quantity))
    return split(daughters=[Daughters(mother=mother, tags=tags)], plan=plan, **how)


def _bees_alone(how):
    """No gear moves: nothing can be beyond the book."""
    return {name: told for name, told in how.items() if name != "found_allowed"}


def _requeen(row, **how):
    return requeen(colonies=hives_of(row), queen=row.gear, **_bees_alone(how))


def _dead(row, **how):
    return end_colonies(colonies=[row.ground], why=Colony.Ended.DIED, **_bees_alone(how))


def _move_colonies(row, **how):
    return move_colonies(colonies=hives_of(row), yard=row.other, **_bees_alone(how))


def _at(act, condition=Condition.SOUND, **fixed):
    def post(row, **how):
        return act(at=row.ground, lines=lines_of(row, condition), **fixed, **how)

    return post


_LIST = (
    RowAct(code="super-up", words="Super up", place=HIVES, gear="super", other="from", post=_super_up),
    RowAct(code="pull", words="Pull supers", place=HIVES, gear="super", other="to", post=_pull),
    RowAct(code="feed", words="Feed", place=HIVES, gear="feed", other="from", post=_feed),
    RowAct(code="haul", words="Haul", place=STORE, other="to", post=_haul),
    RowAct(
        code="brood-box",
        words="Add a brood box",
        place=HIVES,
        gear="brood box",
        other="from",
        post=_brood_box,
    ),
    RowAct(code="place", words="Place on a colony", place=COLONY, other="from", post=_place),
    RowAct(code="take-off", words="Take off a colony", place=COLONY, other="to", post=_take_off),
    RowAct(code="split", words="Split", place=COLONY, gear="splits", other="from", post=_split),
    RowAct(code="requeen", words="Requeen", place=HIVES, gear="queen", post=_requeen, counted=False),
    RowAct(
        code="move-colonies",
        words="Move colonies",
        place=HIVES,
        gear="",
        other="yard",
        post=_move_colonies,
        counted=False,
    ),
    RowAct(code="dead", words="Found dead, hive closed", place=COLONY, gear="", post=_dead, counted=False),
    RowAct(code="draw", words="Comb was drawn", place=COLONY, gear="comb", post=_draw),
    RowAct(code="assemble", words="Assemble", place=STORE, gear="made", post=_assemble),
    RowAct(code="mend", words="Mend", place=STORE, gear="piece", post=_at(ledger.mend)),
    RowAct(
        code="to-mend",
        words="Set aside to mend",
        place=STORE | COLONY,
        gear="piece",
        post=_at(ledger.mark, becomes=Condition.TO_MEND),
    ),
    RowAct(code="use", words="Use up", place=STORE, gear="piece", post=_at(ledger.use)),
    RowAct(code="scrap", words="Scrap", place=STORE | COLONY, post=_at(ledger.scrap)),
    RowAct(code="burn", words="Burn", place=STORE | COLONY, post=_at(ledger.burn)),
    RowAct(code="lend", words="Lend", place=STORE, other="person", post=_lend),
)
ROW_ACTS = {act.code: act for act in _LIST}


def post_row(row, *, who, key, found_allowed=False, note=""):
    """Books one row by the act it is; the same as that act by itself."""
    return row.act.post(row, day=row.day, who=who, key=key, note=note, found_allowed=found_allowed)
