"""What a column holds, and how one cell is read as that or written as that.

Takes a raw value as the workbook library gives it; gives text, int, Decimal, date or bool, or raises
Misread with what is wrong and what would be right. Knows nothing of rows, sheets or names.
"""

import datetime as dt
import math
import re
import unicodedata
from dataclasses import dataclass
from decimal import Decimal

from inventory.sheets.days import day_of
from inventory.sheets.faults import Misread
from inventory.sheets.names import alike, suggestion

GROUPED = re.compile(r"[+-]?\d{1,3}(,\d{3})+(\.\d+)?")
COMMA = re.compile(r"[+-]?(\d+,\d{1,2}|\d{1,3}(\.\d{3})+,\d+)")  # a decimal comma: it can group no thousands
PLAIN = re.compile(r"[+-]?(\d+(\.\d*)?|\.\d+)")
TURNING = frozenset(
    "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
)  # letters of any script need none


def shown(value):
    """A raw value as the keeper sees it, cut where it is long."""
    if isinstance(value, dt.datetime):
        value = value.date() if value.time() == dt.time() else value
    text = f"{value:.15g}" if isinstance(value, float) else str(value)
    return text if len(text) <= 40 else text[:37] + "..."


def decimal_of(value, *, places):
    """A number cell, or text that is a number in one way only: '1,234.5', '69,50', '1.234,5' are, '1,234' may not be."""
    if isinstance(value, bool):
        raise Misread("holds yes or no where a number belongs", "Type a number")
    if isinstance(value, int | float):
        if not math.isfinite(value):
            raise Misread("is not a finite number", "Type a number")
        return Decimal(f"{value:.15g}")
    if not isinstance(value, str):
        raise Misread(f"holds {shown(value)}, not a number", "Type a number and format the cell as a number")
    text = unicodedata.normalize("NFKC", value).strip()
    if GROUPED.fullmatch(text) and ("." in text or places < 3):
        text = text.replace(",", "")
    elif COMMA.fullmatch(text):
        text = text.replace(".", "").replace(",", ".")
    if PLAIN.fullmatch(text):
        return Decimal(text)
    if "," in text:
        raise Misread(
            f"{shown(value)!r} can be read in two ways", "Write it with a point and no comma, as 1234.5"
        )
    raise Misread(f"{shown(value)!r} is text, not a number", "Type a number only, without words or units")


@dataclass(frozen=True, kw_only=True)
class Text:
    longest: int = 80
    number_format = "@"

    def read(self, value):
        if isinstance(value, dt.date | dt.time):
            raise Misread(
                f"the spreadsheet turned this into a date ({shown(value)})",
                "Format the cell as text and type it again",
            )
        if isinstance(value, bool):
            raise Misread("holds yes or no where words belong", "Format the cell as text and type it again")
        if isinstance(value, float):
            value = f"{value:.15g}"
        if type(value) is str and value.isascii() and value.isprintable() and "  " not in value:
            return self._short(value.strip())
        text = "\n".join(" ".join(line.split()) for line in str(value).replace("\r\n", "\n").split("\n"))
        if any(unicodedata.category(sign) == "Cc" and sign != "\n" for sign in text):
            raise Misread("holds signs that cannot be printed", "Type it again by hand")
        if any(sign in TURNING for sign in text):
            raise Misread("holds signs that turn the direction of writing", "Type it again by hand")
        return self._short(text.strip())

    def _short(self, text):
        if len(text) > self.longest:
            raise Misread(f"is {len(text)} signs long", f"Shorten it to {self.longest}")
        return text

    def write(self, value):
        return value


@dataclass(frozen=True, kw_only=True)
class Code:
    """Small letters, digits and hyphens; capitals are taken as small."""

    longest: int = 30
    number_format = "@"

    def read(self, value):
        text = Text(longest=200).read(value).lower()
        if not re.fullmatch(r"[a-z0-9_]+(-[a-z0-9_]+)*", text) or len(text) > self.longest:
            raise Misread(
                f"{shown(value)!r} is no code",
                f"Use small letters, digits and hyphens, {self.longest} at most, or leave it empty",
            )
        return text

    def write(self, value):
        return value


@dataclass(frozen=True, kw_only=True)
class MoneyCode:
    number_format = "@"

    def read(self, value):
        text = Text(longest=40).read(value).upper()
        if not re.fullmatch("[A-Z]{3}", text):
            raise Misread(f"{shown(value)!r} is no money code", "Write three letters, as USD")
        return text

    def write(self, value):
        return value


