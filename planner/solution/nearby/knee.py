"""The knee of a budget curve: where more money stops earning much more.

Takes budgets and what is earned at each; gives the place of the knee, or None where the curve has no bend to speak of.
The method is that of Satopaa, Albrecht, Irwin and Raghavan, "Finding a 'Kneedle' in a haystack" (2011): both axes
scaled to 0..1, the knee is the point furthest above the line from the first point to the last.
"""

BEND = 0.05  # of the curve's height: a smaller bend is none


def knee_of(budgets, earned):
    """The index of the knee, or None."""
    width, height = budgets[-1] - budgets[0] if budgets else 0.0, earned[-1] - earned[0] if earned else 0.0
    if width <= 0 or height <= 1e-9 * max(1.0, abs(earned[-1])):
        return None
    above = [
        (worth - earned[0]) / height - (budget - budgets[0]) / width
        for budget, worth in zip(budgets, earned, strict=True)
    ]
    best = max(range(len(above)), key=above.__getitem__)
    return best if above[best] >= BEND else None
