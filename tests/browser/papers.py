"""Printed pages taken apart for tests: words with their places, pages as grey pictures, the square in a picture.

Takes a page of the browser and a file to print into; gives words in points and modules. Needs poppler's tools.
"""

import re
import shutil
import subprocess
from typing import NamedTuple

from tests.conftest import need

POINTS_A_MM = 72 / 25.4
DARK = 128


class Word(NamedTuple):
    page: int
    text: str
    top: float
    bottom: float


class Printed(NamedTuple):
    sizes: list  # (width, height) of each page in points
    words: list

    def pages_of(self, text):
        return [word.page for word in self.words if word.text == text]

    def text(self, page):
        return " ".join(word.text for word in self.words if word.page == page)


def printed(page, path):
    """What the browser prints of a page on the paper its style names."""
    need(shutil.which("pdftotext"), "pdftotext")
    page.pdf(path=str(path), prefer_css_page_size=True, print_background=True)
    told = subprocess.run(["pdftotext", "-bbox", str(path), "-"], check=True, capture_output=True, text=True)
    sizes, words = [], []
    for part in told.stdout.split("<page ")[1:]:
        size = re.match(r'width="([\d.]+)" height="([\d.]+)"', part)
        sizes.append((float(size.group(1)), float(size.group(2))))
        found = re.findall(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">(.*?)</word>', part)
        words += [Word(len(sizes), text, float(top), float(bottom)) for top, bottom, text in found]
    return Printed(sizes, words)


def grey(path, page, *, dots=300):
    """(width, height, a byte a dot) of one page."""
    command = ["pdftoppm", "-gray", "-r", str(dots), "-f", str(page), "-l", str(page), str(path)]
    raw = subprocess.run(command, check=True, capture_output=True).stdout
    head = re.match(rb"P5\s(\d+) (\d+)\s255\s", raw)
    return int(head.group(1)), int(head.group(2)), raw[head.end() :]


def dark_share(path, page):
    """The share of a page that ink covers."""
    width, height, dots = grey(path, page, dots=60)
    return sum(255 - dot for dot in dots) / (255 * width * height)


def runs(line):
    """[(first dot, dots, dark)] of a row of dots."""
    found, start = [], 0
    for at in range(1, len(line) + 1):
        if at == len(line) or (line[at] < DARK) != (line[start] < DARK):
            found.append((start, at - start, line[start] < DARK))
            start = at
    return found


def finders(lines):
    """[(middle, module)] of each place in a row of dots where runs are 1, 1, 3, 1, 1 modules, dark first."""
    found = []
    told = runs(lines)
    for at in range(len(told) - 4):
        five = told[at : at + 5]
        module = sum(length for _start, length, _dark in five) / 7
        wanted = zip(five, (1, 1, 3, 1, 1), strict=True)
        if five[0][2] and all(abs(length - n * module) < module * 0.5 for (_s, length, _d), n in wanted):
            found.append((five[0][0] + 3.5 * module, module))
    return found


def square_on(path, page):
    """The modules of the one square in the upper right of a page."""
    width, height, dots = grey(path, page)
    left = width // 2
    rows = [dots[y * width + left : (y + 1) * width] for y in range(height // 4)]
    (x, far), y, module = _middles(rows)
    size = round((far - x) / module) + 7
    module = (far - x) / (size - 7)

    def dark(row, column):
        return rows[round(y + (row - 3) * module)][round(x + (column - 3) * module)] < DARK

    return [[dark(row, column) for column in range(size)] for row in range(size)]


def _middles(rows):
    """((left, right), height, module) of the upper finders: the first rows, one below the other and about three
    modules high, in which the outermost two are seen at the same places."""
    group: list = []
    for y, row in enumerate(rows):
        found = finders(row)
        ends = [found[0], found[-1]] if len(found) > 1 else []
        if ends and (
            not group or all(abs(a[0] - b[0]) < a[1] for a, b in zip(ends, group[-1][1], strict=True))
        ):
            group.append((y, ends))
        elif group and y - group[0][0] > 2 * group[0][1][0][1]:
            break
        else:
            group = []
    places = tuple(sum(ends[side][0] for _y, ends in group) / len(group) for side in (0, 1))
    return places, (group[0][0] + group[-1][0]) / 2, group[0][1][0][1]
