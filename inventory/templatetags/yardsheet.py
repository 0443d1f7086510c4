"""What the books add to apiary's pages: a yard's store, its acts, the hives to salvage, the orders that wait to be received.

Takes a yard or a day and who looks; gives tables and links. Links only to pages that exist and are open to them.
Changes nothing.
"""

from django import template
from django.db.models import Sum
from django.urls import NoReverseMatch, reverse
from django.utils import timezone
from django.utils.translation import gettext_lazy as _

from apiary import rights
from inventory.models import Holding, Order
from inventory.orders import owed_everywhere
from inventory.stock import ended_with_gear

register = template.Library()

# name of the page's address, words of its button; the first that exists is the one filled button of a yard's sheet
ACTS = (
    ("act-super-up", _("Super up")),
    ("act-move", _("Haul a load")),
    ("act-pull", _("Pull supers")),
    ("act-brood-box", _("Second brood box")),
    ("act-split", _("Split")),
    ("act-requeen", _("Requeen")),
    ("act-unite", _("Unite")),
    ("act-hive", _("Hive a nuc")),
    ("act-sell", _("Sell bees")),
    ("act-move-colonies", _("Move colonies")),
    ("act-place", _("Place gear")),
    ("act-take-off", _("Take gear off")),
    ("act-feed", _("Feed a yard")),
    ("act-draw", _("Comb drawn")),
    ("act-use", _("Use up")),
    ("act-correct", _("Count")),
    ("act-deadout", _("Work a deadout")),
    ("act-salvage", _("Salvage a hive")),
    ("act-lend", _("Lend")),
    ("evening", _("Catch up an evening")),
    ("act-assemble", _("Assemble")),
    ("act-mend", _("Mend")),
    ("act-mark", _("Set aside")),
    ("act-scrap", _("Scrap")),
    ("act-burn", _("Burn")),
    ("act-lose-yard", _("A yard lost")),
)
WITH_GEAR = ("act-move", "act-assemble", "act-mend", "act-use", "lent", "evening", "act-correct", "orders")
ON_LIVING = ("act-deadout", "act-place", "act-take-off", "act-correct", "act-mark", "act-scrap")
ON_ENDED = ("act-salvage", "act-correct", "act-burn")
ON_DEAD = ("act-deadout", "act-correct", "act-burn")
ON_BEES = ("act-split", "act-requeen", "act-unite", "act-sell", "act-move-colonies")
ON_WORKED = ("act-correct",)  # an ended colony whose gear is all accounted for


@register.inclusion_tag("inventory/yard_store.html")
def yard_store(yard):
    """The table of what lies in a yard's store, by part and condition."""
    holdings = list(
        Holding.objects.filter(location__yard=yard, quantity__gt=0)
        .select_related("part")
        .order_by("part__kind", "part__code", "condition")
    )
    pieces = sum(holding.quantity for holding in holdings if holding.part.unit == "piece")
    words = f"{pieces:,} pieces" if pieces != 1 else "1 piece"
    return {"holdings": holdings, "pieces": pieces, "pieces_words": words, "yard": yard}


@register.inclusion_tag("inventory/yard_acts.html", takes_context=True)
def yard_acts(context, yard):
    """Buttons to the acts whose pages exist and are open to them, with this yard filled in."""
    return {"acts": acts_at(yard, context["user"])}


@register.inclusion_tag("inventory/yard_thumb.html", takes_context=True)
def yard_thumb(context, yard):
    """The first two acts and the way to the others, for the foot of a phone."""
    return {"acts": acts_at(yard, context["user"])}


def acts_at(yard, user):
    """Address and word of each act whose page exists and is open to them."""
    acts = []
    for name, word in ACTS:
        if not rights.may(user, name, yard):
            continue
        try:
            acts.append({"address": f"{reverse(name)}?yard={yard.code}", "word": word})
        except NoReverseMatch:
            continue
    return acts


@register.inclusion_tag("inventory/gear_acts.html", takes_context=True)
def gear_acts(context):
    """Buttons to the acts that begin with gear, and to the orders, as far as they are open to them."""
    words = {**dict(ACTS), "orders": _("Orders"), "lent": _("Lent out")}
    names = [name for name in WITH_GEAR if rights.may(context["user"], name)]
    return {"acts": [{"address": reverse(name), "word": words[name]} for name in names]}


@register.inclusion_tag("inventory/colony_acts.html", takes_context=True)
def colony_acts(context, colony):
    """Buttons to what can be done to one colony's gear, as far as it is open to them."""
    user = context["user"]
    left = ON_DEAD if colony.ended_why == "died" else ON_ENDED
    names = ON_LIVING if colony.ended_on is None else left if still_on(colony) else ON_WORKED
    names = (*names, *_of_bees(colony))
    words = dict(ACTS)
    acts = [
        {"address": f"{reverse(name)}?colony={colony.pk}", "word": words[name]}
        for name in names
        if rights.may(user, name, colony.yard)
    ]
    if colony.ended_on is None and rights.may(user, "act-end", colony.yard):
        acts.append({"address": reverse("act-end", args=[colony.pk]), "word": _("It is no more")})
    return {"acts": acts, "colony": colony, "shows_books": rights.may(user, "books")}


def _of_bees(colony):
    """Acts on the bees of a living colony; a nuc can be hived."""
    if colony.ended_on is not None:
        return ()
    return (*ON_BEES, *(["act-hive"] if colony.hive_set.is_nuc else []))


@register.simple_tag
def still_on(colony):
    """Pieces the book has on a colony: none of an ended one once its gear is worked."""
    return Holding.objects.filter(location__colony=colony).aggregate(pieces=Sum("quantity"))["pieces"] or 0


@register.inclusion_tag("inventory/deadouts.html")
def deadouts(yard):
    """Cautions for the colonies of a yard that died and still hold gear."""
    dead = ended_with_gear(on=timezone.localdate()).filter(yard=yard, ended_why="died")
    return {"colonies": dead}


@register.simple_tag(takes_context=True)
def hives_waiting(context, today):
    """Yards with hives of ended colonies that still hold gear: their tags, the pieces on them, the way to salvage."""
    rows: dict = {}
    for colony in rights.within(context["user"], ended_with_gear(on=today), "yard"):
        name = "act-deadout" if colony.ended_why == "died" else "act-salvage"
        empty = {"yard": colony.yard, "tags": [], "pieces": 0, "name": name}
        row = rows.setdefault((colony.yard_id, name), empty)
        row["tags"].append(colony.tag)
        row["pieces"] += colony.pieces
    for row in rows.values():
        if rights.may(context["user"], row["name"], row["yard"]):
            row["address"] = f"{reverse(row['name'])}?yard={row['yard'].code}"
    return list(rows.values())


@register.simple_tag(takes_context=True)
def orders_waiting(context, today):
    """Nothing to who receives none; orders placed and not all come, the longest due first, each with what is still owed."""
    owed: dict[int, int] = {}
    for row in owed_everywhere() if rights.may(context["user"], "order-receive") else ():
        if row.owed:
            owed[row.line.order_id] = owed.get(row.line.order_id, 0) + row.owed
    orders = Order.objects.filter(pk__in=owed).select_related("supplier").order_by("due_on", "pk")
    return [{"order": order, "owed": owed[order.pk], "late": order.due_on < today} for order in orders]
