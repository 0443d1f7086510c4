"""A leaf of paper: its picture is that of its own address."""

from apiary.pictures import address_as_image
from inventory.field_sheets.leaves import Leaf


def leaf(address):
    return Leaf(kind="Yard sheet", name="Creek", address=address, body="b.html", opens="the yard's page")


def test_its_picture_is_that_of_its_address_and_of_no_other():
    one, two = leaf("bees.example/yards/creek/"), leaf("bees.example/yards/hill/")
    assert one.picture == address_as_image("bees.example/yards/creek/")
    assert one.picture != two.picture
