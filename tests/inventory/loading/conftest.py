"""Every sheet is posted into books with the catalogue in place."""

import pytest

from tests.makers import make_catalogue


@pytest.fixture(autouse=True)
def catalogue(db):
    make_catalogue()
