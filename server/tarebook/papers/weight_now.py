"""What the build sheet says around the weight now: what stands beside its ±, and the lines that lead to it."""

from collections.abc import Callable
from typing import Any

from tarebook.core.ledger.ledger import Ledger
from tarebook.core.numbers.shown import number, show_mass
from tarebook.core.numbers.uncertain import Uncertain, expanded
from tarebook.core.standing.from_start import FromStart, adding_up
from tarebook.core.standing.sentences import either_sentence, one_only_sentence, scatter_sentence, since_sentence
from tarebook.core.standing.standing import Standing

Named = Callable[[str | None], str]


def beside_weight(now: Standing, unit: str, day: Callable[[str], str], name: Named) -> dict[str, str | None]:
    """On what the ± rests; both answers where there are two; that one weigh-in proves little; readings that scatter.

    `day`: of a weigh-in, `name`: of a record, in words.
    """
    fused = now.fused
    if fused is None:
        return dict.fromkeys(("since_sentence", "either_sentence", "one_only_sentence", "scatter_sentence"))
    last = day(fused.counted[-1].weigh_in)
    scattered = fused.scatter if len(fused.answers) == 1 else None  # else the two tell already why readings differ
    said = {
        "since_sentence": since_sentence(last),
        "either_sentence": either_sentence(fused, unit, last),
        "one_only_sentence": one_only_sentence(fused),
        "scatter_sentence": scattered and scatter_sentence(scattered, name(scattered.scale), unit),
    }
    return {key: each.text if each else None for key, each in said.items()}


def lines_from_start(found: FromStart, book: Ledger, now: Standing, unit: str, name: Named) -> dict[str, Any]:
    """Each line as a number, the jobs by stage too; what is shown of them comes to what is shown of the weight."""
    fitted = [(each.stage, each.states["fitted"].mass) for each in book.by_stage]
    stages = [(stage, mass.net) for stage, mass in fitted if mass.lines]
    beside = [found.start, found.fuel, found.driver, found.ballast, *(net for _, net in stages)]
    corrected = adding_up(found.corrected, beside, now.weight or Uncertain(0.0), unit)
    shown = show_mass(corrected.value, unit, expanded(corrected))
    lines = ("start", "jobs", "fuel", "driver", "ballast")
    return {
        **{line: number(getattr(found, line), "mass", unit) for line in lines},
        "stages": [{"stage": stage and name(stage), "net": number(net, "mass", unit)} for stage, net in stages],
        "corrected": {**number(found.corrected, "mass", unit), "shown": shown},
    }
