"""Exact conversions and the legal unit suffixes of names.

A name such as `width_ft` ends in one suffix of the table `UNITS`. Suffixes of one family convert
into each other exactly; the international foot (0.3048 m) and the US liquid gallon (231 cubic
inches) are the definitions used throughout (NIST Special Publication 811, appendix B).
"""

import functools
import math
from fractions import Fraction
from typing import TypeAlias

from generator.dataclass import dataclass

LatLon: TypeAlias = tuple[float, float]  # degrees north, degrees east

SQ_FT_PER_AC = 43560
IN_PER_FT = 12
FL_OZ_PER_GAL = 128
OZ_WT_PER_LB = 16
G_PER_LB = 453.59237
SECONDS_PER_MINUTE = 60
LB_PER_TON = 2000
LB_PER_HUNDREDWEIGHT = 100
QT_PER_GAL = 4
CU_IN_PER_CU_FT = 1728
M_PER_FT = 0.3048
SQ_M_PER_SQ_FT = 0.09290304
CU_IN_PER_GAL = 231
FT_PER_MINUTE_PER_MPH = 88

_METRE_PER_FOOT = Fraction(3048, 10000)
_KG_PER_LB = Fraction(45359237, 100000000)
_ML_PER_FL_OZ = Fraction(231) * Fraction(254, 100) ** 3 / FL_OZ_PER_GAL
_SQ_M_PER_AC = SQ_FT_PER_AC * _METRE_PER_FOOT**2


@dataclass(frozen=True, slots=True)
class Unit:
    """One legal suffix: its family, its size in the family's first unit, the words shown.

    `words_of_one` are those behind a 1; `zero` is where its 0 lies in the first unit.
    """

    suffix: str
    family: str
    size: Fraction
    words: str
    words_of_one: str
    zero: Fraction = Fraction(0)


# What has another word for one of it; a short form such as lb has none.
_ONE = {
    "tons": "ton", "cups": "cup", "hours": "hour", "days": "day", "years": "year",
    "turns": "turn", "seeds": "seed", "plants": "plant",
}  # fmt: skip


def _of_one(words: str) -> str:
    """Return the words behind a 1: `ton/ac` for `tons/ac`."""
    what, slash, rest = words.partition("/")
    return f"{_ONE.get(what, what)}{slash}{rest}"


def _family(name: str, *members: tuple[str, Fraction | int, str]) -> list[Unit]:
    return [
        Unit(suffix, name, Fraction(size), words, _of_one(words)) for suffix, size, words in members
    ]


# The freezing point of water is 32 in one and 0 in the other, the steps are as 5 to 9.
_TEMPERATURES = [
    Unit("f", "temperature", Fraction(1), "°F", "°F"),
    Unit("c", "temperature", Fraction(9, 5), "°C", "°C", Fraction(32)),
]
# Warmth added up over days: no zero to shift, only the size of the degree.
_WARMTH = [
    Unit("degree_days_f", "warmth", Fraction(1), "degree days F", "degree day F"),
    Unit("degree_days_c", "warmth", Fraction(9, 5), "degree days C", "degree day C"),
]
_MASS: tuple[tuple[str, Fraction | int, str], ...] = (
    ("lb", 1, "lb"),
    ("oz_wt", Fraction(1, OZ_WT_PER_LB), "oz by weight"),
    ("ton", LB_PER_TON, "tons"),
    ("kg", 1 / _KG_PER_LB, "kg"),
    ("g", Fraction(1, 1000) / _KG_PER_LB, "g"),
)
_VOLUME: tuple[tuple[str, Fraction | int, str], ...] = (
    ("fl_oz", 1, "fl oz"),
    ("cup", 8, "cups"),
    ("pt", 16, "pt"),
    ("qt", 32, "qt"),
    ("gal", FL_OZ_PER_GAL, "gal"),
    ("ml", 1 / _ML_PER_FL_OZ, "mL"),
    ("l", 1000 / _ML_PER_FL_OZ, "L"),
)
_AC_PER_HA = Fraction(10000) / _SQ_M_PER_AC


def _per_area(
    members: tuple[tuple[str, Fraction | int, str], ...],
) -> list[tuple[str, Fraction | int, str]]:
    metric = {"kg", "g", "ml", "l"}
    return [
        (f"{s}_per_ha", Fraction(n) / _AC_PER_HA, f"{w}/ha")
        if s in metric
        else (f"{s}_per_ac", n, f"{w}/ac")
        for s, n, w in members
    ]


