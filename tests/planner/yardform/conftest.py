"""The yard form is tried on the small invented seasons of the measurements."""

from tests.planner.bench.conftest import catalogue, market, small_operation, small_season

__all__ = ["catalogue", "market", "small_operation", "small_season"]
