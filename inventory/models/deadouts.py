"""Deadouts, what holds gear back, the inspector's words, and care against wax moth: what acts tell beyond movements.

Each row hangs on the act (or the movement) that wrote it and counts as long as that act was not reversed.
Written by inventory/deadouts only.
"""

from typing import ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from apiary.models import Colony
from inventory.models.movements import Act, Movement, Permanent, WrittenOnce


class ToldByAct(WrittenOnce):
    """Rows that were told by an act."""

    def standing(self):
        """Those whose act was not reversed: the others count nowhere."""
        return self.filter(act__reversed_by__isnull=True)


class Deadout(Permanent):
    """A colony found dead and its hive taken apart: why it died as far as anybody can tell, and who looked."""

    class Cause(models.TextChoices):
        STARVED = "starved", _("starved")
        QUEEN = "queen", _("queen")
        MITES = "mites", _("mites and virus")
        COLD = "cold", _("cold or moisture")
        MICE = "mice", _("mice")
        ROBBED = "robbed", _("robbed")
        PESTICIDE = "pesticide", _("pesticide")
        DISEASE = "disease", _("disease")
        UNKNOWN = "unknown", _("unknown")

    act = models.OneToOneField(Act, models.PROTECT, related_name="deadout")
    colony = models.ForeignKey(Colony, models.PROTECT, related_name="deadouts")
    found_on = models.DateField(_("found on"))
    cause = models.CharField(_("cause suspected"), max_length=10, choices=Cause)
    brood_seen = models.BooleanField(_("brood looked at by someone who knows foulbrood"))
    suspected = models.BooleanField(_("foulbrood suspected"), default=False)
    note = models.CharField(_("note"), max_length=200, blank=True)

    objects: ClassVar = ToldByAct.as_manager()

    class Meta:
        ordering = ["-found_on", "-id"]

    def __str__(self):
        return f"{self.colony}, {self.found_on}"

    @property
    def who(self):
        return self.act.who


class Hold(Permanent):
    """Why the pieces of one movement are held back. The gravest reason stands last."""

    class Reason(models.TextChoices):
        HAND = "hand", _("set aside by hand")
        PESTICIDE = "pesticide", _("pesticide in the comb")
        BROOD = "brood", _("brood not looked at")
        REACHED = "reached", _("reached by a suspicion of foulbrood")
        FOULBROOD = "foulbrood", _("foulbrood suspected")

    movement = models.OneToOneField(Movement, models.PROTECT, related_name="hold")
    deadout = models.ForeignKey(Deadout, models.PROTECT, null=True, blank=True, related_name="holds")
    reason = models.CharField(_("reason"), max_length=10, choices=Reason)
    why = models.CharField(_("why"), max_length=200)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.CheckConstraint(
                condition=Q(reason="hand") | Q(deadout__isnull=False), name="hold_names_its_deadout"
            ),
        ]

    def __str__(self):
        return self.why


class InspectorWord(Permanent):
    """What was written by the inspector, or by who may judge it where no foulbrood is suspected; kept word for word."""

    class Verdict(models.TextChoices):
        CLEARED = "cleared", _("no foulbrood")
        CONFIRMED = "confirmed", _("foulbrood confirmed")
        TREATED = "treated", _("treated, may be used again")

    act = models.OneToOneField(Act, models.PROTECT, related_name="inspector_word")
    deadout = models.ForeignKey(Deadout, models.PROTECT, null=True, blank=True, related_name="words")
    verdict = models.CharField(_("what it says"), max_length=10, choices=Verdict)
    inspector = models.CharField(_("who wrote it"), max_length=120)
    written_on = models.DateField(_("written on"))
    words = models.TextField(_("word for word"), max_length=2000)

    objects: ClassVar = ToldByAct.as_manager()

    class Meta:
        ordering = ["id"]

    def __str__(self):
        return f"{self.inspector}, {self.written_on}: {self.get_verdict_display()}"


class MothCare(Permanent):
    """Combs of a deadout frozen, or cared for otherwise, against wax moth. Never care against foulbrood."""

    act = models.OneToOneField(Act, models.PROTECT, related_name="moth_care")
    deadout = models.ForeignKey(Deadout, models.PROTECT, related_name="cares")
    way = models.CharField(
        _("how"),
        max_length=8,
        choices=[("frozen", _("frozen")), ("other", _("otherwise: light and air, or stored in the cold"))],
    )
    tenths_celsius = models.SmallIntegerField(_("tenths of a degree Celsius"), null=True, blank=True)
    minutes = models.PositiveIntegerField(_("minutes once the core was cold"), null=True, blank=True)

    objects: ClassVar = ToldByAct.as_manager()

    class Meta:
        ordering = ["id"]
        constraints = [
            models.CheckConstraint(
                condition=~Q(way="frozen") | Q(tenths_celsius__isnull=False, minutes__isnull=False),
                name="frozen_at_a_temperature_for_a_time",
            ),
        ]

    def __str__(self):
        return f"{self.deadout}: {self.get_way_display()}"

    @property
    def words(self):
        """Frozen at −15 °C for 2.5 hours."""
        if self.way != "frozen" or self.tenths_celsius is None or self.minutes is None:
            return self.get_way_display()
        degrees = f"{self.tenths_celsius / 10:g}".replace("-", "−")
        hours = f"{self.minutes / 60:.2f}".rstrip("0").rstrip(".")
        return f"frozen at {degrees} °C for {hours} {'hour' if hours == '1' else 'hours'}"
