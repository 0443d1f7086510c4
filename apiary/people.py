"""People: invited, given a role and yards, let in by a one-time link, shown out. Only writer of accounts and links.

Takes a person and the moment; gives a token, of which only the digest is kept. Knows no default password: who has
none yet sets one when the link is used. What a role may do is said in rights.py.
"""

import hashlib
import secrets
from datetime import timedelta

from django.contrib.auth import get_user_model
from django.db import transaction
from django.db.models import Q
from django.urls import reverse

from apiary.errors import Refused
from apiary.models import Access, SignInLink
from apiary.rights import KEEPER, grounds

LINK_LASTS = timedelta(days=2)


class LinkNotGood(Exception):
    """The link is unknown, used or too old; `why` is the sentence for the page."""

    def __init__(self, why):
        self.why = why
        super().__init__(why)


class NotByYourself(Refused):
    sentence = (
        "You cannot change your own role or access, {person}: another keeper does that, so that one stays."
    )


class KeptKeeper(Refused):
    sentence = "{person} set this house up and stays its keeper: nobody changes or ends that access here."


class PersonTaken(Refused):
    sentence = "Someone here is called {name} already: give the new one another name."


def digest_of(token):
    return hashlib.sha256(token.encode()).hexdigest()


def someone_can_sign_in():
    """True once any keeper has a password of their own: from then on the house is opened from inside."""
    keeps = Q(is_superuser=True) | Q(access__role=KEEPER, access__ended_at=None)
    keepers = get_user_model().objects.filter(keeps, is_active=True)
    return any(person.has_usable_password() for person in keepers.only("password"))


def first_keeper():
    """The person the first link is for: may do everything, and has no password until the link is used."""
    User = get_user_model()
    keeper = User.objects.filter(is_superuser=True, is_active=True).order_by("pk").first()
    return keeper or User.objects.create_superuser(username="keeper", password=None)


@transaction.atomic
def make_link(person, *, now, lasts=LINK_LASTS, renew=False):
    """The token of a new link for this person; links made before and not used stop working.

    Who has a password is let in as they are; who has none, or is to `renew` a forgotten one, chooses name and password.
    """
    if renew:
        person.set_unusable_password()
        person.save(update_fields=["password"])
    SignInLink.objects.filter(user=person, used_at__isnull=True).delete()
    token = secrets.token_urlsafe(32)
    SignInLink.objects.create(user=person, digest=digest_of(token), made_at=now, expires_at=now + lasts)
    return token


def path_of(token):
    """Where on the site the link of a token leads."""
    return reverse("first-sign-in", args=[token])


def link_of(token, *, now):
    """The good link of this token, or LinkNotGood. Looking uses nothing up."""
    link = SignInLink.objects.select_related("user").filter(digest=digest_of(token)).first()
    if link is None or not link.user.is_active:
        raise LinkNotGood("This sign-in link is not known here")
    if link.used_at is not None:
        raise LinkNotGood("This sign-in link has been used: a link lets one person in once")
    if link.expires_at <= now:
        raise LinkNotGood("This sign-in link is too old")
    return link


@transaction.atomic
def use_link(token, *, now, name="", password=""):
    """Uses the link up and gives its person, with name and password set where they are given."""
    link = link_of(token, now=now)
    taken = SignInLink.objects.filter(pk=link.pk, used_at__isnull=True).update(used_at=now)
    if not taken:
        raise LinkNotGood("This sign-in link has been used: a link lets one person in once")
    person = link.user
    if name:
        person.username = name
    if password:
        person.set_password(password)
    if name or password:
        person.save()
    return person


@transaction.atomic
def invite(name, *, role, yards, now):
    """A new person with that role in those yards, and the token of the link that lets them set a password."""
    User = get_user_model()
    name = User.normalize_username(" ".join(name.split()))
    if User.objects.filter(username__iexact=name).exists():
        raise PersonTaken(name=name)
    person = User.objects.create_user(username=name, password=None)
    _give(person, role, yards)
    return person, make_link(person, now=now)


@transaction.atomic
def change(person, *, role, yards, by):
    """Another role or other yards, from the next page on."""
    _refuse_kept(person, by)
    return _give(person, role, yards)


@transaction.atomic
def end(person, *, by, now):
    """Shown out at once: signed out everywhere, password and links gone. What they booked keeps their name."""
    _refuse_kept(person, by)
    access, _made = Access.objects.get_or_create(user=person)
    access.ended_at = now
    access.save(update_fields=["ended_at"])
    person.set_unusable_password()  # every session was opened with the old one and ends with it
    person.is_active = False
    person.save(update_fields=["password", "is_active"])
    SignInLink.objects.filter(user=person, used_at__isnull=True).delete()


@transaction.atomic
def let_in(person, *, by, now):
    """The token of a new link with which they choose a password; who was shown out is back with role and yards."""
    _refuse_kept(person, by)
    Access.objects.filter(user=person).update(ended_at=None)
    person.is_active = True
    person.save(update_fields=["is_active"])
    return make_link(person, now=now, renew=True)


def first_yard(person):
    """The one yard they were let in for, the shed aside; None for the keeper and for who works in several."""
    yards = list(grounds(person).filter(is_shed=False)[:2]) if hasattr(person, "access") else []
    return yards[0] if len(yards) == 1 and person.access.role != KEEPER else None


def _give(person, role, yards):
    access, _made = Access.objects.update_or_create(user=person, defaults={"role": role})
    access.yards.set([] if role == KEEPER else yards)
    return access


def _refuse_kept(person, by):
    if person == by:
        raise NotByYourself(person=person)
    if person.is_superuser:
        raise KeptKeeper(person=person)
