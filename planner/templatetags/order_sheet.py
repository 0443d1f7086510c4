"""Title-block cells and figures of the season's sheets.

Takes runs, reports and money; gives lists of (label, value) and text. Knows no address.
"""

from django import template
from django.utils import timezone
from django.utils.formats import date_format

from planner.plan.words import sum_words
from planner.queue import silent_seconds
from planner.supposing import words_of

register = template.Library()

LONG_SILENCE = 15  # seconds; a worker is heard about once a second
PROVEN_BEST = 5e-6  # as a share; less is a solver's rounding


@register.filter
def season_cells(season):
    """The title block of a season's page."""
    return [("Day of the order", date_format(season.starts_on, "j F Y")), ("Budget", budget_of(season))]


@register.filter
def run_cells(run):
    """The title block of a run's page."""
    cells = [("Run", f"{run.pk}, {state_of(run)}"), ("Seasons", f"{run.scenarios:,}")]
    if run.gap_reached is not None and run.is_over:
        best = run.gap_reached < PROVEN_BEST
        cells.append(("Proven", "best") if best else ("Proven within", percent(run.gap_reached)))
    if run.attempts > 1:
        cells.append(("Taken up", f"{run.attempts} times"))
    if run.is_done:
        cells.append(("Status", "approved" if run.approved_at else "not approved"))
    if run.later_in_season:
        cells.append(("Books of", date_format(run.day, "j F Y")))
    if run.only_checks:
        cells.append(("Checks", f"the beliefs of run {run.parent_id}"))
    elif run.parent_id:
        cells.append(("What if", words_of(run.what_if)))
    return cells


@register.filter
def state_of(run):
    """waiting, working, done 05:58."""
    if not run.finished_at:
        return run.get_status_display()
    return f"{run.get_status_display()} {timezone.localtime(run.finished_at):%H:%M}"


@register.filter
def elapsed(since):
    """48 s, 2 min 5 s, 1 h 3 min: since then."""
    minutes, seconds = divmod(max(0, int((timezone.now() - since).total_seconds())), 60)
    hours, minutes = divmod(minutes, 60)
    if hours:
        return f"{hours} h {minutes} min"
    return f"{minutes} min {seconds} s" if minutes else f"{seconds} s"


@register.filter
def silence(run):
    """What to make of a worker not heard of for long; empty where it was heard just now."""
    seconds = silent_seconds(run, timezone.now())
    if seconds < LONG_SILENCE:
        return ""
    again = timezone.localtime(run.leased_until)
    return (
        f"Nothing was heard of it for {seconds} s. If it broke off, it is taken up again "
        f"from the start after {again:%H:%M:%S}."
    )


@register.filter
def budget_of(row):
    return "no limit" if row.budget is None else sum_words(row.budget, "USD", cents_too=bool(row.budget % 1))


@register.filter
def percent(share):
    """Two figures that count: 0.08 %, 1.3 %; what is next to nothing is called so."""
    value = float(share) * 100
    if value < 0.005:
        return "under 0.005 %" if value > 0 else "0 %"
    return f"{value:.2g} %" if value < 100 else f"{value:,.0f} %"


@register.filter
def money(value, code="USD"):
    """$1,240.50, signed where it is less than nothing."""
    return "" if value is None else sum_words(value, code, cents_too=True)


@register.filter
def whole_money(value, code="USD"):
    return "" if value is None else sum_words(value, code)


@register.filter
def figures(value):
    """A sum in a column whose head names the money: 1,240.50."""
    return f"{value:,.2f}".replace("-", "−")


@register.filter
def more_or_less(value, code="USD"):
    """$12.50 more, $3.00 less; "the same" where nothing differs."""
    if not value:
        return "the same"
    return f"{sum_words(abs(value), code, cents_too=True)} {'more' if value > 0 else 'less'}"


@register.filter
def supposed_of(run):
    """What a what-if supposes, in words; empty for a run in earnest."""
    return words_of(run.what_if)


@register.filter
def bare_head(head):
    """A caution's head without the word, which the component brings."""
    return head.removeprefix("Caution: ")
