"""What the keeper tells for value: the cost of a piece of opening stock, own work, the convention.

Takes Decimals; writes ToldPrice and ValueBasis, nobody else does.
"""

from django.db import transaction

from inventory.models import ToldPrice, ValueBasis
from inventory.orders import cents


def tell_price(part, price):
    """What a piece of opening or found stock cost; None: the list price counts again."""
    with transaction.atomic():
        if price is None:
            ToldPrice.objects.filter(part=part).delete()
        else:
            ToldPrice.objects.update_or_create(part=part, defaults={"cents": cents(price)})


def tell_basis(*, work, convention):
    """What an hour of own work is worth (None: nothing), and how gear is depreciated."""
    told = {"work_cents_per_hour": 0 if work is None else cents(work), "convention": convention}
    ValueBasis.objects.update_or_create(pk=1, defaults=told)
