"""Inventory's pages, a module per subject."""
