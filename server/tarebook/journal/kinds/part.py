"""A part, and the sheet one may be cut from."""

from dataclasses import replace

from tarebook.journal.kinds.field import NAME, NOTE, Field, Kind, choice, ref

ZONES = (
    "nose", "engine bay", "bulkhead", "dash", "cabin front", "cabin rear", "left door", "right door", "roof",
    "glass", "floor", "boot", "tail", "front wheels", "rear wheels", "underneath front", "underneath rear",
)  # fmt: skip
# fmt: off
CLAIM = {
    "claim": Field("mass", "Weight, until it is weighed", "Of one piece. A weighing always counts before this.",
        sign="positive", word="weight as claimed"),
    "claim_basis": choice({"guessed": "Guessed", "quoted": "Quoted", "worked_out": "Worked out"}, "That weight is",
        word="how the claim is known"),
    "claim_within": Field("mass", "Good to within", word="claim good to"),
    "claim_from": Field("text", "Says who", "A brochure, a seller, a friend's car.", core=False,
        word="where the claim is from"),
}
_COUNT = Field("count", "Pieces like it", "A whole number, 1 to 999.", most=1000, word="how many")

PART = Kind("part", {
    "car": ref("car"),
    "name": NAME,
    "zone": choice({zone: zone for zone in ZONES}, "Where in the car", none="Not said"),
    "x": Field("length", "From the front axle", sign="any", sides=("Ahead of it", "Behind it"),
        word="place along the car"),
    "y": Field("length", "From the centreline", sign="any", sides=("Left", "Right"), word="place across the car"),
    "z": Field("length", "Above the ground", word="height"),
    "place_within": Field("length", "Good to within",
        "To each side, for all three. Left empty, it is 25 mm: "
        "what a tape measure and an eye for the middle of a part give.",
        word="place good to"),
    "length": Field("length", "Length, along the car",
        "Only a wide part needs it: a carpet resists turning by its own size.", sign="positive"),
    "width": Field("length", "Width, across the car", sign="positive"),
    "count": _COUNT,
    "whereabouts": choice({
        "car": "On the car", "shelf": "On the shelf", "yard": "At the yard", "left": "Left there", "sold": "Sold",
        "scrapped": "Scrapped"}, "Where it is"),
    "box": Field("text", "Box or shelf", most=80, core=False),
    "yard": Field("text", "Which yard", most=120, core=False, word="which yard"),
    "row": Field("text", "Row", most=80, core=False),
    "asking": Field("money", "Asking price", sign="any", word="asking price"),
    "sold_for": Field("money", "Sold for", sign="any"),
    "instead_of": ref("part"),
    "unsprung": Field("flag", "Unsprung (wheel, brake, hub)"),
    "rotating": Field("flag", "Rotating"),
    "with_bolts": Field("flag", "Weighed with its bolts", word="with its bolts"),
    **CLAIM,
    "note": replace(NOTE, label="Notes"),
}, about="`count` is how many pieces the record stands for; every mass of it, weighed or claimed, is of one piece.")

_SHAPE = {
    "form": choice({"rectangle": "Rectangle", "circle": "Circle", "polygon": "Drawn"}),
    "width": Field("length", "Width", sign="positive"),
    "height": Field("length", "Height", sign="positive"),
    "diameter": Field("length", "Diameter", sign="positive"),
    "corners": Field("text", most=4000),
}

SHEET = Kind("sheet", {
    "part": ref("part", required=True),
    "material": Field("text", "Material", most=80, none="Another, by its density"),
    **_SHAPE,
    "thickness": Field("length", "Thickness", sign="positive"),
    "measured": Field("flag"),
    "gauge": Field("integer", "Gauge", most=50),
    "gauge_table": Field("text", "By which table",
        "Makers' thicknesses are what is rolled today; the legal table is a table of weights.", most=40,
        of={"msg": "Makers' (MSG)", "ussg": "Legal (USSG)"}),
    "density_low": Field("fraction", "Density from, kg/m³", sign="any", word="density from"),
    "density_high": Field("fraction", "Density to, kg/m³", sign="any", word="density to"),
    "within": Field("length", "Each edge true to within", "Empty: as far as the last digit typed."),
}, about="A part cut from sheet, as it was drawn or typed. `corners`: text, read by `core/sheet/sheet_corners`.")

SHEET_HOLE = Kind("sheet_hole", {
    "sheet": ref("sheet", required=True),
    **_SHAPE,
    "count": replace(_COUNT, label="How often it is cut", hint=""),
}, words=("hole of a sheet", "holes of sheets"))
