"""What is sent on inventory's pages, checked before it is tried."""

from django.core.files.uploadedfile import SimpleUploadedFile

from inventory.forms import SheetForm
from inventory.sheets import opening


def test_a_file_of_any_content_may_be_tried_even_an_empty_one():
    assert SheetForm({}, {"file": SimpleUploadedFile("a.xlsx", b"")}).is_valid()


def test_a_file_too_large_is_refused_with_its_size():
    form = SheetForm({}, {"file": SimpleUploadedFile("a.xlsx", b"x" * (opening.LARGEST + 1))})
    assert form.errors["file"] == [
        "The file has 10.0 MB, more than 10: delete pictures and sheets that do not belong."
    ]


def test_no_file_is_refused():
    assert SheetForm({}, {}).errors["file"] == ["This field is required."]
