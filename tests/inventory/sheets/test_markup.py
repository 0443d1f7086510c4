"""Markup is walked in bounded memory: no document type, no endless text, no bottomless nesting."""

import io

import pytest

from inventory.sheets import markup
from inventory.sheets.faults import Unreadable
from inventory.sheets.markup import Walker, walk


class Told(Walker):
    def __init__(self):
        self.all = []

    def start(self, name, attributes):
        self.all.append((name, attributes))

    def end(self, name):
        self.all.append(name)

    def text(self, piece):
        self.all.append(piece)


def told(text):
    walker = Told()
    walk(io.BytesIO(text.encode()), walker)
    return walker.all


def refused(text):
    with pytest.raises(Unreadable) as refusal:
        walk(io.BytesIO(text.encode()), Walker())
    return refusal.value.fault.what


def test_tags_come_without_prefix_and_text_between_them():
    assert told('<x:a xmlns:x="urn:b"><x:v k="1">2</x:v></x:a>') == [
        *(("a", {"xmlns:x": "urn:b"}), ("v", {"k": "1"}), "2", "v", "a"),
    ]


def test_broken_markup_is_damaged():
    for text in ("", "<a>", "<a></b>", "<a>\x01</a>", "<a>&b;</a>", "<a/><b/>"):
        assert refused(text) == "The file is damaged"


def test_a_document_type_is_refused():
    assert refused('<!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/passwd">]><a>&b;</a>') == markup.NO_DOCTYPE[0]


def test_nesting_is_bounded():
    assert told("<a>" * markup.DEEPEST + "</a>" * markup.DEEPEST)
    assert refused("<a>" * 65 + "</a>" * 65) == "The workbook's tags are nested too deep"


def test_a_text_is_bounded():
    assert refused(f"<a>{'b' * 100_001}</a>") == "The workbook holds a text of more than 100,000 signs"
    assert told(f"<a>{'b' * 99_000}<c/>{'b' * 99_000}</a>")
