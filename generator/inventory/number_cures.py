"""Cures for text that stands where a number is wanted: `1/4`, `1,200`, `30 ft`, `8-10`.

Each way of writing has its own cure, with the number as it should be written. What can only mean
one thing is read as it stands, in `plain_values.py`; all else stays refused, and the sentence only
says how to write what was meant.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from decimal import Decimal

# What the reader takes as a number: no leading zeros, no exponent, digits on both sides of a point,
# and no more digits than a number keeps.
PLAIN_NUMBER = r"-?(?:0|[1-9][0-9]{0,17})(?:\.[0-9]{1,30})?"

_NUMBER = r"(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
_COUNTED = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen",
    "nineteen", "twenty",
)  # fmt: skip
_WORDS: dict[str, float] = {word: value for value, word in enumerate(_COUNTED)}
_WORDS |= {"thirty": 30, "forty": 40, "fifty": 50, "hundred": 100, "half": 0.5, "quarter": 0.25}
_UNKNOWN = {"?", "??", "n/a", "na", "none", "unknown", "unsure", "tbd", "-", "--", "x"}
_UNIT_MARKS = {"'": "ft", "’": "ft", "′": "ft", '"': "in", "”": "in", "″": "in"}
_UNIT_WORDS = {
    "feet": "ft", "foot": "ft", "inches": "in", "inch": "in", "yards": "yd", "acres": "ac",
    "acre": "ac", "pounds": "lb", "lbs": "lb", "ounces": "oz", "gallons": "gal", "metres": "m",
    "meters": "m", "miles": "mi", "hours": "h", "percent": "pct", "quarts": "qt", "pints": "pt",
}  # fmt: skip


def number_cure(text: str, key: str) -> str:
    """How to write the number that the text most likely stands for.

    A number named in the cure is always one that the reader of the files takes as a number.
    """
    plain = text.strip()
    try:
        cures = (way(plain, key) for way in _WAYS)
        found = next((cure for cure in cures if cure is not None), None)
    except _TooLongError:
        return "at most 18 digits; a code or a serial number is text"
    return found or "a number in digits, such as 24 or 0.5, with nothing beside it"


class _TooLongError(Exception):
    """No number keeps so many digits, so none is written out."""


def _decimal(value: Decimal | float | str) -> str:
    """Digits only, without exponent, sign of plus, leading or trailing zeros."""
    number = Decimal(str(value))
    if number == number.to_integral_value():
        if abs(number) >= 10**20:
            raise _TooLongError
        return format(number.quantize(Decimal(1)) + 0, "f")
    return format(number.normalize(), "f")


def _write(value: Decimal | float | str) -> str:
    digits = _decimal(value)
    # no longer than the reader takes: a cure that is refused again is none
    if len(digits) > 18:
        raise _TooLongError
    return f"write {digits}"


def _fraction(text: str, _key: str) -> str | None:
    found = re.fullmatch(r"(-?)(?:([0-9]{1,6})[- ]+)?([0-9]{1,6}) ?[/⁄] ?([0-9]{1,6})", text)
    if found is None or int(found[4]) == 0:
        return None
    value = int(found[2] or 0) + int(found[3]) / int(found[4])
    # a third has no end in decimals
    rounded = round(Decimal(value), 4)
    # and a small part has its first digits far behind the point
    told = rounded if value == 0 or rounded >= Decimal("0.01") else Decimal(f"{value:.4g}")
    return _write(-told if found[1] else told)


def _vulgar_fraction(text: str, _key: str) -> str | None:
    found = re.fullmatch(r"([0-9]{0,6}) ?([¼-¾⅐-⅞])", text)
    if found is None:
        return None
    return _write(round(Decimal(int(found[1] or 0) + unicodedata.numeric(found[2])), 4))


def _thousands(text: str, _key: str) -> str | None:
    if re.fullmatch(r"-?[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]+)?", text):
        return _write(text.replace(",", ""))
    if re.fullmatch(r"-?[0-9]{1,9}(_[0-9]+)+", text):
        return _write(text.replace("_", ""))
    return None


def _decimal_comma(text: str, _key: str) -> str | None:
    if not re.fullmatch(r"-?[0-9]{1,9},[0-9]{1,9}", text):
        return None
    return f"with a point: {_write(text.replace(',', '.'))}"


def _money(text: str, key: str) -> str | None:
    found = re.fullmatch(rf"[$€£] ?({_NUMBER})|({_NUMBER}) ?(?:[$€£]|USD|dollars)", text)
    thousands = re.fullmatch(r"\$ ?[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]+)?", text)
    if (found or thousands) and "_usd" not in key:
        return "the number in the unit of the key; dollars go with a key that ends in _usd"
    if found:
        return f"{_write(found[1] or found[2])}, without the sign"
    if thousands:
        return f"{_write(text.lstrip('$ ').replace(',', ''))}, without the sign"
    return None


def _percent(text: str, key: str) -> str | None:
    found = re.fullmatch(rf"({_NUMBER}) ?%", text)
    if found is None:
        return None
    if not key.endswith(("_pct", "_fraction")):
        return "the number in the unit of the key; a percent goes with a key that ends in _pct"
    value = Decimal(found[1]) / 100 if key.endswith("_fraction") else Decimal(found[1])
    return f"{_write(value)}, without the sign"


def _with_unit(text: str, key: str) -> str | None:
    found = re.fullmatch(rf"(-?{_NUMBER}) ?([A-Za-z][A-Za-z./ ]{{0,14}}|['’′\"”″])", text)
    # 3e is an exponent cut short, not a number with a unit
    if found is None or re.fullmatch(r"[eE]", found[2]):
        return None
    word = found[2].rstrip(".")
    unit = _UNIT_MARKS.get(word) or _UNIT_WORDS.get(word.lower(), word.lower())
    digits = _decimal(found[1])
    if key.lower().endswith(f"_{unit.replace('/', '_per_')}"):
        return f"write {digits}; the unit stands in the key"
    return (
        f"the number only, in the unit the key names; "
        f"for {digits} {word} use the key that ends in that unit"
    )


def _about(text: str, _key: str) -> str | None:
    found = re.fullmatch(
        rf"(?:[~≈±<>≤≥]=?|about|around|approx\.?|ca\.?|circa|under|over) ?({_NUMBER})"
        rf"|({_NUMBER})\+",
        text,
        re.IGNORECASE,
    )
    if found is None:
        return None
    return f"one number: {_write(found[1] or found[2])} and say the rest in a note"


def _range(text: str, _key: str) -> str | None:
    found = re.fullmatch(rf"({_NUMBER}) ?(?:-|–|—|\.\.|to) ?({_NUMBER})", text)
    if found is None:
        return None
    low, high = _decimal(found[1]), _decimal(found[2])
    return f"one number, not a range: {low}, {high} or one between"


def _exponent(text: str, _key: str) -> str | None:
    if not re.fullmatch(rf"-?{_NUMBER}[eE][-+]?[0-9]{{1,2}}", text):
        return None
    try:
        return _write(text)
    except _TooLongError:
        return "the number in plain digits"


def _other_base(text: str, _key: str) -> str | None:
    if re.fullmatch(r"0[xX][0-9a-fA-F]+|0[oO][0-7]+|0[bB][01]+", text):
        return "the number in everyday digits, such as 24"
    return None


def _loose_digits(text: str, _key: str) -> str | None:
    """Leading zeros, a leading plus, a point without digits on both sides."""
    if re.fullmatch(PLAIN_NUMBER, text):
        return f"{text}, without quotes"
    if re.fullmatch(r"[-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)", text):
        return _write(text)
    return None


def _other_script(text: str, _key: str) -> str | None:
    folded = unicodedata.normalize("NFKC", text).replace("−", "-").replace("–", "-")
    ascii_digits = "".join(
        str(unicodedata.decimal(character)) if character.isdecimal() else character
        for character in folded
    )
    if ascii_digits != text and re.fullmatch(rf"-?{_NUMBER}", ascii_digits.strip()):
        return f"{_write(ascii_digits.strip())}, in the digits 0 to 9 and without unusual spaces"
    return None


def _no_value(text: str, _key: str) -> str | None:
    if text.lower() in _UNKNOWN:
        return "a number; leave the line out while it is not known"
    if re.fullmatch(r"[-+]?\.?(nan|inf|infinity)|∞", text.lower()):
        return "a number that can be measured; leave the line out while it is not known"
    return None


def _spelled(text: str, _key: str) -> str | None:
    value = _WORDS.get(text.lower())
    return None if value is None else f"in digits: {_write(value)}"


# The first that fits: 1,200 is thousands before it is a comma for a point, 5 USD is money
# before it is a number with a unit.
_WAYS: tuple[Callable[[str, str], str | None], ...] = (
    _fraction,
    _vulgar_fraction,
    _thousands,
    _decimal_comma,
    _money,
    _percent,
    _about,
    _range,
    _exponent,
    _other_base,
    _loose_digits,
    _no_value,
    _with_unit,
    _other_script,
    _spelled,
)
