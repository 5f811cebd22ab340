"""What was weighed: on which scale, a part at a time or the whole car, level or with an axle raised."""

from dataclasses import replace

from tarebook.journal.kinds.field import NAME, NOTE, WHEN, Field, Kind, choice, ref
from tarebook.journal.kinds.garage import MASS_UNITS

_SHOWN = Field("mass", "The scale shows", required=True)

# fmt: off
SCALE = Kind("scale", {
    "name": NAME,
    "kind": choice({
        "kitchen": "Kitchen scale", "hanging": "Hanging scale", "bathroom": "Bathroom scale", "bench": "Bench scale",
        "corner_pads": "Four corner scales", "axle_pads": "Axle scales", "platform": "Drive-on platform"},
        "Kind", required=True),
    "division": Field("mass", "Steps of the display", "The smallest change it can show, such as 0.1 oz or 50 g.",
        sign="positive"),
    "capacity": Field("mass", "Most it can weigh", sign="positive"),
    "unit": choice({unit: unit for unit in MASS_UNITS}),
    "repeatability": Field("mass", "Repeats to within",
        "Roll or lift on and off a few times: the usual difference between looks."),
    "accuracy_class": choice({"III": "Class III (trade scale)", "IIII": "Class IIII"}, "Accuracy class on its plate",
        none="None, or not known"),
    "note": NOTE,
})

SCALE_CHECK = Kind("scale_check", {
    "scale": ref("scale", required=True),
    "known_name": Field("text", "What was put on",
        "A marked 10 kg plate, 5 litres of water, a parcel weighed at a shop. "
        "The same name means the same thing on every scale.", most=120),
    "known": Field("mass", "Its true mass", required=True, sign="positive"),
    "known_within": Field("mass", "True to within"),
    "shown": replace(_SHOWN, label="The scale showed"),
    "at": WHEN,
    "note": NOTE,
    "replaces": ref("scale_check", core=False),
}, fact=True, about="A mass known from elsewhere, and what the scale showed for it.")

WEIGHING = Kind("weighing", {
    "of": ref("part", "driver", hangs=True),
    "what": Field("text", most=120, core=False),
    "method": choice({
        "direct": "On the scale", "difference": "Holding it, minus me", "container": "In a box or bucket",
        "batch": "Several alike", "ends": "One end at a time"}, "How", required=True, start="direct"),
    "shown": _SHOWN,
    "shown_empty": Field("mass"),
    "shown_far": Field("mass", "The other end"),
    "pieces": Field("count", "How many", most=1000),
    "scale": ref("scale", label="On which scale", none="No scale named"),
    "with_bolts": Field("flag", "On the scale", of={"yes": "Bolts included", "no": "Without bolts"},
        word="with its bolts"),
    "at": WHEN,
    "place": choice({"garage": "Garage", "yard": "Yard", "paddock": "Paddock", "elsewhere": "Elsewhere"},
        "Where you are", core=False),
    "note": NOTE,
    "replaces": ref("weighing", core=False),
}, fact=True)

WEIGH_IN = Kind("weigh_in", {
    "car": ref("car"),
    "layout": choice({"corners": "Corners", "axles": "Axles", "total": "Total only"}, "What the scales give",
        required=True),
    "lf": Field("mass", "Left front"),
    "rf": Field("mass", "Right front"),
    "lr": Field("mass", "Left rear"),
    "rr": Field("mass", "Right rear"),
    "front": Field("mass", "Front axle"),
    "rear": Field("mass", "Rear axle"),
    "total": Field("mass", "Whole car"),
    "scale": ref("scale", label="On which scales", none="No scales named"),
    "ready": Field("choices", of={
        "zeroed": "Pads zeroed", "level": "Floor level", "rolled": "Rolled on and off",
        "pressures": "Tyres at pressure", "clear": "Nobody leaning on it"}, most=5, word="seen to before it"),
    "fuel": Field("volume", "Fuel in the tank",
        "Off the gauge will do. Left empty, anything from an empty tank to a full one is allowed for."),
    "fuel_within": Field("volume", "Fuel good to", "Taken as a tenth of it when nothing is said."),
    "driver_in": Field("flag", "Seat", of={"no": "Nobody in it", "yes": "Driver in it"}),
    "driver": ref("driver", label="Which driver, with gear", none="Not said"),
    "ballast": Field("mass", "Ballast on board", "What was fitted then; nothing, if there was none."),
    "trim": choice({"event": "Event trim", "road": "Road trim"}, "Trim", required=True),
    "official": Field("flag", "Whose scales", of={"no": "Our own", "yes": "Official"}),
    "jobs": Field("refs", of={"job": ""}, most=1000),
    "foretold": Field("mass", "Predicted"),
    "foretold_within": Field("mass", "Predicted to within"),
    "at": WHEN,
    "place": Field("text", "Where", most=120, core=False),
    "note": NOTE,
    "replaces": ref("weigh_in", core=False),
}, fact=True, words=("weigh-in", "weigh-ins"),
    about="The whole car weighed. `foretold`: what official scales were to show, told by all that was known before.")

_LOOKS = {
    "shown": "The scale shows", "shown_empty": "Without it", "shown_far": "The other end",
    **{name: WEIGH_IN.fields[name].label for name in ("lf", "rf", "lr", "rr", "front", "rear", "total")}}

REPEAT = Kind("repeat", {
    "of": ref("weighing", "weigh_in", required=True),
    **{name: Field("mass", label) for name, label in _LOOKS.items()},
    "at": replace(WHEN, core=False),
    "replaces": ref("repeat", core=False),
}, fact=True, words=("repeat reading", "repeat readings"),
    about="Lifted or rolled off and on, and read again, all of it or a part; whatever else was so is told by `of`.")

OMISSION = Kind("omission", {
    "of": ref("weighing", "weigh_in", "repeat", required=True),
    "reading": choice(_LOOKS, required=True),
}, words=("reading left out", "readings left out"),
    about="One of several readings of a thing that a person left out; deleted, it counts again.")

SECOND_LOOK = Kind("second_look", {
    "of": ref("weighing", "weigh_in", required=True),
}, fact=True, core=False,
    about="A reading that was asked about, and that a person found right as it stands.")

LIFT = Kind("lift", {
    "car": ref("car"),
    "weigh_in": ref("weigh_in", required=True),
    "raised": choice({"rear": "Rear raised", "front": "Front raised"}, "Which axle goes up", required=True),
    "tilted": Field("mass", required=True),
    "height": Field("length", required=True, sign="positive"),
    "height_within": Field("length", "Good to", "3 mm when nothing is said: a tape, twice."),
    "scale": ref("scale"),
    "at": WHEN,
    "note": NOTE,
    "replaces": ref("lift", core=False),
}, fact=True,
    about="One axle of the car of a weigh-in raised by `height`; `tilted`: what the other then carried.")
