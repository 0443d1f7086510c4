"""The gear page: what there is, part by part, with its places, as of any day."""

from django.shortcuts import render
from django.utils import timezone
from django.utils.formats import date_format
from django.views.decorators.http import require_safe
from django_tables2 import RequestConfig

from apiary.models import Keeper
from apiary.rights import grounds, may_see_money, narrow
from inventory.downloads import rows_a_page
from inventory.filters import GearFilter
from inventory.gear_sums import by_part, sums_of
from inventory.models import Part
from inventory.stock import by_place
from inventory.tables import GearTable


@require_safe
def gear(request):
    asked = GearFilter(request.GET, queryset=Part.objects.all())
    narrow(asked.form, request.user)
    parts, theirs = asked.qs, set(grounds(request.user).values_list("code", flat=True))
    today = timezone.localdate()
    day = asked.chosen.get("day") or today
    stock = by_place(as_of=day if day < today else None)
    rows = by_part([row for row in stock if row.yard in theirs and asked.keeps(row)], parts)
    sums, keeper = sums_of(rows), may_see_money(request.user)
    table = GearTable(rows, sums=sums, shows_value=keeper)
    RequestConfig(request, paginate={"per_page": rows_a_page(request, 100)}).configure(table)
    cells = [("As of", date_format(min(day, today), "D j M Y")), ("Pieces", f"{sums.pieces:,}")]
    if keeper:
        money = Keeper.objects.values_list("money", flat=True).first() or "USD"
        cells.append((f"Value at list, {money}", f"{sums.value:,.0f}"))
    page = {"asked": asked, "table": table, "rows": rows, "cells": cells, "pieces": f"{sums.pieces:,} pieces"}
    return render(request, "inventory/gear.html", page)
