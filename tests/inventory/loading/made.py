"""The example sheet posted, changed and told; rows counted."""

import dataclasses
import datetime as dt

from apiary.models import Colony, ColonyEvent, FlowWindow, Keeper, Yard
from inventory import loading
from inventory.models import Act, Holding, Movement, Offer, Supplier
from inventory.sheets.examples import example

DAY = dt.date(2026, 9, 1)
LATER = dt.date(2026, 10, 1)


def load(sheet=None, *, day=DAY, digest="a"):
    return loading.load(sheet or example(), day=day, who=None, digest=digest * 64)


def changed(**fields):
    return dataclasses.replace(example(), **fields)


def told(loaded, kind):
    return [(change.name, change.becomes, change.detail) for change in loaded.changes if change.kind == kind]


def everything():
    """All rows a sheet may touch, counted."""
    models = (Keeper, Yard, FlowWindow, Colony, ColonyEvent, Supplier, Offer, Act, Movement, Holding)
    return [model.objects.count() for model in models]
