"""Bees sold with their gear: to whom, for how much, and what the buyer is to bring back.

Written by yardwork in the transaction of the act whose key a row carries; never edited: a mistake is undone with
its act, and a row whose act was reversed does not count. What went and what came back is told by the movements.
Money in whole cents; an empty price was not told.
"""

from typing import ClassVar

from django.db import models
from django.db.models import Exists, OuterRef, Q
from django.utils.translation import gettext_lazy as _

from apiary.models import Colony
from inventory.models.catalogue import Part
from inventory.models.movements import Act, Permanent, WrittenOnce


class OfActs(WrittenOnce):
    """Rows that carry the key of the act that wrote them."""

    def standing(self):
        """Those whose act was not reversed."""
        reversed_since = Act.objects.filter(key=OuterRef("act_key"), reversed_by__isnull=False)
        return self.exclude(Exists(reversed_since))


class Sale(Permanent):
    """One or more colonies given to one buyer at once."""

    act_key = models.CharField(_("key of the act"), max_length=64, unique=True)
    day = models.DateField(_("day"))
    buyer = models.CharField(_("buyer"), max_length=80)
    colonies = models.ManyToManyField(Colony, related_name="sales", verbose_name=_("colonies"))
    price_cents = models.PositiveIntegerField(_("price of all, cents"), null=True, blank=True)
    deposit_cents = models.PositiveIntegerField(_("deposit taken, cents"), default=0)
    back_by = models.DateField(_("to be brought back by"), null=True, blank=True)

    objects: ClassVar = OfActs.as_manager()

    class Meta:
        ordering = ["day", "id"]
        constraints = [
            models.CheckConstraint(
                condition=Q(back_by__isnull=True) | Q(back_by__gte=models.F("day")),
                name="sale_comes_back_after_it",
            ),
        ]

    def __str__(self):
        return f"{self.buyer}, {self.day}"

    @property
    def act(self):
        """The act that booked it."""
        return Act.objects.get(key=self.act_key)


class SaleOwed(Permanent):
    """So many pieces of a part that the buyer brings back, for the deposit or in a swap."""

    sale = models.ForeignKey(Sale, models.PROTECT, related_name="owed")
    part = models.ForeignKey(Part, models.PROTECT, related_name="+")
    quantity = models.PositiveIntegerField(_("pieces"))

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(fields=["sale", "part"], name="sale_owes_a_part_once"),
            models.CheckConstraint(condition=Q(quantity__gt=0), name="sale_owed_positive"),
        ]

    def __str__(self):
        return f"{self.sale}: {self.quantity} × {self.part}"


class SaleReturn(Permanent):
    """One coming back: the pieces are the movements of its act. `settles`: nothing more is waited for."""

    act_key = models.CharField(_("key of the act"), max_length=64, unique=True)
    sale = models.ForeignKey(Sale, models.PROTECT, related_name="returns")
    day = models.DateField(_("day"))
    refund_cents = models.PositiveIntegerField(_("deposit given back, cents"), default=0)
    settles = models.BooleanField(_("settles the sale"), default=False)

    objects: ClassVar = OfActs.as_manager()

    class Meta:
        ordering = ["day", "id"]

    def __str__(self):
        return f"{self.sale}: back {self.day}"
