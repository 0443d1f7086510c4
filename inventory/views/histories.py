"""The history of a place and of a part: opening, in, out and closing of a period, and its movements page by page.

Takes the place or part and two days from the address; asks turnover and history. Changes nothing.
"""

from django.core.paginator import Paginator
from django.shortcuts import get_object_or_404, render
from django.urls import reverse
from django.utils import timezone
from django.utils.formats import date_format
from django.views.decorators.http import require_safe

from apiary.models import Colony, Yard
from inventory.downloads import rows_a_page
from inventory.forms.periods import PeriodForm
from inventory.models import Part
from inventory.stock import history
from inventory.turnover import of_part, of_place

A_PAGE = 25


@require_safe
def gear_place(request, code):
    """The history of a yard's store."""
    yard = get_object_or_404(Yard, code=code)
    return _place_page(request, yard, "Store", reverse("yard", args=[yard.code]))


@require_safe
def gear_colony(request, pk):
    """The history of the gear on a colony."""
    colony = get_object_or_404(Colony.objects.select_related("yard"), pk=pk)
    return _place_page(request, colony, "Colony", reverse("colony", args=[colony.pk]))


def _place_page(request, ground, kind, back):
    period = PeriodForm(request.GET, today=timezone.localdate())
    rows = of_place(ground, since=period.first, until=period.last)
    movements = history(location=ground, as_of=period.last).filter(day__gte=period.first)
    page = {"kind": kind, "ground": ground, "back": back, "rows": rows, "whole": None, "first": "Piece"}
    return _history(request, page, period, movements, parts=True)


@require_safe
def gear_part(request, code):
    """The history of a part: where it lay, what came and went."""
    part = get_object_or_404(Part, code=code)
    period = PeriodForm(request.GET, today=timezone.localdate())
    rows, whole = of_part(part, since=period.first, until=period.last)
    movements = history(part, as_of=period.last).filter(day__gte=period.first)
    name = part.name[:1].upper() + part.name[1:]
    page = {
        "kind": "Part",
        "ground": name,
        "back": reverse("gear"),
        "rows": rows,
        "whole": whole,
        "first": "Place",
    }
    return _history(request, page, period, movements, parts=False)


def _history(request, page, period, movements, *, parts):
    """`parts`: the rows are parts, else places."""
    page["page"] = Paginator(movements, rows_a_page(request, A_PAGE)).get_page(request.GET.get("page"))
    days = [date_format(day, "j M Y") for day in (period.first, period.last)]
    page |= {"period": period, "parts": parts, "cells": [("From", days[0]), ("To", days[1])]}
    page["query"] = f"since={period.first.isoformat()}&until={period.last.isoformat()}"
    return render(request, "inventory/history.html", page)
