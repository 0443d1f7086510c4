"""What the pages of counts, found gear and histories need to be opened: a draft, a found piece. All invented."""

from inventory import counting, ledger, stock
from inventory.ledger import Line
from tests import makers


def count_pages(colony):
    """{name of an address: its arguments}; None for those that only take something in."""
    told = {"day": makers.DAY, "who": None}
    count = counting.begin(location=colony, key=makers.fresh_key(), **told)
    found = {"colony": colony, "target": colony.yard, "lines": [Line("stand", 1)], "found_allowed": True}
    ledger.take_off(**found, key=makers.fresh_key(), **told)
    return {
        "count": [count.pk],
        "count-enter": [count.pk],
        "count-drop": None,
        "counts-interval": None,
        "found": [stock.found_gear().first().pk],
        "gear-place": [colony.yard.code],
        "gear-colony": [colony.pk],
        "gear-part": ["stand"],
    }
