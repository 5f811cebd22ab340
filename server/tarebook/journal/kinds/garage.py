"""The garage itself and what belongs to no part of a car: its units, its photos, and people's verdicts."""

from tarebook.journal.kinds.field import Field, Kind, choice, ref

MASS_UNITS = ("kg", "g", "lb", "oz", "lb oz")

GARAGE = Kind("garage", {
    "name": Field("text", "Name of this garage", most=120, required=True, start="Garage", core=False),
    "mass_unit": choice({unit: unit for unit in MASS_UNITS}, "Mass", start="kg", word="unit of weight", core=False),
    "length_unit": choice({"mm": "Millimetres", "in": "Inches"}, "Length", start="mm", word="unit of length",
        core=False),
    "volume_unit": choice({"L": "Litres", "gal_us": "US gallons", "gal_imp": "Imperial gallons"}, "Fuel",
        start="L", word="unit of volume", core=False),
    "currency": Field("text", "Money is in",
        "A sign or three letters, written after amounts. Amounts stay the numbers they are.", most=8, core=False),
    "claims": choice({"learned": "Corrected", "typed": "As typed"}, "Guesses and quotes count",
        "Corrected: what they run high or low, by the parts you weighed later, is taken out.",
        word="how guesses and quotes count"),
})  # fmt: skip

PHOTO = Kind("photo", {
    "of": ref("part", "weighing", "weigh_in", "job", "loose_end", "scale", "scale_check", "lift", required=True,
        word="what it is of"),
    "sha256": Field("hash", required=True),
    "size": Field("integer", most=2_000_000),
    "type": choice(dict.fromkeys(("image/jpeg", "image/png", "image/webp"), "")),
    "width": Field("integer", most=20_000),
    "height": Field("integer", most=20_000),
}, core=False)  # fmt: skip

VERDICT = Kind("verdict", {
    "entry": Field("text", most=80, required=True),
    "take": Field("flag", required=True),
}, fact=True, core=False, words=("decision on a record", "decisions on records"))  # fmt: skip
