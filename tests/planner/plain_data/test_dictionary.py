"""The dictionary says of every file and column what it is, in the models' own words."""

import pytest

from apiary.models import Yard
from inventory.models import Feeding, Part
from planner.plain_data.dictionary import (
    HEADINGS,
    column_meaning,
    dictionary_rows,
    meaning_of,
    unit_of,
    words_of,
)
from planner.plain_data.tables import COLUMNS_LEFT_OUT, LEFT_OUT, all_tables


@pytest.fixture(scope="module")
def rows():
    heading, *rows = dictionary_rows()
    assert heading == HEADINGS
    assert {len(row) for row in rows} == {len(HEADINGS)}
    return [dict(zip(HEADINGS, row, strict=True)) for row in rows]


def test_every_column_of_every_file_has_one_row(rows):
    told = [(row["file"], row["column"]) for row in rows if row["type"] not in ("", "table", "left out")]
    assert told == [(table.file, name) for table in all_tables() for name in table.headings]


def test_every_file_and_column_has_a_meaning(rows):
    assert [row for row in rows if not row["meaning"]] == []


def test_what_is_left_out_is_named_with_its_reason(rows):
    left = {(row["file"], row["column"]) for row in rows if row["type"] == "left out"}
    assert {("(no file)", label) for label in LEFT_OUT} <= left
    assert len(left) == len(LEFT_OUT) + len(COLUMNS_LEFT_OUT)


def test_every_number_with_a_unit_in_its_name_has_that_unit(rows):
    units = {(row["file"], row["column"]): row["unit"] for row in rows}
    assert units["parts.csv", "tare_lb"] == "lb"
    assert units["parts.csv", "length_in"] == "inches"
    assert units["yards.csv", "drive_minutes"] == "minutes"
    assert units["orders.csv", "fee_cents"].startswith("cents")
    assert units["moth-care.csv", "tenths_celsius"] == "tenths of a degree Celsius"
    assert units["feedings.csv", "quantity"] == "quarts or lb"
    assert units["yards.csv", "name"] == units["movements.csv", "part"] == ""
    money = {key for key in units if "cents" in key[1]}
    assert money and all("cents" in units[key] for key in money)


def test_the_words_are_the_models_own():
    drive = Yard._meta.get_field("drive_minutes")
    assert column_meaning(drive) == f"{drive.verbose_name}. {drive.help_text}"
    assert meaning_of(Yard) == Yard.__doc__
    assert ("sugar", "dry sugar") in words_of(Feeding._meta.get_field("feed"))
    assert unit_of(Part._meta.get_field("years_of_life")) == "years"


def test_allowed_words_and_what_a_column_points_to_are_told(rows):
    by_column = {(row["file"], row["column"]): row for row in rows}
    assert "held back" in by_column["movements.csv", "condition"]["allowed words"]
    assert by_column["movements.csv", "source"]["points to"] == "locations.csv: id"
    assert by_column["colonies.csv", "ended_on"]["empty"] == "may be: not told"
    assert by_column["colonies.csv", "tag"]["empty"] == "never"


def test_the_guard_of_text_and_what_goes_out_of_people_is_said(rows):
    general = {row["column"]: row["meaning"] for row in rows if row["file"] == "(all files)"}
    assert "apostrophe" in general["text"] and "= + - @" in general["text"]
    assert "names and roles" in general["people"]
