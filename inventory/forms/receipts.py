"""What came of an order: per part the good pieces, those to mend and those thrown away.

Takes what is owed; gives Arrivals. All that is owed stands there from the start: in full is one press.
"""

from dataclasses import dataclass

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Yard
from inventory.errors import MoreThanOwed
from inventory.forms.acts import ActForm
from inventory.forms.lines import kinds, number
from inventory.ledger.arrivals import Arrival, Instead
from inventory.models import Part

COUNTS = ("sound", "to_mend", "scrapped")
INSTEAD = ("instead", "instead_came", "instead_settles")


@dataclass(frozen=True, kw_only=True)
class OwedPart:
    """One part of the order, all its lines together, with the fields of the page."""

    part: Part
    units: int
    owed: int
    sound: forms.BoundField
    to_mend: forms.BoundField
    scrapped: forms.BoundField

    @property
    def name(self):
        return self.part.name[:1].upper() + self.part.name[1:]

    @property
    def broken(self):
        """Whether pieces to mend or thrown away are told, or wrongly told."""
        return any(field.value() or field.errors for field in (self.to_mend, self.scrapped))


class ReceiptForm(ActForm):
    def __init__(self, data=None, *, owed, into, day):
        super().__init__(data, day=day)
        self.over = False
        self.parts: dict[Part, tuple[int, int]] = {}
        for row in owed:
            units, still = self.parts.get(row.part, (0, 0))
            self.parts[row.part] = (units + row.units, still + row.owed)
        for part, (_units, still) in self.parts.items():
            for name in COUNTS:
                self.fields[f"{name}__{part.code}"] = number(
                    f"{part.name}, {name.replace('_', ' ')}", initial=still if name == "sound" else None
                )
        self.fields["into"] = forms.ModelChoiceField(
            Yard.objects.all(),
            label=_("Goes into the store of"),
            to_field_name="code",
            initial=into.code if into else None,
        )
        self._ask_instead()
        self.fields["over_allowed"] = forms.BooleanField(
            label=_("More came than is owed: book all of it"), required=False
        )

    def _ask_instead(self):
        """Fields for another part that came instead of one that is owed."""
        owed = [(part.code, part.name) for part, (_units, still) in self.parts.items() if still]
        self.fields["instead_of"] = forms.ChoiceField(
            label=_("Instead of"), required=False, choices=[("", _("nothing came instead")), *owed]
        )
        self.fields["instead"] = forms.ModelChoiceField(
            Part.objects.order_by("name"), label=_("This part came"), required=False, to_field_name="code"
        )
        self.fields["instead_came"] = number(_("Pieces of it that came"))
        self.fields["instead_settles"] = number(_("Ordered pieces they stand for"))

    def clean(self):
        given = super().clean()
        if given.get("instead_of"):
            for name in INSTEAD:
                if not given.get(name) and name not in self.errors:
                    self.add_error(name, _("Tell this too, or choose that nothing came instead."))
        return given

    @property
    def instead_fields(self):
        return [self[name] for name in ("instead_of", *INSTEAD)]

    @property
    def tells_instead(self):
        return any(field.value() or field.errors for field in self.instead_fields)

    def substitutes(self):
        given = self.cleaned_data
        if not given["instead_of"]:
            return []
        came = Arrival(part=given["instead"], sound=given["instead_came"])
        return [Instead(ordered=given["instead_of"], settles=given["instead_settles"], came=came)]

    @property
    def rows(self):
        return [
            OwedPart(
                part=part,
                units=units,
                owed=still,
                **{name: self[f"{name}__{part.code}"] for name in COUNTS},
            )
            for part, (units, still) in self.parts.items()
        ]

    @property
    def kinds_words(self):
        return kinds(len(self.parts))

    @property
    def asks_over(self):
        """The tick shows once too many came, where nothing is owed, and while it is set."""
        nothing = not any(still for _, still in self.parts.values())
        return self.over or nothing or bool(self.data.get("over_allowed"))

    def refuse(self, refusal):
        self.over = any(isinstance(problem, MoreThanOwed) for problem in refusal.problems)
        super().refuse(refusal)

    def arrivals(self):
        given = self.cleaned_data
        return [
            Arrival(part=part, **{name: given[f"{name}__{part.code}"] or 0 for name in COUNTS})
            for part in self.parts
        ]
