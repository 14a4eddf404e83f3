"""What a stop, a caution or a note says: to the owner, to others, and its cure."""

from enum import Enum
from typing import Literal

from generator.dataclass import dataclass

LABEL_CHAPTER = "label-card"
TAG_CHAPTER = "seed-tag"
CALIBRATION_CHAPTER = "calibration"
SOIL_CHAPTER = "soil-test"
COUNTING_CHAPTER = "counting"
SOD_CHAPTER = "sod-the-year-before"
CONTRACTS_CHAPTER = "contracts-and-licenses"
MACHINES_CHAPTER = "machines-and-lines"
MIXING_CHAPTER = "mixing"
MOWING_CHAPTER = "mowing"
RECORDS_CHAPTER = "records"
SORGHUM_CHAPTER = "sorghum-and-stock"
STANDS_CHAPTER = "stands-and-climbing"
WALKING_CHAPTER = "walking-in"

# What settles what is later than the plan's day; `latest` is the day it takes.
LATER_DAY = "Build the book again with a later day."
LATER_DAY_TYPED = (
    "Build with a day from {latest} on: by --as-of {latest}, or by as_of: in property.yaml. Where "
    "that line is left out, the day you build on counts."
)


@dataclass(frozen=True, slots=True)
class Words:
    """A reason for the owner, one for other readers, the cure, the chapter that helps.

    `source` is the key of what the reason rests on, empty where it is what the owner typed.
    `to_type` is what to write into which file: keys stand there alone, spelled as they are typed.
    """

    code: str
    owner: str
    others: str
    cure: str
    chapter: str = ""
    source: str = ""
    to_type: str = ""


NOT_CLEARED = "This job is not cleared. Do not mix or spray. Ask the owner."


def label_words(
    code: str, owner: str, cure: str, source: str = "label_in_hand", to_type: str = ""
) -> Words:
    return Words(code, owner, NOT_CLEARED, cure, LABEL_CHAPTER, source, to_type)


def later_words(code: str, owner: str, to_type: str = "") -> Words:
    others = "This sheet may be older than work that was done. Do not begin; ask the owner."
    return Words(code, owner, others, LATER_DAY, to_type=f"{to_type}{LATER_DAY_TYPED}")


class Reason(Enum):
    """Why something is said of a plan; the members stand in the modules `about_...`."""

    _value_: Words


class Stop(Reason):
    """A thing that must not be done yet."""


class Caution(Reason):
    """A thing to look at before going on."""


class Note(Reason):
    """A thing worth knowing."""


def severity_of(reason: Reason) -> Literal["stop", "caution", "note"]:
    """Return how grave a reason is."""
    if isinstance(reason, Stop):
        return "stop"
    return "caution" if isinstance(reason, Caution) else "note"
