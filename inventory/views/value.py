"""The books in money, for the keeper alone: value on a day, a year, write-offs, depreciation, what they rest on."""

from django.contrib import messages
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.formats import date_format
from django.views.decorators.http import require_http_methods, require_safe

from inventory.forms.value import BasisForm, DayForm, StretchForm, ToldPriceForm, YearForm, calendar_year
from inventory.models import ToldPrice
from inventory.told_prices import tell_basis, tell_price
from inventory.value_sums import value_sheet, wear_sheet, write_offs, year_sheet
from inventory.valuing import basis


def _words(day):
    return date_format(day, "j M Y")


@require_safe
def books_value(request):
    form = DayForm(request.GET, day=timezone.localdate())
    day = form.told("day")
    sheet = value_sheet(as_of=day)
    cells = [("Evening of", _words(day)), ("Value", f"{sheet.whole.value:,.2f}")]
    return render(request, "inventory/books_value.html", {"form": form, "sheet": sheet, "cells": cells})


def _stretch(request):
    form = StretchForm(request.GET, **calendar_year(timezone.localdate()))
    first, last = form.told("first"), form.told("last")
    return form, {"first": first, "last": last}, [("From", _words(first)), ("To", _words(last))]


@require_safe
def books_year(request):
    form, days, cells = _stretch(request)
    sheet = year_sheet(**days)
    cells.append(("Closing", f"{sheet.whole.closing.value:,.2f}"))
    return render(request, "inventory/books_year.html", {"form": form, "sheet": sheet, "cells": cells})


@require_safe
def books_write_offs(request):
    form, days, cells = _stretch(request)
    sheet = write_offs(**days)
    cells.append(("Written off", f"{sheet.whole.value:,.2f}"))
    return render(request, "inventory/books_write_offs.html", {"form": form, "sheet": sheet, "cells": cells})


@require_safe
def books_depreciation(request):
    usual = {"year": timezone.localdate().year, "convention": basis().convention, "begins": 1}
    form = YearForm(request.GET, **usual)
    year, rule = form.told("year"), form.rule
    sheet = wear_sheet(year=year, convention=rule)
    span = str(year) if rule.begins == 1 else f"{year} to {year + 1}"
    cells = [("Year", span), ("Depreciation", f"{sheet.charge:,.2f}")]
    return render(
        request, "inventory/books_depreciation.html", {"form": form, "sheet": sheet, "cells": cells}
    )


@require_http_methods(["GET", "HEAD", "POST"])
def books_basis(request):
    """Prices told for opening stock, own work, the convention: two forms, sent one at a time."""
    of_price = request.method == "POST" and "part" in request.POST
    of_basis = request.method == "POST" and not of_price
    told = basis()
    first = {"work": f"{told.work_cents_per_hour / 100:.2f}", "convention": told.convention}
    price = ToldPriceForm(request.POST if of_price else None)
    agreed = BasisForm(request.POST if of_basis else None, initial=first)
    if of_price and price.is_valid():
        tell_price(**price.cleaned_data)
        messages.success(request, f"What {price.cleaned_data['part']} cost is noted.")
        return redirect("books-basis")
    if of_basis and agreed.is_valid():
        tell_basis(**agreed.cleaned_data)
        messages.success(request, "What value rests on is noted.")
        return redirect("books-basis")
    page = {"price": price, "agreed": agreed, "told": ToldPrice.objects.select_related("part")}
    status = 422 if price.errors or agreed.errors else 200
    return render(request, "inventory/books_basis.html", page, status=status)
