"""A workbook read and posted in one call, or refused with every fault."""

import io

import pytest
from openpyxl import load_workbook

from apiary.errors import Refused
from apiary.models import Yard
from inventory import loading
from inventory.sheets import GearRow, filled
from inventory.sheets.examples import example
from tests.inventory.loading.made import DAY, LATER, changed, everything, load

pytestmark = pytest.mark.django_db


def test_a_file_is_read_and_posted_in_one_call():
    content = filled(example(), loading.known_by_books())
    assert loading.load_file(content, day=DAY, who=None).posted
    assert loading.load_file(content, day=DAY, who=None).first_on == DAY


def test_a_faulty_file_is_refused_with_every_fault_and_posts_nothing():
    sheet = changed(yards=(example().yards[1],), gear=(GearRow(yard="shed", part="quilt", quantity=1),))
    before = everything()
    with pytest.raises(Refused) as refusal:
        loading.load_file(filled(sheet), day=DAY, who=None)
    assert "no row is marked as the shed" in str(refusal.value) and "'quilt' is not known" in str(
        refusal.value
    )
    assert len(refusal.value.faults) == refusal.value.count and everything() == before


def test_a_count_sheet_is_made_for_the_places_named():
    load()
    content = loading.workbook_of("count", day=LATER, yards=Yard.objects.filter(is_shed=True), blind=True)
    rows = list(load_workbook(io.BytesIO(content))["Places counted"].values)
    assert [row[0] for row in rows[1:2]] == ["Shed"]
