"""A year of the invented operation, out and in again: every question is answered alike, every page reads alike."""

import csv
import datetime as dt
import subprocess

import pytest
from django.contrib.auth import get_user_model

from inventory.models import Order, Part
from planner import runs
from planner.management.commands.demo import _load
from planner.models import Run, Season
from planner.plain_data.loading import load
from planner.plain_data.writing import export
from tests import makers
from tests.planner import made
from tests.planner.plain_data.answers import answers_of, pages
from tests.planner.plain_data.emptied import empty, files_of

pytestmark = pytest.mark.django_db
ORDER_DAY = dt.date(2025, 11, 15)
DAYS = [dt.date(2025, month, 17) for month in (3, 5, 7, 9, 11)]
AWKWARD = 'Comma, "quote", line\nbreak, \u05d0\u05d1\u05d2, =1+1'


@pytest.fixture
def lived():
    """The demo's year, an order of it planned, approved and planned again as a what-if, people with other roles."""
    keeper = get_user_model().objects.create_superuser("demo-keeper", password="long enough to guess")
    _load(keeper, today=ORDER_DAY)
    makers.make_person("lee", role="helper")
    season = Season.objects.get()
    run = made.make_done_run(season, asked_by=keeper, day=ORDER_DAY, answers={"circuit_days": 10})
    runs.approve(run, who=keeper, on=ORDER_DAY)
    made.make_run(
        season, parent=run, what_if={"budget": "5000"}, status=Run.Status.CANCELLED, asked_by=keeper
    )
    Part.objects.filter(code="sugar").update(source=AWKWARD)
    return keeper


def test_every_question_and_every_page_is_answered_alike_after_a_way_out_and_in(lived, tmp_path):
    before, read = answers_of(DAYS), pages("demo-keeper")
    assert Order.objects.count() > 1 and len(before) > 100 and len(read) > 60
    export(tmp_path / "out")
    empty()
    assert answers_of(DAYS) != before
    done = load(tmp_path / "out")
    assert not done.sealed_anew
    after = answers_of(DAYS)
    assert {key for key in before if after[key] != before[key]} == set()
    again = pages("demo-keeper")
    assert {address for address in read if again[address] != read[address]} == set()
    export(tmp_path / "again")
    assert files_of(tmp_path / "again") == files_of(tmp_path / "out")


@pytest.mark.office
def test_a_spreadsheet_reads_every_value_as_it_stands(office, tmp_path):
    """LibreOffice reads the CSV (UTF-8, all columns as text) and writes it again; Python's csv finds the same cells."""
    for number, name in enumerate(
        (AWKWARD, "Zoë's", "=SUM(A1)", "+1", "-2", "@x", "\u202babc\u202c", "007", "3-4")
    ):
        makers.make_yard(f"yard-{number}", name=name)
    export(tmp_path / "out")
    source = tmp_path / "out" / "yards.csv"
    columns = len(source.read_text().splitlines()[0].split(","))
    as_text = "/".join(f"{number}/2" for number in range(1, columns + 1))
    subprocess.run(
        [
            office,
            "--headless",
            f"-env:UserInstallation=file://{tmp_path}/profile",
            f"--infilter=CSV:44,34,76,1,{as_text}",
            "--convert-to",
            "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false",
            "--outdir",
            str(tmp_path / "office"),
            str(source),
        ],
        check=True,
        capture_output=True,
        timeout=180,
    )
    ours, theirs = cells(source), cells(tmp_path / "office" / "yards.csv")
    assert len(ours) == 10
    assert theirs == ours


def cells(path):
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))
