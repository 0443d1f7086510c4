"""Whose bees these are, as it stands on every paper: name, address, phone, e-mail. Money, region and truck come with
the keeper's sheet.

Takes the words; writes the one Keeper row, also the first time. Whoever else writes that row does it through here.
"""

from apiary.models import Keeper

TOLD = ("name", "address", "phone", "email")


def operation():
    """The row as it stands; one without a name before anything was told."""
    return Keeper.objects.order_by("pk").first() or Keeper(name="")


def tell_operation(**told):
    """Writes what is told of the operation; gives the row."""
    row = operation()
    changed = [field for field, value in told.items() if getattr(row, field) != value]
    for field in changed:
        setattr(row, field, told[field])
    if row.pk is None or changed:
        row.save()
    return row
