"""Every question the books are asked, answered: the questions' own functions, and the keeper's pages as they read.

Takes the days to ask of; gives {question: answer} that can be held beside those of other books. Ids are part of the
answers: after loading they are the same. The page of people is not read: it says who has a password.
"""

import re

from django.contrib.auth import get_user_model
from django.test import Client
from django.urls import reverse

from apiary.colonies import yards_on
from apiary.models import Colony, Yard
from inventory import loans, sales, stock, valuing
from inventory.counting.due import due, last_counted
from inventory.deadouts.season import losses_between
from inventory.models import Act, Deadout, Order, Part
from inventory.proof import prove
from planner.models import Run, Season
from planner.plan.json_form import report_from
from planner.plan.text import as_text

PAGES = [
    "home",
    "yards",
    "gear",
    "orders",
    "sales",
    "lent",
    "held",
    "deadouts",
    "deadout-report",
    "counts",
    "books",
    "books-value",
    "books-year",
    "books-write-offs",
    "books-depreciation",
    "season",
    "operation",
    "print-yards",
    "print-deadouts",
    "act-move",
    "act-deadout",
]
PASSING = re.compile(r'name="(csrfmiddlewaretoken|key)" value="[^"]*"|"X-CSRFToken": *"[^"]*"|[0-9a-f]{32}')


def answers_of(days):
    """All questions, on the days and by all of the books."""
    told = {
        "proof": prove(),
        "found": rows(stock.found_gear()),
        "sales": [str(row) for row in sales.all_sales()],
    }
    told["last counted"] = str(last_counted())
    told["value"] = list(valuing.posted_lines())
    for day in (None, *days):
        told["by place", day] = stock.by_place(as_of=day)
        told["owned", day] = stock.owned(as_of=day)
        told["on colonies", day] = stock.on_colonies(as_of=day)
        told["owed", day] = [str(row) for row in stock.owed(as_of=day)]
        told["stood", day] = yards_on(day)
    for day in days:
        told["counts due", day] = [str(row) for row in due(on=day)]
        told["lent", day] = [str(row) for row in loans.lent_out(on=day)]
        told["pools", day] = valuing.pools(last=day)
        told["ended with gear", day] = rows(stock.ended_with_gear(on=day))
        told["balance", day] = Colony.objects.balance(since=days[0], until=day)
        told["losses", day] = losses_between(days[0], day)
    for part in Part.objects.all():
        told["history", part.code] = rows(stock.history(part))
    for order in Order.objects.all():
        told["owed of", order.pk] = [str(row) for row in stock.owed(order)]
    for run in Run.objects.all():
        told["run", run.pk] = {name: getattr(run, name) for name in RUN}
        told["order", run.pk] = as_text(report_from(run.report), why=True) if run.report else ""
    told["seasons"] = list(Season.objects.values())
    return told


RUN = [
    "season_id",
    "status",
    "day",
    "begun",
    "parent_id",
    "what_if",
    "books",
    "asked_at",
    "budget_cents",
    "answers",
    "problem",
    "plan",
    "report",
    "approved_at",
    "approved_by_id",
    "message",
]


def rows(found):
    return [(row.pk, str(row)) for row in found]


def pages(name):
    """{address: what stands on the page}, opened by that person; keys and tokens of forms are passed over."""
    reader = Client()
    reader.force_login(
        get_user_model().objects.get(username=name), "django.contrib.auth.backends.ModelBackend"
    )
    told = {}
    for address in addresses():
        answer = reader.get(address)
        assert answer.status_code == 200, (address, answer.status_code)
        told[address] = PASSING.sub("", answer.content.decode())
    return told


def addresses():
    """Every kind of page, of each row or of some."""
    yield from (reverse(name) for name in PAGES)
    yield from (reverse("yard", args=[yard.code]) for yard in Yard.objects.all())
    yield from (reverse("gear-place", args=[yard.code]) for yard in Yard.objects.all()[:3])
    yield from (reverse("colony", args=[pk]) for pk in keys(Colony, 15))
    yield from (reverse("books-act", args=[pk]) for pk in keys(Act, 12))
    yield from (reverse("order", args=[pk]) for pk in keys(Order, 1))
    yield from (reverse("deadout", args=[pk]) for pk in keys(Deadout, 2))
    yield from (reverse("season-answers", args=[pk]) for pk in keys(Season, 1))
    yield from (reverse("run-order", args=[run.pk]) for run in Run.objects.filter(status=Run.Status.DONE))


def keys(model, step):
    return list(model.objects.order_by("pk").values_list("pk", flat=True))[::step]
