"""What sheet is sold as: materials with the range of their density, and gauge numbers with what they stand for.

A density is a range because an alloy, a laminate or a species is: the source of each stands beside it. What a shop
calls 1/8 inch need not be: the real thickness is taken to lie between two shares of the one it is sold as.

**Gauge steel.** The US legal Standard Gauge (15 U.S.C. 206) is a gauge of weight: a number means ounces a square foot,
and its thicknesses are those of wrought iron. The Manufacturers' Standard Gauge turns the same weights into the
thickness really rolled, at 41.82 pounds a square foot for an inch. That figure is a convention: steel of 7.85 g/cm³
weighs 40.84, so a weight from such a table is 2.4 % above area × thickness × density.
"""

from dataclasses import dataclass

from tarebook.core.whole_car.fuel import Density

INCH = 0.0254  # m, exact
POUND = 0.45359237  # kg, exact
FOOT2 = (12 * INCH) * (12 * INCH)  # m²
OUNCES_FT2 = POUND / 16 / FOOT2  # kg/m²
CONVENTION = 41.82 * POUND / FOOT2 / INCH  # kg/m³ that tables of the Manufacturers' Standard Gauge are made with
LEGAL_SHARE = 0.025  # the law allows 2½ % either way (15 U.S.C. 208, from memory)


@dataclass(frozen=True)
class Material:
    """`name`: as people say it. `density` in kg/m³.

    `thinnest`, `thickest`: shares of the thickness it is sold as; common practice, no source.
    """

    name: str
    density: Density
    thinnest: float
    thickest: float
    source: str


def _rolled(name: str, low: float, high: float, source: str) -> Material:
    return Material(name, Density(low, high), 0.95, 1.05, source)


def _plastic(name: str, low: float, high: float, source: str) -> Material:
    """Sold in inches and made in millimetres: "1/8 in" polycarbonate is 0.118 in, a share of 0.944."""
    return Material(name, Density(low, high), 0.9, 1.05, source)


def _laid(name: str, low: float, high: float, source: str) -> Material:
    return Material(name, Density(low, high), 0.9, 1.1, source)


MATERIALS = {
    "steel": _rolled(
        "steel", 7830.0, 7870.0, "carbon steel 7.85 g/cm³, common practice; pure iron 7.87, periodictable 2.1.0"
    ),
    "stainless_steel": _rolled("stainless steel", 7700.0, 8030.0, "ferritic to austenitic grades, from memory"),
    "aluminium": _rolled(
        "aluminium", 2660.0, 2810.0, "pure 2.699 g/cm³, periodictable 2.1.0; sheet alloys about it, from memory"
    ),
    "aluminium_6061": _rolled("6061 aluminium", 2698.0, 2713.0, "0.0975 to 0.098 lb/in³, data sheets"),
    "aluminium_2014": _rolled("2014 aluminium", 2790.0, 2801.0, "0.101 lb/in³ = 2.80 g/cm³, sheet-weight tables"),
    "titanium": _rolled(
        "titanium", 4420.0, 4540.0, "pure 4.506 (mendeleev 1.3.0) to 4.54 (periodictable 2.1.0); 6Al-4V from memory"
    ),
    "magnesium": _rolled(
        "magnesium", 1735.0, 1830.0, "pure 1.738 g/cm³, periodictable 2.1.0; sheet alloys from memory"
    ),
    "copper": _rolled("copper", 8890.0, 8960.0, "pure 8.96 g/cm³, periodictable 2.1.0"),
    "brass": _rolled("brass", 8400.0, 8750.0, "from memory"),
    "lead": _rolled("lead", 11300.0, 11350.0, "11.30 (mendeleev 1.3.0) to 11.35 g/cm³ (periodictable 2.1.0)"),
    "tungsten": _rolled("tungsten", 19200.0, 19300.0, "pure 19.3 g/cm³, periodictable 2.1.0; heavy alloys are lighter"),
    "polycarbonate": _plastic(
        "polycarbonate", 1190.0, 1210.0, "specific gravity 1.2, 74.88 lb/ft³, a sheet maker's table"
    ),
    "acrylic": _plastic("acrylic", 1150.0, 1190.0, "specific gravity 1.15 to 1.19 (ASTM D792), data sheets"),
    "abs": _plastic("ABS", 1040.0, 1080.0, "specific gravity 1.08 of sheet grades, a seller's table; 1.04 from memory"),
    "softwood_plywood": Material(
        "softwood plywood",
        Density(450.0, 600.0),
        0.82,
        1.0,
        "3.0 lb/ft² for an inch, a trade rule; spruce 460 kg/m³, a maker's handbook",
    ),
    "birch_plywood": Material("birch plywood", Density(650.0, 750.0), 0.82, 1.0, "700 ± 50 kg/m³, a maker's handbook"),
    "carbon_laminate": _laid("carbon laminate", 1400.0, 1650.0, "from memory"),
    "glass_laminate": _laid("glass-fibre laminate", 1500.0, 2000.0, "from memory"),
    "glass": _rolled("glass", 2450.0, 2550.0, "soda-lime float glass 2.5 g/cm³, from memory"),
}

# Ounces a square foot of the US legal Standard Gauge, 15 U.S.C. 206 (16, 18 and 20 read there, the others from memory).
LEGAL_OUNCES = {
    7: 120, 8: 110, 9: 100, 10: 90, 11: 80, 12: 70, 13: 60, 14: 50, 15: 45, 16: 40, 17: 36, 18: 32, 19: 28, 20: 24,
    21: 22, 22: 20, 23: 18, 24: 16, 25: 14, 26: 12, 27: 11, 28: 10,
}  # fmt: skip
# Inches of the Manufacturers' Standard Gauge (10, 18 and 20 seen in trade tables, the others from memory).
MAKERS_INCHES = {
    7: 0.1793, 8: 0.1644, 9: 0.1495, 10: 0.1345, 11: 0.1196, 12: 0.1046, 13: 0.0897, 14: 0.0747, 15: 0.0673,
    16: 0.0598, 17: 0.0538, 18: 0.0478, 19: 0.0418, 20: 0.0359, 21: 0.0329, 22: 0.0299, 23: 0.0269, 24: 0.0239,
    25: 0.0209, 26: 0.0179, 27: 0.0164, 28: 0.0149,
}  # fmt: skip
GAUGE_TABLES = ("msg", "ussg")
