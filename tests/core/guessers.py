"""Garages of one guesser whose true masses are known: some parts weighed since, the others still as guessed."""

from dataclasses import dataclass
from math import exp
from random import Random
from typing import Any


@dataclass(frozen=True)
class Guesser:
    """`given`: the garage in the core's dialect. `truth`: kg of the parts still guessed, by id."""

    given: dict[str, Any]
    truth: dict[str, float]


def guesser(random: Random, weighed: int, guessed: int, high: float, spread: float, basis: str = "guessed") -> Guesser:
    """Guesses of `high` times the true mass, with this standard deviation of their logarithm; scales of ten grams."""
    parts, weighings, truth = [], [], {}
    for n in range(weighed + guessed):
        mass = random.uniform(0.5, 8.0)
        claim = mass * high * exp(random.gauss(0.0, spread))
        parts.append({"id": f"p{n}", "claim": f"{claim:.3f} kg", "claim_basis": basis})
        if n < weighed:
            shown = f"{round(mass, 2):.2f} kg"
            weighings.append({"id": f"w{n}", "of": f"p{n}", "method": "direct", "scale": "b", "shown": shown})
        else:
            truth[f"p{n}"] = mass
    scales = [{"id": "b", "kind": "bench", "division": "10 g"}]
    return Guesser({"scales": scales, "parts": parts, "weighings": weighings}, truth)
