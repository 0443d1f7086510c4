"""The invented outfit of evenings."""

from tests.inventory.catching_up.made import outfit

__all__ = ["outfit"]
