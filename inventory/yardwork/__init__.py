"""Acts on bees and gear at once: what a colony is and what stands on it change together or not at all.

`together` writes any such act, `undo` takes one back. One module each for boxes, splits, deadouts and so on.
"""

from inventory.yardwork.undoing import undo
from inventory.yardwork.whole import together

__all__ = ["together", "undo"]
