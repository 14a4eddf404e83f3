"""What is usual: every sown species has its range, and what sources print lies inside it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.reference.library import species, values
from generator.reference.usual import Usual, usual, usual_seed
from generator.working import Given, Reference

SOWN = [one.id for one in species().values() if one.kind != "woody_row"]
TEN = 10

# Rates alone, in pounds to an acre, that sources print: the least and the most of them.
PRINTED_RATES = {
    "switchgrass": (3.5, 10),  # Texas, drilled or broadcast; Penn State, warm-season grasses
    "big-bluestem": (6, 12),  # Texas; Penn State
    "little-bluestem": (3.4, 10),  # Texas; common practice
    "indiangrass": (4.5, 12),  # Texas; common practice
    "sideoats-grama": (4.5, 12),  # Texas; common practice
    "eastern-gamagrass": (8, 20),  # Texas, rows to broadcast
    "white-clover": (3, 5),  # West Virginia University, alone
    "red-clover": (8, 10),  # West Virginia University, alone
    "oats": (80, 140),  # common practice
    "cereal-rye": (60, 160),  # common practice
    "winter-wheat": (60, 150),  # common practice
    "turnip": (2, 8),  # Ohio State University; common practice
    "forage-radish": (7, 20),  # common practice
    "forage-rape": (4, 8),  # common practice
    "soybean": (54.5, 90),  # Iowa State University, worked example
    "corn": (15, 25),  # common practice
    "tall-sorghum": (6, 20),  # common practice
    "grain-sorghum": (4, 15),  # common practice
}
# Seeds in a pound that sources print.
PRINTED_COUNTS = {
    "switchgrass": (259_000, 400_000),  # common practice
    "big-bluestem": (165_000, 165_000),  # National Park Service, 364 to a gram
    "little-bluestem": (260_000, 260_000),  # National Park Service, 573 to a gram
    "sideoats-grama": (154_000, 191_000),  # National Park Service, 339 to 421 to a gram
    "white-clover": (700_000, 860_000),  # West Virginia University; ladino, from memory
    "red-clover": (275_000, 285_000),  # West Virginia University; common practice
    "oats": (11_000, 18_000),  # Mississippi State University
    "winter-wheat": (8_000, 20_000),  # South Dakota State University
    "soybean": (1_700, 5_000),  # Iowa State University
    "corn": (1_300, 1_600),  # common practice
}


def ends_of(usual_range: Usual) -> tuple[Reference, Reference]:
    low, high = usual_range.low, usual_range.high
    assert isinstance(low, Reference)
    assert isinstance(high, Reference)
    return low, high


@pytest.mark.parametrize("name", SOWN)
def test_every_sown_species_has_its_ranges_low_before_high(name: str) -> None:
    of_kind = usual_seed()[name]
    for usual_range, unit in ((of_kind.rate, "lb_per_ac"), (of_kind.seeds, "seeds_per_lb")):
        low, high = ends_of(usual_range)
        assert 0 < low.value < high.value
        assert low.unit == high.unit == unit
        assert low.locator
        assert high.locator


def test_nothing_is_ranged_that_is_not_sown() -> None:
    assert set(usual_seed()) == set(SOWN)


@pytest.mark.parametrize("name", PRINTED_RATES)
def test_printed_rates_are_usual_and_ten_times_more_or_less_is_not(name: str) -> None:
    low, high = ends_of(usual_seed()[name].rate)
    least, most = PRINTED_RATES[name]
    assert low.value <= least <= most <= high.value
    assert most / TEN < low.value
    assert least * TEN > high.value


@pytest.mark.parametrize("name", PRINTED_COUNTS)
def test_printed_counts_are_usual_and_ten_times_more_or_less_is_not(name: str) -> None:
    low, high = ends_of(usual_seed()[name].seeds)
    least, most = PRINTED_COUNTS[name]
    assert low.value <= least <= most <= high.value
    assert most / TEN < low.value
    assert least * TEN > high.value


PAIRS = [name for name in values() if name.startswith("usual_") and "_low_" in name]


@pytest.mark.parametrize("name", PAIRS)
def test_a_low_end_is_below_its_high_end_in_the_same_unit(name: str) -> None:
    high = values().get(name.replace("_low_", "_high_"))
    assert high is None or values()[name].value < high.value
    assert high is None or values()[name].unit == high.unit


@given(value=st.floats(0.001, 10_000))
def test_a_figure_is_beyond_one_end_or_none(value: float) -> None:
    tank = usual("boom_tank", "gal")
    low, high = ends_of(tank)
    typed = Given("tank_gal", value, "gal", value, "gal", "equipment.yaml", 1, "page")
    wanted = "less" if value < low.value else "more" if value > high.value else None
    assert tank.beyond(typed) in {wanted, None}
    if wanted is not None and not any(abs(value - one.value) < 1e-6 for one in (low, high)):
        assert tank.beyond(typed) == wanted
        assert tank.end(wanted) in (low, high)


def test_percent_is_held_against_a_fraction() -> None:
    pure = usual("purity", "pct")
    assert pure.beyond(Given("p", 0.39, "fraction", 39, "pct", "f", 1, "page")) == "less"
    assert pure.beyond(Given("p", 0.4, "fraction", 40, "pct", "f", 1, "page")) is None
