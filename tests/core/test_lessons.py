"""What a garage's guesses have run off by: against Bayes's rule by quadrature, and in the cases people make."""

from collections.abc import Sequence
from itertools import product
from math import exp, log, sqrt
from random import Random
from typing import Any

import numpy
import pytest
from scipy import stats

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain, expanded, total
from tarebook.core.weighing.claims import CLAIM_WITHIN
from tarebook.core.weighing.lesson_words import lesson_sentence
from tarebook.core.weighing.lessons import learned
from tarebook.core.weighing.weighing import Masses, masses
from tests.core.guessers import guesser

S = 0.2 / sqrt(3.0)  # of a guess, as assumed
HIGH = (1.3, 1.1, 1.2)


def garage(claims: Sequence[str], **more: Any) -> dict[str, Any]:
    """Parts p0, p1, … claimed so, each weighed at one kilogram; the part q is still guessed at ten."""
    parts = [{"id": f"p{n}", "claim": claim, "claim_basis": "guessed"} for n, claim in enumerate(claims)]
    guess = {"id": "q", "claim": "10 kg", "claim_basis": "guessed"}
    shown = {"method": "direct", "shown": "1 kg", "scale": "k"}
    return {
        "scales": [{"id": "k", "kind": "kitchen", "division": "1 g"}],
        "parts": [*parts, guess],
        "weighings": [{"id": f"w{n}", "of": f"p{n}", **shown} for n in range(len(claims))],
        **more,
    }


def known(given: dict[str, Any]) -> Masses:
    return masses(read_garage(given))


def of(given: dict[str, Any], part: str = "q") -> Uncertain:
    found = known(given).of[part].mass
    assert found is not None
    return found


def high(*factors: float) -> dict[str, Any]:
    return garage([f"{factor} kg" for factor in factors])


def parts_in(given: dict[str, Any], basis: str = "guessed") -> int:
    lesson = known(given).lessons.get(basis)
    return lesson.parts if lesson else 0


@pytest.mark.parametrize(("basis", "count"), list(product(("guessed", "quoted"), (3, 7, 30))))
def test_the_closed_form_is_bayes_rule_by_quadrature(basis: str, count: int):
    """Prior and likelihood are scipy's densities, on a grid; nothing of the closed form is used."""
    assumed = CLAIM_WITHIN[basis] / sqrt(3.0)
    random = Random(count)
    off = [random.gauss(0.12, 0.8 * assumed) for _ in range(count)]
    found = learned(basis, off)
    assert found is not None
    assert found.parts == count
    bias = numpy.linspace(-0.6, 0.8, 1501)[:, None]
    variance = numpy.exp(numpy.linspace(log(assumed**2 / 60), log(assumed**2 * 400), 1501))[None, :]
    # Inverse gamma with the mean s², of 4 + 2 degrees of freedom; a bias that tells as much as one part.
    density = stats.invgamma.logpdf(variance, 3.0, scale=2.0 * assumed**2) + numpy.log(variance)
    density = density + stats.norm.logpdf(bias, 0.0, numpy.sqrt(variance))
    for x in off:
        density = density + stats.norm.logpdf(x, bias, numpy.sqrt(variance))
    weight = numpy.exp(density - density.max())
    weight = weight / weight.sum()
    mean = float((weight * bias).sum())
    assert found.bias == pytest.approx(mean, abs=1e-5)
    assert found.bias_u == pytest.approx(float(numpy.sqrt((weight * (bias - mean) ** 2).sum())), rel=1e-3)
    assert found.spread == pytest.approx(float(numpy.sqrt((weight * variance).sum())), rel=1e-3)


def test_a_lesson_worked_by_hand():
    """x = 0.1, 0.2, 0.3: x̄ = 0.2, Σ(x − x̄)² = 0.02; m = 0.6 ÷ 4; v = (4·0.04 ÷ 3 + 0.02 + 0.75·0.04) ÷ 7."""
    found = learned("guessed", [0.1, 0.2, 0.3])
    assert found is not None
    variance = (0.16 / 3 + 0.02 + 0.03) / 7
    assert found.bias == pytest.approx(0.15, abs=1e-9)
    assert found.spread == pytest.approx(sqrt(variance), abs=1e-9)
    assert found.bias_u == pytest.approx(sqrt(variance) / 2, abs=1e-9)
    assert found.factor == pytest.approx(exp(-0.15), abs=1e-9)


