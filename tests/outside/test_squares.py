"""Pictures of addresses against ISO/IEC 18004 (from memory): they read back, with a quiet edge of four modules and
an error level of M or better. The reader is the tests' own; the standard's worked example checks the reader.
"""

import re

import pytest

from apiary.pictures import picture_of
from tests.outside.squares import QUIET_MODULES, read, syndromes

# "01234567" as version 1-M, ISO/IEC 18004 annex with the worked example, from memory
WORKED = "10 20 0C 56 61 80 EC 11 EC 11 EC 11 EC 11 EC 11 A5 24 D4 C1 ED 36 C7 87 2C 55"
ADDRESSES = (
    "https://b.example/",
    "http://192.168.1.7:8000/yards/creek/",
    "http://shed.local:8000/acts/correct/?yard=fern-hollow",
    "http://shed.local:8000/acts/move/?source=shed&target=fern-hollow&n__box-deep-10__sound=12",
)


def grid_of(picture):
    """(modules, quiet edge) of a drawn picture: its path is rows of dark runs, each at the middle of its row."""
    path = re.search(r'class="qrline"[^>]* d="([^"]+)"', picture).group(1)
    dark, x, y = set(), 0.0, 0.0
    for letter, numbers in re.findall(r"([MmHh])([^MmHh]*)", path):
        given = [float(number) for number in re.findall(r"-?\d*\.?\d+", numbers)]
        if letter in "Mm":
            x, y = given if letter == "M" else (x + given[0], y + given[1])
        else:
            dark |= {(int(y), int(x) + step) for step in range(int(given[0]))}
            x += given[0]
    low, high = min(min(at) for at in dark), max(max(at) for at in dark)
    rows = range(low, high + 1)
    return [[(row, column) in dark for column in rows] for row in rows], low


def test_the_reader_takes_the_standards_worked_example_and_no_other_codewords():
    words = [int(word, 16) for word in WORKED.split()]
    assert syndromes(words, 10) == [0] * 10
    assert any(syndromes([words[0] ^ 1, *words[1:]], 10))


@pytest.mark.parametrize("address", ADDRESSES)
def test_a_picture_reads_back_as_its_address_at_level_m_or_better(address):
    grid, _quiet = grid_of(picture_of(address, "Yard"))
    text, level = read(grid)
    assert text == address
    assert level in "MQH"


@pytest.mark.parametrize("address", ADDRESSES)
def test_a_picture_has_the_quiet_edge_on_all_sides(address):
    grid, quiet = grid_of(picture_of(address, "Yard"))
    sides = re.search(r"M0 0h(\d+)v(\d+)h-(\d+)z", picture_of(address, "Yard"))
    assert quiet == QUIET_MODULES
    assert {int(side) for side in sides.groups()} == {len(grid) + 2 * QUIET_MODULES}


def test_a_picture_with_a_module_turned_is_refused():
    grid, _quiet = grid_of(picture_of(ADDRESSES[1], "Yard"))
    grid[-1][-1] = not grid[-1][-1]
    with pytest.raises(ValueError, match="syndromes"):
        read(grid)
