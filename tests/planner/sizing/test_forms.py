"""The form's tables agree with the records they fill."""

from dataclasses import MISSING, fields

import pytest

from planner.sizing import forms
from planner.sizing.faults import WRONG, Checks

FORMS = [value for value in vars(forms).values() if isinstance(value, forms.Form)]


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.record.__name__)
def test_a_form_has_a_key_for_each_field_and_requires_those_without_default(form):
    names = {form.renamed.get(key, key) for key in form.keys}
    assert names == {field.name for field in fields(form.record)}
    needed = {
        field.name
        for field in fields(form.record)
        if field.default is MISSING and field.default_factory is MISSING
    }
    assert {form.renamed.get(key, key) for key in form.required} == needed


def test_codes_are_gathered_from_faulty_lists_as_far_as_they_go():
    known = forms.known_codes({"parts": [{"code": "box"}, 5, {}], "locations": "shed", "periods": "x"})
    assert known == forms.Known(frozenset({"box"}), None, frozenset(), None)
    assert forms.known_codes({"periods": 4.0}).periods == 4
    assert forms.known_codes({"periods": float("nan")}).periods is None


def test_a_record_with_any_fault_is_not_made():
    known = forms.known_codes({})
    assert forms.record(Checks(), "parts[0]", {"code": "box", "end_value": "2"}, forms.PART, known) is WRONG
    assert forms.record(Checks(), "parts[0]", {"code": "box"}, forms.PART, known).code == "box"
