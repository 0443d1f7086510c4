"""The catalogue comes in once, however often it is asked for."""

import pytest
from django.core.management import call_command

from inventory.models import Part


@pytest.mark.django_db
def test_it_brings_the_catalogue_in_and_run_again_changes_nothing(capsys):
    call_command("load_catalogue")
    parts = set(Part.objects.values_list("pk", "code"))
    call_command("load_catalogue")
    assert set(Part.objects.values_list("pk", "code")) == parts
    assert len(parts) > 50
    assert "in place" in capsys.readouterr().out
