"""The books in money, for the keeper alone: value on a day, a year, write-offs, depreciation, what they rest on."""

from django.contrib import messages
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.formats import date_format
from django.views.decorators.http import require_http_methods, require_safe

from inventory.forms.value import (
    BasisForm,
    DayForm,
    StretchForm,
    ToldPriceForm,
    ToldRestForm,
    YearForm,
    calendar_year,
)
from inventory.models import ToldPrice, ToldRest
from inventory.told_prices import tell_basis, tell_price, tell_rest
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
    """Prices told for opening stock, rest values, what was agreed: three forms, sent one at a time."""
    sent = request.POST
    name = "price" if "part" in sent else "worn" if "worn" in sent else "agreed"
    name = name if request.method == "POST" else ""
    rests_on = basis()
    first = {"work": f"{rests_on.work_cents_per_hour / 100:.2f}", "convention": rests_on.convention}
    first["rest_percent"] = rests_on.rest_percent
    forms = {
        "price": ToldPriceForm(sent if name == "price" else None),
        "worn": ToldRestForm(sent if name == "worn" else None),
        "agreed": BasisForm(sent if name == "agreed" else None, initial=first),
    }
    if name and forms[name].is_valid():
        messages.success(request, _noted(name, forms[name].cleaned_data))
        return redirect("books-basis")
    told = ToldPrice.objects.select_related("part")
    page = {**forms, "told": told, "rests": ToldRest.objects.select_related("part")}
    return render(request, "inventory/books_basis.html", page, status=422 if name else 200)


def _noted(name, given):
    """Writes what one of the forms tells; gives what is said of it."""
    if name == "price":
        tell_price(**given)
        return f"What {given['part']} cost is noted."
    if name == "worn":
        tell_rest(given["worn"], given["rest"])
        return f"The rest value of {given['worn']} is noted."
    tell_basis(**given)
    return "What value rests on is noted."
