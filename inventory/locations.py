"""Where gear can be: finds the location of a yard's store, a colony or an outside end, making it on first use.

Takes a Yard, Colony, Location or kind; gives the Location. Moves nothing. A store and a place are
made by key: the yard or colony told keeps no memory of one made in an act that was refused and rolled back.
"""

from apiary.models import Colony, Yard
from inventory.models import Location


def store_of(yard):
    """The store of a yard or of the shed."""
    return Location.objects.get_or_create(kind=Location.Kind.STORE, yard_id=yard.pk)[0]


def place_of(colony):
    """The location that is a colony."""
    return Location.objects.get_or_create(kind=Location.Kind.COLONY, colony_id=colony.pk)[0]


def places_of(colonies):
    """{colony's id: its location}, the colony as it was given; in two questions however many there are."""
    colonies = {colony.pk: colony for colony in colonies}
    known = set(Location.objects.filter(colony__in=colonies).values_list("colony_id", flat=True))
    Location.objects.bulk_create(
        Location(kind=Location.Kind.COLONY, colony_id=pk) for pk in colonies if pk not in known
    )
    places = {place.colony_id: place for place in Location.objects.filter(colony__in=colonies)}
    for pk, place in places.items():
        place.colony = colonies[pk]
    return places


def outside(kind):
    """The one location of an outside kind: supplier, workbench, scrap and so on."""
    if kind in Location.INSIDE:
        raise ValueError(f"{kind} is no outside location")
    return Location.objects.get_or_create(kind=kind)[0]


def location_of(ground):
    """A yard means its store, a colony itself; a location stays what it is."""
    if isinstance(ground, Yard):
        return store_of(ground)
    if isinstance(ground, Colony):
        return place_of(ground)
    if isinstance(ground, Location):
        return ground
    raise TypeError(f"not a yard, colony or location: {ground!r}")
