"""Checking the files: missing, edited, and each row against its table and the others; all faults at once."""

import pytest

from planner.plain_data.checking import file_faults, row_faults
from planner.plain_data.manifest import read_manifest
from planner.plain_data.writing import export
from tests import makers
from tests.planner.plain_data.emptied import changed

pytestmark = pytest.mark.django_db


@pytest.fixture
def folder(tmp_path):
    """Two yards, a colony with its gear, an offer."""
    creek = makers.make_yard("creek", name="Creek")
    makers.make_yard("hill", name="Hill")
    makers.make_colony("A1", yard=creek, gear=True)
    makers.make_offer({"box-medium-10": 5})
    makers.make_window(creek)
    export(tmp_path / "out")
    return tmp_path / "out"


def told(folder):
    return [(fault.file, fault.line, fault.column, fault.what) for fault in row_faults(folder)]


def of_files(folder, *, edited=False):
    faults, names = file_faults(folder, read_manifest(folder), edited=edited)
    return [(fault.file, fault.what) for fault in faults], names


def test_files_as_they_were_written_have_no_fault(folder):
    assert of_files(folder) == ([], [])
    assert told(folder) == []


def test_an_edited_file_is_a_fault_unless_the_keeper_means_it(folder):
    changed(folder, "yards.csv", "Creek", "Brook")
    what = "the file is not as it was written (SHA-256 differs)"
    assert of_files(folder) == ([("yards.csv", what)], ["yards.csv"])
    assert of_files(folder, edited=True) == ([], ["yards.csv"])


def test_a_missing_file_is_a_fault_even_where_files_may_be_edited(folder):
    (folder / "yards.csv").unlink()
    (folder / "acts.csv").unlink()
    missing = [("acts.csv", "the file is missing"), ("yards.csv", "the file is missing")]
    assert of_files(folder)[0] == of_files(folder, edited=True)[0] == missing


def test_a_dictionary_thrown_away_is_no_fault(folder):
    (folder / "dictionary.csv").unlink()
    assert of_files(folder) == ([], [])


def test_a_table_the_manifest_does_not_name_is_a_fault(folder):
    changed(folder, "manifest.json", '"yards.csv"', '"meadows.csv"')
    (folder / "meadows.csv").write_bytes((folder / "yards.csv").read_bytes())
    assert of_files(folder)[0] == [("yards.csv", "the manifest does not name it")]


def test_what_points_to_a_row_that_is_not_there_names_each_line(folder):
    lines = (folder / "yards.csv").read_text().splitlines()
    (folder / "yards.csv").write_text("\n".join(line for line in lines if ",creek," not in line))
    yard = next(line for line in lines if ",creek," in line).split(",")[0]
    what = f"yards.csv has no row {yard}"
    assert told(folder) == [
        ("colonies.csv", 2, "yard", what),
        ("colony-events.csv", 2, "yard", what),
        ("flow-windows.csv", 2, "yard", what),
    ]


def test_what_may_be_there_once_names_both_lines(folder):
    changed(folder, "yards.csv", ",hill,", ",creek,")
    assert told(folder) == [("yards.csv", 3, "code", "the same stands in line 2")]
    text = (folder / "price-steps.csv").read_text().splitlines()
    again = ",".join(["999", *text[1].split(",")[1:]])
    (folder / "price-steps.csv").write_text("\n".join([*text, again]))
    assert told(folder)[0] == ("price-steps.csv", 3, "offer, from_packs", "the same stands in line 2")


def test_a_row_that_breaks_a_rule_of_its_table_is_told_in_its_words(folder):
    changed(folder, "colonies.csv", ",2025-04-01,,,", ",2025-04-01,2025-03-01,died,")
    what = "this row breaks the rule colony ended after it started"
    assert told(folder) == [("colonies.csv", 2, "", what)]


def test_a_second_shed_is_told_though_the_rule_has_a_condition(folder):
    text = (folder / "yards.csv").read_text()
    (folder / "yards.csv").write_text(text.replace(",no\n", ",yes\n"))
    assert told(folder) == [("yards.csv", 3, "is_shed", "the same stands in line 2")]


def test_faults_of_several_files_are_told_together(folder):
    changed(folder, "yards.csv", "Creek", "x" * 81)
    changed(folder, "movements.csv", ",sound,", ",broken,")
    changed(folder, "acts.csv", ",2025-04-01,", ",1 April,")
    found = told(folder)
    assert {(file, column) for file, _, column, _ in found} >= {
        ("yards.csv", "name"),
        ("movements.csv", "condition"),
        ("acts.csv", "day"),
    }
    assert all(line > 0 for _, line, _, _ in found)
