"""Writing: a folder that is whole or not there, CSV that others read, rows in the order of their ids."""

import csv
import json
import stat

import pytest

from apiary.models import Yard
from planner.models import Run, Season
from planner.plain_data import writing
from planner.plain_data.errors import FolderTaken, NotWritten
from planner.plain_data.manifest import NAME, sha256_of
from planner.plain_data.tables import all_tables
from tests import makers
from tests.planner import made
from tests.planner.plain_data.emptied import files_of

AWKWARD = 'Müller, "the\r\nold" place \u202bأبجد\u202c 🐝'


@pytest.fixture
def out(tmp_path):
    return tmp_path / "out"


def rows(path):
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.mark.django_db
def test_every_table_has_its_file_and_the_manifest_its_count_and_checksum(out):
    makers.make_yard("creek"), makers.make_yard("hill")
    files = writing.export(out)
    told = json.loads((out / NAME).read_text())["files"]
    assert set(told) == set(files) == {*(table.file for table in all_tables()), "dictionary.csv"}
    assert told["yards.csv"]["rows"] == 2 == len(rows(out / "yards.csv"))
    for name, one in told.items():
        assert one["sha256"] == sha256_of(out / name)
    assert set(files_of(out)) == {*files, NAME}


@pytest.mark.django_db
def test_the_files_are_csv_as_rfc_4180_has_it(out):
    """RFC 4180: lines end with CR LF, quotes are doubled, cells with commas, quotes or line breaks are quoted."""
    makers.make_yard("creek", name='Creek, "big"')
    writing.export(out)
    first, second, end = (out / "yards.csv").read_bytes().decode().split("\r\n")
    assert first.startswith("id,code,name,region,")
    assert ',creek,"Creek, ""big""",' in second and end == ""


@pytest.mark.django_db
def test_awkward_text_is_read_by_pythons_csv_as_it_is(out):
    makers.make_yard("creek", name=AWKWARD)
    makers.make_yard("hill", name="=HYPERLINK(1)")
    writing.export(out)
    assert [row["name"] for row in rows(out / "yards.csv")] == [AWKWARD, "'=HYPERLINK(1)"]


@pytest.mark.django_db
def test_long_documents_lie_beside_and_short_ones_in_the_cell(out):
    season = Season.objects.create(name="2027", starts_on=made.DAY, answers={"splits": 3})
    run = made.make_run(season) if hasattr(made, "make_run") else None
    run = run or Run.objects.create(season=season, day=made.DAY, asked_at="2027-01-15T12:00:00Z")
    Run.objects.filter(pk=run.pk).update(plan={"long": "x" * 40_000})
    files = writing.export(out)
    name = f"documents/runs-{run.pk}-plan.json"
    assert rows(out / "runs.csv")[0]["plan"] == name and name in files
    assert json.loads((out / name).read_text()) == {"long": "x" * 40_000}
    assert rows(out / "seasons.csv")[0]["answers"] == '{"splits": 3}'
    with (out / "runs.csv").open(newline="") as file:
        assert (
            max(len(cell) for row in csv.reader(file) for cell in row) <= 32_767
        )  # a spreadsheet's longest cell


@pytest.mark.django_db
def test_a_folder_with_something_in_it_is_refused_and_stays_as_it_is(out):
    out.mkdir()
    (out / "mine.txt").write_text("mine")
    with pytest.raises(FolderTaken, match="not empty"):
        writing.export(out)
    assert files_of(out) == {"mine.txt": b"mine"}


@pytest.mark.django_db
def test_a_file_or_a_link_of_that_name_is_refused(out, tmp_path):
    out.write_text("mine")
    with pytest.raises(FolderTaken, match="is a file"):
        writing.export(out)
    (tmp_path / "link").symlink_to(tmp_path / "elsewhere")
    with pytest.raises(FolderTaken, match="link"):
        writing.export(tmp_path / "link")


@pytest.mark.django_db
def test_an_empty_folder_is_taken(out):
    out.mkdir()
    writing.export(out)
    assert (out / NAME).exists()


@pytest.mark.django_db
def test_a_folder_whose_parent_is_not_there_is_refused(tmp_path):
    with pytest.raises(NotWritten, match="No such file"):
        writing.export(tmp_path / "nowhere" / "out")


@pytest.mark.django_db
def test_where_writing_fails_halfway_nothing_is_left(out, tmp_path, monkeypatch):
    def full(folder, files):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(writing, "write_manifest", full)
    with pytest.raises(NotWritten, match="No space left"):
        writing.export(out)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.django_db
def test_only_its_owner_reads_the_folder(out):
    writing.export(out)
    assert stat.S_IMODE(out.stat().st_mode) == 0o700


@pytest.mark.django_db
def test_no_password_and_no_link_stands_in_any_file(out):
    person = makers.make_person("robin", email="robin@example.invalid")
    writing.export(out)
    person.refresh_from_db()
    everything = b"".join(files_of(out).values())
    assert b"robin" in everything
    assert person.password.encode() not in everything
    assert b"example.invalid" not in everything


@pytest.mark.django_db
def test_the_same_books_give_the_same_files(out, tmp_path):
    makers.make_colony("A", gear=True)
    writing.export(out)
    writing.export(tmp_path / "again")
    assert files_of(out) == files_of(tmp_path / "again")
    assert Yard.objects.count() == 1
