"""Sheets of deadouts: working one, all of them, one as it was worked, care against wax moth, the season's losses."""

import datetime as dt

from django.contrib import messages
from django.db.models import Q
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.formats import date_format
from django.views.decorators.http import require_http_methods, require_safe

from apiary.models import Colony
from apiary.rights import NotYours, in_reach, may_see_money, within, yards_of
from inventory.deadouts.care import care
from inventory.deadouts.freezing import schedule_in
from inventory.deadouts.holds import case_of
from inventory.deadouts.reach import reach
from inventory.deadouts.refusals import WorkedAlready
from inventory.deadouts.season import losses_between
from inventory.deadouts.telling import held_elsewhere
from inventory.deadouts.waiting import to_call, to_freeze, to_work, worked_deadouts
from inventory.deadouts.work import booked_today, work_deadout, worked
from inventory.deadouts.worth import cents_a_piece, money_of, own_movements, worth_of
from inventory.forms.deadouts import CareForm, DeadoutForm, SeenForm, SpanForm
from inventory.models import Deadout, Hold
from inventory.views.answering import (
    LIFTING,
    ActSheet,
    answer,
    day_words,
    ground_of,
    home_store,
    leave_to,
    needs_yards,
    which_colony,
)

SHEET = require_http_methods(["GET", "HEAD", "POST"])

DEADOUT = ActSheet(
    title="Work a deadout",
    verb="Book deadout",
    rows="Booked and found",
    template="inventory/deadout_pieces.html",
    row="inventory/deadout_row.html",
    tells="",
    nothing="The book has nothing on this colony. Add what your hand holds.",
    lead="Which colony was found dead?",
    cautions=(
        LIFTING,
        (
            "honey and dust",
            "Honey of a deadout is never for sale: feed it only where the brood was looked at and no foulbrood is "
            "suspected. Wear a mask where mice nested or comb is mouldy.",
        ),
    ),
)
CARE = ActSheet(title="Care against wax moth", verb="Book the care", template="inventory/deadout_care.html")


@SHEET
@needs_yards
def act_deadout(request):
    """Which colony, then what was seen, then its pieces."""
    at = ground_of(request, "colony", hidden=("yard", "target"))
    colony = at.chosen("colony")
    if colony is None:
        waiting = Q(pk__in=to_work(on=at.on).values("pk")) | Q(
            pk__in=Colony.objects.alive(on=at.on).values("pk")
        )
        return which_colony(request, DEADOUT, at, Colony.objects.filter(waiting))
    earlier = worked(colony)
    if earlier is not None:
        if request.method != "POST":
            messages.error(request, str(WorkedAlready(colony=colony, found_on=earlier.found_on)))
            return redirect(reverse("deadout", args=[earlier.pk]))
    elif colony.ended_on is not None and colony.ended_why != Colony.Ended.DIED:
        return redirect(f"{reverse('act-salvage')}?colony={colony.pk}")
    seen = SeenForm(request.GET)
    page = {"colony": colony, "cells": [("Colony", colony), ("Yard", colony.yard)], "seen": seen}
    if not seen.is_valid():
        page |= {"sheet": DEADOUT, "form": seen, "at": at.settle(), "leave": leave_to(colony)}
        page["cells"] = [*page["cells"], ("Day", day_words(at))]
        return render(request, "inventory/deadout_seen.html", page, status=422 if seen.is_bound else 200)
    return _pieces(request, at, page)


def _pieces(request, at, page):
    colony, seen = page["colony"], page["seen"].seen
    into = at.chosen("target") or home_store(request.user)
    cents = cents_a_piece(as_of=at.on) if may_see_money(request.user) else {}
    as_of = None if booked_today(colony, suspected=seen.suspected) else at.as_of
    ground = {"ground": colony, "into": into, "day": at.on, "as_of": as_of}
    form = DeadoutForm(request.POST or None, seen=seen, cents=cents, **ground)

    def post(told):
        note = told.pop("note")
        return work_deadout(
            colony=colony,
            cause=seen.cause,
            brood_seen=seen.brood_seen,
            suspected=seen.suspected,
            into=form.cleaned_data["into"],
            pieces=form.pieces(),
            note=note,
            **told,
        )

    page["reach"] = reach(colony, found_on=at.on) if seen.suspected else None
    return answer(
        request,
        DEADOUT,
        form,
        post,
        at=at.settle(),
        leave=leave_to(colony),
        then=lambda act: reverse("deadout", args=[act.deadout.pk]),
        **page,
    )


@require_safe
def deadouts(request):
    """Those to work, what waits after those that were worked, and all of them."""
    today = timezone.localdate()
    rows = within(request.user, worked_deadouts(), "colony__yard")
    keys = set(rows.values_list("pk", flat=True))
    page = {
        "to_work": within(request.user, to_work(on=today), "yard"),
        "to_freeze": [row for row in to_freeze() if row.pk in keys],
        "to_call": [row for row in to_call() if row.pk in keys],
        "worked": rows[:200],
        "number": len(keys),
    }
    return render(request, "inventory/deadouts_page.html", page)


@require_safe
def deadout(request, pk):
    """One deadout as it was worked: where its pieces went, what it reaches, what was written on it."""
    row = _deadout(request, pk)
    colony, case = row.colony, case_of(row)
    holds = Hold.objects.filter(deadout=row, movement__act__reversed_by__isnull=True)
    ends = ("movement__part", "movement__target__yard", "movement__target__colony")
    page = {
        "row": row,
        "case": case,
        "moves": list(own_movements(row)),
        "holds": holds.select_related(*ends).order_by("movement__target", "id"),
        "elsewhere": held_elsewhere(row),
        "words": row.words.standing(),
        "cares": row.cares.standing(),
        "waits_for_care": row in to_freeze(),
        "gone": reach(colony, found_on=row.found_on).gone if case in ("suspected", "confirmed") else (),
        "worth": worth_of(row),
        "money": money_of(row) if may_see_money(request.user) else None,
        "standing": not hasattr(row.act, "reversed_by"),
    }
    page["cells"] = [("Colony", colony), ("Yard", colony.yard), ("Found", date_format(row.found_on, "j M Y"))]
    return render(request, "inventory/deadout.html", page)


@SHEET
def deadout_care(request, pk):
    row = _deadout(request, pk)
    at = ground_of(request)
    form = CareForm(request.POST or None, day=at.on)

    def post(told):
        return care(deadout=row, **form.told_care(), **told)

    page = {"celsius": schedule_in("C"), "fahrenheit": schedule_in("F"), "row": row}
    cells = [("Colony", row.colony)]
    leave = reverse("deadout", args=[row.pk])
    return answer(request, CARE, form, post, at=at.settle(), leave=leave, cells=cells, **page)


@require_safe
def deadout_report(request):
    """Losses between two evenings; without any, of the last twelve months."""
    today = timezone.localdate()
    year_ago = today - dt.timedelta(days=365)
    asked = {"since": year_ago.isoformat(), "until": today.isoformat(), **request.GET.dict()}
    form = SpanForm(asked, auto_id="span-%s")
    losses = None
    if form.is_valid():
        losses = losses_between(
            form.cleaned_data["since"], form.cleaned_data["until"], yards=yards_of(request.user)
        )
    page = {"form": form, "losses": losses}
    return render(request, "inventory/deadout_report.html", page, status=200 if losses else 422)


def _deadout(request, pk):
    row = get_object_or_404(Deadout.objects.select_related("act__who", "colony__yard"), pk=pk)
    if not in_reach(request.user, row.colony.yard):
        raise NotYours(f"{row.colony.yard} is not among the yards given to you.")
    return row
