"""Conversions against another library of units: Pint, whose definitions are its own."""

import math

import pint
import pytest

from generator.units import UNITS, convert

PINT = pint.UnitRegistry()
# suffix -> what Pint calls it; money, counts and seeds are no physical units
NAMES = {
    "ft": "foot", "in": "inch", "yd": "yard", "mi": "mile", "m": "meter", "cm": "centimeter",
    "ac": "43560 * foot ** 2", "sq_ft": "foot ** 2", "ha": "hectare", "sq_m": "meter ** 2",
    "lb": "pound", "oz_wt": "ounce", "ton": "short_ton", "kg": "kilogram", "g": "gram",
    "fl_oz": "fluid_ounce", "cup": "cup", "pt": "pint", "qt": "quart", "gal": "gallon",
    "ml": "milliliter", "l": "liter",
    "lb_per_1000_sq_ft": "pound / (1000 * foot ** 2)",
    "lb_per_100_sq_ft": "pound / (100 * foot ** 2)",
    "lb_per_gal": "pound / gallon", "g_per_l": "gram / liter",
    "lb_per_100_gal": "pound / (100 * gallon)",
    "mph": "mile / hour", "km_per_h": "kilometer / hour",
    "gal_per_minute": "gallon / minute", "fl_oz_per_minute": "fluid_ounce / minute",
    "hours": "hour", "minutes": "minute", "seconds": "second", "days": "day",
}  # fmt: skip
AREA = {"ac": NAMES["ac"], "ha": NAMES["ha"]}


def name_of(suffix: str) -> str | None:
    """What Pint calls a suffix, or None for one that is no physical unit."""
    if suffix in NAMES:
        return NAMES[suffix]
    amount, _, area = suffix.partition("_per_")
    return f"{NAMES[amount]} / ({AREA[area]})" if amount in NAMES and area in AREA else None


PAIRS = [
    (one, other.suffix)
    for one in UNITS
    for other in UNITS.values()
    if other.family == UNITS[one].family and name_of(one) and name_of(other.suffix)
]


@pytest.mark.parametrize(("one", "other"), PAIRS)
def test_a_conversion_is_that_of_pint(one: str, other: str) -> None:
    theirs = (7.3 * PINT(str(name_of(one)))).to(PINT(str(name_of(other))))
    magnitude = theirs.magnitude / PINT(str(name_of(other))).magnitude
    assert math.isclose(convert(7.3, one, other), magnitude, rel_tol=1e-9)


def test_every_kind_of_unit_of_the_field_is_compared() -> None:
    compared = {UNITS[one].family for one, _ in PAIRS}
    assert compared >= {
        "length", "area", "mass", "volume", "mass_per_area", "volume_per_area", "strength",
        "mass_per_spray", "speed", "flow", "time",
    }  # fmt: skip


@pytest.mark.parametrize("value", [-40, 0, 18.3, 72, 101.4])
def test_a_temperature_is_that_of_pint(value: float) -> None:
    fahrenheit = PINT.Quantity(value, "degC").to("degF").magnitude
    assert math.isclose(convert(value, "c", "f"), fahrenheit, rel_tol=1e-9, abs_tol=1e-9)
    celsius = PINT.Quantity(value, "degF").to("degC").magnitude
    assert math.isclose(convert(value, "f", "c"), celsius, rel_tol=1e-9, abs_tol=1e-9)
