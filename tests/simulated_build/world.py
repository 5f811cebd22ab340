"""What is true of one simulated build: drawn by numpy from the spreads the product states, never by its own code.

Sixty jobs take parts off and put lighter ones on; two of them are undone again. The parts are weighed on a kitchen
scale, a hook and, held by a person, on a bathroom scale. The whole car is weighed two to twelve times, the first time
before any job, the last before the last five, on one of three scales in random order: nobody knows their gains, and
every change of scale hides a little of what happened in between. Of twelve weigh-ins four are on each scale; of fewer,
as many as chance lets. Masses in kg, volumes in litres.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from math import sqrt

import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray

from tests.simulated_build.setting import MOST_WEIGH_INS, Setting, Slip

JOBS, JOBS_AFTER, UNDONE = 60, 5, 2
PUT_ON_SHARE = 0.35  # of the jobs put something on in the place of what comes off
CLASS_FUEL, PERSON = 10.0, 82.0
THINGS = 40  # names of parts
DENSITY = (0.720, 0.775)  # kg per litre, petrol by EN 228; the product's own statement too
GUESS_WITHIN, GUESS_BIAS = 0.20, 0.05  # half-width of a guess, and the standard deviation all guesses share


@dataclass(frozen=True)
class Scale:
    """`gain`: standard deviation of the relative error. `looks`: displays that are read for one whole car."""

    kind: str
    division: float
    gain: float
    looks: int = 1
    checks: tuple[tuple[float, float], ...] = ()  # (known mass, half-width it is known to)


# Gains: the assumptions by kind that the product states (common practice, no source).
PART_SCALES = {
    "kitchen": Scale("kitchen", 0.001, 0.003, checks=((1.0, 0.001), (2.5, 0.003))),
    "hook": Scale("hanging", 0.02, 0.01),
    "floor": Scale("bathroom", 0.1, 0.01, checks=((20.0, 0.05), (60.0, 0.15))),
}
CAR_SCALES = {
    "pads": Scale("corner_pads", 0.1, 0.002, looks=4),
    "axles": Scale("axle_pads", 0.5, 0.005, looks=2),
    "platform": Scale("platform", 0.5, 0.001),
}
NAMES = tuple(CAR_SCALES)
HOME = ("pads", "axles")
CHECK_WITHIN = 0.1  # kg, half-width of the plates that scales at home are checked with


@dataclass(frozen=True)
class Part:
    """`mass` of one piece. `job` and `way` it moves with. `guess`: what somebody guessed; None when it was weighed.

    `name`: a few parts share one. `crate`: "used" when it was weighed in the crate, "forgotten" when that was not taken
    out. `factor`: times what the display showed that was written down. `same_as`: place of the part whose record this
    is, when the job has none of its own for it.
    """

    job: int
    way: str
    count: int
    mass: float
    scale: str
    guess: float | None
    name: str
    crate: str = ""
    factor: float = 1.0
    same_as: int | None = None

    @property
    def signed(self) -> int:
        return self.count if self.way == "on" else -self.count


@dataclass(frozen=True)
class World:
    """`weight`: now, as the class weighs, without what was unlogged. `gains` by scale, of parts and cars alike.

    `known`: true masses behind the checks, by scale. `on`: scale of every weigh-in. `inside[k]`: the jobs in the car
    then, and at last now. `litres`: in the tank then; `noted`: what was written down. `jitter`: how
    far each look of a weigh-in was off by not repeating. `steps`: gap → kg that came into the car between weigh-in
    `gap` and the next, and that nobody wrote down.

    `drift`: by scale, what its gain had come to at every weigh-in beside `gains`; `zeros`: weigh-in → kg by which each
    display was off when empty. `others`: drivers beside the one who counts, all heavier; `seated`: weigh-in → which of
    all sat in the car, where anybody did. `ballast`: weigh-in → kg in the car. `crate`: kg, for parts that hang.

    What was written down otherwise than it was: `listed` as `inside`, `noted_on` as `on`; `extra`: weigh-in → kg on the
    scales beyond what was noted. `slip`: the one slip that was made, if any.
    """

    setting: Setting
    weight: float
    driver: float
    density: float
    parts: tuple[Part, ...]
    gains: dict[str, float]
    known: dict[str, tuple[float, ...]]
    on: tuple[str, ...]
    inside: tuple[frozenset[int], ...]
    litres: NDArray[np.float64]
    noted: NDArray[np.float64]
    jitter: tuple[NDArray[np.float64], ...]
    steps: dict[int, float]
    drift: Mapping[str, NDArray[np.float64]] = field(default_factory=dict)
    zeros: Mapping[int, tuple[float, ...]] = field(default_factory=dict)
    others: tuple[float, ...] = ()
    seated: Mapping[int, int] = field(default_factory=dict)
    ballast: Mapping[int, float] = field(default_factory=dict)
    crate: float = 0.0
    listed: tuple[frozenset[int], ...] = ()
    noted_on: tuple[str, ...] = ()
    extra: Mapping[int, float] = field(default_factory=dict)
    slip: Slip | None = None

    @property
    def lists(self) -> tuple[frozenset[int], ...]:
        """The jobs that somebody confirmed at every weigh-in, and now."""
        return self.listed or self.inside

    @property
    def noted_scales(self) -> tuple[str, ...]:
        return self.noted_on or self.on

    @property
    def drivers(self) -> tuple[float, ...]:
        return (self.driver, *self.others)

    def gain_at(self, k: int) -> float:
        """Of the scale that the car stood on at weigh-in k, on that day."""
        name = self.on[k]
        return self.gains[name] + (float(self.drift[name][k]) if name in self.drift else 0.0)

    def checks(self, name: str) -> tuple[tuple[float, float], ...]:
        """(known mass, half-width it is known to) of every check of a scale."""
        if name in PART_SCALES:
            return PART_SCALES[name].checks
        return ((self.setting.checked, CHECK_WITHIN),) if name in HOME and self.setting.checked else ()

    @property
    def count(self) -> int:
        """How often the car was weighed."""
        return self.setting.weigh_ins

    @property
    def truth(self) -> float:
        """What the car weighs now, as the class weighs it."""
        return self.weight + sum(self.steps.values())

    def net(self, k: int) -> float:
        """What the jobs then in the car came to, truly."""
        return sum(part.signed * part.mass for part in self.parts if part.job in self.inside[k])

    def driver_in(self, k: int) -> bool:
        """The driver sits in the car on the official platform, and nowhere else."""
        return self.on[k] == "platform"

    def load(self, k: int) -> float:
        """What stood on the scales at weigh-in k."""
        bare = self.weight - self.driver - CLASS_FUEL * self.density - self.net(self.count) + self.net(k)
        unlogged = sum(mass for gap, mass in self.steps.items() if gap < k)
        seated = self.drivers[self.seated.get(k, 0)] if self.driver_in(k) else 0.0
        aboard = float(self.litres[k]) * self.density + seated + self.ballast.get(k, 0.0)
        return bare + unlogged + aboard + self.extra.get(k, 0.0)


def draw(random: Generator, setting: Setting) -> World:
    """A world without unlogged changes; `unlogged.with_steps` adds them."""
    litres = random.uniform(5.0, 35.0, setting.weigh_ins)
    unmeasured = World(
        setting=setting,
        weight=float(random.uniform(900.0, 1100.0)),
        driver=float(random.uniform(65.0, 90.0)),
        density=sum(DENSITY) / 2,
        parts=_parts(random, setting.guessed),
        gains={},
        known={},
        on=_on(random, setting),
        inside=_inside(random, setting.weigh_ins),
        litres=litres,
        noted=litres,
        jitter=(),
        steps={},
    )
    return measured(random, unmeasured)


def measured(random: Generator, world: World) -> World:
    """The same car and the same jobs with every error of measuring drawn anew."""
    within = world.setting.fuel_within
    return replace(
        world,
        density=float(random.uniform(*DENSITY)),
        gains={name: float(random.normal(0.0, each.gain)) for name, each in {**PART_SCALES, **CAR_SCALES}.items()},
        known={
            name: tuple(float(random.uniform(mass - off, mass + off)) for mass, off in scale.checks)
            for name, scale in PART_SCALES.items()
        },
        noted=world.litres + random.uniform(-within, within, world.count),
        jitter=tuple(_jitter(random, world.setting, CAR_SCALES[name]) for name in world.on),
    )


def _jitter(random: Generator, setting: Setting, scale: Scale) -> NDArray[np.float64]:
    return random.normal(0.0, setting.repeats / sqrt(scale.looks), scale.looks)


def _parts(random: Generator, guessed: int) -> tuple[Part, ...]:
    moves = [(job, "off") for job in range(JOBS)]
    moves += [(job, "on") for job in range(JOBS) if random.random() < PUT_ON_SHARE]
    chosen = set(random.choice(len(moves), guessed, replace=False).tolist())
    bias = float(random.normal(0.0, GUESS_BIAS))
    return tuple(_part(random, n, job, way, bias if n in chosen else None) for n, (job, way) in enumerate(moves))


def _part(random: Generator, n: int, job: int, way: str, bias: float | None) -> Part:
    heaviest = 15.0 if way == "off" else 5.0
    size = float(np.exp(random.uniform(np.log(0.1), np.log(heaviest))))
    count = int(random.integers(2, 5)) if size < 1.0 and random.random() < 0.3 else 1
    scale = "kitchen" if size < 3.0 else "hook" if size < 8.0 else "floor"
    if bias is None:
        return Part(job, way, count, size, scale, None, f"thing {n % THINGS}")
    size = max(0.1, round(size, 1))
    off = float(random.uniform(-GUESS_WITHIN, GUESS_WITHIN))
    return Part(job, way, count, size * (1.0 + bias + off), scale, size, f"thing {n % THINGS}")


def _on(random: Generator, setting: Setting) -> tuple[str, ...]:
    """The scale of every weigh-in: drawn from four turns on each, or the pads at home, or these but for one event."""
    turns = random.permutation(np.repeat(NAMES, MOST_WEIGH_INS // len(NAMES)))
    before = setting.weigh_ins // 2
    if setting.event:
        return (*("pads",) * before, "platform", *("pads",) * (setting.weigh_ins - before - 1))
    return ("pads",) * setting.weigh_ins if setting.home else tuple(map(str, turns[: setting.weigh_ins]))


def _inside(random: Generator, weigh_ins: int) -> tuple[frozenset[int], ...]:
    """The jobs in the car at every weigh-in, and now; two of them are undone again some time after."""
    done = [*(round(k * (JOBS - JOBS_AFTER) / (weigh_ins - 1)) for k in range(weigh_ins)), JOBS]
    lists = [set(range(jobs)) for jobs in done]
    for job in random.choice(done[max(1, weigh_ins - 2)], UNDONE, replace=False).tolist():
        first = next(k for k, jobs in enumerate(done) if job < jobs) + 1
        for k in range(int(random.integers(first, weigh_ins + 1)), weigh_ins + 1):
            lists[k].discard(job)
    return tuple(frozenset(jobs) for jobs in lists)
