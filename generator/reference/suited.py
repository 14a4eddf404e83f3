"""What a day must be like for a kind of work, so that the days of past years can be counted."""

from functools import cache
from typing import Any, Literal

from generator.dataclass import dataclass
from generator.reference.library import values
from generator.reference.read import read_data
from generator.working import Reference


@dataclass(frozen=True, slots=True)
class Suits:
    """What a day must be like; a figure that is None is not asked.

    `words` say it, with the names of figures in braces. `rain_after` says that rain must follow;
    `ground` is what the ground must be on the day.
    """

    id: str
    name: str
    words: str
    figures: tuple[Reference, ...]
    high_at_least: Reference | None
    night_at_least: Reference | None
    rain_at_most: Reference | None
    rain_before_at_most: Reference | None
    days_before: Reference | None
    soil_over: Reference | None
    freezes_and_thaws: bool
    rain_after: bool
    ground: Literal["firm", "thawed"] | None


ASKED = (
    "high_at_least", "night_at_least", "rain_at_most", "rain_before_at_most", "days_before",
    "soil_over",
)  # fmt: skip
FREEZES_AND_THAWS = ("freezes_f", "thaws_f")


@cache
def suited() -> dict[str, Suits]:
    """Return what a day must be like, by the name that kinds of work and steps give it."""
    return {entry["id"]: _suits(entry) for entry in read_data("suited.yaml")}


def _suits(entry: dict[str, Any]) -> Suits:
    asked = {name: values()[entry[name]] if name in entry else None for name in ASKED}
    thaws = "freezes_and_thaws" in entry
    figures = [figure for figure in asked.values() if figure is not None]
    figures += [values()[name] for name in (FREEZES_AND_THAWS if thaws else ())]
    return Suits(
        entry["id"],
        entry["name"],
        entry["words"],
        tuple(dict.fromkeys(figures)),
        freezes_and_thaws=thaws,
        rain_after="rain_after" in entry,
        ground=entry.get("ground"),
        **asked,
    )
