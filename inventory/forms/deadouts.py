"""A deadout on paper: what was seen before anything is moved, then each piece, then care and the inspector's word.

Takes what was sent; gives plain values. What leaves no choice (brood nobody looked at, pesticide in comb, suspected
foulbrood) is settled here whatever was chosen, and checked once more by the act.
"""

from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from apiary.models import Yard
from inventory.deadouts.fates import BURNT, FATES, HELD, LOCKED, Seen, reason_to_hold, suggestion
from inventory.deadouts.freezing import CELSIUS, FAHRENHEIT, celsius_of
from inventory.forms.acts import ActForm
from inventory.forms.lines import LinesForm, number
from inventory.gear import Comb, Condition
from inventory.ledger import Piece
from inventory.models import Deadout, InspectorWord
from inventory.pieces import Row, by_head

YES_NO = (("yes", _("Yes")), ("no", _("No")))
WORDS = {
    "sound": _("Store"),
    "to_mend": _("Mend"),
    "held": _("Hold"),
    "scrapped": _("Scrap"),
    "burnt": _("Burn"),
}
PARTED = {
    "sound": _("to the store, sound"),
    "to_mend": _("to mend"),
    "held": _("held back"),
    "scrapped": _("scrapped"),
    "burnt": _("burnt"),
}


class SeenForm(forms.Form):
    """What is asked before the hive is taken apart; sent in the address, so that it can be changed."""

    closed = forms.BooleanField(label=_("The entrance is closed against robbing"))
    cause = forms.ChoiceField(
        label=_("What killed it, as far as you can tell?"),
        choices=[(cause.value, cause.label.capitalize()) for cause in Deadout.Cause],
        widget=forms.RadioSelect,
    )
    looked = forms.ChoiceField(
        label=_("Was the brood looked at by someone who knows foulbrood?"),
        choices=YES_NO,
        widget=forms.RadioSelect,
    )
    suspected = forms.ChoiceField(
        label=_("Is foulbrood suspected?"), choices=YES_NO, widget=forms.RadioSelect
    )

    def __init__(self, data, **options):
        asked = data if any(name in data for name in ("closed", "cause", "looked", "suspected")) else None
        super().__init__(asked, auto_id="seen-%s", **options)

    @property
    def seen(self):
        given = self.cleaned_data
        return Seen(
            cause=given["cause"], brood_seen=given["looked"] == "yes", suspected=given["suspected"] == "yes"
        )

    @property
    def words(self):
        """What was answered, in one line."""
        seen = self.seen
        looked = "brood looked at" if seen.brood_seen else "brood not looked at"
        foulbrood = "foulbrood suspected" if seen.suspected else "no foulbrood suspected"
        return f"{Deadout.Cause(seen.cause).label.capitalize()}, {looked}, {foulbrood}"


@dataclass(frozen=True, kw_only=True)
class FoundPiece:
    """A row as the page shows it, folded while booked and found agree."""

    row: Row
    found: forms.BoundField
    becomes: forms.BoundField
    parted: list
    why: str
    locked: str
    cents: object = 0  # what a piece is worth, for the sums of the page

    @property
    def is_comb(self):
        return self.row.part.comb == Comb.DRAWN

    @property
    def number(self):
        value = str(self.found.value() or 0)
        return int(value) if value.isdecimal() else 0

    @property
    def said(self):
        """The row in one line: how many, what is missing, where they go."""
        gap = self.number - self.row.booked
        words = [f"{self.number} of {self.row.booked} found" if gap < 0 else f"{self.number} found"]
        words += [f"{gap} more"] if gap > 0 else [f"{-gap} missing"] if gap < 0 else []
        return ", ".join(words)

    @property
    def is_open(self):
        parted = any(field.value() or field.errors for field in self.parted)
        return bool(self.found.errors or parted or self.number != self.row.booked)


