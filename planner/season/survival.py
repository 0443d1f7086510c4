"""Winter survival fitted to a keeper's own winters: a beta-binomial, held towards the published figures.

Takes pairs (colonies in, colonies out) of winters; gives the share that comes through and how far winters swing.
With few winters the published figures weigh most, with many the keeper's own. Pure sums: no draws, no files.
"""

import math
from dataclasses import dataclass

# Correlation of two colonies' fates in one winter, where a keeper has told nothing of their own: with it the deaths of
# an operation of some 110 colonies vary about ten times as much as independent ones would; implied by the confidence
# intervals printed in the national loss surveys: 6.5 to 14.2 (Brodschneider 2018, Gray 2019, Lee 2015, Kulhanek 2017).
WINTER_CORRELATION = 0.075

WINTERS_HELD_BACK = 2.0  # the published share weighs like so many winters of the keeper's own: judgement
SWING_SPREAD = (
    0.5  # of the correlation's log-odds about the published one; the surveys' own range: 6.5 to 14.2
)

LOWEST, HIGHEST = -12.0, 12.0  # log-odds searched
STEPS = 80
GOLDEN = (math.sqrt(5) - 1) / 2


@dataclass(frozen=True, kw_only=True)
class Fit:
    """Share that comes through in an ordinary winter, and the correlation of colonies' fates within one winter."""

    share: float
    correlation: float

    @property
    def alpha(self):
        return self.share * (1 / self.correlation - 1)

    @property
    def beta(self):
        return (1 - self.share) * (1 / self.correlation - 1)


def log_likelihood(winters, alpha, beta):
    """Of winters (in, out) or (in, out, times) under a beta-binomial."""
    gamma = math.lgamma
    base = gamma(alpha + beta) - gamma(alpha) - gamma(beta)
    total = 0.0
    for went_in, came_out, *times in winters:
        ways = gamma(went_in + 1) - gamma(came_out + 1) - gamma(went_in - came_out + 1)
        odds = gamma(alpha + came_out) + gamma(beta + went_in - came_out) - gamma(alpha + beta + went_in)
        total += (times[0] if times else 1) * (ways + base + odds)
    return total


def most_likely(winters):
    """Maximum likelihood: the keeper's winters alone. For many winters; a few can drive it to an edge."""
    return _search(lambda fit: log_likelihood(winters, fit.alpha, fit.beta))


def by_moments(winters):
    """Method of moments for winters of one size (in, out) or (in, out, times); None where they swing too little."""
    rows = [(row[0], row[1], row[2] if len(row) > 2 else 1) for row in winters]
    size, count = rows[0][0], sum(times for _, _, times in rows)
    first = sum(out * times for _, out, times in rows) / count
    second = sum(out * out * times for _, out, times in rows) / count
    below = size * (second / first - first - 1) + first if first else 0.0
    if below <= 0:
        return None
    alpha = (size * first - second) / below
    beta = (size - first) * (size - second / first) / below
    return (
        Fit(share=alpha / (alpha + beta), correlation=1 / (alpha + beta + 1))
        if min(alpha, beta) > 0
        else None
    )


def fitted(winters, *, share, correlation=WINTER_CORRELATION):
    """The keeper's winters held towards the published share and correlation. No winters: the published ones."""
    if not winters:
        return Fit(share=share, correlation=correlation)
    weight = WINTERS_HELD_BACK * (1 / correlation - 1)
    middle = min(max(share, 0.001), 0.999)

    def worth(fit):
        pull = weight * (middle * math.log(fit.share) + (1 - middle) * math.log1p(-fit.share))
        swing = (log_odds(fit.correlation) - log_odds(correlation)) / SWING_SPREAD
        return log_likelihood(winters, fit.alpha, fit.beta) + pull - swing**2 / 2

    return _search(worth)


def log_odds(share):
    return math.log(share / (1 - share))


def _search(worth):
    """The best (share, correlation): golden section over the one, within it over the other."""

    def best_share(odds):
        correlation = _share_of(odds)
        at = _golden(lambda x: worth(Fit(share=_share_of(x), correlation=correlation)))
        return Fit(share=_share_of(at), correlation=correlation)

    return best_share(_golden(lambda odds: worth(best_share(odds))))


def _share_of(odds):
    return 1 / (1 + math.exp(-odds))


def _golden(worth):
    low, high = LOWEST, HIGHEST
    left, right = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
    at_left, at_right = worth(left), worth(right)
    for _ in range(STEPS):
        if at_left >= at_right:
            high, right, at_right = right, left, at_left
            left = high - GOLDEN * (high - low)
            at_left = worth(left)
        else:
            low, left, at_left = left, right, at_right
            right = low + GOLDEN * (high - low)
            at_right = worth(right)
    return (low + high) / 2
