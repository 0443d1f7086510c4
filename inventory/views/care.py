"""Sheets of care and of the workbench: assemble, mend, set aside, scrap, burn, use.

Each view finds where it is done, reads the form, calls one act and answers.
"""

from django.shortcuts import render
from django.views.decorators.http import require_http_methods

from inventory import ledger
from inventory.bench_sums import possible_of, recipes_at
from inventory.forms import AssembleForm, LinesForm, MarkForm, MendForm, ScrapForm
from inventory.gear import Condition, Kind
from inventory.views.answering import (
    ActSheet,
    answer,
    day_words,
    ground_of,
    home_store,
    leave_to,
    needs_yards,
)

SHEET = require_http_methods(["GET", "HEAD", "POST"])

FIRE = (
    "disease and fire",
    "Burn hives only as the inspector and local rules say, mostly in a pit and covered with earth after; many places "
    "want a permit, or forbid fires in dry weeks: ask the fire service first. Never near dry grass, "
    "in wind or without water at hand, and never burn treated or painted wood where people breathe it.",
)
MEND = ActSheet(
    title="Mend",
    verb="Mend",
    rows="To mend",
    nothing="The book has nothing to mend here.",
    only=lambda row: row.condition == Condition.TO_MEND,
    cautions=(
        (
            "tools and dust",
            "Glasses for wire and nails, a mask for old paint and propolis: scorch only outdoors.",
        ),
    ),
)
MARK = ActSheet(
    title="Set gear aside",
    verb="Set aside",
    template="inventory/mark.html",
    only=lambda row: row.condition != Condition.HELD,
    cautions=(
        (
            "disease",
            "Held back means disease is suspected: keep it closed against robbing, apart from all other gear, and call "
            "the inspector. Only the inspector's word lets it back into use.",
        ),
    ),
)
SCRAP = ActSheet(
    title="Scrap",
    verb="Scrap",
    template="inventory/scrap.html",
    cautions=(
        (
            "disease",
            "Nothing of a hive that may have had foulbrood goes on an open heap: bees rob it and carry it home. "
            "Hold it back and call the inspector.",
        ),
    ),
)
BURN = ActSheet(title="Burn", verb="Burn", cautions=(FIRE,))
USE = ActSheet(
    title="Use up",
    verb="Book",
    nothing="The book has no feed or consumables in this store.",
    only=lambda row: row.part.kind in (Kind.FEED, Kind.CONSUMABLE),
    cautions=(
        (
            "treatments",
            "The label is the law: dose, temperature, gloves and mask, and no honey for sale while supers are on.",
        ),
    ),
)
ASSEMBLE = ActSheet(
    title="Assemble",
    verb="Assemble",
    template="inventory/assemble.html",
    cautions=(("tools", "Glasses for nails and staples, air for glue and paint."),),
)


@SHEET
@needs_yards
def act_mend(request):
    return _at_a_place(request, MEND, MendForm, lambda form, **told: ledger.mend(**told))


@SHEET
@needs_yards
def act_mark(request):
    def act(form, **told):
        return ledger.mark(becomes=form.cleaned_data["becomes"], **told)

    return _at_a_place(request, MARK, MarkForm, act)


@SHEET
@needs_yards
def act_scrap(request):
    return _at_a_place(request, SCRAP, ScrapForm, lambda form, **told: ledger.scrap(**told))


@SHEET
@needs_yards
def act_burn(request):
    return _at_a_place(request, BURN, LinesForm, lambda form, **told: ledger.burn(**told))


@SHEET
@needs_yards
def act_use(request):
    return _at_a_place(request, USE, LinesForm, lambda form, **told: ledger.use(**told))


def _at_a_place(request, sheet, form_class, act):
    """Rows of one store, or of one colony where the address names it."""
    at = ground_of(request, "yard", hidden=("colony",))
    here = at.chosen("colony") or at.chosen("yard") or home_store(request.user)
    form = form_class(request.POST or None, ground=here, day=at.on, as_of=at.as_of, only=sheet.only)

    def post(told):
        return act(form, at=here, lines=form.lines(), **told)

    at.settle(**({} if at.chosen("colony") else {"yard": here.code}))
    words = "On colony" if at.chosen("colony") else "Store of"
    return answer(request, sheet, form, post, at=at, leave=leave_to(here), cells=[(words, here)])


@SHEET
@needs_yards
def act_assemble(request):
    at = ground_of(request, "yard", hidden=("recipe",))
    here, recipe = at.chosen("yard") or home_store(request.user), at.chosen("recipe")
    at, cells = at.settle(yard=here.code), [("At the store of", here)]
    leave = leave_to(here)
    if recipe is None:
        page = {"sheet": ASSEMBLE, "at": at, "leave": leave, "recipes": recipes_at(here, as_of=at.as_of)}
        page["cells"] = [*cells, ("Day", day_words(at))]
        return render(request, "inventory/which_recipe.html", page)
    bench = possible_of(recipe, here, as_of=at.as_of)
    form = AssembleForm(request.POST or None, day=at.on, possible=bench.possible)

    def post(told):
        return ledger.assemble(recipe=recipe, times=form.cleaned_data["times"], at=here, **told)

    return answer(request, ASSEMBLE, form, post, at=at, leave=leave, cells=cells, bench=bench)
