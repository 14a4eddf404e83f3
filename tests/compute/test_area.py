"""Ground and courses: what must hold whatever the numbers, and a misprint that must not pass."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute import area
from generator.units import convert

LENGTHS = st.floats(min_value=1, max_value=1e4)
AREAS = st.floats(min_value=0.01, max_value=1e3)
SHARES = st.floats(min_value=0, max_value=3)


@given(part=st.floats(min_value=1e-4, max_value=1), width_in=LENGTHS)
def test_a_course_covers_its_part_of_an_acre(part: float, width_in: float) -> None:
    course = area.course_length_ft(part, width_in)
    assert area.strip_area_ac(course, convert(width_in, "in", "ft")) == pytest.approx(part)
    assert area.course_length_ft(part, 2 * width_in) == pytest.approx(course / 2)


def test_a_misprinted_row_length_is_not_reached() -> None:
    """One stand-count page prints 36 ft 2 in for 20-in rows (uw_stand_counts): 10 ft too much."""
    course_in = convert(area.course_length_ft(1 / 1000, 20), "ft", "in")
    assert abs(course_in - (26 * 12 + 2)) < 0.5
    assert abs(course_in - (36 * 12 + 2)) > 100


@given(length_ft=LENGTHS, width_ft=LENGTHS, error_ft=st.floats(min_value=0, max_value=0.5))
def test_the_mean_width_gives_the_ground_an_error_adds_all_around(
    length_ft: float, width_ft: float, error_ft: float
) -> None:
    """An edge moved out by an error adds the way around times the error, corners aside."""
    ground_ac = area.strip_area_ac(length_ft, width_ft)
    around_ft = 2 * (length_ft + width_ft)
    width = area.mean_width_ft(ground_ac, around_ft)
    share = area.outline_error_fraction(error_ft, width)
    added_ac = area.most_ground_ac(ground_ac, share) - ground_ac
    assert added_ac == pytest.approx(area.strip_area_ac(around_ft, error_ft), rel=1e-9, abs=1e-9)


@given(length_ft=LENGTHS, width_ft=LENGTHS)
def test_the_mean_width_is_below_the_width_and_near_it_in_a_long_strip(
    length_ft: float, width_ft: float
) -> None:
    width = area.mean_width_ft(area.strip_area_ac(length_ft, width_ft), 2 * (length_ft + width_ft))
    assert width <= min(length_ft, width_ft) * (1 + 1e-12)
    long = area.mean_width_ft(area.strip_area_ac(1e7, width_ft), 2 * (1e7 + width_ft))
    assert long == pytest.approx(width_ft, rel=2e-3)


@given(ground_ac=AREAS, share=SHARES)
def test_the_ground_lies_between_least_and_most(ground_ac: float, share: float) -> None:
    least, most = area.least_ground_ac(ground_ac, share), area.most_ground_ac(ground_ac, share)
    assert 0 <= least <= ground_ac <= most
    if share <= 1:
        assert least + most == pytest.approx(2 * ground_ac)


@given(one_ac=AREAS, other_ac=AREAS)
def test_grounds_are_apart_whichever_is_larger(one_ac: float, other_ac: float) -> None:
    apart = area.grounds_apart_fraction(one_ac, other_ac)
    assert apart * one_ac == pytest.approx(area.grounds_apart_fraction(other_ac, one_ac) * other_ac)
    assert area.grounds_apart_fraction(one_ac, one_ac) == 0
