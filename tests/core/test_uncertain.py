"""Uncertain values obey the law of propagation, add up in any order, and round once."""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.core.numbers import uncertain
from tarebook.core.numbers.uncertain import Uncertain

numbers = st.integers(-(10**9), 10**9).map(lambda thousandths: thousandths / 1000)
wild = st.floats(-1e300, 1e300)
names = st.sampled_from(["cal:s1", "cal:s2", "known:a", "round:w1", "round:w2"])


def items(values=numbers):
    return st.builds(Uncertain, values, st.dictionaries(names, values, max_size=5))


@given(st.lists(items(), max_size=12), st.randoms(use_true_random=False))
def test_the_order_of_the_records_never_changes_a_digit(listed, random):
    shuffled = random.sample(listed, len(listed))
    assert uncertain.total(shuffled) == uncertain.total(listed)
    assert uncertain.total(shuffled).u == uncertain.total(listed).u


@given(st.lists(wild, max_size=12))
def test_a_total_is_the_exact_sum_rounded_once(values):
    try:
        rounded = float(sum(map(Fraction, values), Fraction(0)))
    except OverflowError:
        return
    assert uncertain.total([Uncertain(value, {"a": value}) for value in values]).value == rounded


@given(items())
def test_a_thing_less_itself_is_nothing_for_certain(item):
    assert uncertain.subtract(item, item) == Uncertain(0.0, {})


@given(items(), items())
def test_the_variance_of_a_sum_counts_what_is_shared_twice(a, b):
    wanted = a.u**2 + b.u**2 + 2 * uncertain.covariance(a, b)
    assert uncertain.add(a, b).u ** 2 == pytest.approx(wanted, rel=1e-9, abs=1e-9 * (a.u**2 + b.u**2))


@given(items(), items())
def test_two_values_share_at_most_what_they_have(a, b):
    assert abs(uncertain.covariance(a, b)) <= a.u * b.u * (1 + 1e-12)


@given(items(), items())
def test_subtracting_is_adding_the_opposite(a, b):
    assert uncertain.subtract(a, b) == uncertain.add(a, uncertain.scale(b, -1.0))


@given(items())
def test_an_item_of_weight_one_is_itself(item):
    kept = {name: part for name, part in item.sources.items() if part}
    assert uncertain.scale(item, 1.0) == Uncertain(item.value, kept)


moderate = st.floats(0.5, 2000)


@pytest.mark.parametrize(
    ("function", "plain"),
    [(uncertain.multiply, lambda a, b: a * b), (uncertain.divide, lambda a, b: a / b)],
)
@given(a=moderate, b=moderate)
def test_a_sensitivity_is_the_numerical_derivative(function, plain, a, b):
    found = function(Uncertain(a, {"a": 1.0}), Uncertain(b, {"b": 1.0})).sources
    step_a, step_b = a * 1e-6, b * 1e-6
    by_a = (plain(a + step_a, b) - plain(a - step_a, b)) / (2 * step_a)
    by_b = (plain(a, b + step_b) - plain(a, b - step_b)) / (2 * step_b)
    assert found == pytest.approx({"a": by_a, "b": by_b}, rel=1e-8)


def test_a_sum_that_is_not_finite_is_refused():
    with pytest.raises(OverflowError):
        uncertain.total([Uncertain(1.7e308), Uncertain(1.7e308)])
    with pytest.raises(OverflowError, match="not a finite number"):
        uncertain.total([Uncertain(math.nan)])


def test_dividing_by_nothing_is_refused():
    with pytest.raises(ZeroDivisionError):
        uncertain.divide(Uncertain(1.0), Uncertain(0.0))


def test_each_item_needs_its_weight():
    with pytest.raises(ValueError):
        uncertain.weighted_sum([Uncertain(1.0)], [1.0, 2.0])
