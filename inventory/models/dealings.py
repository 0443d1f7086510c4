"""What came of an order beside its goods: closed lines, other parts instead, broken pieces claimed, invoices.

And what the keeper told for valuing gear: prices of a piece, what own work is worth, how to depreciate.
Money in whole cents. Written by inventory/orders/ and the ledger's receive.
"""

from decimal import Decimal

from django.conf import settings
from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from inventory.models.catalogue import Part
from inventory.models.movements import Act
from inventory.models.suppliers import OrderLine


class LineClosing(models.Model):
    """Nothing more is owed on a line from a day on, until it is opened again."""

    class Why(models.TextChoices):
        CANCELLED = "cancelled", _("cancelled")
        SHORT = "short", _("the supplier will not send the rest")

    line = models.ForeignKey(OrderLine, models.PROTECT, related_name="closings")
    why = models.CharField(_("how"), max_length=10, choices=Why)
    day = models.DateField(_("from"))
    reason = models.CharField(_("reason"), max_length=200, blank=True)
    who = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+")
    reopened_on = models.DateField(_("opened again on"), null=True, blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(
                fields=["line"], condition=Q(reopened_on__isnull=True), name="line_closed_once"
            ),
            models.CheckConstraint(
                condition=Q(reopened_on__isnull=True) | Q(reopened_on__gte=F("day")),
                name="line_opened_after_closing",
            ),
        ]

    def __str__(self):
        return f"{self.line}: {self.get_why_display()}, {self.day}"


class Substitution(models.Model):
    """Another part came in a receipt instead of so many pieces of one that was ordered."""

    act_key = models.CharField(_("key of the act"), max_length=64, db_index=True)
    line = models.ForeignKey(OrderLine, models.PROTECT, related_name="substitutions")
    part = models.ForeignKey(Part, models.PROTECT, related_name="+", verbose_name=_("ordered"))
    settles = models.PositiveIntegerField(_("ordered pieces it stands for"))
    instead = models.ForeignKey(Part, models.PROTECT, related_name="+", verbose_name=_("came instead"))
    pieces = models.PositiveIntegerField(_("pieces that came"))

    class Meta:
        ordering = ["id"]
        constraints = [
            models.CheckConstraint(condition=~Q(part=F("instead")), name="substitution_is_another_part"),
            models.CheckConstraint(
                condition=Q(settles__gt=0, pieces__gt=0), name="substitution_counts_pieces"
            ),
        ]

    def __str__(self):
        return f"{self.line}: {self.pieces} {self.instead} instead of {self.settles} {self.part}"


class Claim(models.Model):
    """Pieces that came broken, claimed with the supplier, and what the supplier answered."""

    class Answer(models.TextChoices):
        OPEN = "open", _("not answered yet")
        CREDITED = "credited", _("credited")
        REPLACED = "replaced", _("will be replaced")
        REFUSED = "refused", _("refused")

    act = models.ForeignKey(Act, models.PROTECT, related_name="claims")
    line = models.ForeignKey(OrderLine, models.PROTECT, related_name="claims")
    part = models.ForeignKey(Part, models.PROTECT, related_name="+")
    pieces = models.PositiveIntegerField(_("pieces"))
    day = models.DateField(_("claimed on"))
    who = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+")
    answer = models.CharField(_("answer"), max_length=10, choices=Answer, default=Answer.OPEN)
    answered_on = models.DateField(_("answered on"), null=True, blank=True)
    credit_cents = models.PositiveIntegerField(_("credited, cents"), default=0)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.CheckConstraint(condition=Q(pieces__gt=0), name="claim_positive"),
            models.CheckConstraint(
                condition=Q(answer="credited") | Q(credit_cents=0), name="only_a_credit_has_money"
            ),
            models.CheckConstraint(
                condition=Q(answer="open", answered_on__isnull=True)
                | (~Q(answer="open") & Q(answered_on__gte=F("day"))),
                name="claim_answered_after_it",
            ),
        ]

    def __str__(self):
        return f"{self.line}: {self.pieces} {self.part} claimed"

    @property
    def credit(self):
        return Decimal(self.credit_cents) / 100


class Invoice(models.Model):
    """What the supplier's invoice says of one receipt. Written anew when mended: the newest of a receipt counts."""

    act = models.ForeignKey(Act, models.PROTECT, related_name="invoices")
    number = models.CharField(_("number on it"), max_length=40, blank=True)
    day = models.DateField(_("day on it"))
    shipping_cents = models.PositiveIntegerField(_("shipping, cents"), default=0)
    who = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+")
    recorded_at = models.DateTimeField()

    class Meta:
        ordering = ["id"]

    def __str__(self):
        return self.number or f"invoice of {self.day}"


class InvoiceLine(models.Model):
    """What was paid for what a line brought in that receipt; `part` names one that came instead."""

    invoice = models.ForeignKey(Invoice, models.CASCADE, related_name="lines")
    line = models.ForeignKey(OrderLine, models.PROTECT, related_name="+")
    part = models.ForeignKey(Part, models.PROTECT, null=True, blank=True, related_name="+")
    cents = models.PositiveIntegerField()

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(
                fields=["invoice", "line"], condition=Q(part__isnull=True), name="invoice_prices_a_line_once"
            ),
            models.UniqueConstraint(
                fields=["invoice", "line", "part"],
                condition=Q(part__isnull=False),
                name="invoice_prices_a_substitute_once",
            ),
        ]

    def __str__(self):
        return f"{self.invoice}: {self.line}"


class ToldPrice(models.Model):
    """What a piece of opening or found stock cost, where the keeper knows better than the list price."""

    part = models.OneToOneField(Part, models.PROTECT, related_name="told_price")
    cents = models.PositiveIntegerField(_("cost of a piece, cents"))

    class Meta:
        ordering = ["part"]

    def __str__(self):
        return f"{self.part}: {self.price}"

    @property
    def price(self):
        return Decimal(self.cents) / 100


class ToldRest(models.Model):
    """What a piece is still worth at the end of its years of life, where the accountant wants it told apart."""

    part = models.OneToOneField(Part, models.PROTECT, related_name="told_rest")
    cents = models.PositiveIntegerField(_("rest value of a piece, cents"))

    class Meta:
        ordering = ["part"]

    def __str__(self):
        return f"{self.part}: {self.rest}"

    @property
    def rest(self):
        return Decimal(self.cents) / 100


class ValueBasis(models.Model):
    """The one row of what the accountant and the keeper agreed about value."""

    class Convention(models.TextChoices):
        FULL_YEAR = "full year", _("a whole year in the year it came, none in the year it goes")
        MONTHLY = "monthly", _("by months, the month it came counts whole")

    work_cents_per_hour = models.PositiveIntegerField(_("own work at the bench, cents an hour"), default=0)
    convention = models.CharField(
        _("depreciation"), max_length=10, choices=Convention, default=Convention.FULL_YEAR
    )
    rest_percent = models.PositiveSmallIntegerField(_("rest value, per cent of cost"), default=0)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=Q(pk=1), name="one_value_basis"),
            models.CheckConstraint(condition=Q(rest_percent__lte=100), name="rest_is_a_share_of_cost"),
        ]

    def __str__(self):
        return f"{self.get_convention_display()}"
