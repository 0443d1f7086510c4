"""What the winter order waits for, for the sheet of this week: a season, a run, or the keeper's word.

Takes nothing but the rows; gives one head, sentence and link. Changes nothing.
"""

from django import template
from django.urls import reverse
from django.utils.formats import date_format

from planner.models import Run, Season

register = template.Library()


@register.simple_tag
def season_waits():
    """head, text, address and word of the one next step."""
    season = Season.objects.first()
    if season is None:
        return _step(
            "No winter order yet",
            "Answer the season's questions and have it worked out.",
            reverse("season"),
            "Begin",
        )
    run = season.runs.in_earnest().exclude(status=Run.Status.CANCELLED).first()
    if run is None:
        return _step(
            f"{season}: nothing worked out",
            f"The order is to go out {date_format(season.starts_on, 'j F Y')}.",
            reverse("season-answers", args=[season.pk]),
            "Answer",
        )
    return _of_run(season, run)


def _of_run(season, run):
    address = reverse("run", args=[run.pk])
    if run.status in (Run.Status.WAITING, Run.Status.WORKING):
        return _step(f"{season}: being worked out", run.stage or "waiting its turn", address, "Look")
    if run.status == Run.Status.FAILED:
        return _step(f"{season}: not worked out", run.message, address, "Look")
    order = reverse("run-order", args=[run.pk])
    if run.approved_at is None:
        return _step(
            f"{season}: order not approved",
            f"Run {run.pk} is done. Read it line by line, then approve it.",
            order,
            "Read",
        )
    return _step(f"{season}: order approved", f"Run {run.pk}, as it was approved.", order, "Read")


def _step(head, text, address, word):
    return {"head": head, "text": text, "address": address, "word": word}
