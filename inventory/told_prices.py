"""What the keeper tells for value: the cost of a piece of opening stock, own work, the convention, rest values.

Takes Decimals; writes ToldPrice, ToldRest and ValueBasis, nobody else does.
"""

from django.db import transaction

from inventory.models import ToldPrice, ToldRest, ValueBasis
from inventory.orders import cents


def tell_price(part, price):
    """What a piece of opening or found stock cost; None: the list price counts again."""
    _tell(ToldPrice, part, price)


def tell_rest(part, rest):
    """What a piece is still worth at the end of its years; None: the share told for all gear counts again."""
    _tell(ToldRest, part, rest)


def _tell(table, part, money):
    with transaction.atomic():
        if money is None:
            table.objects.filter(part=part).delete()
        else:
            table.objects.update_or_create(part=part, defaults={"cents": cents(money)})


def tell_basis(*, work, convention, rest_percent=None):
    """What an hour of own work is worth (None: nothing), how gear is depreciated, and down to what share of cost."""
    told = {
        "work_cents_per_hour": 0 if work is None else cents(work),
        "convention": convention,
        "rest_percent": rest_percent or 0,
    }
    ValueBasis.objects.update_or_create(pk=1, defaults=told)
