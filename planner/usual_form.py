"""The keeper's usual order: what they would have bought without any planning, in packs of each offer. May stay empty.

Takes what was typed; gives checked packs with the fault at its field; writes Season.usual_order and nothing else.
An offer told before that is no longer listed keeps its line until it is emptied.
"""

from dataclasses import dataclass

from django import forms

from planner.errors import Refused
from planner.intake import operation_as_of
from planner.plan.words import sum_words

MOST_PACKS = 10_000
PREFIX = "packs-"


@dataclass(frozen=True, kw_only=True)
class AskedSupplier:
    """One supplier's offers as the page lists them."""

    name: str
    fields: tuple[forms.BoundField, ...]


class UsualOrderForm(forms.Form):
    """A field for every offer of the price lists."""

    def __init__(self, season, data=None):
        super().__init__(data)
        self.season = season
        self.suppliers: dict[str, list[str]] = {}
        for supplier, code, name, price in _listed(season):
            self.suppliers.setdefault(supplier, []).append(PREFIX + code)
            self.fields[PREFIX + code] = forms.IntegerField(
                label=name,
                help_text=price,
                required=False,
                min_value=0,
                max_value=MOST_PACKS,
                initial=season.usual_order.get(code),
                widget=forms.NumberInput(attrs={"inputmode": "numeric", "step": "1"}),
            )

    def groups(self):
        for name, keys in self.suppliers.items():
            yield AskedSupplier(name=name, fields=tuple(self[key] for key in keys))

    @property
    def told(self):
        lines = len(self.season.usual_order)
        return "not told" if not lines else f"{lines} line{'' if lines == 1 else 's'}"

    def save(self):
        packs = {key.removeprefix(PREFIX): packs for key, packs in self.cleaned_data.items() if packs}
        self.season.usual_order = packs
        self.season.save(update_fields=["usual_order"])
        return self.season


def _listed(season):
    """(supplier, code, name, price in words) of each offer, then of each line told whose offer is gone."""
    try:
        operation = operation_as_of(season.starts_on)
    except Refused:  # told when a run is asked for
        return
    names = {supplier.code: supplier.name for supplier in operation.suppliers}
    gone = dict(season.usual_order)
    for offer in operation.offers:
        gone.pop(offer.code, None)
        price = sum_words(offer.prices[0][1], operation.money, cents_too=True)
        yield names[offer.supplier], offer.code, offer.name, f"{price} a pack"
    for code in sorted(gone):
        yield "No longer offered", code, code, "Left out of the comparison."
