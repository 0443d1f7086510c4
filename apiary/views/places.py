"""This week, yards, one yard, one colony: each asks one question and answers, of the yards that are theirs."""

import datetime as dt

from django.shortcuts import get_object_or_404, render
from django.utils import timezone
from django.utils.formats import date_format
from django.views.decorators.http import require_GET

from apiary.models import Colony, Keeper, Yard
from apiary.rights import grounds, hives
from apiary.titles import colony_cells, counted, yard_cells
from apiary.year import flow_year, weeks_of

YEAR_DAYS = 365


@require_GET
def this_week(request):
    today = timezone.localdate()
    year, week, _day = today.isocalendar()
    rows = grounds(request.user).with_colonies(on=today)
    cells = [
        ("Outfit", Keeper.objects.values_list("name", flat=True).first() or "not named yet"),
        ("Week", f"{week} of {weeks_of(year)}"),
        ("Today", date_format(today, "D j M")),
    ]
    context = {"today": today, "cells": cells, "yards": rows, "has_yards": bool(rows)}
    context["living_words"] = counted(sum(row.living for row in rows), "colony", "colonies")
    return render(request, "apiary/this_week.html", context)


@require_GET
def more(request):
    return render(request, "apiary/more.html")


@require_GET
def yards(request):
    today = timezone.localdate()
    rows = grounds(request.user).with_colonies(on=today).with_flow()
    sums = {"stands": sum(row.stands for row in rows), "living": sum(row.living for row in rows)}
    sums["words"] = counted(sums["living"], "colony", "colonies")
    cells = [("Places", len(rows)), ("Colonies", sums["living"]), ("Stands", sums["stands"])]
    context = {"yards": rows, "sums": sums, "cells": cells, "year": _past_year(hives(request.user), today)}
    return render(request, "apiary/yards.html", context)


def _past_year(colonies, today):
    """What became of these colonies in the last twelve months; None where none was there to lose."""
    since = today - dt.timedelta(days=YEAR_DAYS)
    balance = colonies.balance(since=since, until=today)
    if not balance.at_risk:
        return None
    share = f"{float(balance.loss):.0%}".replace("%", "\N{NO-BREAK SPACE}%")
    return {"since": since, "balance": balance, "share": share}


@require_GET
def yard(request, code):
    today = timezone.localdate()
    ground = get_object_or_404(Yard.objects.with_colonies(on=today), code=code)
    windows = list(ground.windows.all())
    flow = flow_year(windows, today=today)
    context = {
        "yard": ground,
        "cells": yard_cells(ground),
        "windows": windows,
        "flow": flow,
        "flow_words": f"{flow.sum_lb} lb a year",
    }
    return render(request, "apiary/yard.html", context)


@require_GET
def colony(request, pk):
    bees = get_object_or_404(Colony.objects.select_related("yard", "hive_set", "mother"), pk=pk)
    events = bees.events.counted().select_related("yard", "who").order_by("-day", "-id")
    context = {"colony": bees, "events": events, "cells": colony_cells(bees)}
    context["events_words"] = counted(len(events), "entry", "entries")
    return render(request, "apiary/colony.html", context)
