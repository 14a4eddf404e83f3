"""Plant counts: what must hold whatever was counted, and an estimate that must not come out."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.compute import plant_count, waiting
from generator.units import convert

CELLS = st.integers(min_value=1, max_value=10_000)
SHARE = st.floats(min_value=0, max_value=1)
SPACING = st.floats(min_value=4, max_value=60)
PLANTS = st.floats(min_value=0.01, max_value=50)


def lower(cells_with_plant: float, cells: float) -> float:
    frequency = plant_count.frequency_fraction(cells_with_plant, cells)
    careful = plant_count.careful_plants_per_sq_m(frequency)
    one_each = plant_count.one_in_a_cell_plants_per_sq_m(cells_with_plant, cells)
    return plant_count.lower_plants_per_sq_m(careful, one_each)


def test_the_floor_is_no_estimate_by_chance() -> None:
    """By chance alone 70% of cells would stand for -ln(0.3) / 0.0225 = 53.5 plants: not ours."""
    by_chance = -math.log(1 - 0.70) / plant_count.CELL_SQ_M
    assert by_chance == pytest.approx(53.5, abs=0.05)
    assert lower(70, 100) == pytest.approx(28.0)
    assert plant_count.one_in_a_cell_plants_per_sq_m(70, 100) < by_chance / 1.5


@given(cells=CELLS, share=SHARE)
def test_the_careful_conversion_is_always_the_lower_by_a_tenth(cells: int, share: float) -> None:
    """0.4 for each percent is 40 times the share, one plant a cell is 1 / 0.0225 = 44.4 times."""
    with_plant = cells * share
    frequency = plant_count.frequency_fraction(with_plant, cells)
    assert lower(with_plant, cells) == pytest.approx(40 * frequency)
    one_each = plant_count.one_in_a_cell_plants_per_sq_m(with_plant, cells)
    assert one_each == pytest.approx(lower(with_plant, cells) / 0.9)


@given(placements=st.integers(min_value=1, max_value=400), share=SHARE)
def test_twice_the_frames_with_twice_the_plants_say_the_same(placements: int, share: float) -> None:
    cells = plant_count.cells_looked_at_count(placements)
    twice = plant_count.cells_looked_at_count(2 * placements)
    assert twice == 2 * cells
    assert lower(2 * share * cells, twice) == pytest.approx(lower(share * cells, cells))


@given(one=SHARE, other=SHARE)
def test_more_cells_with_a_plant_never_mean_fewer_plants(one: float, other: float) -> None:
    fewer, more = sorted((one, other))
    assert lower(fewer * 100, 100) <= lower(more * 100, 100)


@given(plants=PLANTS, spacing=SPACING)
def test_a_row_count_is_the_same_by_the_metre_the_foot_and_the_acre(
    plants: float, spacing: float
) -> None:
    per_sq_m = plant_count.row_plants_per_sq_m(plants, spacing)
    per_ac = plant_count.row_plants_per_ac(plants, spacing)
    per_sq_ft = plant_count.plants_per_sq_ft(per_sq_m)
    assert convert(per_ac, "plants_per_ac", "plants_per_sq_ft") == pytest.approx(per_sq_ft)
    assert convert(per_sq_m, "plants_per_sq_m", "plants_per_sq_ft") == pytest.approx(per_sq_ft)
    half = plant_count.row_plants_per_ac(plants, 2 * spacing)
    assert half == pytest.approx(per_ac / 2)


@given(ground_ac=st.floats(min_value=0.01, max_value=1e3))
def test_places_to_count_at_are_whole_and_grow_with_the_ground(ground_ac: float) -> None:
    wanted = plant_count.placements_wanted_count(ground_ac)
    assert wanted == int(wanted) >= 1
    assert 4 * ground_ac - 1e-6 <= wanted < 4 * ground_ac + 1
    assert 2 * wanted - 1 <= plant_count.placements_wanted_count(2 * ground_ac) <= 2 * wanted


@given(start=st.floats(min_value=0, max_value=1e4), length=st.floats(min_value=1, max_value=1e4))
def test_stretches_end_to_end_add_up(start: float, length: float) -> None:
    middle, end = start + length, start + 3 * length
    parts = plant_count.stretch_length_ft(middle, start) + plant_count.stretch_length_ft(
        end, middle
    )
    assert parts == pytest.approx(plant_count.stretch_length_ft(end, start))


@given(asked=st.integers(min_value=0, max_value=900), there=st.integers(min_value=0, max_value=900))
def test_a_sowing_that_waits_what_is_short_is_no_longer_short(asked: int, there: int) -> None:
    short = waiting.days_short_days(asked, there)
    assert waiting.days_short_days(asked, there + short) == 0
