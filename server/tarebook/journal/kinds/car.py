"""The car, who drives it, its class's sheet, and the places it has for ballast."""

from dataclasses import replace

from tarebook.journal.kinds.field import NAME, NOTE, Field, Kind, choice, ref
from tarebook.journal.kinds.part import CLAIM

# What a car's own sizes keep within, wide enough for published ones; beyond them a unit has slipped.
_TRACK, _RADIUS = ("0.5 m", "3 m"), ("100 mm", "1000 mm")
_ALONG, _ACROSS = ("Ahead of it", "Behind it"), ("Left", "Right")


def _size(label: str, hint: str = "", likely: tuple[str, str] | None = None) -> Field:
    return Field("length", label, hint, sign="positive", likely=likely)


def _place(label: str, word: str, sides: tuple[str, str], hint: str = "") -> Field:
    return Field("length", label, hint, sign="any", sides=sides, word=word)


def _share(label: str, word: str) -> Field:
    return Field("fraction", label, unit="percent", sign="any", word=word)


# fmt: off
CAR = Kind("car", {
    "name": NAME,
    "wheelbase": _size("Wheelbase", "From the middle of the front wheel to the middle of the rear wheel.",
        ("1 m", "6 m")),
    "track_front": replace(_size("Front track", "Between the middles of the front tyres.", _TRACK), word="front track"),
    "track_rear": replace(_size("Rear track", likely=_TRACK), word="rear track"),
    "tyre_radius_front": replace(
        _size("Front tyre radius", "From the ground to the middle of the wheel, standing.", _RADIUS),
        word="front tyre radius"),
    "tyre_radius_rear": replace(_size("Rear tyre radius", likely=_RADIUS), word="rear tyre radius"),
    "tank_size": Field("volume", "Tank holds", sign="positive"),
    "tank_x": _place("Middle of the tank, from the front axle", "where the tank sits, along", _ALONG),
    "tank_y": _place("Middle of the tank, from the centreline", "where the tank sits, across", _ACROSS),
    "tank_z": Field("length", "Middle of the tank, above the ground",
        "Measured from outside or found in the workshop manual: a tank is not opened for it.",
        word="height of the tank"),
    "fuel_kind": choice({"petrol": "Petrol", "e85": "E85", "diesel": "Diesel"}, "Fuel", start="petrol", word="fuel"),
    "fuel_per_lap": Field("volume", "Fuel a lap takes",
        "What you filled up after some laps, divided by those laps.", sign="positive", word="fuel a lap takes"),
    "driver_x": _place("Driver's hips, from the front axle", "where the driver sits, along", _ALONG),
    "driver_y": _place("Driver, from the centreline", "where the driver sits, across", _ACROSS),
    "driver_z": Field("length", "Driver's hips, above the ground", word="height of the driver's seat"),
    "beltline": Field("length", "Height of the beltline", "The lower edge of the side windows."),
    "power": Field("fraction", "Power", "As the maker or a test bench gives it, for weight per power.", sign="any"),
    "power_unit": choice({unit: unit for unit in ("kW", "hp", "PS")}, "Power is in"),
    "length": _size("Length of the body", "Bumper to bumper."),
    "width": _size("Width of the body", "Without the mirrors."),
    "height": _size("Height of the roof"),
    "front_overhang": Field("length", "Front overhang", "From the nose to the middle of the front wheel."),
    "roll_front": Field("fraction", "Front's share of roll stiffness, %",
        "From the spring and bar rates, if you know them; only then the shift is told in weight.", unit="percent",
        sign="any", word="front's share of roll stiffness"),
    "front_from": _share("Front, at least %", "front share, at least"),
    "front_to": _share("Front, at most %", "front share, at most"),
    "left_from": _share("Left, at least %", "left share, at least"),
    "left_to": _share("Left, at most %", "left share, at most"),
    "ballast_for": choice({"mass": "Least weight", "centre": "Lowest", "cross": "Even left to right"},
        "What counts first", word="what ballast is chosen for"),
    "ballast_more": Field("mass", "May weigh so much more than the least", "Left empty, the weight still comes first.",
        word="how much more ballast than the least"),
    "book_weight": Field("mass", "Weight in the brochure",
        "Only used as where the drawing starts, until the car has been weighed.", word="weight by the book"),
    "book_weight_from": Field("text", "Brochure weight comes from", word="where the book weight is from"),
    "note": NOTE,
})

DRIVER = Kind("driver", {
    "name": NAME,
    **CLAIM,
    "claim": replace(CLAIM["claim"], label="Mass with gear, until weighed", hint=""),
    "claim_basis": replace(CLAIM["claim_basis"], label="That mass is", start="quoted",
        of={"guessed": "Guessed", "quoted": "Told", "worked_out": "Worked out"}),
    "note": NOTE,
})

BALLAST_PLACE = Kind("ballast_place", {
    "car": ref("car"),
    "name": NAME,
    "x": _place("From the front axle", "place along the car", _ALONG),
    "y": _place("From the centreline", "place across the car", _ACROSS,
        "Left and right as you sit in the car; 0 on the middle."),
    "z": Field("length", "Above the ground", word="height"),
    "block": Field("mass", "One block weighs",
        "With its bolts and plates, to the last digit the scale shows: 2.50 kg says more than 2.5 kg.",
        sign="positive", word="weight of one block"),
    "most": Field("integer", "Takes at most", "Blocks", most=1000, word="how many blocks it takes"),
    "fitted": Field("integer", "Fitted now", "Blocks", most=1000, word="blocks fitted"),
    "note": NOTE,
}, words=("place for ballast", "places for ballast"),
    about="Where ballast may be fixed: `fitted` blocks of `block` each are there now, `most` is what the place takes.")

CLASS_SHEET = Kind("class_sheet", {
    "car": ref("car"),
    "name": replace(NAME, label="Class"),
    "minimum": Field("mass", "Minimum weight", sign="positive"),
    "driver": choice({"in": "With the driver", "out": "Without"}, "Weighed", start="in", word="driver in or out"),
    "fuel": choice({"as_it_is": "As it comes", "empty": "Empty", "full": "Full", "stated": "A stated amount"},
        "Fuel when weighed", start="as_it_is"),
    "fuel_stated": Field("volume", "How much fuel", word="fuel as stated"),
    "adders": Field("mass", "Added to the minimum for this car",
        "Success weight, wide tyres and the like, as your class has it.", word="added to the minimum"),
    "scale_division": Field("mass", "Steps of the official scale", sign="positive", word="official scale's division"),
    "scale_rounding": choice({"nearest": "To the nearest step", "unknown": "Not known"}, "It rounds",
        start="unknown", word="official scale's rounding"),
    "risk": Field("fraction", "Chance of being found under that you accept", "Sets how much to keep in hand.",
        of={"0.05": "1 in 20", "0.01": "1 in 100", "0.001": "1 in 1000"}, sign="any", start="0.01", word="risk taken"),
    "finish": replace(NOTE, label="Finish the class asks for"),
    "note": NOTE,
})

CLAUSE = Kind("clause", {
    "class_sheet": ref("class_sheet", required=True),
    "reference": Field("text", "Where it stands", "A number or a page.", most=80),
    "text": Field("text", "What it says, in your words", most=4000, required=True),
}, core=False)
