"""A season's answers, and the runs that turned them into orders.

Written by runs.py only; its lease and progress by queue.py, a season's answers by the forms and, from a what-if, by
variants.py. Money in whole cents.
"""

import datetime as dt
from decimal import Decimal

from django.conf import settings
from django.db import models
from django.utils.translation import gettext_lazy as _


class Season(models.Model):
    """What the keeper answered for one season. `answers` holds only what differs from the defaults; `usual_order`
    the packs by offer code they would have ordered without any planning, empty where they did not say."""

    name = models.CharField(_("name"), max_length=60, unique=True)
    starts_on = models.DateField(_("day of the order"))
    answers = models.JSONField(_("answers"), default=dict, blank=True)
    budget_cents = models.PositiveIntegerField(_("budget, cents"), null=True, blank=True)
    usual_order = models.JSONField(_("usual order"), default=dict, blank=True)

    class Meta:
        ordering = ["-starts_on"]

    def __str__(self):
        return self.name

    def is_under_way(self, today):
        """True from the day after its first until its 52 weeks are over: it can be planned again."""
        return self.starts_on < today < self.starts_on + dt.timedelta(weeks=52)

    @property
    def budget(self):
        """Decimal, or None where the keeper set no limit."""
        return None if self.budget_cents is None else Decimal(self.budget_cents) / 100


class Runs(models.QuerySet):
    def with_orders(self):
        """Without those that only check another's beliefs."""
        return self.exclude(parent__isnull=False, what_if={})

    def in_earnest(self):
        """Without what-ifs too."""
        return self.filter(parent=None)


class Run(models.Model):
    """One planning of a season. The row is the queue: a worker leases it, writes progress, reads `cancel`.

    `begun`: first day of the season it plans within, `day` the evening whose books it reads; `books`: what counted of
    them, for comparing; `what_if`: what is supposed of a run asked beside its `parent`, empty for a run in earnest. One
    beside a parent with nothing supposed only checks that run's beliefs."""

    class Status(models.TextChoices):
        WAITING = "waiting", _("waiting")
        WORKING = "working", _("working")
        DONE = "done", _("done")
        FAILED = "failed", _("failed")
        CANCELLED = "cancelled", _("cancelled")

    season = models.ForeignKey(Season, models.PROTECT, related_name="runs")
    status = models.CharField(_("status"), max_length=10, choices=Status, default=Status.WAITING)
    day = models.DateField(_("day of the order"))
    begun = models.DateField(_("first day of the season"), null=True, blank=True)
    parent = models.ForeignKey("self", models.PROTECT, null=True, blank=True, related_name="variants")
    what_if = models.JSONField(_("what if"), default=dict, blank=True)
    books = models.JSONField(_("what counted of the books"), default=dict, blank=True)
    asked_at = models.DateTimeField(_("asked at"))
    asked_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+"
    )
    started_at = models.DateTimeField(null=True, blank=True)
    finished_at = models.DateTimeField(null=True, blank=True)
    scenarios = models.PositiveIntegerField(default=100)
    seed = models.PositiveIntegerField(default=1)
    budget_cents = models.PositiveIntegerField(null=True, blank=True)
    solver = models.CharField(max_length=8, default="highs")
    gap = models.FloatField(default=0.001)
    seconds = models.PositiveIntegerField(default=120)
    trial = models.PositiveIntegerField(_("fresh seasons it is tried on"), default=300)
    bad_years_curve = models.BooleanField(_("draws the bad-years curve"), default=False)
    beliefs = models.BooleanField(_("checks the beliefs"), default=False)
    usual_order = models.JSONField(_("usual order"), default=dict, blank=True)
    stage = models.CharField(_("stage"), max_length=40, blank=True)
    bound = models.FloatField(null=True, blank=True)
    gap_reached = models.FloatField(null=True, blank=True)
    attempts = models.PositiveSmallIntegerField(default=0)
    worker = models.CharField(max_length=80, blank=True)
    leased_until = models.DateTimeField(null=True, blank=True)
    cancel = models.BooleanField(default=False)
    message = models.TextField(_("what happened"), blank=True)
    answers = models.JSONField(default=dict, blank=True)
    problem = models.JSONField(null=True, blank=True)
    plan = models.JSONField(null=True, blank=True)
    report = models.JSONField(null=True, blank=True)
    approved_at = models.DateTimeField(null=True, blank=True)
    approved_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+"
    )

    orders = models.ManyToManyField("inventory.Order", verbose_name=_("orders made"), blank=True)

    objects = Runs.as_manager()

    class Meta:
        ordering = ["-id"]
        indexes = [models.Index(fields=["status", "leased_until"], name="run_queue")]

    def __str__(self):
        return f"run {self.pk}"

    @property
    def budget(self):
        return None if self.budget_cents is None else Decimal(self.budget_cents) / 100

    @property
    def later_in_season(self):
        """True where it plans again, on a day after its season's first."""
        return self.begun is not None and self.begun < self.day

    @property
    def is_over(self):
        return self.status not in (self.Status.WAITING, self.Status.WORKING)

    @property
    def only_checks(self):
        """True where it only checks the beliefs of its parent: it has no order of its own."""
        return self.parent_id is not None and not self.what_if

    @property
    def is_done(self):
        """True where it has an order."""
        return self.status == self.Status.DONE and not self.only_checks
