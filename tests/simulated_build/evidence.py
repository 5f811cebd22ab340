"""A simulated build as one linear problem, for what a careful person would make of it without the product.

Each weigh-in k, less its fuel and driver and with what the ledger says was done since, is a reading z_k of what the car
weighs now. Every error source is a column with its stated standard deviation as it moves the readings, so that
S = A·Aᵀ is their covariance (JCGM 100:2008, 5.2). What nobody wrote down between weigh-in g and the next moved every
reading after it by the same kilograms: a step h_g. Numpy and the textbook's normal equations only.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import sqrt

import numpy as np
from numpy.typing import NDArray

from tests.simulated_build.readings import car_looks, check_looks, driver_looks, part_looks
from tests.simulated_build.world import (
    CAR_SCALES,
    CLASS_FUEL,
    DENSITY,
    GUESS_BIAS,
    GUESS_WITHIN,
    PART_SCALES,
    Part,
    Scale,
    World,
)

Vector = NDArray[np.float64]
# kg, what the product states of a whole car's repeating where a scale's record is silent: common practice, no source.
REPEATS_ASSUMED = {"corner_pads": 0.5, "axle_pads": 1.0, "platform": 0.5}
MIDDLE, SPREAD = sum(DENSITY) / 2, (DENSITY[1] - DENSITY[0]) / sqrt(12.0)


@dataclass(frozen=True)
class Evidence:
    """`z`: what the car weighs now by each weigh-in, kg, nothing unlogged.

    `a`: a row for each weigh-in, a column for each error source: how far one standard deviation of it moves z, kg.
    """

    z: Vector
    a: Vector

    @cached_property
    def s(self) -> Vector:
        """Covariance of z, kg²."""
        return self.a @ self.a.T

    @cached_property
    def w(self) -> Vector:
        """What the readings tell beside their mean: S⁻¹ − S⁻¹11ᵀS⁻¹/(1ᵀS⁻¹1), kg⁻²."""
        inverse = np.linalg.inv(self.s)
        mean = inverse.sum(axis=0)
        told: Vector = inverse - np.outer(mean, mean) / mean.sum()
        return told

    def seen(self, effect: Vector) -> float:
        """How many standard uncertainties an effect on the readings, kg, comes to, when it alone is looked for."""
        return sqrt(max(0.0, float(effect @ self.w @ effect)))

    def fit(self, gaps: tuple[int, ...] = ()) -> tuple[Vector, Vector]:
        """The weight now and the steps in these gaps by generalised least squares, and their covariance."""
        design = np.column_stack([np.ones(len(self.z)), *(self.step(gap) for gap in gaps)])
        weighted = np.linalg.solve(self.s, design)
        covariance = np.linalg.inv(design.T @ weighted)
        return covariance @ weighted.T @ self.z, covariance

    def step(self, gap: int) -> Vector:
        """How one kilogram that came in between weigh-in `gap` and the next shows: readings up to it are low by it."""
        return np.where(np.arange(len(self.z)) <= gap, -1.0, 0.0)


def u_of_steps(evidence: Evidence, gaps: tuple[int, ...]) -> Vector:
    """The standard uncertainty each of these steps has, kg, when all of them are looked for and no others."""
    return np.sqrt(np.diag(evidence.fit(gaps)[1])[1:])


def evidence_of(world: World) -> Evidence:
    """All of what the displays of a world showed."""
    masses = _part_masses(world)
    net = [sum(part.signed * mass for part, mass in masses if part.job in inside) for inside in world.lists]
    gains = np.array([gain_of(world, name)[0] for name in world.noted_scales])
    bare = np.array([sum(car_looks(world, k)) for k in range(world.count)]) / (1.0 + gains)
    ballast = np.array([world.ballast.get(k, 0.0) for k in range(world.count)])
    drivers, swaps = np.array(driver_masses(world)), _swaps(world)
    z = bare + (CLASS_FUEL - world.noted) * MIDDLE + swaps @ drivers - ballast + net[-1] - np.array(net[:-1])
    columns = [*_of_looks(world), *_of_cars(world, bare), *_of_parts(world, masses), *_of_drivers(world)]
    return Evidence(z, np.column_stack(columns))


def driver_masses(world: World) -> list[float]:
    return [look / (1.0 + gain_of(world, "floor")[0]) for look in driver_looks(world)]


def _swaps(world: World) -> Vector:
    """A row for each weigh-in, a column for each driver: the one who counts is put in for the one who sat there."""
    swaps = np.zeros((world.count, len(world.drivers)))
    swaps[:, 0] = 1.0
    for k in filter(world.driver_in, range(world.count)):
        swaps[k, world.seated.get(k, 0)] -= 1.0
    return swaps


def _of_looks(world: World) -> list[Vector]:
    """What each weigh-in shares with no other: displays, repeating, litres."""
    within = (world.setting.fuel_within * MIDDLE) ** 2 / 3.0
    own = [sqrt(_look(world, CAR_SCALES[name]) + within) for name in world.noted_scales]
    return list(np.diag(own))


def _look(world: World, scale: Scale) -> float:
    """Variance of a whole car's displays, kg²."""
    stated = world.setting.stated
    repeats = REPEATS_ASSUMED[scale.kind] if stated is None else stated
    return scale.looks * scale.division**2 / 12.0 + repeats**2


