"""What deadouts add to templates: what waits after them, shares in per cent, money of what was saved and lost.

Takes figures or the context; gives words and rows. Changes nothing.
"""

from decimal import Decimal

from django import template

from apiary.models import Keeper
from apiary.rights import within
from inventory.deadouts.figures import percent as in_percent
from inventory.deadouts.waiting import to_call, to_freeze, worked_deadouts

register = template.Library()


@register.inclusion_tag("inventory/deadouts_waiting.html", takes_context=True)
def deadouts_waiting(context):
    """Inspectors to call and combs to freeze, in the yards of who looks."""
    user = context["user"]
    keys = set(within(user, worked_deadouts(), "colony__yard").values_list("pk", flat=True))
    return {
        "user": user,
        "to_call": [row for row in to_call() if row.pk in keys],
        "to_freeze": [row for row in to_freeze() if row.pk in keys],
    }


@register.filter
def percent(share):
    """A share with one decimal, as losses are published."""
    return in_percent(share)


@register.filter
def cents(number):
    """Whole cents in the keeper's money."""
    money = Keeper.objects.values_list("money", flat=True).first() or "USD"
    amount = f"{Decimal(number) / 100:,.2f}"
    return f"${amount}" if money == "USD" else f"{amount} {money}"
