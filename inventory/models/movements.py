"""The books: locations, acts and the movements they wrote, and the balance derived from them.

A movement is one row with two ends and is never edited or removed: a mistake is reversed by another act.
Written by ledger.py only. Holding is derived in the act's own transaction and proven by check_books.
"""

from django.conf import settings
from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from apiary.models import Colony, Yard
from inventory.errors import AppendOnly
from inventory.gear import Condition, Reason
from inventory.models.catalogue import Part, choices_of
from inventory.models.suppliers import OrderLine


class WrittenOnce(models.QuerySet):
    """Rows that are added and read, never edited or removed."""

    def update(self, **fields):
        raise AppendOnly(f"{self.model.__name__} rows are never edited")

    def delete(self):
        raise AppendOnly(f"{self.model.__name__} rows are never removed")

    def bulk_update(self, *args, **options):
        raise AppendOnly(f"{self.model.__name__} rows are never edited")


class Permanent(models.Model):
    """A row of the books: saved once, then neither edited nor removed. A mistake is reversed."""

    objects = WrittenOnce.as_manager()

    class Meta:
        abstract = True

    def save(self, *args, **options):
        if not self._state.adding:
            raise AppendOnly(f"{type(self).__name__} {self.pk} is never edited")
        super().save(*args, **options)

    def delete(self, *args, **options):
        raise AppendOnly(f"{type(self).__name__} {self.pk} is never removed")


class Location(models.Model):
    """Any end of a movement. Stores and colonies are inside: their balance is never below zero."""

    class Kind(models.TextChoices):
        STORE = "store", _("store of a yard or the shed")
        COLONY = "colony", _("on a colony")
        SUPPLIER = "supplier", _("supplier")
        BENCH = "bench", _("workbench")
        SCRAP = "scrap", _("scrap")
        BURNT = "burnt", _("burnt")
        SOLD = "sold", _("sold")
        LENT = "lent", _("lent")
        LOST = "lost", _("lost")
        USED = "used", _("used up or fed")
        CORRECTION = "correction", _("count correction")

    INSIDE = (Kind.STORE, Kind.COLONY)

    kind = models.CharField(_("kind"), max_length=10, choices=Kind)
    yard = models.OneToOneField(Yard, models.PROTECT, null=True, blank=True, related_name="store")
    colony = models.OneToOneField(Colony, models.PROTECT, null=True, blank=True, related_name="place")

    class Meta:
        ordering = ["id"]
        constraints = [
            models.CheckConstraint(
                condition=(
                    Q(kind="store", yard__isnull=False, colony__isnull=True)
                    | Q(kind="colony", yard__isnull=True, colony__isnull=False)
                    | (~Q(kind__in=["store", "colony"]) & Q(yard__isnull=True, colony__isnull=True))
                ),
                name="location_names_its_ground",
            ),
            models.UniqueConstraint(
                fields=["kind"],
                condition=~Q(kind__in=["store", "colony"]),
                name="one_outside_location_of_a_kind",
            ),
        ]

    def __str__(self):
        if self.colony_id:
            return str(self.colony)
        return str(self.yard) if self.yard_id else self.get_kind_display()

    @property
    def is_inside(self):
        return self.kind in self.INSIDE


class Act(Permanent):
    """What one person did at once: its movements stand or fall together. `key` makes a resend harmless.

    `digest` chains it, with what it told of colonies, to the act before.
    """

    key = models.CharField(_("key of the form"), max_length=64, unique=True)
    name = models.CharField(_("act"), max_length=40)
    day = models.DateField(_("day"))
    who = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+")
    note = models.CharField(_("note"), max_length=200, blank=True)
    reverses = models.OneToOneField("self", models.PROTECT, null=True, blank=True, related_name="reversed_by")
    recorded_at = models.DateTimeField()
    digest = models.CharField(max_length=64, blank=True, default="")

    class Meta:
        ordering = ["id"]

    def __str__(self):
        return f"{self.name}, {self.day}"


class Movement(Permanent):
    """So many pieces of one gear went from here to there on a day. `digest` chains it to the row before."""

    act = models.ForeignKey(Act, models.PROTECT, related_name="movements")
    day = models.DateField(_("day"))
    part = models.ForeignKey(Part, models.PROTECT, related_name="movements")
    condition = models.CharField(
        _("condition"), max_length=10, choices=choices_of(Condition), default=Condition.SOUND
    )
    quantity = models.PositiveIntegerField(_("quantity"))
    source = models.ForeignKey(Location, models.PROTECT, related_name="given", verbose_name=_("from"))
    target = models.ForeignKey(Location, models.PROTECT, related_name="taken", verbose_name=_("to"))
    reason = models.CharField(_("reason"), max_length=24, choices=choices_of(Reason))
    order_line = models.ForeignKey(OrderLine, models.PROTECT, null=True, blank=True, related_name="receipts")
    found = models.BooleanField(_("found beyond the book"), default=False)
    digest = models.CharField(max_length=64)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.CheckConstraint(condition=Q(quantity__gt=0), name="movement_positive"),
            models.CheckConstraint(condition=~Q(source=F("target")), name="movement_has_two_ends"),
        ]
        indexes = [
            models.Index(fields=["source", "part", "day"], name="movement_source"),
            models.Index(fields=["target", "part", "day"], name="movement_target"),
            models.Index(fields=["day", "id"], name="movement_day"),
        ]

    def __str__(self):
        return f"{self.day}: {self.quantity} {self.part} {self.source} → {self.target}"


class Holding(models.Model):
    """What lies at a location by all movements so far: a derived balance, only for stores and colonies."""

    location = models.ForeignKey(Location, models.PROTECT, related_name="holdings")
    part = models.ForeignKey(Part, models.PROTECT, related_name="holdings")
    condition = models.CharField(
        _("condition"), max_length=10, choices=choices_of(Condition), default=Condition.SOUND
    )
    quantity = models.IntegerField(_("quantity"), default=0)

    class Meta:
        ordering = ["location", "part"]
        constraints = [
            models.UniqueConstraint(fields=["location", "part", "condition"], name="one_holding_of_a_gear"),
            models.CheckConstraint(condition=Q(quantity__gte=0), name="holding_not_negative"),
        ]

    def __str__(self):
        return f"{self.location}: {self.quantity} {self.part}"


class BookSeal(models.Model):
    """The one row that knows how many movements and acts there are and the last digest of each. Locked by every act.

    `mark` signs all four with the site's secret key, which is kept outside the database.
    """

    length = models.PositiveBigIntegerField(default=0)
    head = models.CharField(max_length=64, blank=True)
    acts = models.PositiveBigIntegerField(default=0)
    act_head = models.CharField(max_length=64, blank=True, default="")
    mark = models.CharField(max_length=64, blank=True)

    class Meta:
        constraints = [models.CheckConstraint(condition=Q(pk=1), name="one_seal")]

    def __str__(self):
        return f"{self.length} movements"
