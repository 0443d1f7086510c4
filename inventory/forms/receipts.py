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
from inventory.orders.refusals import OtherWidth

COUNTS = ("sound", "to_mend", "scrapped")
INSTEAD = ("instead", "instead_came", "instead_settles")
MOST_SWAPS = 6  # parts that came instead, in one receipt


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
        self.over, self.wide = False, False
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
        for mark in self._marks:
            self._ask_instead(mark)
        self.fields["width_allowed"] = forms.BooleanField(
            label=_("It is of another width and stays all the same"), required=False
        )
        self.fields["over_allowed"] = forms.BooleanField(
            label=_("More came than is owed: book all of it"), required=False
        )

    @property
    def _marks(self):
        """What tells the fields of one part that came instead from those of the next; one more than kinds owed."""
        owed = sum(1 for _units, still in self.parts.values() if still)
        return ["", *(f"__{number}" for number in range(2, min(owed + 1, MOST_SWAPS) + 1))]

    def _ask_instead(self, mark):
        """Fields for another part that came instead of one that is owed."""
        owed = [(part.code, part.name) for part, (_units, still) in self.parts.items() if still]
        self.fields[f"instead_of{mark}"] = forms.ChoiceField(
            label=_("Instead of"), required=False, choices=[("", _("nothing came instead")), *owed]
        )
        self.fields[f"instead{mark}"] = forms.ModelChoiceField(
            Part.objects.order_by("name"), label=_("This part came"), required=False, to_field_name="code"
        )
        self.fields[f"instead_came{mark}"] = number(_("Pieces of it that came"))
        self.fields[f"instead_settles{mark}"] = number(_("Ordered pieces they stand for"))

    def clean(self):
        super().clean()
        given = self.cleaned_data
        for mark in self._marks:
            if given.get(f"instead_of{mark}"):
                for name in INSTEAD:
                    if not given.get(name + mark) and name + mark not in self.errors:
                        self.add_error(name + mark, _("Tell this too, or choose that nothing came instead."))
        return given

    @property
    def swaps(self):
        """[(fields of one part that came instead, whether they are told)]."""
        rows = [[self[name + mark] for name in ("instead_of", *INSTEAD)] for mark in self._marks]
        return [(fields, any(field.value() or field.errors for field in fields)) for fields in rows]

    def substitutes(self):
        given = self.cleaned_data
        return [
            Instead(
                ordered=given[f"instead_of{mark}"],
                settles=given[f"instead_settles{mark}"],
                came=Arrival(part=given[f"instead{mark}"], sound=given[f"instead_came{mark}"]),
                width_allowed=given["width_allowed"],
            )
            for mark in self._marks
            if given[f"instead_of{mark}"]
        ]

    @property
    def asks_width(self):
        """The tick shows once a part of another width came, and while it is set."""
        return self.wide or bool(self.data.get("width_allowed"))

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
        self.wide = any(isinstance(problem, OtherWidth) for problem in refusal.problems)
        super().refuse(refusal)

    def arrivals(self):
        given = self.cleaned_data
        return [
            Arrival(part=part, **{name: given[f"{name}__{part.code}"] or 0 for name in COUNTS})
            for part in self.parts
        ]
