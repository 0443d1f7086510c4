"""What waits about counts: gear found beyond the book that nobody has explained, drafts, yards that are due.

Takes the context and a day; gives rows for This week. Nothing that is not open to who looks. Changes nothing.
"""

from django import template
from django.db.models import Q
from django.urls import reverse

from apiary import rights
from inventory import counting
from inventory.models import Count, Movement

register = template.Library()
SHOWN = 12


@register.inclusion_tag("inventory/counting_waits.html", takes_context=True)
def counting_waits(context, today):
    """What This week asks about counts and found gear."""
    user = context["user"]
    found = counting.unanswered(as_of=today) if rights.may(user, "found") else Movement.objects.none()
    return {"found": found[:SHOWN], "found_number": found.count(), "counts": counts_waiting(user, today)}


def counts_waiting(user, today):
    """Drafts and yards due among those that are theirs: name, sub line, address, word of the link."""
    if not rights.may(user, "act-correct"):
        return []
    given = rights.yards_of(user)
    drafts = Count.objects.drafts().select_related("location__yard", "location__colony")
    if given is not None:
        drafts = drafts.filter(Q(location__yard__in=given) | Q(location__colony__yard__in=given))
    begun = {count.location.yard_id for count in drafts}
    rows = [
        {
            "name": count.location,
            "sub": f"a count of {count.day.day} {count.day:%B} is a draft",
            "address": reverse("count", args=[count.pk]),
            "word": "Look at it",
        }
        for count in drafts
    ]
    return rows + [
        {
            "name": row.yard,
            "sub": row.words,
            "address": f"{reverse('act-correct')}?yard={row.yard.code}",
            "word": "Count",
        }
        for row in counting.due(on=today)
        if (given is None or row.yard.pk in given) and row.yard.pk not in begun
    ]
