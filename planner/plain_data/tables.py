"""Which tables and columns go out as plain data, under which file name, and which stay behind, each with its reason.

Takes the models of the installed packages; gives Tables. A table added to a package of ours goes out by itself;
what must not is named here.
"""

import functools
from dataclasses import dataclass

from django.apps import apps
from django.db import models

OURS = ("apiary", "inventory", "planner")
PEOPLE = "auth.User"
SECRET = "a secret: it lets somebody in. After loading, links to sign in are made anew"
LEFT_OUT = {
    "apiary.SignInLink": SECRET,
    "inventory.Evening": "worked out from the movements, anew when they are loaded",
    "admin.LogEntry": "a diary of the site's administration: no part of the books",
    "auth.Permission": "made by the program itself",
    "auth.Group": "not used: a person's role stands in access.csv",
    "auth.Group_permissions": "not used: a person's role stands in access.csv",
    "auth.User_groups": "not used: a person's role stands in access.csv",
    "auth.User_user_permissions": "not used: a person's role stands in access.csv",
    "contenttypes.ContentType": "made by the program itself",
    "sessions.Session": "a secret: who is signed in just now",
    "axes.AccessAttempt": "attempts to sign in: no part of the books",
    "axes.AccessAttemptExpiration": "attempts to sign in: no part of the books",
    "axes.AccessFailureLog": "attempts to sign in: no part of the books",
    "axes.AccessLog": "attempts to sign in: no part of the books",
}
COLUMNS_LEFT_OUT = {
    "auth.User.password": SECRET,
    "auth.User.last_login": "of people only names and roles go out",
    "auth.User.email": "of people only names and roles go out",
    "auth.User.date_joined": "of people only names and roles go out",
    "inventory.BookSeal.mark": "signed with the secret key of an installation, anew by the one that loads it",
}
FILE_NAMES = {
    PEOPLE: "people",
    "inventory.BookSeal": "seal",
    "inventory.ValueBasis": "value-basis",
    "inventory.SaleOwed": "sale-owed",
    "inventory.MothCare": "moth-care",
}


@dataclass(frozen=True, kw_only=True)
class Table:
    """One model, its file and the columns that go out; `left` are those that stay, filled with defaults on loading."""

    model: type[models.Model]
    file: str
    columns: tuple[models.Field, ...]
    left: tuple[models.Field, ...]

    @property
    def label(self):
        return self.model._meta.label

    @property
    def headings(self):
        return tuple(column.name for column in self.columns)


@functools.cache
def all_tables():
    """Every table that goes out, by file name."""
    found = [
        _table(model)
        for model in apps.get_models(include_auto_created=True)
        if (model._meta.app_label in OURS or model._meta.label == PEOPLE)
        and model._meta.label not in LEFT_OUT
    ]
    return tuple(sorted(found, key=lambda table: table.file))


@functools.cache
def table_of(label):
    return next(table for table in all_tables() if table.label == label)


def pointed_to(field):
    """The table a column points to; None where it stands for itself, or points to nothing that goes out."""
    if not field.remote_field:
        return None
    return table_of(field.remote_field.model._meta.label)


def _table(model):
    fields = model._meta.concrete_fields
    left = [field for field in fields if f"{model._meta.label}.{field.name}" in COLUMNS_LEFT_OUT]
    return Table(
        model=model,
        file=f"{file_name(model)}.csv",
        columns=tuple(field for field in fields if field not in left),
        left=tuple(left),
    )


def file_name(model):
    """From the model's own plural; a table that only ties two others is called by both."""
    if model._meta.auto_created:
        owner = model._meta.auto_created
        field = next(field for field in owner._meta.many_to_many if field.remote_field.through is model)
        return f"{file_name(owner)}-{field.name.replace('_', '-')}"
    return FILE_NAMES.get(model._meta.label) or str(model._meta.verbose_name_plural).replace(" ", "-")
