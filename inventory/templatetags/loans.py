"""What is lent and due back, for the page of the week.

Takes the day and who looks; gives the loans due, nothing to who may not book them back. Changes nothing.
"""

from django import template

from apiary import rights
from inventory.loans import due_back

register = template.Library()


@register.inclusion_tag("inventory/loans_due.html", takes_context=True)
def loans_due(context, today):
    """A row for each loan due today or before."""
    user = context["user"]
    may = rights.may(user, "act-get-back")
    return {"loans": due_back(on=today, yards=rights.yards_of(user)) if may else []}
