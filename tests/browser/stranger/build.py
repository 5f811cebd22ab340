"""The build: an invented hatchback in a pound garage, five scales, three stages, twenty jobs, thirty-eight parts.

All figures are invented for this test. A reading stands as the display shows it, its unit being the display's.
"""

from dataclasses import dataclass

CAR, MINIMUM, START, FUEL = "Rally hatch", "1960 lb", "2296", "4 US gal"


@dataclass(frozen=True)
class Scale:
    """`display`: the name of its picture. `capacity`: "" where its plate has gone."""

    name: str
    display: str
    capacity: str = ""

    @property
    def unit(self) -> str:
        return self.display.split(", ")[1].split()[-1]


BATHROOM = Scale("Bathroom scale", "181.6 lb, steps of 0.2 lb", "330 lb")
KITCHEN = Scale("Kitchen scale", "6 3/8 oz, steps of 1/8 oz", "11 lb")
HANGING = Scale("Hanging scale", "4.27 kg, steps of 0.01 kg", "50 kg")
PADS = Scale("Four corner scales", "231.5 kg, steps of 0.5 kg")
BRIDGE = Scale("Drive-on platform", "543 lb, steps of 1 lb")
SCALES = (BATHROOM, KITCHEN, HANGING, PADS, BRIDGE)


@dataclass(frozen=True)
class Part:
    """`shown`: by all of its pieces on the scale together."""

    name: str
    shown: str
    scale: Scale
    pieces: int = 1


@dataclass(frozen=True)
class Job:
    name: str
    off: tuple[Part, ...] = ()
    on: tuple[Part, ...] = ()

    @property
    def is_swap(self) -> bool:
        return self.name.endswith("swap")


def _swap(name: str, off: str, on: str, scale: Scale, pieces: int = 1) -> Job:
    return Job(f"{name} swap", (Part(name, off, scale, pieces),), (Part(f"{name}, new", on, scale, pieces),))


STAGES: dict[str, tuple[Job, ...]] = {
    "Strip out": (
        Job("Spare wheel out", (Part("Spare wheel", "13.2", HANGING),)),
        Job("Rear seat out", (Part("Rear bench", "31.4", BATHROOM), Part("Rear backrest", "24.6", BATHROOM))),
        Job("Carpets out", (Part("Cabin carpet", "19.8", BATHROOM), Part("Boot carpet", "54 1/4", KITCHEN))),
        Job("Radio out", (Part("Radio", "42 1/2", KITCHEN), Part("Speakers", "58 3/4", KITCHEN, 2))),
        Job("Sound deadening out", (Part("Bitumen sheets", "7.46", HANGING),)),
        Job("Jack and tools out", (Part("Jack", "6.2", BATHROOM), Part("Tool roll", "38 1/4", KITCHEN))),
        Job("Rear wiper out", (Part("Wiper motor", "39 5/8", KITCHEN), Part("Wiper arm", "12 3/8", KITCHEN))),
        Job("Parcel shelf out", (Part("Parcel shelf", "4.4", BATHROOM),)),
    ),
    "Lighter parts": (
        _swap("Battery", "30.8", "9.4", BATHROOM),
        _swap("Driver seat", "38.6", "15.8", BATHROOM),
        _swap("Wheels", "149.6", "112.8", BATHROOM, 4),
        _swap("Bonnet", "17.38", "7.92", HANGING),
        _swap("Exhaust", "14.86", "9.24", HANGING),
        _swap("Steering wheel", "71 1/4", "44 3/8", KITCHEN),
        _swap("Passenger seat", "35.2", "14.6", BATHROOM),
    ),
    "Finish": (
        Job("Roll hoop in", (), (Part("Roll hoop", "28.64", HANGING),)),
        Job("Heater out", (Part("Heater box", "12.2", BATHROOM),), (Part("Blanking plate", "10 1/8", KITCHEN),)),
        _swap("Rear glass", "13.6", "6.8", BATHROOM),
        _swap("Door cards", "11.4", "3.8", BATHROOM, 2),
        Job(
            "Rear bumper out",
            (Part("Rear bumper", "15.2", BATHROOM), Part("Bumper beam", "8.66", HANGING)),
            (Part("Bracket set", "22 7/8", KITCHEN), Part("Extinguisher", "5.4", BATHROOM)),
        ),
    ),
}
