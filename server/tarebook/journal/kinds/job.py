"""Work on the car: jobs and their stages, the parts they move, the loose ends they leave."""

from dataclasses import replace

from tarebook.journal.kinds.field import NAME, NOTE, Field, Kind, choice, ref

HAZARDS = (
    "airbags and tensioners", "seats and belts", "lifting", "fuel", "battery", "cutting structure", "glass and edges",
    "ballast", "refrigerant", "dust and fibre", "road legality",
)  # fmt: skip

# fmt: off
STAGE = Kind("stage", {
    "car": ref("car"),
    "name": replace(NAME, label="Name of the stage"),
    "rank": Field("integer", "Place in the order", most=10_000),
})

JOB = Kind("job", {
    "car": ref("car"),
    "name": replace(NAME, label="What is done"),
    "state": choice({"idea": "Idea", "chosen": "Chosen", "fitted": "Fitted", "undone": "Undone"}, "State",
        start="idea"),
    "stage": ref("stage", label="Stage", none="Without a stage"),
    "trim": choice({"both": "On the road too", "event": "Only at the event"}, "Trim", start="both"),
    "hours": Field("hours", "Hours"),
    "money": Field("money", "Money", sign="any"),
    "fitted_on": Field("moment", "Fitted on", unit="day"),
    "ruling": choice({
        "allowed": "Allowed", "allowed_if": "Allowed if…", "not_allowed": "Not allowed", "unclear": "Unclear"},
        "What the class says", none="Not looked up"),
    "clause": Field("text", "Clause", core=False),
    "hazards": Field("choices", of={hazard: hazard for hazard in HAZARDS}, most=len(HAZARDS), core=False,
        word="cautions"),
    "not_hazards": Field("choices", of={hazard: hazard for hazard in HAZARDS}, most=len(HAZARDS), core=False,
        word="cautions that do not fit"),
    "not_in": Field("refs", of={"weigh_in": ""}, most=1000, core=False, word="weigh-ins it was not in the car at"),
    "note": replace(NOTE, label="Notes"),
})

JOB_PART = Kind("job_part", {
    "job": ref("job", required=True),
    "part": ref("part", required=True),
    "way": choice({"off": "Comes off", "on": "Goes on"}, "In this job it", required=True, word="off or on"),
    "count": Field("count", most=1000, word="how many"),
}, words=("part of a job", "parts of jobs"))

LOOSE_END = Kind("loose_end", {
    "job": ref("job", required=True),
    "sort": choice({"plug": "Plug", "wire": "Wire", "hole": "Hole", "bolts": "Bolts", "other": "Other"},
        "A loose end", word="kind"),
    "text": Field("text", "What is left behind", most=400, required=True),
    "closed": Field("flag", word="done"),
})
