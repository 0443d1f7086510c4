"""People and the one-time link that lets one in: made, shown once, used once.

Takes a person and the moment; gives a token, of which only the digest is kept. Only writer of SignInLink.
Knows no default password: who has none yet sets one when the link is used.
"""

import hashlib
import secrets
from datetime import timedelta

from django.contrib.auth import get_user_model
from django.db import transaction
from django.urls import reverse

from apiary.models import SignInLink

LINK_LASTS = timedelta(days=2)


class LinkNotGood(Exception):
    """The link is unknown, used or too old; `why` is the sentence for the page."""

    def __init__(self, why):
        self.why = why
        super().__init__(why)


def digest_of(token):
    return hashlib.sha256(token.encode()).hexdigest()


def someone_can_sign_in():
    """True once any active person has a password of their own."""
    people = get_user_model().objects.filter(is_active=True)
    return any(person.has_usable_password() for person in people.only("password"))


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
