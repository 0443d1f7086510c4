"""Physical counts and what was said of gear found beyond the book.

A count is a draft until it is posted, so that nothing entered is lost; posted, it names the act that made the
book equal. Written by inventory/counting only.
"""

from django.conf import settings
from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from inventory.gear import Condition
from inventory.models.catalogue import Part, choices_of
from inventory.models.movements import Act, Location, Movement


class CountQuestions(models.QuerySet):
    def drafts(self):
        """Counts begun and neither posted nor thrown away, the oldest first."""
        return self.filter(status=Count.Status.DRAFT).order_by("day", "id")

    def posted(self):
        """Counts that were posted and whose correction still stands."""
        return self.filter(status=Count.Status.POSTED, act__reversed_by__isnull=True)


class Count(models.Model):
    """What somebody counted at a place on a day. Its `key` is the key of the act that posts it."""

    class Status(models.TextChoices):
        DRAFT = "draft", _("draft")
        POSTED = "posted", _("posted")
        DROPPED = "dropped", _("thrown away")

    key = models.CharField(_("key of the form"), max_length=64, unique=True)
    location = models.ForeignKey(
        Location, models.PROTECT, related_name="counts", verbose_name=_("store or colony")
    )
    day = models.DateField(_("day"), help_text=_("Counted on the evening of this day."))
    blind = models.BooleanField(
        _("blind"), default=False, help_text=_("The book is hidden until the numbers are entered.")
    )
    with_colonies = models.BooleanField(
        _("with the boxes on its colonies"), default=False, help_text=_("Boxes only, colony by colony.")
    )
    who = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+")
    note = models.CharField(_("note"), max_length=200, blank=True)
    status = models.CharField(_("status"), max_length=8, choices=Status, default=Status.DRAFT)
    act = models.OneToOneField(Act, models.PROTECT, null=True, blank=True, related_name="count")
    begun_at = models.DateTimeField(_("begun at"))

    objects = CountQuestions.as_manager()

    class Meta:
        ordering = ["-day", "-id"]
        constraints = [
            models.CheckConstraint(
                condition=Q(status="posted", act__isnull=False) | (~Q(status="posted") & Q(act__isnull=True)),
                name="count_posted_by_an_act",
            ),
        ]

    def __str__(self):
        return f"{self.location}, {self.day}"


class CountLine(models.Model):
    """Pieces counted of one gear at one place; zero is a count too. `booked`: what the book said when it was posted."""

    count = models.ForeignKey(Count, models.CASCADE, related_name="lines")
    location = models.ForeignKey(Location, models.PROTECT, related_name="+")
    part = models.ForeignKey(Part, models.PROTECT, related_name="+")
    condition = models.CharField(
        _("condition"), max_length=10, choices=choices_of(Condition), default=Condition.SOUND
    )
    quantity = models.PositiveIntegerField(_("counted"))
    booked = models.PositiveIntegerField(_("booked"), null=True, blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(
                fields=["count", "location", "part", "condition"], name="count_names_a_gear_once"
            ),
        ]

    def __str__(self):
        return f"{self.location}: {self.quantity} {self.part} counted"


class FoundQuestions(models.QuerySet):
    def standing(self):
        """Answers that hold: said without an act, or by one that was not reversed."""
        return self.filter(Q(act__isnull=True) | Q(act__reversed_by__isnull=True))


class FoundAnswer(models.Model):
    """Where gear found beyond the book came from, as somebody said later. Where its act is reversed it is open again."""

    class How(models.TextChoices):
        BOOKED = "booked", _("booked by an act")
        MISSING = "missing", _("it was simply missing from the book")

    movement = models.ForeignKey(Movement, models.PROTECT, related_name="answers")
    how = models.CharField(_("answer"), max_length=8, choices=How)
    act = models.OneToOneField(Act, models.PROTECT, null=True, blank=True, related_name="found_answer")
    note = models.CharField(_("note"), max_length=200, blank=True)
    who = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+")
    answered_at = models.DateTimeField(_("answered at"))

    objects = FoundQuestions.as_manager()

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(
                fields=["movement"], condition=Q(how="missing"), name="found_is_settled_once"
            ),
            models.CheckConstraint(
                condition=Q(how="booked", act__isnull=False) | Q(how="missing", act__isnull=True),
                name="found_answer_names_its_act",
            ),
        ]

    def __str__(self):
        return f"{self.movement}: {self.get_how_display()}"
