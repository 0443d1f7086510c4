"""Who sells what at which price, and what was ordered. Money in whole cents; lead times in weeks."""

from decimal import Decimal

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from inventory.models.catalogue import Part


class Supplier(models.Model):
    """Who sells gear, what an order costs to ship and how long it takes."""

    code = models.SlugField(_("code"), max_length=30, unique=True)
    name = models.CharField(_("name"), max_length=80, unique=True)
    order_fee_cents = models.PositiveIntegerField(_("shipping an order, cents"), default=0)
    free_from_cents = models.PositiveIntegerField(_("shipping free from, cents"), null=True, blank=True)
    lead_weeks = models.PositiveSmallIntegerField(_("lead time, weeks"), default=2)
    address = models.TextField(_("address"), max_length=500, blank=True)
    phone = models.CharField(_("phone"), max_length=40, blank=True)
    email = models.EmailField(_("e-mail"), blank=True)
    customer_number = models.CharField(
        _("your customer number"), max_length=40, blank=True, help_text=_("The number they know you by.")
    )
    invented = models.BooleanField(_("invented"), default=False)

    class Meta:
        ordering = ["name"]

    def __str__(self):
        return self.name


class Offer(models.Model):
    """One line of a price list: a pack of one part, or a kit of several."""

    class Rule(models.TextChoices):
        ALL_UNITS = "all_units", _("every pack at the price of its step")
        INCREMENTAL = "incremental", _("each step's packs at that step's price")

    code = models.SlugField(_("code"), max_length=50, unique=True)
    supplier = models.ForeignKey(Supplier, models.PROTECT, related_name="offers")
    name = models.CharField(_("name"), max_length=120)
    price_rule = models.CharField(_("price steps"), max_length=12, choices=Rule, default=Rule.ALL_UNITS)
    open_from = models.DateField(_("price holds from"), null=True, blank=True)
    open_until = models.DateField(_("price holds until"), null=True, blank=True)
    lead_weeks = models.PositiveSmallIntegerField(
        _("lead time, weeks"), null=True, blank=True, help_text=_("Empty: the supplier's.")
    )
    max_packs = models.PositiveIntegerField(_("at most, packs"), null=True, blank=True)

    class Meta:
        ordering = ["supplier", "code"]

    def __str__(self):
        return self.name


class OfferPart(models.Model):
    """So many units of a part are in one pack of an offer."""

    offer = models.ForeignKey(Offer, models.CASCADE, related_name="parts")
    part = models.ForeignKey(Part, models.PROTECT, related_name="offered")
    units = models.PositiveIntegerField(_("units in a pack"))

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(fields=["offer", "part"], name="offer_names_a_part_once"),
            models.CheckConstraint(condition=Q(units__gt=0), name="offer_units_positive"),
        ]

    def __str__(self):
        return f"{self.offer}: {self.units} × {self.part}"


class PriceStep(models.Model):
    """From so many packs of an order on, a pack costs so much."""

    offer = models.ForeignKey(Offer, models.CASCADE, related_name="steps")
    from_packs = models.PositiveIntegerField(default=1)
    price_cents = models.PositiveIntegerField()

    class Meta:
        ordering = ["offer", "from_packs"]
        constraints = [
            models.UniqueConstraint(fields=["offer", "from_packs"], name="one_price_a_step"),
            models.CheckConstraint(condition=Q(from_packs__gt=0), name="steps_begin_at_one_pack"),
        ]

    def __str__(self):
        return f"{self.offer} from {self.from_packs}: {self.price}"

    @property
    def price(self):
        return Decimal(self.price_cents) / 100


class Order(models.Model):
    """A purchase order to one supplier. What came of it is told by movements that name its lines."""

    class Status(models.TextChoices):
        PLACED = "placed", _("placed")
        RECEIVED = "received", _("received")
        CANCELLED = "cancelled", _("cancelled")

    supplier = models.ForeignKey(Supplier, models.PROTECT, related_name="orders")
    reference = models.CharField(_("reference"), max_length=60, unique=True)
    placed_on = models.DateField(_("placed on"))
    due_on = models.DateField(_("due on"))
    fee_cents = models.PositiveIntegerField(_("shipping, cents"), default=0)
    status = models.CharField(_("status"), max_length=10, choices=Status, default=Status.PLACED)
    note = models.TextField(_("note to the supplier"), max_length=1000, blank=True)

    class Meta:
        ordering = ["-placed_on", "id"]

    def __str__(self):
        return self.reference


class OrderLine(models.Model):
    """Packs of one offer, at the price agreed when it was ordered."""

    order = models.ForeignKey(Order, models.PROTECT, related_name="lines")
    offer = models.ForeignKey(Offer, models.PROTECT, related_name="+")
    packs = models.PositiveIntegerField()
    cost_cents = models.PositiveIntegerField(_("cost of all packs, cents"))
    why = models.TextField(_("reason"), blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [models.CheckConstraint(condition=Q(packs__gt=0), name="order_line_positive")]

    def __str__(self):
        return f"{self.order}: {self.packs} × {self.offer}"


class OrderLinePart(models.Model):
    """What a line brings when all of it comes: units of one part, all packs together."""

    line = models.ForeignKey(OrderLine, models.CASCADE, related_name="parts")
    part = models.ForeignKey(Part, models.PROTECT, related_name="+")
    units = models.PositiveIntegerField()

    class Meta:
        ordering = ["id"]
        constraints = [models.UniqueConstraint(fields=["line", "part"], name="order_line_names_a_part_once")]

    def __str__(self):
        return f"{self.line}: {self.units} × {self.part}"
