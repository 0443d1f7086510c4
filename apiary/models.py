"""Yards, colonies and the keeper: what stands where, in which set, how strong.

Takes plain values from the acts in colonies.py and people.py; gives rows and questions.
Knows nothing of gear: a hive set tells depths and counts, inventory turns them into parts.
"""

from django.conf import settings
from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models import Count, F, OuterRef, Q, Subquery, Sum
from django.utils.translation import gettext_lazy as _

from apiary.losses import ColonyBalance


class Keeper(models.Model):
    """The one row about whose bees these are. Weights in lb, money by ISO 4217 code."""

    name = models.CharField(_("name"), max_length=120, help_text=_("As it should stand on a purchase order."))
    address = models.TextField(
        _("address"), blank=True, help_text=_("As on a parcel, line by line. Gear is sent here.")
    )
    phone = models.CharField(_("phone"), max_length=40, blank=True)
    email = models.EmailField(_("e-mail"), blank=True)
    region = models.CharField(
        _("region"),
        max_length=60,
        blank=True,
        help_text=_("North, middle or south: sets the usual calendar."),
    )
    money = models.CharField(_("money"), max_length=3, default="USD")
    truck_lb = models.PositiveIntegerField(
        _("truck's load, lb"), default=1000, help_text=_("What the door plate allows, people taken off.")
    )
    truck_cubic_ft = models.PositiveIntegerField(
        _("truck's bed, cubic feet"),
        default=50,
        help_text=_("Length × width × height you stack to, in feet."),
    )
    count_every_months = models.PositiveSmallIntegerField(
        _("a yard is counted every, months"),
        default=6,
        validators=[MinValueValidator(1), MaxValueValidator(60)],
        help_text=_("Yards not counted for longer are listed as due. Six is a judgement: spring and autumn."),
    )
    invented = models.BooleanField(_("invented"), default=False, help_text=_("True only in the demo."))

    def __str__(self):
        return self.name


class YardQuestions(models.QuerySet):
    def with_colonies(self, *, on):
        """Each yard with `living`: the colonies alive in it by the evening of the day."""
        alive = (
            Q(colonies__started_on__lte=on)
            & (Q(colonies__ended_on__isnull=True) | Q(colonies__ended_on__gt=on))
            & ~Q(colonies__ended_why=Colony.Ended.MISTAKE)
        )
        return self.annotate(living=Count("colonies", filter=alive, distinct=True))

    def with_flow(self):
        """Each yard with `gain_lb`: what a full colony gains in all its windows of an average year."""
        windows = FlowWindow.objects.filter(yard=OuterRef("pk")).order_by().values("yard")
        return self.annotate(gain_lb=Subquery(windows.annotate(sum=Sum("gain_lb")).values("sum")))


class Yard(models.Model):
    """Ground with colonies, or the home store (shed)."""

    code = models.SlugField(_("code"), max_length=30, unique=True)
    name = models.CharField(_("name"), max_length=80, unique=True)
    region = models.CharField(_("county or region"), max_length=80, blank=True)
    stands = models.PositiveSmallIntegerField(
        _("stands"), default=0, help_text=_("How many hives it can hold.")
    )
    drive_minutes = models.PositiveSmallIntegerField(
        _("drive, minutes"), default=0, help_text=_("From home, one way.")
    )
    miles = models.DecimalField(_("miles"), max_digits=6, decimal_places=1, default=0)
    gate = models.CharField(_("gate"), max_length=40, blank=True)
    emergency = models.CharField(
        _("emergency address"), max_length=160, blank=True, help_text=_("What to tell the ambulance.")
    )
    access = models.TextField(_("access"), blank=True)
    visit_every_days = models.PositiveSmallIntegerField(
        _("visited every, days"), null=True, blank=True, help_text=_("Empty: as the season's answer says.")
    )
    is_shed = models.BooleanField(_("is the shed"), default=False)

    objects = YardQuestions.as_manager()

    class Meta:
        ordering = ["-is_shed", "name"]
        constraints = [
            models.UniqueConstraint(fields=["is_shed"], condition=Q(is_shed=True), name="one_shed"),
        ]

    def __str__(self):
        return self.name


class FlowWindow(models.Model):
    """Weeks (ISO week numbers) in which a yard yields, and what a full colony gains in an average year."""

    yard = models.ForeignKey(Yard, models.CASCADE, related_name="windows")
    name = models.CharField(_("name"), max_length=60)
    first_week = models.PositiveSmallIntegerField(
        _("first week"), validators=[MinValueValidator(1), MaxValueValidator(53)]
    )
    last_week = models.PositiveSmallIntegerField(
        _("last week"), validators=[MinValueValidator(1), MaxValueValidator(53)]
    )
    gain_lb = models.DecimalField(_("gain, lb"), max_digits=6, decimal_places=1)
    spread = models.DecimalField(
        _("spread"),
        max_digits=4,
        decimal_places=2,
        default="0.35",
        help_text=_("Spread between years, share of the mean."),
    )

    class Meta:
        ordering = ["yard", "first_week"]
        constraints = [
            models.UniqueConstraint(fields=["yard", "name"], name="one_window_of_a_name"),
            models.CheckConstraint(
                condition=Q(first_week__gte=1, first_week__lte=53, last_week__gte=1, last_week__lte=53),
                name="window_weeks_of_a_year",
            ),
            models.CheckConstraint(condition=Q(gain_lb__gte=0), name="window_gain_not_negative"),
        ]

    def __str__(self):
        return f"{self.yard}: {self.name}"


