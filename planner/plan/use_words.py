"""What a use is called beside others of its kind: supers, hives for splits. Takes use codes, gives plain words."""

from planner.requirement.words import ORDINALS, title

NAMES = {
    "super": "supers",
    "second-box": "second brood boxes",
    "second-box-till-winter": "second brood boxes of splits that die in the winter",
    "split": "splits",
    "hive": "hives for splits",
    "hive-till-winter": "hives of splits that die in the winter",
    "nuc": "nucs sold",
    "nuc-to-hive": "hives for wintered nucs",
    "excluder": "queen excluders",
    "feeder": "top feeders",
    "guard": "mouse guards",
    "reducer": "entrance reducers",
    "renew": "old combs renewed",
}
PURPOSES = ("super", "second-box", "split", "hive", "nuc", "nuc-to-hive", "renew")  # what gear goes into


def what_of(use_code):
    """A use without its yard and strength: second supers in Clover, hives for splits."""
    kind, _, *rest = use_code.split("/")
    words = NAMES.get(kind, kind.replace("-", " "))
    if kind == "super" and len(rest) >= 3 and rest[2].isdigit():
        return f"{ORDINALS.get(int(rest[2]), rest[2])} {words} in {title(rest[0])}"
    return words


def purposes(kinds):
    """The kinds of use that gear goes into, in words; a guard goes into nothing."""
    return [NAMES[kind] for kind in kinds if kind in PURPOSES]
