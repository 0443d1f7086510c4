"""Past winters as the keeper tells them: colonies in and out, by yard or of the whole outfit. Only writer of PastWinter.

Takes plain numbers; gives rows, and for planning one pair a winter. What the whole outfit is told to have counts before
the sum of its yards: not every yard need be told.
"""

from collections import defaultdict

from django.db import transaction

from apiary.models import PastWinter

MOST_WINTERS = 20


@transaction.atomic
def tell_winter(*, autumn, went_in, came_out, yard=None):
    """Writes one winter down, or puts right what was told of it. Gives (row, what it was before: pair or None)."""
    row = PastWinter.objects.select_for_update(of=("self",)).filter(autumn=autumn, yard=yard).first()
    was = (row.went_in, row.came_out) if row else None
    row = row or PastWinter(autumn=autumn, yard=yard)
    row.went_in, row.came_out = went_in, came_out
    if was != (went_in, came_out):
        row.save()
    return row, was


def winters_told(*, until):
    """Pairs (in, out) of the winters that began by the year `until`, the earliest first, the last 20 of them."""
    whole: dict[int, tuple] = {}
    yards: dict[int, list[int]] = defaultdict(lambda: [0, 0])
    for row in PastWinter.objects.filter(autumn__lte=until):
        if row.yard_id is None:
            whole[row.autumn] = (row.went_in, row.came_out)
        else:
            yards[row.autumn][0] += row.went_in
            yards[row.autumn][1] += row.came_out
    pairs = {autumn: (pair[0], pair[1]) for autumn, pair in yards.items()} | whole
    return tuple(pairs[autumn] for autumn in sorted(pairs))[-MOST_WINTERS:]