class PastWinter(models.Model):
    """Colonies that went into a winter before this book began and came out of it, of a yard or the whole outfit.

    Written by winters.py only. `autumn`: the year in which the winter began."""

    autumn = models.PositiveSmallIntegerField(_("winter that began in"))
    yard = models.ForeignKey(
        Yard,
        models.CASCADE,
        null=True,
        blank=True,
        related_name="past_winters",
        help_text=_("Empty: all yards."),
    )
    went_in = models.PositiveIntegerField(_("went in"))
    came_out = models.PositiveIntegerField(_("came out"))

    class Meta:
        ordering = ["autumn", "yard"]
        constraints = [
            models.UniqueConstraint(fields=["autumn", "yard"], name="winter_told_once_a_yard"),
            models.UniqueConstraint(
                fields=["autumn"], condition=Q(yard=None), name="winter_told_once_in_all"
            ),
            models.CheckConstraint(
                condition=Q(came_out__lte=F("went_in"), went_in__gt=0),
                name="winter_brings_out_no_more_than_went_in",
            ),
        ]

    def __str__(self):
        return f"{self.autumn}/{(self.autumn + 1) % 100:02d}, {self.yard or 'all yards'}"


class HiveSet(models.Model):
    """What a colony of this kind stands in: boxes by depth, floor and cover. The keeper's own."""

    class Base(models.TextChoices):
        FLOOR = "floor", _("floor of its own")
        PALLET = "pallet", _("quarter of a four-way pallet")

    class Cover(models.TextChoices):
        TELESCOPING = "telescoping", _("inner and outer cover")
        MIGRATORY = "migratory", _("migratory cover")

    code = models.SlugField(_("code"), max_length=30, unique=True)
    name = models.CharField(_("name"), max_length=60)
    width = models.PositiveSmallIntegerField(_("width, frames"), default=10)
    deep_boxes = models.PositiveSmallIntegerField(_("deep boxes"), default=0)
    medium_boxes = models.PositiveSmallIntegerField(_("medium boxes"), default=0)
    shallow_boxes = models.PositiveSmallIntegerField(_("shallow boxes"), default=0)
    base = models.CharField(_("stands on"), max_length=12, choices=Base, default=Base.FLOOR)
    cover = models.CharField(_("covered by"), max_length=12, choices=Cover, default=Cover.TELESCOPING)
    is_nuc = models.BooleanField(_("is a nuc"), default=False)

    class Meta:
        ordering = ["code"]
        constraints = [
            models.CheckConstraint(
                condition=Q(deep_boxes__gt=0) | Q(medium_boxes__gt=0) | Q(shallow_boxes__gt=0),
                name="hive_set_has_a_box",
            ),
            models.CheckConstraint(condition=Q(width__gt=0), name="hive_set_has_a_width"),
        ]

    def __str__(self):
        return self.name


class ColonyQuestions(models.QuerySet):
    def alive(self, *, on):
        """Colonies started by the day and not ended by its evening."""
        return self.real().filter(started_on__lte=on).filter(Q(ended_on__isnull=True) | Q(ended_on__gt=on))

    def real(self):
        """All but those entered by mistake: they count nowhere."""
        return self.exclude(ended_why=Colony.Ended.MISTAKE)

    def in_yard(self, yard):
        return self.filter(yard=yard)

    def balance(self, *, since, until):
        """What became of the colonies between two evenings; united ones live on in another hive."""
        span = self.real().filter(started_on__lte=until)
        ended = span.filter(ended_on__gt=since, ended_on__lte=until)
        left = Q(ended_why__in=(Colony.Ended.SOLD, Colony.Ended.UNITED))
        return ColonyBalance(
            start=self.alive(on=since).count(),
            increase=span.filter(started_on__gt=since).count(),
            removed=ended.filter(left).count(),
            end=self.alive(on=until).count(),
        )


