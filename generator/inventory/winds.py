"""What is typed of the wind for a stand or a walk: directions, and what it must not blow to."""

from typing import Any

from generator.dataclass import dataclass
from generator.inventory.fields import POSITIVE, Record, choice, direction, measure, text
from generator.working import Given

OPEN, EDGE, TIMBER = "open", "edge", "timber"


@dataclass(frozen=True, slots=True, kw_only=True)
class DeerSpot(Record):
    """Where deer bed or feed, as seen from a stand."""

    toward: Given = direction("place", "which way it lies from the stand", required=True)
    distance_yd: Given | None = measure("place", "how far it is from the stand", "yd", POSITIVE)
    name: str | None = text("place", "what you call it")


def winds_it_is_for() -> Any:
    """Declare the winds that a stand or a walk is for."""
    return direction("place", "winds it is for, by where they come from", many=True)


def winds_it_is_not_for() -> Any:
    """Declare the winds that a stand or a walk is not for."""
    return direction("place", "winds it is not for, by where they come from", many=True)


def what_lies_around() -> Any:
    """Declare what lies around a stand or a walk."""
    help = "what lies around it: open ground, an edge or timber"
    return choice("place", help, OPEN, EDGE, TIMBER)
