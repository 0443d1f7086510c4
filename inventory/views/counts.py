"""Counts: those due, begun and posted; beginning one, entering it, its differences before anything is posted.

Each view finds the count among the places that are theirs who ask, reads the form, calls one act and answers.
"""

from django.contrib import messages
from django.core.paginator import Paginator
from django.db.models import Q
from django.http import HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.formats import date_format
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from apiary.rights import may, yards_of
from inventory import counting
from inventory.errors import Refused
from inventory.forms.counts import BeginCountForm, CountForm, IntervalForm
from inventory.locations import location_of
from inventory.models import Count
from inventory.views.answering import (
    ActSheet,
    day_words,
    ground_of,
    home_store,
    leave_to,
    needs_yards,
    tell,
)
from inventory.views.differing import differences_page

SHEET = require_http_methods(["GET", "HEAD", "POST"])
A_PAGE = 25

BEGIN = ActSheet(title="Count", verb="Begin the count", template="inventory/count_begin.html")
ENTER = ActSheet(
    title="Count",
    verb="Show the differences",
    rows="Counted",
    template="inventory/count_enter.html",
    nothing="The book knows of nothing here. Add what you counted.",
)


@SHEET
@needs_yards
def act_correct(request):
    """Where, when and how: then the draft is begun and entered."""
    at = ground_of(request, "yard", hidden=("colony",))
    here = at.chosen("colony") or at.chosen("yard") or home_store(request.user)
    form = BeginCountForm(request.POST or None, day=at.on, place=here)
    if request.method == "POST" and form.is_valid():
        try:
            count = counting.begin(location=here, **form.told(request.user), **form.begun())
        except Refused as refusal:
            form.refuse(refusal)
        else:
            return redirect("count-enter", count.pk)
    at.settle(**({} if at.chosen("colony") else {"yard": here.code}))
    words = "On colony" if at.chosen("colony") else "Store of"
    page = {"sheet": BEGIN, "form": form, "at": at, "leave": leave_to(here)}
    page["cells"] = [(words, here), ("Day", day_words(at))]
    page["store"] = None if at.chosen("colony") else here
    page["drafts"] = theirs(request.user).drafts().filter(location=location_of(here))
    return render(request, BEGIN.template, page, status=422 if form.errors else 200)


def theirs(user):
    """The counts of places that are theirs to see and work in."""
    rows = Count.objects.select_related("location__yard", "location__colony__yard", "who", "act__reversed_by")
    given = yards_of(user)
    if given is None:
        return rows
    return rows.filter(Q(location__yard__in=given) | Q(location__colony__yard__in=given))


def _count(request, pk):
    return get_object_or_404(theirs(request.user), pk=pk)


def ground_words(count):
    return ("On colony" if count.location.colony_id else "Store of", count.location)


def cells_of(count):
    cells = [ground_words(count), ("Evening of", date_format(count.day, "D j M Y"))]
    cells.append(("How", "blind" if count.blind else "beside the book"))
    return [*cells, ("By", count.who)] if count.who else cells


@SHEET
def count_enter(request, pk):
    """The rows: each number is kept in the draft as it is entered, and all of them with the button."""
    count = _count(request, pk)
    if count.status != Count.Status.DRAFT:
        return redirect("count", count.pk)
    sheet = counting.sheet_of(count, also=CountForm.added(request.POST))
    form = CountForm(request.POST or None, count=count, sheet=sheet)
    sent = request.method == "POST" and "add" not in request.POST
    if sent and form.is_valid() and _entered(count, form):
        if request.headers.get("X-Requested-With") == "kept":
            return HttpResponse(status=204)
        if "keep" in request.POST:
            messages.success(
                request, "Kept as a draft. Go on whenever you like: nothing is in the books yet."
            )
            return redirect("counts")
        return redirect("count", count.pk)
    page = {
        "sheet": ENTER,
        "form": form,
        "count": count,
        "leave": reverse("counts"),
        "cells": cells_of(count),
    }
    return render(request, ENTER.template, page, status=422 if sent and form.errors else 200)


def _entered(count, form):
    try:
        counting.enter(count, form.told())
    except Refused as refusal:
        for problem in refusal.problems:
            form.add_error(None, str(problem))
        return False
    return True


@SHEET
def count(request, pk):
    """A draft: its differences, what may explain them, and posting. A posted count: what it was."""
    row = _count(request, pk)
    if request.method != "POST":
        return differences_page(request, row, cells_of(row))
    try:
        known = row.status == Count.Status.POSTED
        act = counting.post_count(row, who=request.user, shown=request.POST.get("shown", ""))
    except Refused as refusal:
        return differences_page(
            request, row, cells_of(row), faults=[str(problem) for problem in refusal.problems]
        )
    tell(request, act, known=known)
    return redirect("count", row.pk)


@require_POST
def count_drop(request, pk):
    """Throws a draft away."""
    row = _count(request, pk)
    try:
        counting.drop(row)
    except Refused as refusal:
        messages.error(request, str(refusal))
    else:
        messages.success(request, f"The draft of {row} was thrown away. Nothing was booked.")
    return redirect("counts")


@require_safe
def counts(request):
    """Which yards are due, which counts wait, which were posted."""
    today, user = timezone.localdate(), request.user
    shown = theirs(user)
    posted = shown.exclude(status=Count.Status.DRAFT).order_by("-day", "-id")
    page = Paginator(posted.exclude(status=Count.Status.DROPPED), A_PAGE).get_page(request.GET.get("page"))
    given = yards_of(user)
    due = [row for row in counting.due(on=today) if given is None or row.yard.pk in given]
    months = counting.interval_months()
    words = {
        "due": due,
        "drafts": shown.drafts(),
        "page": page,
        "months": months,
        "interval": IntervalForm(initial={"months": months}) if may(user, "counts-interval") else None,
        "cells": [
            ("Due", len(due)),
            ("Drafts", shown.drafts().count()),
            ("Counted every", f"{months} months"),
        ],
    }
    return render(request, "inventory/counts.html", words)


@require_POST
def counts_interval(request):
    """The keeper says how often a yard is counted."""
    form = IntervalForm(request.POST)
    if form.is_valid() and counting.set_interval(form.cleaned_data["months"]):
        messages.success(
            request, f"A yard is due when it was not counted for {form.cleaned_data['months']} months."
        )
    elif form.is_valid():
        messages.error(request, "Whose bees these are is not written down yet: load your sheet first.")
    else:
        messages.error(request, "Give a whole number of months, 1 to 60.")
    return redirect("counts")
