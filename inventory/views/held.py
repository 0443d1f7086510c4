"""Sheets of gear held back: what lies where and why, the inspector's word on a case, and release by the keeper."""

from django.db.models import F
from django.db.models.functions import Coalesce
from django.shortcuts import get_object_or_404, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_safe

from apiary.rights import within
from inventory.deadouts.holds import case_of, held_lots
from inventory.deadouts.release import RELEASING, release, tell_verdict
from inventory.forms.deadouts import ReleaseForm, WordForm
from inventory.models import Deadout, InspectorWord, Location, Part
from inventory.views.answering import ActSheet, answer, ground_of

SHEET = require_http_methods(["GET", "HEAD", "POST"])
Verdict = InspectorWord.Verdict

WORD = ActSheet(
    title="The inspector's word",
    verb="Write down the word",
    template="inventory/deadout_word.html",
    cautions=(
        (
            "the inspector decides",
            "Write down only what was written to you. Where foulbrood is confirmed, local rules say what is burnt and "
            "what may be treated; its combs are never released. All it reaches is held back by this act.",
        ),
    ),
)
RELEASE = ActSheet(
    title="Release held gear",
    verb="Release",
    rows="Held back here",
    template="inventory/release.html",
    nothing="Nothing is held back here for this.",
    cautions=(
        (
            "disease",
            "Only on the written word, by you alone. Comb of a confirmed case is never released; boxes only where they "
            "are written clear or were treated as local rules say.",
        ),
    ),
)


@require_safe
def held(request):
    """All that is held back, by place, each lot with its reason."""
    lots = held_lots()
    parts = Part.objects.in_bulk({part for _place, part in lots})
    places = Location.objects.filter(pk__in={place for place, _part in lots}).select_related(
        "yard", "colony__yard"
    )
    places = within(request.user, places.annotate(ground=_ground()), "ground")
    rows = []
    for place in places.order_by("yard__name", "colony__tag"):
        here = [(parts[part], lot) for (at, part), found in lots.items() if at == place.pk for lot in found]
        by_case: dict = {}
        for part, lot in here:
            by_case.setdefault((lot.deadout, lot.why), []).append((part, lot.quantity))
        rows.append({"place": place, "lots": list(by_case.items())})
    pieces = sum(quantity for row in rows for _case, found in row["lots"] for _part, quantity in found)
    return render(request, "inventory/held.html", {"rows": rows, "pieces": pieces})


@SHEET
def deadout_word(request, pk):
    """What was found: no foulbrood, or foulbrood confirmed."""
    row = get_object_or_404(Deadout.objects.select_related("colony__yard"), pk=pk)
    at = ground_of(request)
    form = WordForm(request.POST or None, verdicts=(Verdict.CLEARED, Verdict.CONFIRMED), day=at.on)

    def post(told):
        return tell_verdict(deadout=row, **form.told_word(), **told)

    cells = [("Colony", row.colony)]
    leave = reverse("deadout", args=[row.pk])
    return answer(request, WORD, form, post, at=at.settle(), leave=leave, cells=cells, case=case_of(row))


@SHEET
def act_release(request):
    """Held pieces of one place and one case are sound again."""
    at = ground_of(request, "yard", hidden=("colony",))
    here = at.chosen("colony") or at.chosen("yard")
    if here is None:
        return held(request)
    case = request.GET.get("case", "")
    deadout = get_object_or_404(Deadout, pk=case) if case.isdecimal() and len(case) < 19 else None
    form = ReleaseForm(
        request.POST or None, verdicts=RELEASING, held=_held_for(here, deadout), ground=here, day=at.on
    )

    def post(told):
        return release(at=here, lines=form.lines(), deadout=deadout, **form.told_word(), **told)

    cells = [("At", here), ("Held for", deadout.colony if deadout else "set aside by hand")]
    return answer(request, RELEASE, form, post, at=at.settle(), leave=reverse("held"), cells=cells)


def _held_for(here, deadout):
    """{part's key: pieces held for this case} at a place."""
    return {
        part: pieces
        for (_place, part), found in held_lots(location=here).items()
        if (pieces := sum(lot.quantity for lot in found if lot.deadout == deadout))
    }


def _ground():
    """The key of the yard of a store, or of a colony's yard."""
    return Coalesce(F("yard"), F("colony__yard"))
