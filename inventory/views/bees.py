"""Sheets of acts on bees: split, hive a nuc, unite, requeen, move colonies, a yard lost.

Each view finds yard and colonies, reads the form, calls one act and answers.
"""

from django.views.decorators.http import require_http_methods

from apiary.models import Colony
from apiary.rights import within
from inventory.forms.bees import HiveNucForm, MoveColoniesForm, RequeenForm, SplitForm, UniteForm
from inventory.forms.lost_yard import LostYardForm
from inventory.hive_weights import hive_weights
from inventory.load_sums import truck
from inventory.views.answering import (
    LIFTING,
    SMOKE,
    ActSheet,
    answer,
    ground_of,
    home_store,
    leave_to,
    needs_yards,
    stocked,
    which_colony,
)
from inventory.yardwork.hives import standing
from inventory.yardwork.lost_yard import lose_yard
from inventory.yardwork.moving import move_colonies
from inventory.yardwork.outfit import full_set, usual_set
from inventory.yardwork.requeening import requeen
from inventory.yardwork.splitting import hive_nuc, split
from inventory.yardwork.uniting import unite

SHEET = require_http_methods(["GET", "HEAD", "POST"])

DISEASE = (
    "disease",
    "Look at the brood before combs or bees go to another hive. Where foulbrood is suspected nothing leaves the hive: "
    "close it and call the bee inspector.",
)
SPLIT = ActSheet(
    title="Split",
    verb="Make",
    template="inventory/split.html",
    cautions=(DISEASE, SMOKE, LIFTING),
)
HIVE = ActSheet(
    title="Hive a nuc",
    verb="Hive",
    template="inventory/hive_nuc.html",
    lead="Colonies in a nuc box.",
    cautions=(SMOKE, LIFTING),
)
UNITE = ActSheet(
    title="Unite",
    verb="Unite",
    rows="Goes on the other",
    template="inventory/unite.html",
    tells="",
    lead="The colony that is no more a hive of its own: choose it, then the one its bees go to.",
    nothing="The book has nothing on this colony. Add what your hand holds.",
    cautions=(
        (
            "disease",
            "A weak colony is often a sick one: unite it only when someone who knows foulbrood has looked at its "
            "brood. Sick bees make the strong one sick too.",
        ),
        SMOKE,
        LIFTING,
    ),
)
REQUEEN = ActSheet(title="Requeen", verb="Requeen", template="inventory/requeen.html", cautions=(SMOKE,))
MOVE = ActSheet(
    title="Move colonies",
    verb="Move",
    template="inventory/move_colonies.html",
    cautions=(
        LIFTING,
        (
            "stings on the road",
            "Close and screen the entrances at dusk, and give the bees air. Wear the veil while you load and drive "
            "with the windows up. Carry what you need against a severe sting reaction.",
        ),
        (
            "loads",
            "Strap every hive by itself and the whole load along and across, heavy ones low and over the axle. Keep "
            "within what the door plate allows. Stop after the first miles and pull the straps again.",
        ),
        (
            "disease",
            "Crossing a county or state line with bees mostly needs the inspector's paper. Hives with gear held back "
            "stay where they are until the inspector has spoken.",
        ),
    ),
)
LOST = ActSheet(
    title="A yard lost",
    verb="Write off",
    rows="Saved",
    template="inventory/lose_yard.html",
    tells="",
    nothing="The book has no gear here.",
    cautions=(
        (
            "your own safety first",
            "Stay out of moving water and off undermined banks. A bear comes back to the same yard: do not go alone "
            "or at dusk. Of a theft take pictures and call the sheriff before anything is moved.",
        ),
        (
            "flooded gear",
            "Combs that stood in flood water are not for bees or honey: floods carry sewage and fuel. Bees that "
            "survive are ill-tempered: carry what you need against a severe sting reaction.",
        ),
    ),
)


@SHEET
@needs_yards
def act_split(request):
    at = ground_of(request, "source", hidden=("yard", "colony"))
    yard, colony, hives = _hives(request, at)
    source = at.chosen("source") or stocked(yard, request.user)
    mothers = [colony] if colony else hives
    form = SplitForm(request.POST or None, mothers=mothers, hive_set=usual_set(mothers), into=yard, day=at.on)

    def post(told):
        return split(daughters=form.daughters(), plan=form.plan(source), **told)

    cells = [("Mother", colony) if colony else ("Yard", yard), ("Gear from the store of", source)]
    at = at.settle(source=source.code)
    return answer(request, SPLIT, form, post, at=at, leave=leave_to(colony, yard), cells=cells, yard=yard)


