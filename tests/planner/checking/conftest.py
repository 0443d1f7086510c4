"""One small planning for all tests of the check."""

import pytest

from tests.planner.checking import small


@pytest.fixture(scope="session")
def planned():
    return small.planned()
