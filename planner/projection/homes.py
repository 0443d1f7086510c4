"""The set a split is hived in: what most hives of its yard stand in, or most of all hives.

Takes an operation; gives one of its hive sets. Nuc sets are never a home.
"""


def home_set(operation, yard=None):
    """The set most colonies stand in, in that yard or, where it has none, in all of them."""
    sets = operation.sets_by_code
    if operation.home:
        return sets[operation.home]
    counts = _hives(operation).get(yard)
    if counts:
        return sets[max(sorted(counts), key=lambda code: counts[code])]
    if yard is not None:
        return home_set(operation)
    return next((facts for facts in operation.sets if not facts.is_nuc), None)


def _hives(operation):
    """yard (None: all) -> set -> hives that stand in it."""
    if "hives" not in operation.worked_out:
        counts: dict = {}
        for group in operation.colonies:
            if not operation.sets_by_code[group.hive_set].is_nuc:
                for yard in (None, group.yard):
                    here = counts.setdefault(yard, {})
                    here[group.hive_set] = here.get(group.hive_set, 0) + group.colonies
        operation.worked_out["hives"] = counts
    return operation.worked_out["hives"]


def width_at(homes, yard):
    """Frames in a box of that yard's home; ten where there is no set to tell."""
    return homes[yard].width if homes[yard] else 10


def split_homes(operation, assumptions):
    """yard code -> the set its splits and wintered nucs get."""
    one = home_set(operation)
    return {
        yard.code: one if assumptions.split_home == "all" else home_set(operation, yard.code)
        for yard in operation.yards
    }
