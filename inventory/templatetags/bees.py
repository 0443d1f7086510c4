"""What the books add about bees: a colony's family and queen, and what buyers still bring back.

Takes a colony or a day and who looks; gives links and words, deposits to the keeper alone. Changes nothing.
"""

from django import template

from apiary import rights
from apiary.queens import queen_of
from inventory.models import Sale
from inventory.sales import waiting_sales

register = template.Library()


@register.inclusion_tag("inventory/family.html", takes_context=True)
def family(context, colony):
    """Mother, daughters and queen of a colony; to whom it was sold."""
    user = context["user"]
    daughters = rights.within(user, colony.daughters.real(), "yard").order_by("started_on", "tag")
    mother = colony.mother
    return {
        "colony": colony,
        "mother": mother,
        "mother_shown": mother is not None and rights.in_reach(user, mother.yard),
        "daughters": list(daughters),
        "queen": queen_of(colony),
        "sale": Sale.objects.standing().filter(colonies=colony).first(),
    }


@register.inclusion_tag("inventory/buyers_waiting.html", takes_context=True)
def buyers_waiting(context, today):
    """Sales of which something is still to come, the first due first."""
    user = context["user"]
    rows = waiting_sales(within=rights.yards_of(user))
    return {
        "rows": [{"waiting": row, "late": row.back_by is not None and row.back_by < today} for row in rows],
        "sees_money": rights.may_see_money(user),
        "may_book": rights.may(user, "sale-back"),
    }
