"""Nothing of the books is forgotten and nothing secret goes out: every table and column is one or the other."""

from django.apps import apps
from django.db import models

from planner.plain_data.cells import codec_of
from planner.plain_data.tables import COLUMNS_LEFT_OUT, LEFT_OUT, all_tables, file_name, pointed_to, table_of


def test_every_table_goes_out_or_is_left_out_for_a_reason():
    """Fails when a table is added that is neither: name it in LEFT_OUT with its reason, or let it go out."""
    there = {model._meta.label for model in apps.get_models(include_auto_created=True)}
    out = {table.label for table in all_tables()}
    assert there - out - set(LEFT_OUT) == set()
    assert set(LEFT_OUT) - there == set(), "named but no more there"
    assert out & set(LEFT_OUT) == set()
    assert all(len(reason) > 10 for reason in (LEFT_OUT | COLUMNS_LEFT_OUT).values())


def test_every_column_goes_out_or_is_left_out_for_a_reason():
    named = set()
    for table in all_tables():
        fields = {field.name for field in table.model._meta.concrete_fields}
        left = {field.name for field in table.left}
        named |= {f"{table.label}.{name}" for name in left}
        assert set(table.headings) | left == fields and not set(table.headings) & left
        many = {field.remote_field.through._meta.label for field in table.model._meta.many_to_many}
        assert many <= {other.label for other in all_tables()} | set(LEFT_OUT)
    assert named == set(COLUMNS_LEFT_OUT), "named but no more there"


def test_every_column_has_a_way_to_be_written():
    """Fails when a column of a type is added that cells.py does not know."""
    for table in all_tables():
        assert all(codec_of(column).word for column in table.columns)


def test_no_column_that_goes_out_sounds_like_a_secret():
    words = ("password", "token", "secret", "session", "mark", "login")
    loud = [f"{t.file} {name}" for t in all_tables() for name in t.headings if any(w in name for w in words)]
    assert loud == []
    assert "apiary.SignInLink" in LEFT_OUT and "auth.User.password" in COLUMNS_LEFT_OUT


def test_of_people_only_names_and_roles_go_out():
    expected = ("id", "is_superuser", "username", "first_name", "last_name", "is_staff", "is_active")
    assert table_of("auth.User").headings == expected


def test_each_file_has_a_name_of_its_own_that_any_disk_takes():
    names = [table.file for table in all_tables()]
    assert len({name.lower() for name in names}) == len(names)
    assert all(name.replace("-", "").replace(".csv", "").isascii() and " " not in name for name in names)
    assert {"yards.csv", "movements.csv", "access-yards.csv", "sales-colonies.csv", "people.csv"} <= set(
        names
    )


def test_a_tie_of_two_tables_is_named_by_both():
    assert file_name(apps.get_model("inventory", "Sale_colonies")) == "sales-colonies"


def test_each_table_begins_with_the_number_others_point_to():
    for table in all_tables():
        assert table.columns[0].primary_key
        for column in table.columns:
            target = pointed_to(column)
            assert target is None or target.columns[0] == column.target_field


def test_no_text_may_be_not_told_since_an_empty_cell_is_empty_text():
    text = models.CharField, models.TextField
    doubtful = [
        f"{t.file} {c.name}" for t in all_tables() for c in t.columns if isinstance(c, text) and c.null
    ]
    assert doubtful == []
