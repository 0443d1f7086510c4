"""What came of an order beside its goods: what the invoice says, lines closed, broken pieces claimed and answered.

Takes the rows in question; gives cents, line ids and words for inventory/orders.
"""

from decimal import Decimal
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from inventory.forms.lines import number
from inventory.forms.value import DAY, money
from inventory.models import Claim, LineClosing
from inventory.orders import cents


class DealingForm(forms.Form):
    """`day` as told; what the books refuse is told on the form."""

    day = forms.DateField(label=_("Day"), widget=DAY)

    def refuse(self, refusal):
        for problem in refusal.problems:
            self.add_error(None, str(problem))


class InvoiceForm(DealingForm):
    """A price for each line of a receipt and for shipping; what was planned stands there, or what was entered last."""

    def __init__(self, data=None, *, receipt, today):
        super().__init__(data)
        self.receipt, invoice = receipt, receipt.invoice
        self.fields["day"].label = _("Day on the invoice")
        self.fields["day"].initial = invoice.day if invoice else today
        self.fields["number"] = forms.CharField(
            label=_("Number on it"), max_length=40, required=False, initial=invoice.number if invoice else ""
        )
        for at, line in enumerate(receipt.lines):
            self.fields[f"paid__{at}"] = money(
                line.name, initial=self._first(line), help_text=_("Planned: {:,.2f}").format(line.planned)
            )

    @staticmethod
    def _first(line):
        known = line.planned_cents if line.paid_cents is None else line.paid_cents
        return Decimal(known) / 100

    def told(self):
        """What enter_invoice takes; shipping is the last line."""
        prices = [cents(self.cleaned_data[f"paid__{at}"]) for at in range(len(self.receipt.lines))]
        paid = dict(zip([line.key for line in self.receipt.lines], prices, strict=True))
        return {
            "shipping_cents": paid.pop(()),
            "paid": paid,
            "day": self.cleaned_data["day"],
            "number": self.cleaned_data["number"],
        }


class CloseForm(DealingForm):
    """Which open lines, how and why."""

    lines = forms.TypedMultipleChoiceField(
        label=_("Lines of which nothing more comes"), coerce=int, widget=forms.CheckboxSelectMultiple
    )
    why = forms.ChoiceField(label=_("How"), choices=LineClosing.Why.choices, widget=forms.RadioSelect)
    reason = forms.CharField(
        label=_("Reason"),
        max_length=200,
        required=False,
        help_text=_("What the supplier says; needed where they will not send the rest."),
    )

    field_order = ("lines", "why", "reason", "day")

    def __init__(self, data=None, *, open_lines, today):
        super().__init__(data, initial={"day": today, "why": LineClosing.Why.SHORT})
        asked: Any = self.fields["lines"]
        asked.choices = open_lines


class ClaimForm(DealingForm):
    """How many broken pieces of each part are claimed."""

    def __init__(self, data=None, *, broken, today):
        super().__init__(data, initial={"day": today})
        self.fields["day"].label = _("Claimed on")
        self.broken = [(line, part, n) for (line, part), n in broken.items() if n]
        for at, (_line, part, n) in enumerate(self.broken):
            self.fields[f"n__{at}"] = number(f"{part.name}, {n} broken", initial=n)

    def told(self):
        """(line, part, pieces) of those claimed."""
        given = [self.cleaned_data[f"n__{at}"] or 0 for at in range(len(self.broken))]
        return [(line, part, n) for (line, part, _), n in zip(self.broken, given, strict=True) if n]


class AnswerForm(DealingForm):
    """What the supplier said to a claim."""

    answer = forms.ChoiceField(
        label=_("Answer"),
        choices=[choice for choice in Claim.Answer.choices if choice[0] != Claim.Answer.OPEN],
        widget=forms.RadioSelect,
    )
    credit = money(_("Credited"), required=False, help_text=_("Only where they give money back."))
    field_order = ("answer", "credit", "day")

    def __init__(self, data=None, *, today):
        super().__init__(data, initial={"day": today})
        self.fields["day"].label = _("Answered on")

    def told(self):
        given = self.cleaned_data
        credit = given["credit"] or Decimal(0)
        return {"answer": given["answer"], "day": given["day"], "credit_cents": cents(credit)}
