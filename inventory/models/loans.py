"""Gear lent, and feed given: who has what until when, and what each colony got. Written beside the act in its transaction.

The pieces themselves are the act's movements; these rows add what movements cannot say. An act that was
reversed counts for nothing here either.
"""

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from apiary.models import Colony
from inventory.models.movements import Act


class Loan(models.Model):
    """What one act lent: to whom, and when it is due back."""

    act = models.OneToOneField(Act, models.PROTECT, related_name="loan")
    to = models.CharField(_("lent to"), max_length=80)
    due_on = models.DateField(_("due back"), null=True, blank=True)

    class Meta:
        ordering = ["due_on", "id"]
        constraints = [models.CheckConstraint(condition=~Q(to=""), name="loan_names_who_has_it")]

    def __str__(self):
        return f"lent to {self.to}, {self.act.day}"


class LoanBack(models.Model):
    """An act in which something of a loan came back, or was given up for lost."""

    loan = models.ForeignKey(Loan, models.PROTECT, related_name="backs")
    act = models.OneToOneField(Act, models.PROTECT, related_name="loan_back")

    class Meta:
        ordering = ["id"]

    def __str__(self):
        return f"{self.loan}: back, {self.act.day}"


class Feeding(models.Model):
    """What one colony got in one act. Syrup in quarts, sugar and patties in lb."""

    class Feed(models.TextChoices):
        LIGHT = "syrup-1-1", _("syrup 1:1")
        HEAVY = "syrup-2-1", _("syrup 2:1")
        SUGAR = "sugar", _("dry sugar")
        PATTY = "patty", _("protein patty")

    act = models.ForeignKey(Act, models.PROTECT, related_name="feedings")
    colony = models.ForeignKey(Colony, models.PROTECT, related_name="feedings")
    feed = models.CharField(_("feed"), max_length=10, choices=Feed)
    quantity = models.PositiveIntegerField(_("quarts or lb"))

    class Meta:
        ordering = ["id"]
        constraints = [
            models.CheckConstraint(condition=Q(quantity__gt=0), name="feeding_positive"),
            models.UniqueConstraint(fields=["act", "colony"], name="one_feeding_of_a_colony_an_act"),
        ]

    def __str__(self):
        return f"{self.colony}: {self.get_feed_display()}, {self.quantity}"