@SHEET
@needs_yards
def act_hive(request):
    at = ground_of(request, "source", hidden=("yard", "colony"))
    colony = at.chosen("colony")
    if colony is None:
        nucs = Colony.objects.alive(on=at.on).filter(hive_set__is_nuc=True)
        return which_colony(request, HIVE, at, nucs)
    source = at.chosen("source") or stocked(colony.yard, request.user)
    form = HiveNucForm(request.POST or None, hive_set=full_set(), into=source, day=at.on)

    def post(told):
        given = form.cleaned_data
        chosen = {name: given[name] for name in ("hive_set", "fill", "into")}
        return hive_nuc(colony=colony, source=source, **chosen, **told)

    cells = [("Colony", colony), ("Gear from the store of", source)]
    at = at.settle(source=source.code)
    return answer(request, HIVE, form, post, at=at, leave=leave_to(colony), cells=cells, colony=colony)


@SHEET
@needs_yards
def act_unite(request):
    at = ground_of(request, "colony", hidden=("yard",))
    colony = at.chosen("colony")
    if colony is None:
        return which_colony(request, UNITE, at, Colony.objects.alive(on=at.on))
    others = [one for one in standing(colony.yard, on=at.on) if one != colony]
    form = UniteForm(
        request.POST or None,
        ground=colony,
        others=others,
        wanted_width=_widest(others, colony),
        into=colony.yard,
        day=at.on,
        as_of=at.as_of,
    )

    def post(told):
        given = form.cleaned_data
        told = {name: told[name] for name in ("day", "who", "key", "note")}
        return unite(colony=colony, into=given["onto"], goes_on=form.lines(), store_at=given["into"], **told)

    cells, leave = [("Colony", colony), ("Yard", colony.yard)], leave_to(colony.yard)
    return answer(request, UNITE, form, post, at=at.settle(), leave=leave, cells=cells, others=others)


@SHEET
@needs_yards
def act_requeen(request):
    at = ground_of(request, hidden=("yard", "colony"))
    yard, colony, hives = _hives(request, at)
    form = RequeenForm(request.POST or None, hives=hives, chosen=[colony] if colony else [], day=at.on)

    def post(told):
        return requeen(colonies=form.picked(), queen=form.cleaned_data["queen"], **told)

    cells, leave = [("Yard", yard)], leave_to(colony, yard)
    return answer(request, REQUEEN, form, post, at=at.settle(), leave=leave, cells=cells, yard=yard)


@SHEET
@needs_yards
def act_move_colonies(request):
    at = ground_of(request, hidden=("yard", "colony"))
    yard, colony, hives = _hives(request, at)
    form = MoveColoniesForm(
        request.POST or None,
        hives=hives,
        chosen=[colony] if colony else hives,
        weights=hive_weights(hives),
        yard=yard,
        day=at.on,
    )

    def post(told):
        return move_colonies(colonies=form.picked(), yard=form.cleaned_data["target"], **told)

    cells, leave = [("From", yard), ("Colonies there", len(hives))], leave_to(yard)
    more = {"yard": yard, "truck": truck()}
    return answer(request, MOVE, form, post, at=at.settle(), leave=leave, cells=cells, **more)


@SHEET
@needs_yards
def act_lose_yard(request):
    at = ground_of(request, hidden=("yard",))
    yard, _colony, hives = _hives(request, at)
    into = next((one for one in (home_store(request.user),) if one != yard), None)
    form = LostYardForm(
        request.POST or None,
        hives=hives,
        chosen=hives,
        into=into,
        ground=[*hives, yard],
        day=at.on,
        as_of=at.as_of,
    )

    def post(told):
        told = {name: told[name] for name in ("day", "who", "key", "note")}
        return lose_yard(yard=yard, **form.told_of_yard(), **told)

    cells, leave = [("Yard", yard), ("Colonies there", len(hives))], leave_to(yard)
    return answer(request, LOST, form, post, at=at.settle(), leave=leave, cells=cells, yard=yard)


def _hives(request, at):
    """(yard, the colony of the address or None, the colonies alive in the yard on the day)."""
    colony = at.chosen("colony")
    yard = colony.yard if colony else at.chosen("yard") or _first_with_bees(request, at)
    hives = standing(yard, on=at.on)
    if colony and colony not in hives:
        hives = [colony, *hives]
    return yard, colony, hives


def _first_with_bees(request, at):
    bees = within(request.user, Colony.objects.alive(on=at.on), "yard").order_by("yard__name")
    first = bees.select_related("yard").first()
    return first.yard if first else home_store(request.user)


def _widest(others, colony):
    """The width most of the other hives take: what does not fit them is not offered to go on."""
    widths = [one.hive_set.width for one in others]
    return max(set(widths), key=widths.count) if widths else colony.hive_set.width
