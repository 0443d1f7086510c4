"""Rules of rows worked out on plain values give what the database gives."""

import itertools

import pytest
from django.db import connection, models
from django.db.models import F, Q

from apiary.models import Colony
from planner.plain_data.conditions import NotPlain, judge_of
from planner.plain_data.tables import all_tables

PLACES = {"a": 0, "b": 1}


@pytest.mark.parametrize(
    ("condition", "row", "found"),
    [
        (Q(a=1), (1, 0), True),
        (Q(a=1), (None, 0), None),
        (~Q(a=1), (1, 0), False),
        (Q(a__gt=0, b__lte=5), (1, 6), False),
        (Q(a__gt=0) | Q(b__gte=5), (0, 5), True),
        (Q(a__isnull=True), (None, 5), True),
        (Q(a__isnull=False), (None, 5), False),
        (Q(a__in=["x", "y"]), ("y", 5), True),
        (Q(a__lt=F("b")), (1, 2), True),
        (~Q(a=F("b")), (2, 2), False),
        (Q(a__lt=F("b")), (1, None), None),
        (Q(a=1) & ~Q(b__in=[2, 3]), (1, 3), False),
    ],
)
def test_a_condition_of_a_row(condition, row, found):
    assert judge_of(condition, PLACES)(row) is found


@pytest.mark.parametrize("condition", [Q(a__contains="x"), Q(c=1), Q(a__yard=1), F("a"), Q(a=1) ^ Q(b=2)])
def test_what_only_a_database_can_work_out_is_left_to_it(condition):
    with pytest.raises(NotPlain):
        judge_of(condition, PLACES)


def test_every_rule_of_every_table_can_be_told_with_its_line():
    for table in all_tables():
        places = {column.name: at for at, column in enumerate(table.columns)} | {"pk": 0}
        for constraint in table.model._meta.constraints:
            if isinstance(constraint, models.CheckConstraint):
                assert judge_of(constraint.condition, places)
            else:
                assert isinstance(constraint, models.UniqueConstraint) and not constraint.expressions
                assert constraint.condition is None or judge_of(constraint.condition, places)


@pytest.mark.django_db
def test_colonies_are_judged_as_the_database_judges_them():
    """The two rules of a colony's end, on every mix of told and not told."""
    rules = [rule.condition for rule in Colony._meta.constraints]
    places = {"ended_on": 0, "ended_why": 1, "started_on": 2}
    days = (None, "2026-01-01", "2026-02-01")
    for row in itertools.product(days, ("", "died"), days[1:]):
        plain = all(judge_of(rule, places)(row) is not False for rule in rules)
        assert plain is _judged_by_the_database(row)


def _judged_by_the_database(row):
    sql = (
        "SELECT ((e IS NULL AND w = '') OR (e IS NOT NULL AND NOT (w = ''))) AND (e IS NULL OR e >= s) "
        "FROM (SELECT CAST(%s AS text) AS e, CAST(%s AS text) AS w, CAST(%s AS text) AS s) AS told"
    )
    with connection.cursor() as cursor:
        cursor.execute(sql, row)
        return bool(cursor.fetchone()[0])