UNITS: dict[str, Unit] = {
    unit.suffix: unit
    for unit in (
        *_family(
            "length",
            ("ft", 1, "ft"),
            ("in", Fraction(1, IN_PER_FT), "in"),
            ("yd", 3, "yd"),
            ("mi", 5280, "mi"),
            ("m", 1 / _METRE_PER_FOOT, "m"),
            ("cm", Fraction(1, 100) / _METRE_PER_FOOT, "cm"),
        ),
        *_family(
            "area",
            ("ac", 1, "ac"),
            ("sq_ft", Fraction(1, SQ_FT_PER_AC), "sq ft"),
            ("ha", _AC_PER_HA, "ha"),
            ("sq_m", 1 / _SQ_M_PER_AC, "sq m"),
        ),
        *_family("mass", *_MASS),
        *_family(
            "volume",
            *_VOLUME,
            ("cu_ft", Fraction(CU_IN_PER_CU_FT, CU_IN_PER_GAL) * FL_OZ_PER_GAL, "cu ft"),
        ),
        *_family(
            "mass_per_area",
            *_per_area(_MASS),
            ("lb_per_1000_sq_ft", Fraction(SQ_FT_PER_AC, 1000), "lb/1,000 sq ft"),
            ("lb_per_100_sq_ft", Fraction(SQ_FT_PER_AC, 100), "lb/100 sq ft"),
        ),
        *_family("volume_per_area", *_per_area(_VOLUME)),
        *_family(
            "strength",
            ("lb_per_gal", 1, "lb/gal"),
            ("g_per_l", _ML_PER_FL_OZ * FL_OZ_PER_GAL / _KG_PER_LB / 10**6, "g/L"),
        ),
        *_family("mass_per_spray", ("lb_per_100_gal", 1, "lb in 100 gal")),
        *_family("fraction", ("fraction", 1, ""), ("pct", Fraction(1, 100), "%")),
        *_family("speed", ("mph", 1, "mph"), ("km_per_h", Fraction(10**6, 1609344), "km/h")),
        *_family(
            "flow",
            ("gal_per_minute", 1, "gal/min"),
            ("fl_oz_per_minute", Fraction(1, FL_OZ_PER_GAL), "fl oz/min"),
            ("gal_per_hour", Fraction(1, 60), "gal/hour"),
            ("gal_per_day", Fraction(1, 1440), "gal/day"),
        ),
        *_family(
            "time", ("hours", 1, "hours"), ("minutes", Fraction(1, 60), "min"),
            ("seconds", Fraction(1, 3600), "s"), ("days", 24, "days"),
        ),
        *_family("mass_per_mass", ("lb_per_ton", 1, "lb/ton")),
        *_family("drinking", ("qt_per_100_lb_per_day", 1, "qt/100 lb/day")),
        *_family("side_slope", ("ft_per_ft", 1, "to 1")),
        *_family("acidity", ("ph", 1, "")),
        *_family("span", ("years", 1, "years")),
        *_family("work_rate", ("ac_per_hour", 1, "ac/hour")),
        *_family("money", ("usd", 1, "dollars")),
        *_family("money_per_area", ("usd_per_ac", 1, "/ac")),
        *_family("money_per_hour", ("usd_per_hour", 1, "/hour")),
        *_family("money_per_day", ("usd_per_day", 1, "/day")),
        *_family("money_per_volume", ("usd_per_gal", 1, "/gal")),
        *_family("seeds_per_mass", ("seeds_per_lb", 1, "seeds/lb")),
        *_family(
            "seeds_per_area",
            ("seeds_per_sq_ft", 1, "seeds/sq ft"),
            ("seeds_per_ac", Fraction(1, SQ_FT_PER_AC), "seeds/ac"),
        ),
        *_family(
            "plants_per_area",
            ("plants_per_sq_ft", 1, "plants/sq ft"),
            ("plants_per_sq_m", _METRE_PER_FOOT**2, "plants/sq m"),
            ("plants_per_ac", Fraction(1, SQ_FT_PER_AC), "plants/ac"),
        ),
        *_family("plants_per_length", ("plants_per_row_ft", 1, "plants/ft")),
        *_family("turns", ("turns", 1, "turns")),
        *_family("bearing", ("deg", 1, "degrees")),
        *_TEMPERATURES,
        *_WARMTH,
        *_family("count", ("count", 1, "")),
    )
}  # fmt: skip

HALVES_PER_IN = 2  # a tape is read to half an inch
MONEY_DECIMALS = 2
SIGNIFICANT_DIGITS = 3
_REMEMBERED = 1 << 14  # a book prints the same numbers on several pages


def split_suffix(name: str) -> tuple[str, str] | None:
    """Return (stem, suffix) for the longest legal suffix that `name` ends in, else None.

    >>> split_suffix("rate_pls_lb_per_ac")
    ('rate_pls', 'lb_per_ac')
    >>> split_suffix("gate") is None
    True
    """
    parts = name.split("_")
    # the longest first: rate_lb_per_ac is no name that ends in ac
    for start in range(1, len(parts)):
        suffix = "_".join(parts[start:])
        if suffix in UNITS:
            return "_".join(parts[:start]), suffix
    return None


