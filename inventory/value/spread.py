"""Whole cents shared out so that the shares add up to the cent. Pure.

Takes a sum and weights; gives one share a weight, by the largest remainder. Takes no sum below zero.
"""


def spread(total, weights):
    """Shares of `total` in proportion to the weights (whole numbers, zero or more); alike where all are zero."""
    weights = list(weights)
    if total < 0 or any(weight < 0 for weight in weights):
        raise ValueError(f"nothing below zero is shared out: {total} over {weights}")
    if not weights:
        if total:
            raise ValueError(f"{total} cents and nobody to bear them")
        return []
    if not any(weights):
        weights = [1] * len(weights)
    whole = sum(weights)
    shares = [total * weight // whole for weight in weights]
    by_rest = sorted(range(len(weights)), key=lambda n: (-(total * weights[n] % whole), n))
    for n in by_rest[: total - sum(shares)]:
        shares[n] += 1
    return shares


def part_of_whole(total, pieces, of):
    """What so many pieces of a whole bear, rounded to the nearest cent (a half upwards)."""
    return (2 * total * pieces + of) // (2 * of)
