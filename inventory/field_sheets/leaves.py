"""One sheet of paper, or several that follow each other under one head: what stands in the head, and what below.

Takes words, cells and the address its picture leads to; gives a Leaf. The body is a template's name with its own words.
"""

from dataclasses import dataclass, field

from apiary.pictures import address_as_image


@dataclass(frozen=True, kw_only=True)
class Leaf:
    """`cells` are (label, value) pairs of the head; `told` is what the body's template reads."""

    kind: str
    name: str
    address: str
    body: str
    opens: str  # what the picture opens, in words
    cells: tuple = ()
    told: dict = field(default_factory=dict)

    @property
    def picture(self):
        """The address as the source of an image."""
        return address_as_image(self.address)