@dataclass(frozen=True, kw_only=True)
class Whole:
    lowest: int = 0
    highest: int = 1_000_000
    number_format = "#,##0"

    def read(self, value):
        if type(value) is int and self.lowest <= value <= self.highest:
            return value
        number = decimal_of(value, places=0)
        if number != number.to_integral_value():
            raise Misread(f"{shown(value)} is not a whole number", "Type a whole number")
        if number < 0 <= self.lowest:
            raise Misread(f"{shown(value)} is negative", f"Type a whole number, {self.lowest} or more")
        if not self.lowest <= number <= self.highest:
            raise Misread(f"{shown(value)} is out of range", f"Type {self.lowest} to {self.highest}")
        return int(number)

    def write(self, value):
        return value


@dataclass(frozen=True, kw_only=True)
class Number:
    places: int = 1
    highest: Decimal = Decimal(99_999)
    number_format = "#,##0.0#"
    noun = "a number"

    def read(self, value):
        number = decimal_of(value, places=self.places)
        if number < 0:
            raise Misread(f"{shown(value)} is negative", f"Type {self.noun}, 0 or more")
        if number > self.highest:
            raise Misread(f"{shown(value)} is out of range", f"Type 0 to {self.highest}")
        exact = number.quantize(Decimal(1).scaleb(-self.places))
        if exact != number:
            raise Misread(
                f"{shown(value)} has more than {self.places} decimal{'' if self.places == 1 else 's'}",
                f"Round it to {self.places} and type it again",
            )
        return exact

    def write(self, value):
        return value


@dataclass(frozen=True, kw_only=True)
class Money(Number):
    """Exactly to the cent. A leading currency sign in text does no harm."""

    places: int = 2
    highest: Decimal = Decimal(20_000_000)
    number_format = "#,##0.00"
    noun = "an amount"

    def read(self, value):
        if isinstance(value, str) and value.strip()[:1] in tuple("$€£"):
            value = value.strip()[1:]
        return super().read(value)


@dataclass(frozen=True, kw_only=True)
class Day:
    number_format = "yyyy-mm-dd"

    def read(self, value):
        return day_of(value)

    def write(self, value):
        return value


@dataclass(frozen=True, kw_only=True)
class Week:
    """An ISO week number, or any day of that week."""

    number_format = "0"

    def read(self, value):
        if isinstance(value, dt.date):
            return day_of(value).isocalendar().week
        return Whole(lowest=1, highest=53).read(value)

    def write(self, value):
        return value


@dataclass(frozen=True, kw_only=True)
class Choice:
    """One of a few words; `words` are (what the keeper picks, what it stands for)."""

    words: tuple[tuple[str, str], ...]
    number_format = "@"

    @property
    def picks(self):
        return tuple(pick for pick, _ in self.words)

    def read(self, value):
        text = Text(longest=200).read(value)
        meant = {alike(stands_for): stands_for for _, stands_for in self.words}
        meant |= {alike(pick): stands_for for pick, stands_for in self.words}
        if alike(text) not in meant:
            wanted = ", ".join(self.picks)
            raise Misread(
                f"{shown(text)!r} is none of {wanted}",
                suggestion(text, self.picks, otherwise=f"Write one of {wanted}"),
            )
        return meant[alike(text)]

    def write(self, value):
        return next(pick for pick, stands_for in self.words if stands_for == value)


@dataclass(frozen=True, kw_only=True)
class YesNo:
    number_format = "@"
    picks = ("yes", "no")

    def read(self, value):
        if isinstance(value, bool):
            return value
        text = alike(str(value))
        if text not in ("yes", "y", "no", "n"):
            raise Misread(f"{shown(value)!r} is neither yes nor no", "Write yes or no")
        return text.startswith("y")

    def write(self, value):
        return "yes" if value else ""


@dataclass(frozen=True, kw_only=True)
class Winter:
    """A winter by the year in which it began: 2024, 2024/25 or 2024-2025."""

    number_format = "@"

    def read(self, value):
        if isinstance(value, dt.date):
            raise Misread(
                f"the spreadsheet turned this into a date ({shown(value)})",
                "Format the cell as text and type it again, as 2024/25",
            )
        text = value.strip() if isinstance(value, str) else shown(value)
        found = re.fullmatch(r"((?:19|20)\d\d)(?:\s*[/–-]\s*((?:19|20)?\d\d))?", text)
        if found is None:
            raise Misread(f"{shown(value)!r} is no winter", "Write it as 2024/25, or the year it began")
        began = int(found[1])
        if found[2] and int(found[2]) % 100 != (began + 1) % 100:
            raise Misread(f"{text!r} is no single winter", f"Write {self.write(began)}")
        return began

    def write(self, value):
        return f"{value}/{(value + 1) % 100:02d}"


@dataclass(frozen=True, kw_only=True)
class Anything:
    """Shown to people, never taken over."""

    number_format = "#,##0"

    def read(self, value):
        return None

    def write(self, value):
        return value