def test_what_runs_high_is_taken_out_of_what_is_still_guessed():
    lesson = known(high(*HIGH)).lessons["guessed"]
    found = of(high(*HIGH))
    assert lesson.bias == pytest.approx(sum(map(log, HIGH)) / 4, abs=1e-3)
    assert found.value == pytest.approx(10 * lesson.factor)
    assert found.value < 9
    assert found.sources == {
        "claim:q": pytest.approx(lesson.spread * found.value),
        "guesses": pytest.approx(lesson.bias_u * found.value),
    }


def test_what_runs_low_is_added():
    assert of(high(0.7, 0.8, 0.9)).value > 11


def test_with_fewer_than_three_a_guess_is_exactly_as_assumed():
    assert known(high(*HIGH[:2])).lessons == {}
    assert of(high(*HIGH[:2])) == Uncertain(10.0, {"claim:q": 0.2 * 10.0 / sqrt(3.0), "guesses": 0.5})


def test_switched_off_every_mass_is_as_it_was_without_lessons():
    off = known({**high(*HIGH), "garages": [{"id": "g", "claims": "typed"}]})
    on = known({**high(*HIGH), "garages": [{"id": "g", "claims": "learned"}]})
    assert on == known({**high(*HIGH), "garages": [{"id": "g", "name": "Ours"}]}) == known(high(*HIGH))
    assert off.lessons == {}
    assert off.of["q"].mass == of(high(*HIGH[:2]))
    assert {name: each for name, each in off.of.items() if name != "q"} == {
        name: each for name, each in on.of.items() if name != "q"
    }


def test_guesses_and_quotes_teach_apart_and_what_is_worked_out_teaches_nothing():
    given = high(*HIGH)
    for basis in ("quoted", "worked_out"):
        bases = [{**part, "claim_basis": basis} for part in given["parts"][:3]]
        still = [{"id": each, "claim": "10 kg", "claim_basis": each} for each in ("guessed", "quoted", "worked_out")]
        found = known({**given, "parts": [*bases, *still]})
        assert list(found.lessons) == [basis] * (basis == "quoted")
        changed = [each for each in ("guessed", "quoted", "worked_out") if found.of[each].mass.value != 10.0]
        assert changed == list(found.lessons)


def test_quotes_that_ran_off_together_share_one_doubt():
    given = high(*HIGH)
    quoted = [{**part, "claim_basis": "quoted"} for part in given["parts"]]
    sources = of({**given, "parts": quoted}).sources
    assert set(sources) == {"claim:q", "quotes"}


def test_ten_guesses_err_together():
    given = high(*HIGH)
    ten = [{"id": f"q{n}", "claim": "10 kg"} for n in range(10)]
    found = known({**given, "parts": [*given["parts"], *ten]})
    whole = total([each for n in range(10) if (each := found.of[f"q{n}"].mass)])
    lesson = found.lessons["guessed"]
    assert whole.sources["guesses"] == pytest.approx(10 * 10 * lesson.factor * lesson.bias_u)
    assert whole.u == pytest.approx(100 * lesson.factor * sqrt(lesson.bias_u**2 + lesson.spread**2 / 10))


def test_a_part_guessed_at_nothing_teaches_nothing_and_has_no_mass():
    given = high(*HIGH, 0)
    given["parts"][-1]["claim"] = "0 kg"
    found = known(given)
    assert found.lessons == known(high(*HIGH)).lessons
    assert (found.of["q"].mass, found.of["q"].basis) == (None, None)


def test_a_claim_without_a_basis_teaches_as_a_guess():
    given = high(*HIGH)
    del given["parts"][0]["claim_basis"]
    assert known(given) == known(high(*HIGH))


def test_a_part_weighed_again_teaches_once():
    given = high(*HIGH)
    again = {**given["weighings"][0], "id": "w9", "shown": "1.002 kg"}
    assert parts_in({**given, "weighings": [*given["weighings"], again]}) == 3
    assert parts_in({**high(*HIGH[:2]), "weighings": [*high(*HIGH[:2])["weighings"], again]}) == 0


