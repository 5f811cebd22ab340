"""Fuel: from litres in the tank to kilograms, with the range a fuel's density may have.

Nobody in a paddock knows the density of what is in the tank; the standards only bound it. The density is one error
source, `fuel-density`, shared by every tank of fuel a car is weighed with, so that it cancels between a weigh-in with
a full tank and a class that weighs with a full tank. How well the litres are known is each weigh-in's own.
"""

from dataclasses import dataclass

from tarebook.core.numbers.uncertain import Uncertain, multiply, rectangular

LITRE = 0.001  # m³
ETHANOL = 793.7  # kg/m³ at 15 °C; 6.61 lb/gal in the US DOE AFDC fuel property table
WITHIN_SHARE, WITHIN_LEAST = 0.1, 1.0 * LITRE  # litres read off a gauge: common practice, no source


@dataclass(frozen=True)
class Density:
    """A fuel's density lies evenly between `low` and `high`, kg/m³."""

    low: float
    high: float

    @property
    def middle(self) -> float:
        return 0.5 * (self.low + self.high)

    @property
    def u(self) -> float:
        return rectangular(0.5 * (self.high - self.low))


def blend(ethanol: float, petrol: float) -> float:
    """Density (kg/m³) of a volume share of ethanol in petrol of the density given, mixing ideally."""
    return ethanol * ETHANOL + (1.0 - ethanol) * petrol


PETROL = Density(720.0, 775.0)  # EN 228 limits at 15 °C
DENSITIES = {
    "petrol": PETROL,
    # What pumps sell as E85 holds 51 to 83 % ethanol (ASTM D5798, from memory).
    "e85": Density(blend(0.51, PETROL.low), blend(0.83, PETROL.high)),
    "diesel": Density(802.8, 886.7),  # 6.7 to 7.4 lb/gal, No. 2 diesel, US DOE AFDC fuel property table
}
UNKNOWN = Density(PETROL.low, DENSITIES["diesel"].high)  # the car does not say what it burns


def density_of(kind: str | None) -> Density:
    """The density range of `petrol`, `e85` or `diesel`; the range of all of them when the kind is not known."""
    return DENSITIES.get(kind or "", UNKNOWN)


def fuel_mass(volume: float, kind: str | None, within: float | None = None, source: str = "") -> Uncertain:
    """Mass (kg) of `volume` m³ of fuel, known to ± `within` m³ (a rectangle) under the error source named."""
    density = density_of(kind)
    sources = {"fuel-density": volume * density.u}
    if within:
        sources[source] = density.middle * rectangular(within)
    return Uncertain(volume * density.middle, sources)


def mass_of(volume: Uncertain, kind: str | None) -> Uncertain:
    """Mass (kg) of a volume (m³) known with error sources of its own."""
    density = density_of(kind)
    return multiply(volume, Uncertain(density.middle, {"fuel-density": density.u}))


def assumed_within(volume: float) -> float:
    """Half-width (m³) taken for litres nobody said the accuracy of: a tenth of them, at least one litre."""
    return max(WITHIN_SHARE * volume, WITHIN_LEAST)
