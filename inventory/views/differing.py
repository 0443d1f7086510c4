"""The page of one count: a draft's differences with what may explain them, or what a posted count was.

Takes the Count; gives the page. Posts nothing.
"""

from django.shortcuts import render

from apiary.titles import counted
from inventory import counting
from inventory.models import Count
from inventory.reconcile import Likely, explain
from inventory.views.explaining import told


def differences_page(request, count, cells, faults=()):
    """`faults`: why the count was not posted."""
    rows = counting.compared(count)
    differ = [row for row in rows if row.difference.gap]
    draft = count.status == Count.Status.DRAFT
    explained = _explained(count, differ, request.user) if draft and differ else []
    page = {
        "count": count,
        "draft": draft,
        "cells": cells[1:],  # the place is the page's name
        "faults": faults,
        "rows": [(row, _numbers(row, explained)) for row in differ],
        "agreeing": [row for row in rows if not row.difference.gap],
        "explained": explained,
        "shown": counting.token_of(rows),
        "differ_words": counted(len(differ), "kind differs", "kinds differ"),
        "sum_words": sum_words(differ),
        "reversed": getattr(count.act, "reversed_by", None) if count.act else None,
    }
    return render(request, "inventory/count.html", page, status=422 if faults else 200)


def _explained(count, differ, user):
    rows = [row.difference for row in differ]
    explanations = explain(rows, counting.facts_about(rows, count.day, count=count))
    return told(explanations, day=count.day, user=user)


def _numbers(row, explained):
    """The numbers of the explanations that name this gear at this place."""
    gear = (row.difference.part, row.difference.condition)
    return [
        one.number
        for one in explained
        if row.difference.place in _places(one.explanation)
        and gear in [(part, condition) for part, condition, _ in one.explanation.pieces]
    ]


def _places(explanation):
    """Where an explanation explains something: both ends of what went unbooked."""
    if explanation.likely == Likely.UNBOOKED:
        return (explanation.source, explanation.target)
    return (explanation.place,)


def sum_words(differ):
    """5 more, 8 missing: of all kinds together."""
    more = sum(max(0, row.difference.gap) for row in differ)
    missing = sum(max(0, -row.difference.gap) for row in differ)
    words = [f"{more:,} more"] if more else []
    return ", ".join(words + ([f"{missing:,} missing"] if missing else []))