def test_of_several_pieces_one_is_claimed_and_one_was_weighed():
    given = high(*HIGH)
    given["parts"][0]["count"] = 4
    given["weighings"][0] |= {"method": "batch", "pieces": 4, "shown": "4 kg"}
    found = known(given).lessons["guessed"]
    assert found.parts == 3
    assert found.bias == pytest.approx(known(high(*HIGH)).lessons["guessed"].bias, abs=1e-9)


@pytest.mark.parametrize("kind", ["parts", "weighings"])
def test_what_was_deleted_teaches_nothing(kind: str):
    given = high(*HIGH)
    given[kind][0]["deleted"] = True
    assert parts_in(given) == 0


def test_a_claim_with_its_own_half_width_neither_teaches_nor_changes():
    given = high(*HIGH)
    given["parts"][-1]["claim_within"] = "0.3 kg"
    assert of(given) == Uncertain(10.0, {"claim:q": 0.3 / sqrt(3.0), "guesses": 0.5})
    given["parts"][0]["claim_within"] = "0.3 kg"
    assert parts_in(given) == 0


@pytest.mark.parametrize("wild", [10, 0.1, 2.205, 28.35])
def test_a_guess_off_by_a_unit_changes_nothing_for_the_others(wild: float):
    assert of(high(*HIGH, 1.15, wild)) == of(high(*HIGH, 1.15))
    assert of(high(*HIGH, wild)) == of(high(*HIGH))


def test_how_far_off_a_slip_is_follows_how_wide_the_guesses_scatter():
    """Median 0.05, its median deviation 0.15: three robust deviations reach 0.667 to either side."""
    scattered = [-0.2, -0.1, 0.0, 0.1, 0.2]
    counted = [found.parts for x in (0.70, 0.73) if (found := learned("guessed", [*scattered, x]))]
    assert counted == [6, 5]


def test_a_weighing_rougher_than_a_guess_teaches_nothing():
    given = high(*HIGH)
    given["scales"][0]["division"] = "0.5 kg"
    assert parts_in(given) == 0


def test_drivers_are_no_parts():
    drivers = [{"id": f"d{n}", "claim": "90 kg"} for n in range(4)]
    weighings = [{"id": f"v{n}", "of": f"d{n}", "method": "direct", "shown": "75 kg"} for n in range(3)]
    found = known({"drivers": drivers, "weighings": weighings})
    assert found.lessons == {}
    taught = {**high(*HIGH), "drivers": drivers}
    assert of(taught, "d3") == of({"drivers": drivers}, "d3")


def test_the_sentence_says_how_far_from_how_many_and_that_it_is_out():
    assert lesson_sentence(known(high(*HIGH)).lessons["guessed"]).text == (
        "Your guesses run 14 ± 13 % high, from 3 parts: taken out."
    )
    low = known(high(0.7, 0.8, 0.9)).lessons["guessed"]
    assert lesson_sentence(low).code == "guessed_low"


def test_the_sum_of_eight_guesses_is_covered_once_twelve_were_weighed():
    """200 garages whose guesser is 20 % high ± 15 %: how often the truth lies within the 95 % of the eight's sum."""
    random = Random(20_261_129)
    hits, widths = {True: 0, False: 0}, {True: 0.0, False: 0.0}
    for _ in range(200):
        made = guesser(random, weighed=12, guessed=8, high=1.2, spread=0.15)
        truth = sum(made.truth.values())
        for learning in (True, False):
            own = [{"id": "g", "claims": "learned" if learning else "typed"}]
            found = known({**made.given, "garages": own})
            whole = total([each for part in made.truth if (each := found.of[part].mass)])
            hits[learning] += abs(whole.value - truth) <= expanded(whole)
            widths[learning] += expanded(whole) / truth / 200
    for learning, said in ((True, "learning"), (False, "as typed")):
        print(f"{said}: {hits[learning] / 2:.1f} % of sums covered, ± {widths[learning]:.1%} on average")
    assert 180 <= hits[True] <= 198
    assert hits[False] < 100