@functools.cache
def family_suffixes(family: str) -> tuple[str, ...]:
    """Return the legal suffixes of a family, in the order of the table."""
    return tuple(unit.suffix for unit in UNITS.values() if unit.family == family)


def convert(value: float, from_suffix: str, to_suffix: str) -> float:
    """Return `value` in another unit of the same family. Raises ValueError across families.

    >>> convert(24, "ft", "m"), convert(-40, "c", "f")
    (7.3152, -40.0)
    """
    times, by, shift = _between(from_suffix, to_suffix)
    # what is not converted comes back as it was
    if times == by and not shift:
        return value
    top, bottom = value.as_integer_ratio()
    if shift:
        return float(Fraction(top * times, bottom * by) + shift)
    # of whole numbers as long as they are: rounded once, and a tenth of the time of fractions
    return top * times / (bottom * by)


@functools.cache
def _between(from_suffix: str, to_suffix: str) -> tuple[int, int, Fraction]:
    """Return what a value in one unit is multiplied by and divided by, and what is then added."""
    source, target = UNITS[from_suffix], UNITS[to_suffix]
    if source.family != target.family:
        raise ValueError(f"{from_suffix} does not convert to {to_suffix}")
    ratio = source.size / target.size
    return ratio.numerator, ratio.denominator, (source.zero - target.zero) / target.size


def digits(value: float, suffix: str) -> str:
    """Return `value` rounded once for a page: three significant digits, whole from a hundred up.

    Money has cents, counts are whole, a fraction is shown as percent by `shown`.

    >>> digits(0.330579, "ac"), digits(1240.4, "ft"), digits(53.333, "fl_oz"), digits(8.0, "lb")
    ('0.331', '1,240', '53.3', '8')
    """
    if _is_money(suffix):
        return f"{value:,.{MONEY_DECIMALS}f}"
    if suffix == "count":
        return f"{value:,.0f}"
    if value == 0:
        return "0"
    decimals = max(0, SIGNIFICANT_DIGITS - 1 - math.floor(math.log10(abs(value))))
    text = f"{value:,.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _is_money(suffix: str) -> bool:
    return UNITS[suffix].family.startswith("money")


@functools.lru_cache(maxsize=_REMEMBERED)
def shown(value: float, suffix: str) -> str:
    """Return the number with its unit as a page prints it.

    >>> shown(0.882, "fraction"), shown(96.5, "usd"), shown(2, "count"), shown(7.3152, "m")
    ('88.2%', '$96.50', '2', '7.32 m')
    >>> shown(45, "usd_per_ac")
    '$45.00/ac'
    >>> shown(1, "ton"), shown(1.5, "ton_per_ac"), shown(1, "ton_per_ac")
    ('1 ton', '1.5 tons/ac', '1 ton/ac')
    """
    if suffix == "fraction":
        return f"{digits(convert(value, 'fraction', 'pct'), 'pct')}%"
    if _is_money(suffix):
        # after rounding: less than half a cent shows as nothing, and nothing has no minus
        sign = "-" if round(value, MONEY_DECIMALS) < 0 else ""
        per = UNITS[suffix].words if suffix != "usd" else ""
        return f"{sign}${digits(abs(value), suffix)}{per}"
    figure = digits(value, suffix)
    # by what is printed: 0.9999 tons print as 1, and then it is 1 ton
    words = UNITS[suffix].words_of_one if figure == "1" else UNITS[suffix].words
    if words == "%":
        return f"{figure}%"
    return f"{figure} {words}" if words else figure


def taped(value: float, suffix: str) -> str:
    """Return a length in feet and inches, to half an inch, as somebody reads it off a tape.

    What is less than that is shown as a number.

    >>> taped(10 / 12, "ft"), taped(10 / 3, "ft"), taped(9.4444, "ft"), taped(156, "in")
    ('10 in', '3 ft 4 in', '9 ft 5 1/2 in', '13 ft')
    >>> taped(0.1, "in")
    '0.1 in'
    """
    # halves up; round() would take every other one down
    halves = math.floor(convert(value, suffix, "in") * HALVES_PER_IN + 1 / 2)
    if halves <= 0:
        return shown(convert(value, suffix, "in"), "in")
    feet, left = divmod(halves, HALVES_PER_IN * IN_PER_FT)
    inches, half = divmod(left, HALVES_PER_IN)
    words = [f"{feet:,} ft"] if feet else []
    if left:
        words.append(
            " ".join([*([str(inches)] if inches else []), *(["1/2"] if half else []), "in"])
        )
    return " ".join(words)
