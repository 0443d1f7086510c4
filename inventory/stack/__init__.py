"""Hives drawn to scale: hive.py reads one out of gear, elevation.py draws it, chain.py measures it. Pure."""

from inventory.stack.chain import Chain, chain_of, inches
from inventory.stack.elevation import CELL, Box, Drawing, Hive, Piece, Shape, draw, height_of
from inventory.stack.hive import Lot, hive_of, words_of

__all__ = [
    "CELL",
    "Box",
    "Chain",
    "Drawing",
    "Hive",
    "Lot",
    "Piece",
    "Shape",
    "chain_of",
    "draw",
    "height_of",
    "hive_of",
    "inches",
    "words_of",
]
