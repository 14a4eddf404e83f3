"""From plain data to a direction: a point of the compass, or degrees from north."""

from generator.inventory import problems as say
from generator.inventory.fields import FieldRule
from generator.inventory.plain_values import BEARING_UNIT, COMPASS_DEG, plain_direction
from generator.inventory.reading_found import Path, Reading
from generator.working import Given

_LONGEST_LETTERS = 3  # of a point told by letters
# As they are written: letters in capitals, words in small ones.
_OFFERED = tuple(word.upper() if len(word) <= _LONGEST_LETTERS else word for word in COMPASS_DEG)


def read_direction(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    """Return a direction as a number with its place, or the mark of a fault."""
    bearing_deg = plain_direction(raw)
    if bearing_deg is None:
        return reading.fault(say.bad_direction(raw, _OFFERED), path)
    where = reading.where(path)
    name = next(str(part) for part in reversed(path) if isinstance(part, str))
    return Given(
        f"{name}_{BEARING_UNIT}",
        bearing_deg,
        BEARING_UNIT,
        bearing_deg,
        BEARING_UNIT,
        where.file,
        where.line,
        rule.visible,
        rule.help,
        where.column,
    )
