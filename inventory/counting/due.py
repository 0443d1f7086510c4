"""Which stores are due to be counted: not counted for longer than the keeper's interval, the longest first.

Takes the day; gives DueRows. A store with nothing in it and never counted is not due.
"""

import datetime as dt
from dataclasses import dataclass

from django.db.models import Exists, Max, OuterRef, Q

from apiary.models import Keeper, Yard
from inventory.models import Count, Holding


@dataclass(frozen=True, kw_only=True)
class DueRow:
    """A yard, when its store was last counted (None: never) and since when it is due."""

    yard: Yard
    last: dt.date | None
    due_since: dt.date | None

    @property
    def words(self):
        if self.last is None:
            return "never counted"
        return f"last counted on {self.last.day} {self.last:%B %Y}"


def interval_months():
    """After how many months a yard is due."""
    months = Keeper.objects.values_list("count_every_months", flat=True).first()
    return months or Keeper._meta.get_field("count_every_months").default


def set_interval(months):
    """The keeper's own interval; False where no keeper is in the books yet."""
    return bool(Keeper.objects.update(count_every_months=months))


def months_before(day, months):
    """The same day so many months earlier, the month's last day where it has no such day."""
    year, month = divmod(day.year * 12 + day.month - 1 - months, 12)
    month += 1
    last = (dt.date(year + month // 12, month % 12 + 1, 1) - dt.timedelta(days=1)).day
    return dt.date(year, month, min(day.day, last))


def last_counted():
    """Yards with `last`: the last day a posted count of the store stands for."""
    stands = Q(store__counts__status=Count.Status.POSTED, store__counts__act__reversed_by__isnull=True)
    return Yard.objects.annotate(last=Max("store__counts__day", filter=stands))


def due(*, on):
    """DueRows, never counted first, then the longest ago."""
    limit = months_before(on, interval_months())
    stocked = Exists(Holding.objects.filter(location__yard=OuterRef("pk"), quantity__gt=0))
    yards = last_counted().annotate(stocked=stocked).filter(Q(last__lte=limit) | Q(last=None, stocked=True))
    rows = [
        DueRow(
            yard=yard, last=yard.last, due_since=yard.last and months_before(yard.last, -interval_months())
        )
        for yard in yards
    ]
    return sorted(rows, key=lambda row: (row.last or dt.date.min, row.yard.name))
