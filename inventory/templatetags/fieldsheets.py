"""What printed sheets draw: the hives of a yard, a row each; links to the sheets of a yard and of a colony.

Takes a yard, a colony or a day; gives rows and links, only to what is open to whoever looks. Changes nothing.
"""

from django import template
from django.urls import reverse
from django.utils.translation import gettext_lazy as _

from apiary import rights
from apiary.models import Colony
from inventory.pieces import rows_at
from inventory.stack import CELL
from inventory.templatetags.stacks import gear_on, stack_of, standing_in

register = template.Library()
SPARE = 3  # empty lines under what the book knows of


@register.inclusion_tag("inventory/print_colonies.html")
def printed_colonies(yard, day):
    """The hives that stand in a yard, drawn to scale, each with room to tick and write."""
    colonies = standing_in(yard, on=day)
    gear = gear_on(colonies)
    return {"stacks": [stack_of(colony, gear[colony.pk]) for colony in colonies], "cell": CELL, "yard": yard}


@register.inclusion_tag("inventory/print_store.html")
def printed_store(yard):
    """What the book has in a yard's store, with room to write what is found, brought and taken."""
    return {"rows": rows_at(yard), "yard": yard, "spare": range(SPARE)}


@register.inclusion_tag("inventory/print_links.html", takes_context=True)
def yard_prints(context, yard):
    """Buttons to the sheets of a yard, as far as they are open to them; the shed has only its count."""
    names = (
        ("print-yard", _("Yard sheet to print")),
        ("print-count", _("Count sheet to print")),
        ("yard-tags", _("Colony tags to print")),
    )
    links = [
        {"address": reverse(name, args=[yard.code]), "word": word}
        for name, word in names
        if rights.may(context["user"], name, yard) and (name == "print-count" or not yard.is_shed)
    ]
    return {"links": links}


@register.inclusion_tag("inventory/print_links.html", takes_context=True)
def colony_prints(context, colony):
    """The button to a hive's deadout sheet, while it lives or is dead and not yet worked."""
    ended_else = colony.ended_on is not None and colony.ended_why != Colony.Ended.DIED
    links = []
    if not ended_else and rights.may(context["user"], "print-deadout", colony.yard):
        address = reverse("print-deadout", args=[colony.pk])
        links.append({"address": address, "word": _("Deadout sheet to print")})
    return {"links": links}
