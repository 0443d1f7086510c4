"""Use codes in trade words: `super/creek/clover/strong/2` is the second super of strong colonies, Clover at creek."""

from functools import lru_cache

ORDINALS = {
    1: "first",
    2: "second",
    3: "third",
    4: "fourth",
    5: "fifth",
    6: "sixth",
    7: "seventh",
    8: "eighth",
}

CONSUMABLES = {
    "patty": "protein patties",
    "treatment": "mite treatments",
    "jar": "jars for the crop",
    "bucket": "buckets for the crop",
}


@lru_cache(maxsize=4096)
def slug(name):
    """A name as a piece of a code."""
    kept = "".join(letter if letter.isalnum() else "-" for letter in name.lower())
    return "-".join(piece for piece in kept.split("-") if piece)


def title(code):
    """A piece of a code as a name again."""
    return code.replace("-", " ").capitalize()


def describe(use_code):
    """What a use is for, in the keeper's words."""
    kind, yard, *rest = use_code.split("/")
    width = next((f", {word.removesuffix('-frame')} frames" for word in rest if word.endswith("-frame")), "")
    rest = [word for word in rest if not word.endswith("-frame")]
    place = title(yard)
    if kind == "left-on":
        window, strength, number = rest
        return f"{ORDINALS.get(int(number), number)} super of {_whose(strength)}{width} left on to the end, {title(window)} at {place}"
    if kind == "super":
        window, strength, number = rest
        ordinal = ORDINALS.get(int(number), number)
        return f"{ordinal} super of {_whose(strength)}{width}, {title(window)} at {place}"
    if kind == "excluder":
        return f"queen excluders{width}, {title(rest[0])} at {place}"
    if kind in ("second-box", "second-box-till-winter"):
        other_set = f" in {title(rest[1].removeprefix('in-')).lower()}" if len(rest) > 1 else ""
        whose = "splits that die in the winter" if kind != "second-box" else _whose(rest[0])
        return f"second brood box of {whose}{other_set} at {place}"
    if kind in ("hive", "hive-till-winter"):
        mother = f", splits from {title(rest[0].removeprefix('from-'))}" if rest else ""
        if kind == "hive-till-winter":
            return f"hives of splits that die in the winter at {place}{mother}"
        return f"hives for splits that made it at {place}{mother}"
    if kind == "feed":
        whose = {"autumn": f"autumn feed at {place}", "spring": "spring feed, all yards"}
        return whose.get(rest[0], "feed for splits, all yards")
    if kind == "consumable":
        return CONSUMABLES.get(rest[0], title(rest[0]).lower())
    return _short(kind, place, rest) + width


def _whose(strength):
    return "this year's splits" if strength == "split" else f"{strength.replace('+', ' and ')} colonies"


def _short(kind, place, rest):
    words = {
        "split": f"splits in nuc boxes at {place}",
        "nuc": f"nucs sold from {place}",
        "nuc-to-hive": f"hives for wintered nucs at {place}",
        "feeder": f"top feeders for autumn feeding at {place}",
        "guard": f"mouse guards at {place}",
        "reducer": f"entrance reducers at {place}",
        "moth": "combs in store lost to wax moth",
        "drawing-over": "drawing that ends with the flow",
        "renew": f"old {rest[0] if rest else 'brood'} combs renewed, all yards",
    }
    return words.get(kind, f"{title(kind).lower()} at {place}")
