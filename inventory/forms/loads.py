"""Forms of a load: what is dropped where, which boxes are full of honey, and the tick where the truck is over.

Takes the rows of the store loaded from and the stops; gives drops. Over the truck's limit it asks for a tick and
never blocks: two trips are a load too.
"""

from dataclasses import dataclass
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Yard
from inventory.forms.lines import NUMBER, LinesForm, number
from inventory.gear import Condition
from inventory.load_sums import comb_weights, honey_lb, piece_of, weigh
from inventory.pieces import by_head

FULL = "full__"
AT = "@"


@dataclass(frozen=True, kw_only=True)
class Drop:
    """One number of a row: how many go to one stop."""

    stop: Yard | None
    field: forms.BoundField

    @property
    def value(self):
        return self.field.value() or 0


@dataclass(frozen=True, kw_only=True)
class Hauled:
    """A row of the load as the page shows it: a number for each stop, and how many are full of honey."""

    row: Any
    drops: list
    full: forms.BoundField | None
    honey: object

    @property
    def piece(self):
        return piece_of(self.row.part)


class HaulForm(LinesForm):
    """`stops`: yards at which something is dropped; fewer than two and the form asks for the one goal.

    `told`: numbers an address tells of a load, for a list that books nothing.
    """

    def __init__(self, data=None, *, stops=(), target=None, told=None, **kwargs):
        self.stops = list(stops) if len(stops) > 1 else []
        self.told_by_address = told or {}
        super().__init__(data, **kwargs)
        if self.stops:
            self._ask_by_stop()
        else:
            self._ask_goal(target)
        for row in self.rows:
            if row.condition == Condition.SOUND and piece_of(row.part).honey_lb(0):
                self.fields[FULL + row.key] = number(_("Of them full of honey"))
        self.fields["over"] = forms.BooleanField(label=_("Haul it all the same"), required=False)
        self.fill(self.told_by_address)

    def fill(self, address):
        """Numbers of the address, those full of honey too."""
        super().fill(address)
        for name, value in address.items():
            if name in self.fields and name.startswith(FULL) and value.isdecimal() and len(value) < 10:
                self.initial[name] = int(value)

    def _also(self):
        told = {name.removeprefix(NUMBER) for name in self.told_by_address if name.startswith(NUMBER)}
        return {key.rpartition(AT)[2] for key in super()._also() | told}

    def _ask_by_stop(self):
        for row in self.rows:
            del self.fields[NUMBER + row.key]
            for stop in self.stops:
                self.fields[_name(row, stop)] = number(f"{row.name}, {stop}")

    def _ask_goal(self, target):
        self.fields["target"] = forms.ModelChoiceField(
            Yard.objects.all(),
            label=_("Goes to the store of"),
            to_field_name="code",
            initial=target.code if target else None,
            empty_label=_("choose a place"),
        )

    @property
    def groups(self):
        combs = comb_weights()
        return [(head, [self._shown(row, combs) for row in rows]) for head, rows in by_head(self.rows)]

    def _shown(self, row, combs):
        full = FULL + row.key
        drops = [Drop(stop=stop, field=self[_name(row, stop)]) for stop in self.stops or [None]]
        return Hauled(
            row=row,
            drops=drops,
            full=self[full] if full in self.fields else None,
            honey=honey_lb(row.part, combs),
        )

    def so_far(self):
        stops = self.stops or [None]
        return [(row, sum(self._typed(_name(row, stop)) for stop in stops)) for row in self.rows]

    def told_drops(self, target):
        """[(stop, [(row, pieces, of them full)])] as typed so far; boxes full of honey are told at the first stop."""
        left = {row.key: self._typed(FULL + row.key) for row in self.rows if FULL + row.key in self.fields}
        drops = []
        for stop in self.stops or [None]:
            lines = []
            for row in self.rows:
                if pieces := self._typed(_name(row, stop)):
                    full = min(pieces, left.get(row.key, 0))
                    left[row.key] = left.get(row.key, 0) - full
                    lines.append((row, pieces, full))
            drops.append((stop or target, lines))
        return drops

    def _typed(self, name):
        value = str(self[name].value() or 0)
        return int(value) if value.isdecimal() and len(value) < 10 else 0

    @property
    def weighed(self):
        """The load as typed so far beside the truck."""
        full = [(row.part, self._typed(FULL + row.key)) for row in self.rows if FULL + row.key in self.fields]
        return weigh([(row.part, n) for row, n in self.so_far()], full=[each for each in full if each[1]])

    @property
    def has_held(self):
        return any(row.condition == Condition.HELD for row in self.rows)

    def clean(self):
        super().clean()
        given = self.cleaned_data
        for row, count in self.so_far():
            full = given.get(FULL + row.key) or 0
            if full > count:
                self.add_error(FULL + row.key, f"{full} full of honey, but {count} of them are on the load.")
        if self.weighed.over and not given.get("over"):
            self.add_error("over", f"{self.weighed.sentence} Leave some, or tick that it goes all the same.")
        return given

    def drops(self):
        """[(yard, lines)] as the books take them."""
        if not self.stops:
            return [(self.cleaned_data["target"], self.lines())]
        return [(stop, self._lines_of(stop)) for stop in self.stops]

    def _lines_of(self, stop):
        given = [(row, self.cleaned_data.get(_name(row, stop))) for row in self.rows]
        return [row.line(count) for row, count in given if count]


def _name(row, stop):
    return NUMBER + (row.key if stop is None else f"{stop.code}{AT}{row.key}")
