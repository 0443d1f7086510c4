"""Sheets of bees sold: all sales, which ones, what goes with them and on what terms; and what a buyer brings back.

Each view finds colonies or sale, reads the form, calls one act and answers. Prices are shown to the keeper alone.
"""

from django.shortcuts import get_object_or_404, render
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_safe
from django_tables2 import RequestConfig

from apiary.models import Colony
from apiary.rights import may_see_money, refuse_elsewhere, within
from inventory.downloads import rows_a_page
from inventory.forms.sales import BroughtBackForm, SellForm
from inventory.models import Sale
from inventory.sales import all_sales, deposit_left, still_owed
from inventory.tables import SalesTable
from inventory.views.answering import (
    LIFTING,
    SMOKE,
    ActSheet,
    answer,
    day_words,
    ground_of,
    home_store,
    leave_to,
    needs_yards,
)
from inventory.yardwork.selling import got_back, sell

SHEET = require_http_methods(["GET", "HEAD", "POST"])

SELL = ActSheet(
    title="Sell bees",
    verb="Sell",
    rows="Goes with them",
    template="inventory/sell.html",
    tells="",
    nothing="The book has nothing on them. Add what goes along.",
    cautions=(
        (
            "disease",
            "Sell no bees whose brood was not looked at. Many places want the inspector's paper for a sale: ask what "
            "your law says before they leave the yard.",
        ),
        SMOKE,
        LIFTING,
    ),
)
BROUGHT_BACK = ActSheet(
    title="Brought back",
    verb="Book",
    rows="Brought back",
    template="inventory/brought_back.html",
    tells="",
    nothing="No piece is owed any more: settle it, or add what came.",
    cautions=(
        (
            "disease",
            "Combs and boxes that stood on other bees may carry foulbrood: look at every comb, and hold back what you "
            "doubt, before it goes on a hive.",
        ),
    ),
)


@require_safe
def sales(request):
    """All sales; those of which something is still to come stand above the table, the first due first."""
    rows = all_sales()
    table = SalesTable(rows)
    RequestConfig(request, paginate={"per_page": rows_a_page(request, 25)}).configure(table)
    waits = [row for row in rows if row.is_open]
    waits.sort(key=lambda row: (row.sale.back_by is None, row.sale.back_by or row.sale.day))
    page = {"table": table, "waits": waits, "number": len(rows), "today": timezone.localdate()}
    return render(request, "inventory/sales.html", page)


@SHEET
@needs_yards
def act_sell(request):
    at = ground_of(request, hidden=("yard", "colony"))
    colonies = _chosen(request, at)
    if not colonies:
        return _which(request, at)
    yard = colonies[0].yard
    form = SellForm(request.POST or None, ground=colonies, into=yard, day=at.on, as_of=at.as_of)

    def post(told):
        told = {name: told[name] for name in ("day", "who", "key", "note")}
        chosen = {"goes": form.lines(), "stays_at": form.cleaned_data["into"]}
        return sell(colonies=colonies, terms=form.terms(told["day"]), **chosen, **told)

    tags = ", ".join(colony.tag for colony in colonies)
    cells, leave = [("Sold", tags), ("Yard", yard)], leave_to(yard)
    more = {"colonies": colonies, "tags": tags}
    return answer(request, SELL, form, post, at=at.settle(), leave=leave, cells=cells, **more)


@SHEET
def sale_back(request, pk):
    """What a buyer brings back of one sale."""
    sale = get_object_or_404(Sale.objects.standing().prefetch_related("colonies__yard", "owed__part"), pk=pk)
    yards = [colony.yard for colony in sale.colonies.all()]
    refuse_elsewhere(request.user, yards)
    at = ground_of(request)
    form = BroughtBackForm(
        request.POST or None,
        still=still_owed(sale),
        into=home_store(request.user),
        deposit_left=deposit_left(sale),
        sees_money=may_see_money(request.user),
        day=at.on,
    )

    def post(told):
        told = {name: told[name] for name in ("day", "who", "key", "note")}
        chosen = {"into": form.cleaned_data["into"], "settles": form.cleaned_data["settles"]}
        return got_back(sale=sale, lines=form.lines(), refund_cents=form.refund_cents(), **chosen, **told)

    cells = [("Buyer", sale.buyer), ("Sold", ", ".join(str(one) for one in sale.colonies.all()))]
    leave = leave_to(*yards)
    return answer(request, BROUGHT_BACK, form, post, at=at.settle(), leave=leave, cells=cells, sale=sale)


def _chosen(request, at):
    """The colonies the address names, one or several, as far as they are theirs."""
    named = [pk for pk in request.GET.getlist("colonies") if pk.isdecimal() and len(pk) < 19]
    one = at.chosen("colony")
    rows = within(request.user, Colony.objects.all(), "yard").filter(
        pk__in=[*named, *([one.pk] if one else [])]
    )
    return list(rows.select_related("yard", "hive_set").order_by("tag"))


def _which(request, at):
    """Colonies to sell, of the yard in the address or of all; nucs first."""
    yard = at.chosen("yard")
    rows = within(request.user, Colony.objects.alive(on=at.on), "yard").select_related("yard", "hive_set")
    rows = rows.filter(yard=yard) if yard else rows
    rows = rows.order_by("yard__name", "-hive_set__is_nuc", "tag")
    page = {"sheet": SELL, "colonies": rows, "at": at, "yard": yard, "leave": leave_to(yard)}
    page["cells"] = [("Yard", yard or "all yards"), ("Day", day_words(at))]
    return render(request, "inventory/sell_which.html", page)
