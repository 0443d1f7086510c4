"""What a part costs and what it is still worth after the season.

Takes offers and recipes; gives prices a piece and end values. An end value stays below the cheapest way to get the
part, kits and workbench included: else buying for its own sake would pay.
"""

from planner.requirement.tokens import TOKENS

CAP = (
    0.75  # of the cheapest price, however long the part lives: bought a year early, it lies and ties up money
)
IDLE_SHARE = 0.9  # of a kit's or a recipe's price at most: what is left after a season of lying idle


class Unpriced(Exception):
    """A part the season cannot do without has neither an offer nor a list price."""

    def __init__(self, part, name):
        self.part = part
        super().__init__(
            f"No supplier offers “{name}” ({part}) and the catalogue has no price for it: "
            "add an offer to the price list, or a list price to the part."
        )


def cheapest_prices(operation, offers):
    """part -> the lowest money a piece over the offers that hold this part alone, at their best step."""
    prices: dict = {}
    for offer in offers:
        if len(offer.parts) == 1:
            ((part, pieces),) = offer.parts.items()
            best = min(float(price) for _packs, price in offer.prices) / pieces
            prices[part] = min(best, prices.get(part, best))
    for part in operation.parts:
        if part.code not in prices and part.list_price > 0:
            prices[part.code] = float(part.list_price)
    return prices


def single_prices(operation, offers):
    """part -> the lowest money a piece where one pack is bought; list price where no offer holds it alone."""
    prices: dict = {}
    for offer in offers:
        if len(offer.parts) == 1:
            ((part, pieces),) = offer.parts.items()
            first = float(offer.prices[0][1]) / pieces
            prices[part] = min(first, prices.get(part, first))
    for part in operation.parts:
        if part.code not in prices and part.list_price > 0:
            prices[part.code] = float(part.list_price)
    return prices


def residual_share(years_of_life):
    """Share of its price a part keeps through a season: a year of its life is gone."""
    return min(CAP, IDLE_SHARE * (1 - 1 / max(2, years_of_life)))


def end_values(operation, offers, recipes, hour_value):
    """part -> money a piece idle or still in use after the season."""
    cheapest = cheapest_prices(operation, offers)
    life = {part.code: part.years_of_life for part in operation.parts}
    worth = {code: price * residual_share(life.get(code, 1)) for code, price in cheapest.items()}
    for _round in range(len(recipes) + 2):
        before = dict(worth)
        for recipe in recipes:
            _bound_by_recipe(worth, recipe, hour_value)
        for offer in offers:
            _bound_by_offer(worth, offer)
        if worth == before:
            break
    return worth


def _bound_by_recipe(worth, recipe, hour_value):
    """What is made is worth no more than what went in, work and honey at nine tenths."""
    inside = sum(worth.get(part, 0.0) * pieces for part, pieces in recipe.takes.items())
    inside += IDLE_SHARE * (recipe.cost + recipe.work_minutes / 60 * hour_value)
    kinds = {part: pieces for part, pieces in recipe.makes.items() if part not in TOKENS}
    made = sum(kinds.values())
    for part in kinds:
        worth[part] = min(worth.get(part, inside / made), inside / made)


def _bound_by_offer(worth, offer):
    """A pack's contents together stay below nine tenths of its best price."""
    most = IDLE_SHARE * min(float(price) for _packs, price in offer.prices)
    inside = sum(worth.get(part, 0.0) * pieces for part, pieces in offer.parts.items())
    if inside > most:
        for part in offer.parts:
            worth[part] = worth.get(part, 0.0) * most / inside
