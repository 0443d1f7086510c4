"""A colony's growth by the model of Khoury, Myerscough and Barron (2011): hive bees and foragers, day by day.

Takes starting bees and a foragers' death rate; gives hive bees H and foragers F:
dH/dt = L·N/(w + N) − H·(a − s·F/N), dF/dt = H·(a − s·F/N) − m·F, N = H + F. It knows no season and no brood space:
here it only says how far a smaller colony has caught up with a strong one.
"""

import math
from dataclasses import dataclass
from functools import lru_cache

# Khoury, Myerscough and Barron (2011), PLoS ONE 6(4): e18491.
RECRUITED = 0.25  # a: hive bees that would forage each day if there were no foragers
HELD_BACK = 0.75  # s: how strongly foragers hold them back
EGGS_A_DAY = 2000  # L
HALF_CARE = 27_000  # w: bees with which half of the eggs come up

SEASON_DEATH_RATE = 0.10  # of foragers a day, well below the rate at which a colony fails: judgement
# Burgett and Burikam (1985): 2,430 bees cover a deep frame. Frames covered at the first look, a split when hived:
# judgement.
BEES_A_FRAME = 2430
FRAMES = {"strong": 8, "fair": 6, "weak": 4, "split": 5}
FORAGERS_SHARE = 1 / 4  # of them at first: judgement
# Farrar: one colony of 60,000 makes half as much again as four of 15,000; so honey goes with bees to this power.
HONEY_POWER = math.log(4 * 1.5) / math.log(4)
STEPS_A_DAY = 10


@dataclass(frozen=True, kw_only=True)
class Bees:
    hive: float
    foragers: float

    @property
    def all(self):
        return self.hive + self.foragers


def steady_state(death_rate):
    """Bees that neither grow nor dwindle; none above the critical rate."""
    ratio = _foragers_a_hive_bee(death_rate)
    total = EGGS_A_DAY * (1 + ratio) / (death_rate * ratio) - HALF_CARE
    if total <= 0:
        return Bees(hive=0.0, foragers=0.0)
    hive = total / (1 + ratio)
    return Bees(hive=hive, foragers=hive * ratio)


def critical_death_rate():
    """Above it a colony dwindles to nothing."""
    a, s, per_bee = RECRUITED, HELD_BACK, EGGS_A_DAY / HALF_CARE
    return per_bee / 2 * (a + s + math.sqrt((a - s) ** 2 + 4 * s * per_bee)) / (a - per_bee)


def _foragers_a_hive_bee(death_rate):
    """F/H at which as many hive bees turn foragers as foragers die."""
    a, s = RECRUITED, HELD_BACK
    b = a - s - death_rate
    return (b + math.sqrt(b * b + 4 * death_rate * a)) / (2 * death_rate)


def grown(start, *, days, death_rate):
    """Bees after so many days (classical Runge-Kutta)."""
    hive, foragers = start.hive, start.foragers
    step = 1 / STEPS_A_DAY
    for _ in range(round(days * STEPS_A_DAY)):
        k1 = _change(hive, foragers, death_rate)
        k2 = _change(hive + step / 2 * k1[0], foragers + step / 2 * k1[1], death_rate)
        k3 = _change(hive + step / 2 * k2[0], foragers + step / 2 * k2[1], death_rate)
        k4 = _change(hive + step * k3[0], foragers + step * k3[1], death_rate)
        hive += step / 6 * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0])
        foragers += step / 6 * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1])
    return Bees(hive=hive, foragers=foragers)


def _change(hive, foragers, death_rate):
    total = hive + foragers
    if total <= 0:
        return 0.0, 0.0
    emerging = EGGS_A_DAY * total / (HALF_CARE + total)
    turning = hive * (RECRUITED - HELD_BACK * foragers / total)
    return emerging - turning, turning - death_rate * foragers


@lru_cache(maxsize=256)
def modelled_share(strength, weeks_on):
    """Of a strong colony's gathering, what one of this strength does so many weeks after its first look or hiving."""
    if weeks_on <= 0:
        share = FRAMES[strength] / FRAMES["strong"]
    else:
        own, strong = (_after(word, min(weeks_on, 52)) for word in (strength, "strong"))
        share = own / strong
    return share**HONEY_POWER


@lru_cache(maxsize=256)
def _after(strength, weeks):
    bees = FRAMES[strength] * BEES_A_FRAME
    start = Bees(hive=bees * (1 - FORAGERS_SHARE), foragers=bees * FORAGERS_SHARE)
    return grown(start, days=7 * weeks, death_rate=SEASON_DEATH_RATE).all