class Colony(models.Model):
    """One colony of bees: where it stands, what it came from, what became of it."""

    class Origin(models.TextChoices):
        OVERWINTERED = "overwintered", _("overwintered")
        SPLIT = "split", _("split")
        NUC = "nuc", _("nuc")
        PACKAGE = "package", _("package")
        SWARM = "swarm", _("swarm")

    class Ended(models.TextChoices):
        DIED = "died", _("died")
        UNITED = "united", _("united")
        SOLD = "sold", _("sold")
        LOST = "lost", _("lost")
        MISTAKE = "mistake", _("entered by mistake")

    class Strength(models.TextChoices):
        STRONG = "strong", _("strong")
        FAIR = "fair", _("fair")
        WEAK = "weak", _("weak")

    tag = models.CharField(_("tag"), max_length=30, unique=True)
    yard = models.ForeignKey(Yard, models.PROTECT, related_name="colonies")
    origin = models.CharField(_("origin"), max_length=14, choices=Origin, default=Origin.OVERWINTERED)
    mother = models.ForeignKey("self", models.PROTECT, null=True, blank=True, related_name="daughters")
    started_on = models.DateField(_("started on"))
    ended_on = models.DateField(_("ended on"), null=True, blank=True)
    ended_why = models.CharField(_("ended because"), max_length=8, choices=Ended, blank=True)
    hive_set = models.ForeignKey(HiveSet, models.PROTECT, related_name="colonies")
    strength = models.CharField(_("strength"), max_length=8, choices=Strength, default=Strength.FAIR)

    objects = ColonyQuestions.as_manager()

    class Meta:
        ordering = ["yard", "tag"]
        verbose_name_plural = _("colonies")
        constraints = [
            models.CheckConstraint(
                condition=Q(ended_on__isnull=True, ended_why="")
                | (Q(ended_on__isnull=False) & ~Q(ended_why="")),
                name="colony_ended_with_a_reason",
            ),
            models.CheckConstraint(
                condition=Q(ended_on__isnull=True) | Q(ended_on__gte=F("started_on")),
                name="colony_ended_after_it_started",
            ),
        ]

    def __str__(self):
        return self.tag


class EventQuestions(models.QuerySet):
    def counted(self):
        """All but those whose act was undone."""
        return self.filter(undone=False)


class ColonyEvent(models.Model):
    """One thing that happened to a colony on a day.

    Written by colonies.py only.
    """

    class Kind(models.TextChoices):
        STARTED = "started", _("started")
        MOVED = "moved", _("moved")
        STRENGTH = "strength", _("strength judged")
        SET = "set", _("stands in another set")
        SPLIT = "split", _("split")
        UNITED = "united", _("united")
        REQUEENED = "requeened", _("requeened")
        ENDED = "ended", _("ended")

    colony = models.ForeignKey(Colony, models.PROTECT, related_name="events")
    day = models.DateField(_("day"))
    kind = models.CharField(_("kind"), max_length=10, choices=Kind)
    yard = models.ForeignKey(Yard, models.PROTECT, related_name="+")
    note = models.CharField(_("note"), max_length=200, blank=True)
    was = models.CharField(
        _("before"), max_length=30, blank=True, help_text=_("The strength or set it had when this was told.")
    )
    who = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, blank=True, related_name="+")
    recorded_at = models.DateTimeField(auto_now_add=True)
    act_key = models.CharField(_("key of the act"), max_length=64, blank=True, db_index=True)
    sealed_by = models.CharField(
        _("sealed by"),
        max_length=64,
        blank=True,
        default="",
        db_index=True,
        help_text=_(
            "Key of the act whose seal covers it: its own, or the next one where it was told outside any."
        ),
    )
    undone = models.BooleanField(_("undone"), default=False, help_text=_("True: it does not count."))

    objects = EventQuestions.as_manager()

    class Meta:
        ordering = ["day", "id"]

    def __str__(self):
        return f"{self.colony} {self.day}: {self.get_kind_display()}"


class Access(models.Model):
    """What a person may do here: the keeper all, a helper field acts in yards given to them, a reader only look."""

    class Role(models.TextChoices):
        KEEPER = "keeper", _("keeper")
        HELPER = "helper", _("helper")
        READER = "reader", _("reader")

    user = models.OneToOneField(settings.AUTH_USER_MODEL, models.CASCADE, related_name="access")
    role = models.CharField(_("role"), max_length=8, choices=Role, default=Role.READER)
    yards = models.ManyToManyField(Yard, blank=True, related_name="helpers")
    ended_at = models.DateTimeField(_("ended at"), null=True, blank=True)

    class Meta:
        verbose_name_plural = _("access")

    def __str__(self):
        return f"{self.user}: {self.get_role_display()}"


class SignInLink(models.Model):
    """A link that signs one person in once. Only the token's digest is kept."""

    user = models.ForeignKey(settings.AUTH_USER_MODEL, models.CASCADE, related_name="sign_in_links")
    digest = models.CharField(max_length=64, unique=True)
    made_at = models.DateTimeField()
    expires_at = models.DateTimeField()
    used_at = models.DateTimeField(null=True, blank=True)

    def __str__(self):
        return f"link for {self.user}"
