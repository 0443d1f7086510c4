"""The catalogue as it comes with the product: parts, recipes, hive sets and gear sets.

Takes fixtures/catalogue.json; gives rows. Adds what is missing and changes nothing that is there,
so a keeper's own prices, names and sources stay. Does not know suppliers or stock.
"""

import json
from decimal import Decimal

from django.conf import settings
from django.db import transaction

from apiary.models import HiveSet
from inventory.models import GearSet, GearSetLine, Part, Recipe, RecipeLine

CATALOGUE = settings.BASE_DIR / "fixtures" / "catalogue.json"


def ensure_catalogue():
    """Adds every row of the catalogue that the books do not have yet; gives how many were added."""
    data = json.loads(CATALOGUE.read_text(encoding="utf-8"))
    with transaction.atomic():
        added = _add_parts(data["parts"])
        parts = {part.code: part for part in Part.objects.all()}
        added += sum(_add_recipe(row, parts) for row in data["recipes"])
        added += _add_hive_sets(data["hive_sets"])
        added += sum(_add_gear_set(row, parts) for row in data["gear_sets"])
    return added


def _missing(model, rows):
    there = set(model.objects.values_list("code", flat=True))
    return [row for row in rows if row["code"] not in there]


def _add_parts(rows):
    fresh = _missing(Part, rows)
    Part.objects.bulk_create(_part(**row) for row in fresh)
    return len(fresh)


def _part(*, list_price, **fields):
    return Part(list_price_cents=int(Decimal(list_price) * 100), **fields)


def _add_recipe(row, parts):
    recipe, added = Recipe.objects.get_or_create(
        code=row["code"],
        defaults={"name": row["name"], "minutes": Decimal(row["minutes"]), "source": row["source"]},
    )
    if added:
        takes = [RecipeLine(recipe=recipe, part=parts[code], takes=n) for code, n in row["takes"].items()]
        makes = [RecipeLine(recipe=recipe, part=parts[code], makes=n) for code, n in row["makes"].items()]
        RecipeLine.objects.bulk_create(takes + makes)
    return added


def _add_hive_sets(rows):
    fresh = _missing(HiveSet, rows)
    HiveSet.objects.bulk_create(HiveSet(**row) for row in fresh)
    return len(fresh)


def _add_gear_set(row, parts):
    gear_set, added = GearSet.objects.get_or_create(
        code=row["code"], defaults={"name": row["name"], "hive_set": row["hive_set"]}
    )
    if added:
        lines = row["parts"].items()
        GearSetLine.objects.bulk_create(
            GearSetLine(gear_set=gear_set, part=parts[code], quantity=n) for code, n in lines
        )
    return added
