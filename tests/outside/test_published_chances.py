"""Chances against JCGM 106 and a reference library (sources in `fixtures/outside/chance.json`)."""

import numpy
import pytest
from scipy import special, stats

from tarebook.core.numbers import normal
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.official import OfficialScale, chance_under, in_hand
from tests.outside.published import agrees, entries

CHANCES = entries("chance")
PERFECT = OfficialScale(None, Uncertain(0.0), 0.0, None, "unknown")


def test_the_chance_of_not_being_under_a_lower_limit():
    entry = CHANCES["unc.conf.lower"]
    given = entry["inputs"]
    under = chance_under(Uncertain(given["y"], {"u": given["u"]}), given["TL"], PERFECT)
    assert agrees(1 - under, entry, "p")
    assert agrees(-normal.inverse(under), entry, "z")


def test_the_chance_of_not_being_over_an_upper_limit():
    entry = CHANCES["unc.conf.upper"]
    given = entry["inputs"]
    # Over an upper limit is under a lower one, seen in a mirror.
    over = chance_under(Uncertain(-given["y"], {"u": given["u"]}), -given["TU"], PERFECT)
    assert agrees(1 - over, entry, "p")
    assert normal.cumulative(entry["expected"]["z"]) == pytest.approx(1 - over, rel=1e-12)


@pytest.mark.parametrize("at", range(5))
def test_what_to_keep_in_hand_is_the_printed_number_of_standard_uncertainties(at):
    entry = CHANCES["unc.conf.table"]
    conforming, z = entry["inputs"]["p"][at], entry["expected"]["z"][at]
    guard = in_hand(Uncertain(1e6, {"u": 2000.0}), 990.0, PERFECT, 1 - conforming) / 2000.0
    assert abs(guard - z) <= entry["tolerance"]
    assert guard == pytest.approx(stats.norm.ppf(conforming), rel=1e-6)  # in whole grams of two tons


def test_phi_is_the_library_s_to_1e_12_of_its_value_far_into_the_tails():
    z = numpy.linspace(-37, 9, 4601)
    ours = numpy.array([normal.cumulative(float(at)) for at in z])
    assert numpy.max(abs(ours / stats.norm.cdf(z) - 1)) < 1e-12


def test_the_inverse_of_phi_is_the_library_s_to_1e_12():
    p = numpy.concatenate([10.0 ** -numpy.linspace(0.31, 300, 500), numpy.linspace(0.001, 0.999, 999)])
    ours = numpy.array([normal.inverse(float(at)) for at in p])
    assert numpy.max(abs(ours - stats.norm.ppf(p)) / numpy.maximum(1, abs(ours))) < 1e-12


def test_the_error_function_s_complement_is_the_library_s_to_1e_12():
    x = numpy.linspace(-6, 26, 3201)
    erfc = numpy.array([normal.erfc(float(at)) for at in x])
    assert numpy.max(abs(erfc / special.erfc(x) - 1)) < 1e-12


@pytest.mark.parametrize("p", [0.0, 1.0, -0.1, 1.1, float("nan")])
def test_certainty_has_no_number_of_standard_uncertainties(p):
    with pytest.raises(ValueError, match="between 0 and 1"):
        normal.inverse(p)
