"""The build sheet: everything one car's records come to, as plain data that text, CSV and JSON are written from.

It computes nothing of its own. Numbers are results of `core`, `{value, unit, u, shown}`, in the garage's own units;
names stand where records have them; what cannot be told is None with a reason beside it.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Any

from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Garage, Job, Warned, WeighIn, Weighing
from tarebook.core.ledger.as_read import jobs_as_read
from tarebook.core.ledger.ledger import Ledger, ledger
from tarebook.core.ledger.net import STATES, JobNet, Line, Total
from tarebook.core.numbers.shown import number, show_chance, show_guard, show_hours, show_mass, show_money
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.from_start import from_start
from tarebook.core.standing.sentences import (
    foretold_sentence,
    gap_sentence,
    in_hand_sentence,
    margin_sentence,
    score_sentence,
)
from tarebook.core.standing.standing import Standing, standing
from tarebook.core.weighing.lesson_words import lesson_sentence
from tarebook.core.weighing.repeats import LAYOUTS, PART_LOOKS, readings
from tarebook.core.weighing.weighing import Masses, masses
from tarebook.errors import describe
from tarebook.journal.kinds import KINDS
from tarebook.papers.photos import PhotosAt
from tarebook.papers.weight_now import beside_weight, lines_from_start

Sheet = dict[str, Any]
Number = dict[str, Any]


def build_sheet(
    records: Mapping[str, Any],
    car: str | None = None,
    trim: str = "event",
    unproven: Sequence[Mapping[str, str]] = (),
) -> Sheet:
    """The sheet of a garage's records (lists by plural kind). `car`: id, needed when there are several. `unproven`: the
    records whose author nothing proves, `{id, sender, author}`.

    Keys: car, trim, mass_unit, currency, standing, stages, jobs, basis, lessons, unweighed, loose_ends, weigh_ins,
    spent, warnings, unproven; see the functions below for each.
    """
    garage = read_garage({**records, **({"car": car} if car else {}), "trim": trim})
    known = masses(garage)
    writer = _Writer(records, garage, known, ledger(garage, known), standing(garage, known))
    return {**writer.sheet(), "unproven": writer.unproven(unproven)}


class _Writer:
    """One garage with its ledger and standing at hand."""

    def __init__(
        self, records: Mapping[str, Any], garage: Garage, known: Masses, book: Ledger, stand: Standing
    ) -> None:
        self.records, self.garage, self.known, self.book, self.stand = records, garage, known, book, stand
        own: dict[str, Any] = next(iter(records.get("garages", [])), {})
        self.raw = {record["id"]: record for kind in KINDS for record in records.get(f"{kind}s", [])}
        self.photos = PhotosAt(records)
        self.unit: str = own.get("mass_unit", "kg")
        self.currency: str = own.get("currency", "")

    def sheet(self) -> Sheet:
        return {
            "car": self.garage.car.name if self.garage.car else None,
            "trim": self.garage.trim,
            "mass_unit": self.unit,
            "currency": self.currency,
            "standing": self.standing(),
            "stages": [self.stage(each.stage, each.states) for each in self.book.by_stage if _any_jobs(each.states)],
            "jobs": [self.job(self.garage.jobs[net.job], net) for net in self.jobs_in_order()],
            "basis": self.book.shares,
            "lessons": self.lessons(),
            "unweighed": [self.name(part) for part in self.book.unweighed],
            "loose_ends": self.loose_ends(),
            "weigh_ins": self.weigh_ins(),
            "spent": self.effort(Total(self.book.now.mass, self.book.spent)),
            "brought": self.money(self.book.brought.money),
            "warnings": self.warnings((*self.book.warnings, *self.stand.warnings)),
        }

    def mass(self, item: Uncertain | None) -> Number | None:
        return None if item is None else number(item, "mass", self.unit)

    def guard(self, kilograms: float) -> Number:
        return {"value": kilograms, "unit": "kg", "u": 0.0, "shown": show_guard(kilograms, self.unit)}

    def chance(self, probability: float) -> Number:
        return {"value": probability, "unit": "1", "u": 0.0, "shown": show_chance(probability)}

    def name(self, record: str | None) -> str:
        """What a person calls the record, or its id."""
        found = self.raw.get(record or "", {})
        if record in self.garage.weigh_ins:
            return f"the weigh-in of {self.day(str(record))}"
        return str(found.get("name", record))

    def standing(self) -> Sheet:
        """Weight now, minimum, margin and in hand, each a number or None, with their plain sentences."""
        now, official, gap = self.stand, self.stand.official, self.stand.gap
        reason = now.reasons.get("weight")
        return {
            "weight": self.mass(now.weight),
            "reason": self.told(reason) if reason else None,
            "removed": self.mass(now.removed),
            "minimum": self.mass(None if now.minimum is None else Uncertain(now.minimum)),
            "minimum_typed": self.minimum(),
            "class": self.name(now.condition.class_sheet) if now.condition.class_sheet else None,
            "condition": self.condition(),
            "margin": self.mass(now.margin),
            "margin_sentence": margin_sentence(now, self.unit).text,
            "in_hand_sentence": in_hand_sentence(official, self.unit).text if official else None,
            "in_hand": self.guard(official.in_hand) if official else None,
            "chance_under": self.chance(official.chance_under) if official else None,
            **beside_weight(now, self.unit, self.day, self.name),
            "gap_sentence": gap_sentence(gap, self.unit).text if gap and gap.significant else None,
            "gap_between": [self.name(gap.first), self.name(gap.second)] if gap and gap.significant else None,
            "rests_on": self.name(now.since.weigh_in) if now.since else None,
            "since": self.since(),
            "from_start": self.from_start(),
            "foretold": score.text if (score := score_sentence(now.history)) else None,
        }

    def day(self, weigh_in: str) -> str:
        return str(self.raw.get(weigh_in, {}).get("at", "an unknown day"))[:10]

    def from_start(self) -> Sheet | None:
        """The lines from the car before any job to the weight now, which they come to; None where that cannot be."""
        found = from_start(self.garage, self.known, self.stand)
        return lines_from_start(found, self.book, self.stand, self.unit, self.name) if found else None

    def minimum(self) -> str | None:
        """The minimum in the class's own unit when it stands alone, else as computed with its adders."""
        sheet = self.garage.class_sheets.get(self.stand.condition.class_sheet or "")
        if sheet is None or sheet.minimum is None or self.stand.minimum is None:
            return None
        return sheet.minimum.reads if sheet.adders is None else show_mass(self.stand.minimum, self.unit)

    def condition(self) -> str:
        """How the class weighs, as words."""
        condition = self.stand.condition
        driver = f"with {self.name(condition.lightest)}" if condition.lightest else f"driver {condition.driver}"
        fuel = {"as_it_is": "fuel as it is", "stated": "fuel as the class says"}.get(condition.fuel)
        return f"{driver}, {fuel or f'tank {condition.fuel}'}"

    def since(self) -> list[str]:
        since = self.stand.since
        if since is None:
            return []
        return [self.name(job) for job in since.put_in] + [f"{self.name(job)} (undone)" for job in since.taken_out]

    def stage(self, stage: str | None, states: Mapping[str, Total]) -> Sheet:
        """Off, on and net of a stage's jobs by state, with hours and money; states without a job are left out.

        `as_read` of the net: the plain sum of the readings as text, where there is one on paper."""
        totals = {state: self.total(total) for state, total in states.items() if total.effort.jobs}
        return {"stage": self.name(stage) if stage else None, "states": totals}

    def total(self, total: Total) -> Sheet:
        mass = total.mass
        return {
            "off": self.mass(mass.off), "on": self.mass(mass.on), "net": self.mass(mass.net), **self.effort(total),
            "as_read": jobs_as_read(self.garage, self.book, total.effort.jobs), "jobs": len(total.effort.jobs),
        }  # fmt: skip

    def effort(self, total: Total) -> dict[str, Sheet]:
        return {
            "hours": {"value": float(total.effort.hours), "unit": "h", "shown": show_hours(total.effort.hours)},
            "money": self.money(total.effort.money),
        }

    def money(self, amount: Fraction) -> Sheet:
        return {"value": float(amount), "unit": self.currency, "shown": show_money(amount, self.currency)}

    def jobs_in_order(self) -> list[JobNet]:
        """By stage; what is in the car first, in order of fitting, then by state."""
        stages = [each.stage for each in self.book.by_stage]
        fitting = {job: place for place, job in enumerate(self.book.in_car)}

        def place(net: JobNet) -> tuple[int, int, int, str]:
            return stages.index(net.stage), STATES.index(net.state), fitting.get(net.job, len(fitting)), net.job

        return sorted(self.book.jobs.values(), key=place)

    def job(self, job: Job, net: JobNet) -> Sheet:
        """One job with its net and its parts, and their photos with its own."""
        photos = [*self.photos(job.id), *(file for line in net.lines for file in self.photos(line.part))]
        return {
            "job": job.name, "stage": self.name(net.stage) if net.stage else None, "state": net.state, "trim": net.trim,
            "ruling": job.ruling, "clause": self.raw[job.id].get("clause"), "fitted_on": job.fitted_on,
            **self.total(net.total), "parts": [self.part(line) for line in net.lines],
            "photos": list(dict.fromkeys(photos)),
        }  # fmt: skip

    def part(self, line: Line) -> Sheet:
        part = self.garage.parts[line.part]
        return {
            "part": part.name, "way": line.way, "count": line.count, "zone": part.zone,
            "mass": self.mass(line.mass), "basis": line.basis, "readings": self.readings(line.part),
            "photos": self.photos(line.part),
        }  # fmt: skip

    def readings(self, part: str) -> list[str]:
        """What the scales showed of a part, as typed; the looks of one weighing together: "97.4 kg, 81.2 kg"."""
        looks = (self.looks(each, PART_LOOKS) for each in self.garage.weighings_of.get(part, ()))
        return [", ".join(each.values()) for each in looks]

    def looks(self, record: Weighing | WeighIn, names: Sequence[str]) -> dict[str, str]:
        """Each look as typed, with every reading of it: "12.30 kg (again 12.36 kg, 13.4 kg left out)"."""
        read = {name: readings(self.garage, record, name) for name in names}
        texts = {
            name: [f"{self.raw[each.of][name]}{' left out' if each.left_out else ''}" for each in all_]
            for name, all_ in read.items()
            if all_
        }
        return {
            name: first + (f" (again {', '.join(again)})" if again else "") for name, (first, *again) in texts.items()
        }

    def lessons(self) -> list[Sheet]:
        """What guesses and quotes have run off by, by basis: `bias` of ln(claim ÷ mass), and it in a sentence."""
        return [
            {**{name: getattr(each, name) for name in ("basis", "parts", "bias", "bias_u", "spread")},
             "sentence": lesson_sentence(each).text}
            for each in self.known.lessons.values()
        ]  # fmt: skip

    def loose_ends(self) -> list[dict[str, str]]:
        """Those of fitted jobs that are still open."""
        ends = [end for end in self.garage.loose_ends.values() if not end.closed]
        fitted = [end for end in ends if self.book.jobs[end.job].state == "fitted"]
        return [{"job": self.name(end.job), "text": str(end.text)} for end in fitted]

    def weigh_ins(self) -> list[Sheet]:
        return [
            {
                "at": past.at, "trim": past.trim, "official": past.official, "total": self.mass(past.total),
                "weight": self.mass(past.weight), "reason": self.told(past.reason) if past.reason else None,
                "foretold": foretold_sentence(past.foretold, self.unit).text if past.foretold else None,
                "readings": self.read_of_car(self.garage.weigh_ins[past.weigh_in]),
                "repeated": past.weigh_in in self.garage.repeats_of,
                "photos": self.photos(past.weigh_in),
            }
            for past in self.stand.history
        ]  # fmt: skip

    def read_of_car(self, record: WeighIn) -> list[str]:
        """Every reading of the whole car as typed: "Left front 251.3 kg"."""
        looks = self.looks(record, LAYOUTS[record.layout])
        return [f"{KINDS['weigh_in'].fields[name].label} {text}" for name, text in looks.items()]

    def unproven(self, found: Sequence[Mapping[str, str]]) -> list[str]:
        """Who sent what under another's name, for those who have to rely on it."""
        return [f"{self.called(each['id'])}: {describe('unproven', each)['sentence']}" for each in found]

    def called(self, record: str) -> str:
        """The record's name, or its kind and the name of what it is about."""
        found = self.raw.get(record, {})
        if "name" in found or record in self.garage.weigh_ins:
            return self.name(record)
        kind = next((kind for kind in KINDS if found in self.records.get(f"{kind}s", [])), "record")
        about = next((found[key] for key in ("of", "scale", "part", "sheet", "job") if key in found), None)
        return f"a {kind.replace('_', ' ')}{f' of {self.name(about)}' if about else ''}"

    def warnings(self, warnings: Iterable[Warned]) -> list[str]:
        """Each said once, with the name of what it is about. What is unweighed has a place of its own."""
        said = (self.told(warning) for warning in warnings if warning["code"] != "unweighed")
        return list(dict.fromkeys(said))

    def told(self, warning: Warned) -> str:
        sentence = str(describe(warning["code"], warning["data"])["sentence"])
        about = [self.name(each) or "scale without a name" for each in _records_in(warning["data"])]
        return f"{', '.join(about)}: {sentence}" if about else sentence


def _any_jobs(states: Mapping[str, Total]) -> bool:
    return any(total.effort.jobs for total in states.values())


def _records_in(data: Mapping[str, Any]) -> list[str]:
    """The ids of the records a warning is about."""
    single = [data.get(key) for key in ("part", "scale", "weigh_in", "job", "driver", "id")]
    return [*(name for name in single if isinstance(name, str)), *data.get("parts", [])]
