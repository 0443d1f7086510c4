"""The books: acts newest first with their movements, one act, and reversing it. Nothing is ever edited."""

from collections import Counter

from django.contrib import messages
from django.core.paginator import Paginator
from django.db.models import Count, Prefetch
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils.formats import date_format
from django.utils.http import url_has_allowed_host_and_scheme
from django.utils.timezone import localtime
from django.views.decorators.http import require_http_methods, require_safe

from apiary.models import ColonyEvent
from apiary.rights import may, refuse_not_own
from inventory.errors import Refused
from inventory.filters import BooksFilter
from inventory.ledger.reversal import off_a_case
from inventory.models import Act
from inventory.sentences import head_of, sentence_of
from inventory.yardwork import undo

A_PAGE, SHOWN = 25, 8
ENDS = ("part", "source__yard", "source__colony", "target__yard", "target__colony")


@require_safe
def books(request):
    asked = BooksFilter(request.GET, queryset=Act.objects.all())
    acts = asked.qs.select_related("who", "reverses", "reversed_by").order_by("-day", "-id")
    page = Paginator(acts, A_PAGE).get_page(request.GET.get("page"))
    page.object_list = list(page.object_list)
    shown = asked.shown().select_related(*ENDS).order_by("id")[:SHOWN]
    _fill(page.object_list, shown)
    cells = [("Acts", f"{page.paginator.count:,}"), ("Order", "newest first")]
    more = request.GET.copy()
    more.pop("page", None)
    words = {"asked": asked, "page": page, "cells": cells, "query": more.urlencode()}
    return render(request, "inventory/books.html", words)


def _fill(acts, shown):
    """Gives each act its head, its first movements and how many there are in all."""
    counts = Act.objects.filter(pk__in=[act.pk for act in acts]).annotate(number=Count("movements"))
    numbers = dict(counts.values_list("pk", "number"))
    told = Counter(
        ColonyEvent.objects.filter(act_key__in=[act.key for act in acts]).values_list("act_key", flat=True)
    )
    fresh = Act.objects.filter(pk__in=numbers).prefetch_related(
        Prefetch("movements", queryset=shown, to_attr="shown")
    )
    rows = {act.pk: act.shown for act in fresh}
    for act in acts:
        act.head, act.shown = head_of(act), rows[act.pk]
        act.number, act.colonies_told = numbers[act.pk], told[act.key]
        act.rest = act.number - len(act.shown)


@require_safe
def books_act(request, pk):
    """One act with all its movements."""
    return render(request, "inventory/books_act.html", _act_page(_act(request, pk)))


@require_http_methods(["GET", "HEAD", "POST"])
def books_reverse(request, pk):
    """Asks once more; by POST the act is undone, its movements and what it told of colonies."""
    act = _act(request, pk)
    if request.method != "POST":
        page = _act_page(act)
        page["cases"] = off_a_case(act) if page["may_reverse"] else {}
        return render(request, "inventory/books_reverse.html", page)
    try:
        never = "never_stood" in request.POST
        undone = undo(act, who=request.user, key=f"reverse-{act.pk}", never_stood=never)
    except Refused as refusal:
        messages.error(request, f"Nothing was reversed. {refusal}")
    else:
        messages.success(request, sentence_of(undone))
    return redirect(_back(request))


def _act(request, pk):
    """An act of the keeper's books; of anyone else's, only their own."""
    act = get_object_or_404(Act.objects.select_related("who", "reverses", "reversed_by"), pk=pk)
    refuse_not_own(request.user, act.who)
    return act


def _act_page(act):
    movements = act.movements.select_related(*ENDS).order_by("id")
    cells = [("Day", date_format(act.day, "j M Y")), ("By", act.who or "no one signed in")]
    cells.append(("Recorded", date_format(localtime(act.recorded_at), "j M Y, H:i")))
    reversed_by = getattr(act, "reversed_by", None)
    page = {"act": act, "head": head_of(act), "movements": movements, "cells": cells}
    page |= {"sentence": sentence_of(act), "reversed_by": reversed_by}
    page["events"] = ColonyEvent.objects.filter(act_key=act.key).select_related("colony", "yard")
    page["may_reverse"] = act.reverses is None and reversed_by is None
    return page


def _back(request):
    """The page on which Undo was pressed; the books, or this week, where that was the page that asks once more."""
    before = request.headers.get("Referer", "")
    safe = url_has_allowed_host_and_scheme(before, {request.get_host()}, require_https=request.is_secure())
    away = reverse("books" if may(request.user, "books") else "home")
    return before if safe and request.path not in before else away
