"""The evening's catching up: one table of many acts of past days, checked row by row, booked all or none.

Each view reads the form, calls one act and answers.
"""

from django.contrib import messages
from django.http import Http404
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_POST

from apiary.models import Colony, HiveSet
from apiary.queens import QueenFrom
from apiary.rights import grounds, hives, refuse_not_own
from inventory.catching_up.acts import ROW_ACTS
from inventory.catching_up.posting import EveningRefused, acts_of, post_evening, undo_evening
from inventory.errors import Refused
from inventory.forms import EveningForm
from inventory.models import GearSet, Part
from inventory.syrup import RATIONS
from inventory.views.answering import needs_yards


@require_http_methods(["GET", "HEAD", "POST"])
@needs_yards
def evening(request):
    form = EveningForm(request.POST or None, day=timezone.localdate())
    sent = request.method == "POST" and "add" not in request.POST
    checked = None
    if sent and form.is_valid():
        try:
            acts = _posted(form, request)
        except EveningRefused as refused:
            form.refuse_rows(refused)
        except Refused as refusal:
            form.refuse(refusal)
        else:
            if "check" not in request.POST:
                messages.success(request, _words(acts), extra_tags=_undo_address(form))
                return redirect("evening")
            checked = len(acts)
    page = {"form": form, "checked": checked, "acts": ROW_ACTS.values(), "leave": reverse("home")}
    page |= _names(request.user)
    return render(request, "inventory/evening.html", page, status=422 if sent and form.errors else 200)


@require_POST
def evening_undo(request, key):
    acts = acts_of(key)
    if not acts:
        raise Http404
    for act in acts:
        refuse_not_own(request.user, act.who)
    try:
        undone = undo_evening(key, who=request.user)
    except Refused as refusal:
        messages.error(request, f"Nothing was undone. {refusal}")
    else:
        words = "1 act" if len(undone) == 1 else f"{len(undone)} acts"
        messages.success(request, f"Undone: {words} of the evening." if undone else "It was undone before.")
    return redirect("evening")


def _posted(form, request):
    given = form.told(request.user)
    given.pop("day")
    return post_evening(form.typed(), only_check="check" in request.POST, **given)


def _undo_address(form):
    return reverse("evening-undo", args=[form.cleaned_data["key"]])


def _words(acts):
    days = sorted({act.day for act in acts})
    many = "1 act" if len(acts) == 1 else f"{len(acts)} acts"
    span = (
        f"{days[0]:%-d %B %Y}"
        if len(days) == 1
        else f"{len(days)} days, {days[0]:%-d %B} to {days[-1]:%-d %B %Y}"
    )
    return f"Booked {many} of {span}."


def _names(user):
    """What the columns may name, to be offered while one types."""
    gear = [*Part.objects.values_list("name", flat=True), *GearSet.objects.values_list("name", flat=True)]
    tags = hives(user).exclude(ended_why=Colony.Ended.MISTAKE).order_by("tag").values_list("tag", flat=True)
    stores = list(grounds(user).values_list("name", flat=True))
    return {
        "stores": stores,
        "tags": tags,
        "gear": [*(ration.words for ration in RATIONS.values()), *sorted(gear)],
        "bees": [*QueenFrom.labels, *HiveSet.objects.order_by("name").values_list("name", flat=True)],
    }
