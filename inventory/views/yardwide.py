"""Sheets over a whole yard with exceptions by colony: feed it, and book the comb its hives drew.

Each view finds yard and hives, reads the form, calls one act and answers.
"""

from django.views.decorators.http import require_http_methods

from inventory import ledger
from inventory.forms import DrawForm, FeedForm
from inventory.forms.boxes import HiveRow
from inventory.gear import Comb, Condition, Kind
from inventory.ledger import Line
from inventory.models import Part
from inventory.stock import on_hand
from inventory.syrup import RATIONS
from inventory.views.answering import SMOKE, ActSheet, answer, ground_of, home_store, leave_to, needs_yards
from inventory.views.boxes import yard_of
from inventory.yardwork.boxsets import supers
from inventory.yardwork.hives import sound_gear_on, standing
from inventory.yardwork.pulling import supers_on

SHEET = require_http_methods(["GET", "HEAD", "POST"])

FEED = ActSheet(
    title="Feed a yard",
    verb="Feed",
    template="inventory/yardwide.html",
    cautions=(
        (
            "robbing",
            "Feed inside the hive, towards evening, and spill nothing: syrup in the open or on a floor sets a yard "
            "robbing, weak hives and nucs first. Reduce entrances before you feed, and feed all hives of a yard at once.",
        ),
        (
            "which syrup",
            " ".join(one.caution for one in RATIONS.values() if one.caution)
            + " Supers off first: fed syrup must not reach honey for sale. Never feed honey of unknown hives: it "
            "carries foulbrood.",
        ),
        SMOKE,
        (
            "lifting",
            "Five gallons of syrup weigh over 50 lb: carry half pails, two at a time.",
        ),
    ),
)
DRAW = ActSheet(
    title="Comb drawn",
    verb="Book comb of",
    template="inventory/yardwide.html",
    nothing="The book has no frame with foundation on the hives of this yard.",
    cautions=(
        (
            "treatments",
            "Comb drawn or filled while a treatment was on never goes under honey for sale: book it as treated, and "
            "mark its frames.",
        ),
        SMOKE,
    ),
)


@SHEET
@needs_yards
def act_feed(request):
    at = ground_of(request, "yard", "source")
    yard = yard_of(at)
    source = at.chosen("source") or home_store(request.user)
    bees = standing(yard, on=at.on)
    gear, known = sound_gear_on(bees, as_of=at.as_of), supers()
    loaded = [one for one in bees if any(supers_on(gear[one.pk], one.hive_set, each) for each in known)]
    hives = [HiveRow(colony=one, words=_fed_words(one, loaded)) for one in bees]
    there = on_hand(source, as_of=at.as_of)
    booked = {gear.part: lb for gear, lb in there.items() if gear.condition == Condition.SOUND}
    form = FeedForm(request.POST or None, hives=hives, day=at.on, booked=booked)

    def post(told):
        ration = form.cleaned_data["ration"]
        return ledger.feed(ration=ration, portions=form.portions(), source=source, found_allowed=True, **told)

    cells = [("Yard", yard), ("From the store of", source)]
    at = at.settle(yard=yard.code, source=source.code)
    more = {"yard": yard, "loaded": loaded, "supers_words": _supers_words(loaded)}
    return answer(request, FEED, form, post, at=at, leave=leave_to(yard), cells=cells, **more)


def _fed_words(colony, loaded):
    words = f"{colony.get_strength_display()}, {colony.hive_set}"
    return f"{words}; supers on by the book" if colony in loaded else words


def _supers_words(loaded):
    names = ", ".join(colony.tag for colony in loaded)
    return f"By the book supers are on {names}. Feed comes off when supers go on: pull them first, or feed none of it."


@SHEET
@needs_yards
def act_draw(request):
    at = ground_of(request, "yard", "foundation")
    yard = yard_of(at)
    bees = standing(yard, on=at.on)
    gear = sound_gear_on(bees, as_of=at.as_of)
    part = at.chosen("foundation") or _commonest(gear)
    hives = [_with_foundation(one, gear[one.pk], part) for one in bees]
    form = DrawForm(request.POST or None, hives=hives, day=at.on, part=part)

    def post(told):
        draws = [(colony, [Line(part, number)]) for colony, number in form.colonies().items() if number]
        return ledger.draw_comb(draws=draws, found_allowed=True, **form.chosen(), **told)

    at = at.settle(yard=yard.code, **({"foundation": part.code} if part else {}))
    cells = [("Yard", yard), ("Frames", part.name if part else "none")]
    more = {"yard": yard, "nothing": part is None}
    return answer(request, DRAW, form, post, at=at, leave=leave_to(yard), cells=cells, **more)


def _with_foundation(colony, gear, part):
    booked = gear.get(part, 0)
    return HiveRow(colony=colony, usual=booked, words=f"{booked} with foundation by the book")


def _commonest(gear):
    """The frame with foundation of which most are on these hives; None where there is none at all."""
    totals: dict[Part, int] = {}
    for pieces in gear.values():
        for part, number in pieces.items():
            if part.kind == Kind.FRAME and part.comb == Comb.FOUNDATION:
                totals[part] = totals.get(part, 0) + number
    if totals:
        return max(totals, key=lambda part: (totals[part], part.code))
    return Part.objects.filter(kind=Kind.FRAME, comb=Comb.FOUNDATION, flat=False).first()