def _of_cars(world: World, bare: Vector) -> list[Vector]:
    """The gain of each scale the car stood on, and the fuel's density."""
    on = np.array(world.noted_scales)
    gains = [np.where(on == name, bare * gain_of(world, name)[1], 0.0) for name in CAR_SCALES]
    return [*gains, (CLASS_FUEL - world.noted) * SPREAD]


def _of_drivers(world: World) -> list[Vector]:
    """Each driver's look."""
    return list((_swaps(world) * PART_SCALES["floor"].division / sqrt(12.0)).T)


def _of_parts(world: World, masses: list[tuple[Part, float]]) -> list[Vector]:
    """The gains of the scales for parts and drivers, the bias of all guesses, and what each part has of its own."""
    moved = {part: part.signed * moved_with(world, part.job) for part, _ in masses}
    shared: dict[str, Vector] = {name: np.zeros(world.count) for name in (*PART_SCALES, "guesses")}
    shared["floor"] = _swaps(world) @ np.array(driver_masses(world)) * gain_of(world, "floor")[1]
    for part, mass in masses:
        source = part.scale if part.guess is None else "guesses"
        spread = gain_of(world, part.scale)[1] if part.guess is None else GUESS_BIAS
        shared[source] = shared[source] + moved[part] * mass * spread
    own: list[Vector] = [moved[part] * _own(part) for part, _ in masses]
    return [*shared.values(), *own]


def moved_with(world: World, job: int) -> Vector:
    """Of each weigh-in: +1 when the job is in the car now and was not then, −1 the other way round."""
    *then, now = world.lists
    return np.array([float(job in now) - float(job in jobs) for jobs in then])


def _own(part: Part) -> float:
    if part.guess is not None:
        return GUESS_WITHIN * part.guess / sqrt(3.0)
    return PART_SCALES[part.scale].division * sqrt(
        (2.0 if part.scale == "floor" or part.crate == "used" else 1.0) / 12.0
    )


def _part_masses(world: World) -> list[tuple[Part, float]]:
    return [(part, written_mass(world, part)) for part in world.parts]


def written_mass(world: World, part: Part) -> float:
    if part.guess is not None:
        return part.guess
    full, empty = part_looks(world, part)
    return (full - empty) / (1.0 + gain_of(world, part.scale)[0])


def gain_of(world: World, name: str) -> tuple[float, float]:
    """The gain of a scale and its standard uncertainty: from its checks by weighted least squares, else 0."""
    scale, checks = {**PART_SCALES, **CAR_SCALES}[name], world.checks(name)
    if not checks:
        return 0.0, scale.gain
    known, within = np.array(checks).T
    weights = 1.0 / (scale.division**2 / 12.0 + within**2 / 3.0)
    off = np.array(check_looks(world, name)) - known
    least = float(weights @ known**2)
    return float(weights @ (known * off)) / least, 1.0 / sqrt(least)