class DeadoutForm(LinesForm):
    """`n__` of a row: how many were there; `becomes__` where they go; one number more for each of some elsewhere."""

    covers = False  # a deadout never waits: what stood there beyond the book is booked as found

    def __init__(self, data=None, *, seen, into=None, cents=None, **options):
        self.seen, self.cents = seen, cents or {}
        super().__init__(data, **options)
        self.fields["into"] = forms.ModelChoiceField(
            Yard.objects.all(),
            label=_("What is kept goes into the store of"),
            to_field_name="code",
            initial=into.code if into else None,
        )
        for row in self.rows:
            self.fields[f"becomes__{row.key}"] = forms.ChoiceField(
                label=row.name,
                choices=[(fate, WORDS[fate]) for fate in self._open(row)],
                widget=forms.RadioSelect,
                initial=self._suggested(row).fate,
            )
            for fate in self._open(row):
                self.fields[f"{fate}__{row.key}"] = number(f"{row.name}, {PARTED[fate]}")

    def field_of(self, row):
        return number(row.name, initial=row.booked)

    def _locked(self, row):
        return reason_to_hold(row.part.comb, self.seen)

    def _open(self, row):
        return (HELD, BURNT) if self._locked(row) or row.condition == Condition.HELD else FATES

    def _suggested(self, row):
        told = suggestion(row.part.kind, row.part.comb, self.seen)
        was = {Condition.HELD: HELD, Condition.TO_MEND: "to_mend"}.get(row.condition)
        return told if was is None or told.fate == HELD else type(told)(fate=was, why="")

    @property
    def groups(self):
        return [(head, [self._told(row) for row in rows]) for head, rows in by_head(self.rows)]

    @property
    def held_rows(self):
        return [row for row in self.rows if self._locked(row)]

    def _told(self, row):
        reason = self._locked(row)
        return FoundPiece(
            row=row,
            found=self[f"n__{row.key}"],
            becomes=self[f"becomes__{row.key}"],
            parted=[self[f"{fate}__{row.key}"] for fate in self._open(row)],
            why="" if reason else self._suggested(row).why,
            locked=LOCKED.get(reason, ""),
            cents=self.cents.get(row.part.pk, row.part.list_price_cents),
        )

    def clean(self):
        given = super().clean() or {}
        for row in self.rows:
            found = given.get(f"n__{row.key}") or 0
            parted = sum(given.get(f"{fate}__{row.key}") or 0 for fate in self._open(row))
            if parted > found:
                words = f"{found} were there, but {parted} are sent elsewhere: count them once more."
                self.add_error(f"n__{row.key}", words)
        return given

    def pieces(self):
        """A Piece of each row; what the book has more of is left to the act, which books it as lost."""
        return [self._piece(row, found) for row, found in self.numbers()]

    def _piece(self, row, found):
        given = self.cleaned_data
        counts = {fate: given.get(f"{fate}__{row.key}") or 0 for fate in self._open(row)}
        counts[given[f"becomes__{row.key}"]] += found - sum(counts.values())
        return Piece(part=row.part, condition=row.condition, **counts)


class CareForm(ActForm):
    """Frozen at a temperature for a time, or kept from moth otherwise."""

    way = forms.ChoiceField(
        label=_("How were the combs cared for?"),
        choices=(("frozen", _("Frozen")), ("other", _("Light and air, or stored in the cold"))),
        initial="frozen",
        widget=forms.RadioSelect,
    )
    degrees = forms.DecimalField(
        label=_("Temperature of the freezer"), max_digits=5, decimal_places=1, required=False, initial=0
    )
    unit = forms.ChoiceField(
        label=_("Degrees"),
        choices=((FAHRENHEIT, "°F"), (CELSIUS, "°C")),
        initial=FAHRENHEIT,
        widget=forms.RadioSelect,
    )
    hours = forms.DecimalField(
        label=_("Hours from when the core was cold"),
        max_digits=5,
        decimal_places=1,
        min_value=0,
        required=False,
        initial=24,
        help_text=_("A box of combs takes a day to grow cold through: a day more is never wrong."),
    )

    def clean(self):
        given = super().clean() or {}
        if given.get("way") == "frozen":
            for name in ("degrees", "hours"):
                if given.get(name) is None and name not in self.errors:
                    self.add_error(name, _("Give a number."))
        return given

    def told_care(self):
        given = self.cleaned_data
        if given["way"] != "frozen":
            return {"celsius": None, "hours": None}
        return {
            "celsius": celsius_of(Decimal(given["degrees"]), given["unit"]),
            "hours": Decimal(given["hours"]),
        }


class WordForm(ActForm):
    """What somebody wrote: who, when, word for word."""

    verdict = forms.ChoiceField(label=_("What does it say?"), widget=forms.RadioSelect)
    inspector = forms.CharField(label=_("Who wrote it"), max_length=120)
    written_on = forms.DateField(
        label=_("Written on"), widget=forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"})
    )
    words = forms.CharField(
        label=_("Word for word"), max_length=2000, widget=forms.Textarea(attrs={"rows": 4})
    )

    def __init__(self, data=None, *, verdicts, **options):
        super().__init__(data, **options)
        asked: Any = self.fields["verdict"]
        asked.choices = [(verdict, InspectorWord.Verdict(verdict).label.capitalize()) for verdict in verdicts]

    def told_word(self):
        return word_of(self)


def word_of(form):
    return {name: form.cleaned_data[name] for name in ("verdict", "inspector", "written_on", "words")}


class ReleaseForm(LinesForm):
    """Held rows of one place, how many of each are released, and the word it is done by.

    `held`: {part's key: pieces held for the case}; other rows are left out.
    """

    covers = False

    def __init__(self, data=None, *, verdicts, held, **options):
        super().__init__(data, only=lambda row: _is_held_for(row, held), **options)
        self.rows = [replace(row, booked=held.get(row.part.pk, 0)) for row in self.rows]
        word = WordForm(data, verdicts=verdicts, day=options["day"])
        for name in ("verdict", "inspector", "written_on", "words"):
            self.fields[name] = word.fields[name]

    def told_word(self):
        return word_of(self)


def _is_held_for(row, held):
    return row.condition == Condition.HELD and row.part.pk in held


class SpanForm(forms.Form):
    """From one evening to another."""

    since = forms.DateField(
        label=_("From the evening of"), widget=forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"})
    )
    until = forms.DateField(
        label=_("to the evening of"), widget=forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"})
    )

    def clean(self):
        given = super().clean() or {}
        if given.get("since") and given.get("until") and given["since"] >= given["until"]:
            raise forms.ValidationError(_("The first evening comes before the second: give an earlier one."))
        return given
