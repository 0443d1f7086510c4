"""What to load before leaving for each yard of this week, from the last approved order's loads.

Takes the context and a day; gives rows for This week, only of yards that are theirs. Changes nothing.
"""

from django import template

from apiary.rights import may, yard_codes
from planner.after.sheet import after_page
from planner.models import Run
from planner.plan.json_form import report_from

register = template.Library()


@register.inclusion_tag("planner/loads_this_week.html", takes_context=True)
def loads_this_week(context, today):
    """The loads of the week the day falls in, or none."""
    user = context["user"]
    run = (
        Run.objects.filter(approved_at__isnull=False, status=Run.Status.DONE).order_by("-approved_at").first()
    )
    if run is None or not may(user, "run-after"):
        return {"week": None}
    return {"run": run, **_loads(report_from(run.report), today, user)}


def _loads(report, today, user):
    section = report.after
    week = (today - report.day).days // 7
    if section is None or week < 0:
        return {"week": None}
    page = after_page(section, yard_codes(user))
    weeks = [rows for rows in page.weeks if (rows.day - report.day).days // 7 == week]
    free = [row for row in page.free if row.week == week]
    return {"week": weeks[0] if weeks else None, "free": free, "truck_lb": section.truck_lb}
