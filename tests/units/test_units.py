"""Conversions are those of the published definitions, and numbers are shown as promised."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.units import UNITS, Unit, convert, digits, family_suffixes, shown, split_suffix

# Definitions, each an exact fraction: the international foot is 0.3048 m, the pound 0.45359237 kg,
# the US gallon 231 cubic inches (NIST Special Publication 811, appendix B).
FOOT_M = Fraction("0.3048")
INCH_CM = Fraction("2.54")
POUND_KG = Fraction("0.45359237")
GALLON_L = 231 * INCH_CM**3 / 1000
ACRE_SQ_M = 43560 * FOOT_M**2

DEFINED = [
    ("ft", "in", Fraction(12)),
    ("yd", "ft", Fraction(3)),
    ("mi", "ft", Fraction(5280)),
    ("ft", "m", FOOT_M),
    ("in", "cm", INCH_CM),
    ("ac", "sq_ft", Fraction(43560)),
    ("ac", "sq_m", ACRE_SQ_M),
    ("ha", "sq_m", Fraction(10000)),
    ("lb", "oz_wt", Fraction(16)),
    ("ton", "lb", Fraction(2000)),
    ("lb", "kg", POUND_KG),
    ("kg", "g", Fraction(1000)),
    ("gal", "fl_oz", Fraction(128)),
    ("gal", "qt", Fraction(4)),
    ("qt", "pt", Fraction(2)),
    ("pt", "cup", Fraction(2)),
    ("gal", "l", GALLON_L),
    ("l", "ml", Fraction(1000)),
    ("lb_per_ac", "oz_wt_per_ac", Fraction(16)),
    ("ton_per_ac", "lb_per_ac", Fraction(2000)),
    ("lb_per_ac", "kg_per_ha", POUND_KG / ACRE_SQ_M * 10000),
    ("kg_per_ha", "g_per_ha", Fraction(1000)),
    ("lb_per_1000_sq_ft", "lb_per_ac", Fraction("43.56")),
    ("lb_per_100_sq_ft", "lb_per_ac", Fraction("435.6")),
    ("gal_per_ac", "fl_oz_per_ac", Fraction(128)),
    ("gal_per_ac", "qt_per_ac", Fraction(4)),
    ("qt_per_ac", "pt_per_ac", Fraction(2)),
    ("pt_per_ac", "cup_per_ac", Fraction(2)),
    ("gal_per_ac", "l_per_ha", GALLON_L / ACRE_SQ_M * 10000),
    ("l_per_ha", "ml_per_ha", Fraction(1000)),
    ("lb_per_gal", "g_per_l", 1000 * POUND_KG / GALLON_L),
    ("seeds_per_sq_ft", "seeds_per_ac", Fraction(43560)),
    ("plants_per_sq_ft", "plants_per_ac", Fraction(43560)),
    ("plants_per_sq_ft", "plants_per_sq_m", 1 / FOOT_M**2),
    ("fraction", "pct", Fraction(100)),
    ("mph", "km_per_h", 5280 * FOOT_M / 1000),
    ("gal_per_minute", "fl_oz_per_minute", Fraction(128)),
    ("gal_per_minute", "gal_per_hour", Fraction(60)),
    ("gal_per_minute", "gal_per_day", Fraction(1440)),
    ("cu_ft", "gal", Fraction(1728, 231)),
    ("days", "hours", Fraction(24)),
    ("hours", "minutes", Fraction(60)),
    ("minutes", "seconds", Fraction(60)),
    # a degree C is 9/5 of a degree F, whatever the zero
    ("degree_days_c", "degree_days_f", Fraction(9, 5)),
]
# Read in the weights and measures pages of two extension handbooks (source key pnw_measures):
# value, half a unit of the last printed digit.
PRINTED = [
    ("gal", "ml", 3785, 0.5),
    ("fl_oz", "ml", 29.57, 0.005),
    ("lb", "g", 453.6, 0.05),
    ("kg_per_ha", "lb_per_ac", 0.892, 0.0005),
]
# Water freezes at 32 F and 0 C and boils at 212 F and 100 C by the old definition; the two scales
# read the same at 40 below (NIST Special Publication 811, appendix B.8).
TEMPERATURES = [
    ("f", "c", 32, 0),
    ("f", "c", 212, 100),
    ("f", "c", -40, -40),
    ("c", "f", 25, 77),
]
PAIRS = [(one, other) for one in UNITS for other in family_suffixes(UNITS[one].family)]


@pytest.mark.parametrize(("one", "other", "ratio"), DEFINED)
def test_a_conversion_is_the_defined_one(one: str, other: str, ratio: Fraction) -> None:
    assert convert(1, one, other) == float(ratio)
    assert convert(1, other, one) == float(1 / ratio)


@pytest.mark.parametrize(("one", "other", "value", "same"), TEMPERATURES)
def test_a_temperature_is_the_defined_one(one: str, other: str, value: float, same: float) -> None:
    assert convert(value, one, other) == same


@pytest.mark.parametrize(("one", "other", "printed", "tolerance"), PRINTED)
def test_a_conversion_agrees_with_what_is_printed(
    one: str, other: str, printed: float, tolerance: float
) -> None:
    assert convert(1, one, other) == pytest.approx(printed, abs=tolerance)


def test_every_unit_is_reached_by_a_definition() -> None:
    """A unit that no definition leads to would stand unchecked."""
    prices = {"usd_per_ac", "usd_per_hour", "usd_per_day", "usd_per_gal"}
    alone = prices | {"usd", "seeds_per_lb", "turns", "count", "ac_per_hour"}
    alone |= {"lb_per_ton", "qt_per_100_lb_per_day", "lb_per_100_gal", "ft_per_ft", "ph", "years"}
    alone |= {"plants_per_row_ft", "deg"}
    reached = {name for one, other, _ in DEFINED for name in (one, other)}
    reached |= {name for one, other, *_ in TEMPERATURES for name in (one, other)}
    assert reached | alone == UNITS.keys()
    assert all(len(family_suffixes(UNITS[name].family)) == 1 for name in alone)


@given(pair=st.sampled_from(PAIRS), value=st.floats(min_value=1e-6, max_value=1e9))
def test_there_and_back_is_the_same(pair: tuple[str, str], value: float) -> None:
    one, other = pair
    # a temperature goes by way of its 0, which costs digits of a value close to it
    near = 1e-13 if UNITS[one].family == "temperature" else 0
    there_and_back = convert(convert(value, one, other), other, one)
    assert there_and_back == pytest.approx(value, rel=1e-15, abs=near)


@given(suffix=st.sampled_from(sorted(UNITS)), value=st.floats(allow_nan=False))
def test_a_unit_into_itself_changes_nothing(suffix: str, value: float) -> None:
    assert convert(value, suffix, suffix) == value


@pytest.mark.parametrize(
    ("one", "other"),
    [("oz_wt", "fl_oz"), ("lb", "lb_per_ac"), ("ac", "ft"), ("lb_per_ac", "gal_per_ac")],
)
def test_kinds_of_units_are_not_mixed(one: str, other: str) -> None:
    with pytest.raises(ValueError, match=f"{one} does not convert to {other}"):
        convert(1, one, other)


@pytest.mark.parametrize("unit", UNITS.values(), ids=UNITS)
def test_a_unit_stands_under_its_own_suffix(unit: Unit) -> None:
    assert UNITS[unit.suffix] is unit
    assert unit.size > 0
    assert unit.suffix in family_suffixes(unit.family)


@pytest.mark.parametrize(
    ("name", "split"),
    [
        ("width_ft", ("width", "ft")),
        ("area_sq_ft", ("area", "sq_ft")),
        ("rate_pls_lb_per_ac", ("rate_pls", "lb_per_ac")),
        ("rate_product_fl_oz_per_ac", ("rate_product", "fl_oz_per_ac")),
        ("caught_oz_wt", ("caught", "oz_wt")),
        ("flow_gal_per_minute", ("flow", "gal_per_minute")),
        ("live_seeds_per_lb", ("live", "seeds_per_lb")),
        ("strength_lb_per_gal", ("strength", "lb_per_gal")),
        ("amount_lb_per_1000_sq_ft", ("amount", "lb_per_1000_sq_ft")),
        ("slope_limit_pct", ("slope_limit", "pct")),
        ("ft", None),
        ("width", None),
        ("widthft", None),
        ("name", None),
        ("", None),
    ],
)
def test_a_name_is_split_at_its_longest_unit(name: str, split: tuple[str, str] | None) -> None:
    assert split_suffix(name) == split


@given(
    stem=st.from_regex(r"[a-z]{1,8}(_[a-z]{1,8})?", fullmatch=True),
    suffix=st.sampled_from(sorted(UNITS)),
)
def test_a_suffix_put_on_is_found_again(stem: str, suffix: str) -> None:
    found = split_suffix(f"{stem}_{suffix}")
    assert found is not None
    assert f"{found[0]}_{found[1]}" == f"{stem}_{suffix}"
    assert found[1].endswith(suffix)


# Three significant digits, whole numbers from a hundred up, no zero at the end of a decimal.
@pytest.mark.parametrize(
    ("value", "suffix", "text"),
    [
        (0, "lb", "0"),
        (0.0001234, "ac", "0.000123"),
        (0.330579, "ac", "0.331"),
        (0.9996, "ac", "1"),
        (1.005, "gal", "1"),
        (5.669, "lb", "5.67"),
        (8.0, "lb", "8"),
        (20.0676, "gal_per_ac", "20.1"),
        (53.333, "fl_oz", "53.3"),
        (99.96, "ft", "100"),
        (100, "ft", "100"),
        (120, "ft", "120"),
        (1240.4, "ft", "1,240"),
        (1234567, "seeds_per_lb", "1,234,567"),
        (-2.345, "lb", "-2.35"),
        (96.5, "usd", "96.50"),
        (1234.567, "usd", "1,234.57"),
        (3, "count", "3"),
        (1200, "count", "1,200"),
    ],
)
def test_digits(value: float, suffix: str, text: str) -> None:
    assert digits(value, suffix) == text


@given(value=st.floats(min_value=1e-6, max_value=1e6))
def test_digits_stay_within_half_a_part_in_a_hundred(value: float) -> None:
    assert float(digits(value, "lb").replace(",", "")) == pytest.approx(value, rel=0.005)


@pytest.mark.parametrize(
    ("value", "suffix", "text"),
    [
        (0.882, "fraction", "88.2%"),
        (1, "fraction", "100%"),
        (5, "pct", "5%"),
        (96.5, "usd", "$96.50"),
        (-3.2, "usd", "-$3.20"),
        (2, "count", "2"),
        (7.3152, "m", "7.32 m"),
        (53.333, "fl_oz", "53.3 fl oz"),
        (14, "oz_wt", "14 oz by weight"),
        (8, "lb_per_ac", "8 lb/ac"),
        (2.22, "kg_per_ha", "2.22 kg/ha"),
        (0.125, "gal_per_minute", "0.125 gal/min"),
        # One of a thing has its own word: what stands before it is a 1, rounded or not.
        (1, "ton", "1 ton"),
        (0.9999, "ton", "1 ton"),
        (1.01, "ton", "1.01 tons"),
        (0.5, "ton", "0.5 tons"),
        (1, "ton_per_ac", "1 ton/ac"),
        (1, "days", "1 day"),
        (11, "days", "11 days"),
        (1, "years", "1 year"),
        (1, "cup", "1 cup"),
        (1, "seeds_per_sq_ft", "1 seed/sq ft"),
        (1, "lb", "1 lb"),
        (2.5, "lb_per_1000_sq_ft", "2.5 lb/1,000 sq ft"),
    ],
)
def test_shown(value: float, suffix: str, text: str) -> None:
    assert shown(value, suffix) == text


def test_ounces_of_weight_and_of_volume_are_told_apart_in_words() -> None:
    words = [unit.words for unit in UNITS.values() if unit.words]
    assert len(words) == len(set(words))
    assert UNITS["oz_wt"].words != UNITS["fl_oz"].words
