"""What may lie on the land or beside it, and the traits that land_kinds.yaml says of every kind."""

from functools import cache

from generator.dataclass import dataclass
from generator.reference.read import read_data

_SAID = {"yes": True, "no": False}
_NONE = "no"


@dataclass(frozen=True, slots=True)
class LandKind:
    """A kind of thing of the land.

    `drawn` names the forms it may be typed in: point, line, outline. `keeps` is the kind of thing a
    label keeps a distance from, None where no label does.
    """

    id: str
    name: str
    drawn: tuple[str, ...]
    keeps: str | None
    water: bool
    danger: bool
    private: bool


@cache
def land_kinds() -> dict[str, LandKind]:
    """Return every kind of thing of the land by its id.

    Raises KeyError for a row that leaves a trait out or says another word.
    """
    return {
        row["id"]: LandKind(
            row["id"],
            row["name"],
            tuple(row["drawn"]),
            None if row["keeps"] == _NONE else row["keeps"],
            _SAID[row["water"]],
            _SAID[row["danger"]],
            _SAID[row["private"]],
        )
        for row in read_data("land_kinds.yaml")
    }
