"""What one scale shows, and several scales show, of one thing."""

from random import Random

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.weighing.weighing import Mass, masses
from tests.core.garages import RANDOMS, garage, shuffled

grams = st.integers(1, 4000)


def weighed(*weighings) -> Mass:
    """One part weighed on a kitchen scale of one gram."""
    scales = [{"id": "k", "kind": "kitchen", "division": "1 g"}]
    listed = [{"id": f"w{n}", "of": "p", "scale": "k", "method": "direct", **one} for n, one in enumerate(weighings)]
    return masses(read_garage({"parts": [{"id": "p"}], "scales": scales, "weighings": listed})).of["p"]


def mass(*weighings) -> Uncertain:
    found = weighed(*weighings).mass
    assert found is not None
    return found


@given(RANDOMS)
def test_the_order_of_the_records_changes_no_digit_of_any_mass(random: Random):
    whole = garage(random)
    assert masses(read_garage(shuffled(random, whole))) == masses(read_garage(whole))


@given(grams, st.integers(1, 1000))
def test_a_piece_of_a_batch_is_known_as_many_times_better_as_there_are_pieces(shown, pieces):
    whole = mass({"shown": f"{shown} g"})
    piece = mass({"shown": f"{shown} g", "method": "batch", "pieces": pieces})
    assert piece.value == pytest.approx(whole.value / pieces, rel=1e-12)
    assert piece.u == pytest.approx(whole.u / pieces, rel=1e-12)


@given(grams, st.integers(1, 100_000))
def test_a_difference_does_not_depend_on_what_stood_on_the_scale_besides(part, person):
    shown = {"shown": f"{person + part} g", "shown_empty": f"{person} g", "method": "difference"}
    alone = mass({**shown, "shown": f"{part} g", "shown_empty": "0 g"})
    both = mass(shown)
    assert both.value == pytest.approx(alone.value, rel=1e-9)
    assert both.u == pytest.approx(alone.u, rel=1e-9)


@given(grams, grams)
def test_a_full_container_and_a_person_with_a_part_are_the_same_sum(full, empty):
    assume(full > empty)
    shown = {"shown": f"{full} g", "shown_empty": f"{empty} g"}
    assert mass({**shown, "method": "container"}) == mass({**shown, "method": "difference"})


@given(grams, grams)
def test_two_ends_add_up_whichever_came_first(near, far):
    ends = {"method": "ends", "shown": f"{near} g", "shown_far": f"{far} g"}
    turned = {"method": "ends", "shown": f"{far} g", "shown_far": f"{near} g"}
    assert mass(ends) == mass(turned)


@given(grams, st.integers(2, 6))
def test_looking_again_at_the_same_reading_tells_nothing(shown, times):
    once = mass({"shown": f"{shown} g"})
    often = weighed(*[{"shown": f"{shown} g"}] * times)
    assert often.mass == once
    assert len(often.weighings) == times


@given(st.lists(grams, min_size=2, max_size=6))
def test_several_readings_of_one_scale_lie_between_the_smallest_and_the_largest(shown):
    found = mass(*[{"shown": f"{each} g"} for each in shown])
    assert min(shown) / 1000 - 1e-12 <= found.value <= max(shown) / 1000 + 1e-12


@given(grams, st.integers(1, 50), st.integers(2, 5))
def test_a_spread_beyond_a_division_widens_only_what_the_readings_do_not_share(shown, spread, times):
    found = weighed(*[{"shown": f"{shown + n * spread} g"} for n in range(times)])
    assert found.mass is not None
    assert found.mass.sources["cal:k"] == pytest.approx(-0.003 * found.mass.value, rel=1e-12)
    assert ("spread:p" in found.mass.sources) == (spread * (times - 1) > 1)
    assert any(warning["code"] == "readings_disagree" for warning in found.warnings) == (spread * (times - 1) > 1)


@given(RANDOMS)
def test_more_weighings_that_agree_never_make_a_mass_less_sure(random: Random):
    whole = {**garage(random), "repeats": []}  # which tell of their scale too
    some = masses(read_garage({**whole, "weighings": whole["weighings"][1:]})).of
    for key, found in masses(read_garage(whole)).of.items():
        before = some[key]
        if found.ratio == before.ratio == 1.0 and before.readings and found.mass and before.mass:
            # Both to first order in the shared errors, which are taken at slightly different means.
            near = abs(found.mass.value / before.mass.value - 1.0)
            assert found.mass.u <= before.mass.u * (1.0 + near + 1e-9)


@given(RANDOMS)
def test_every_mass_names_what_it_was_made_from(random: Random):
    whole = garage(random)
    weighed = {one["id"]: one["of"] for one in whole["weighings"]}
    for key, found in masses(read_garage(whole)).of.items():
        assert {weighed[name] for name in found.weighings} <= {key}
        assert (found.basis == "weighed") == bool(found.weighings)
        assert (found.mass is None) == (found.basis is None)


def test_a_reading_in_one_unit_is_the_same_load_in_another():
    assert mass({"shown": "1203 g"}, {"shown": "1.203 kg"}) == mass({"shown": "1203 g"})
