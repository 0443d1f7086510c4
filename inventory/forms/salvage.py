"""The hive of an ended colony taken apart: what was found of each piece and where it goes.

Takes the rows of the colony; gives Pieces. What was not there is a loss. Unless someone who knows foulbrood
has looked at the brood, every comb is held back, whatever was chosen for it.
"""

from dataclasses import dataclass

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Yard
from inventory.forms.lines import LinesForm, number
from inventory.gear import Comb, Condition
from inventory.ledger import Piece
from inventory.pieces import Row, by_head

LOOKED = (("clean", _("Yes, clean")), ("no", _("No")), ("suspected", _("Foulbrood suspected")))
BECOMES = (
    ("sound", _("Store")),
    ("to_mend", _("Mend")),
    ("held", _("Hold")),
    ("scrapped", _("Scrap")),
    ("burnt", _("Burn")),
)
PARTED = (
    ("sound", _("to the store, sound")),
    ("to_mend", _("to mend")),
    ("held", _("held back")),
    ("scrapped", _("scrapped")),
    ("burnt", _("burnt")),
)


@dataclass(frozen=True, kw_only=True)
class ToldPiece:
    """A row as the page shows it."""

    row: Row
    found: forms.BoundField
    becomes: forms.BoundField
    parted: list

    @property
    def is_comb(self):
        return self.row.part.comb == Comb.DRAWN

    @property
    def is_parted(self):
        return any(field.value() or field.errors for field in self.parted)

    @property
    def is_held(self):
        return self.row.condition == Condition.HELD


class SalvageForm(LinesForm):
    """`found` is n__…: how many were there; `becomes` where they go; `parted` how many of them go elsewhere."""

    looked = forms.ChoiceField(
        label=_("Was the brood looked at by someone who knows foulbrood?"),
        choices=LOOKED,
        widget=forms.RadioSelect,
    )

    def __init__(self, data=None, *, into=None, **kwargs):
        super().__init__(data, **kwargs)
        self.fields["into"] = forms.ModelChoiceField(
            Yard.objects.all(),
            label=_("What is kept goes into the store of"),
            to_field_name="code",
            initial=into.code if into else None,
        )
        for row in self.rows:
            self.fields[f"becomes__{row.key}"] = forms.ChoiceField(
                label=row.name, choices=BECOMES, widget=forms.RadioSelect, initial=self._usual(row)
            )
            for name, words in PARTED:
                self.fields[f"{name}__{row.key}"] = number(f"{row.name}, {words}")

    def field_of(self, row):
        return number(row.name, initial=row.booked)

    @staticmethod
    def _usual(row):
        return {Condition.HELD: "held", Condition.TO_MEND: "to_mend"}.get(row.condition, "sound")

    @property
    def groups(self):
        return [(head, [self._told(row) for row in rows]) for head, rows in by_head(self.rows)]

    def _told(self, row):
        return ToldPiece(
            row=row,
            found=self[f"n__{row.key}"],
            becomes=self[f"becomes__{row.key}"],
            parted=[self[f"{name}__{row.key}"] for name, _words in PARTED],
        )

    def clean(self):
        given = super().clean() or {}
        for row in self.rows:
            found = given.get(f"n__{row.key}") or 0
            parted = sum(given.get(f"{name}__{row.key}") or 0 for name, _words in PARTED)
            if parted > found:
                self.add_error(
                    f"n__{row.key}",
                    f"{found} were there, but {parted} are sent elsewhere: count them once more.",
                )
        return given

    def pieces(self):
        return [piece for row, found in self.numbers() if (piece := self._piece(row, found))]

    def _piece(self, row, found):
        given, looked = self.cleaned_data, self.cleaned_data["looked"]
        counts = {name: given.get(f"{name}__{row.key}") or 0 for name, _words in PARTED}
        counts[given[f"becomes__{row.key}"]] += found - sum(counts.values())
        if looked == "suspected":
            counts = {"held": found - counts["burnt"], "burnt": counts["burnt"]}
        elif looked == "no" and row.part.comb == Comb.DRAWN:
            counts = {"held": found}
        lost = max(0, row.booked - found)
        if not found and not lost:
            return None
        return Piece(part=row.part, condition=row.condition, lost=lost, **counts)
