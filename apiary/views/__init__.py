"""Apiary's pages, by what they are about."""
