"""What a stop, a caution or a note says: to the owner, to others, and its cure."""

from dataclasses import dataclass

LABEL_CHAPTER = "label-card"
TAG_CHAPTER = "seed-tag"
CALIBRATION_CHAPTER = "calibration"
SOIL_CHAPTER = "soil-test"
COUNTING_CHAPTER = "counting"
SOD_CHAPTER = "sod-the-year-before"
CONTRACTS_CHAPTER = "contracts-and-licences"
MACHINES_CHAPTER = "machines-and-lines"
MOWING_CHAPTER = "mowing"
SORGHUM_CHAPTER = "sorghum-and-stock"
STANDS_CHAPTER = "stands-and-climbing"


@dataclass(frozen=True, slots=True)
class Words:
    """A reason for the owner, one for other readers, the cure, the chapter that helps.

    `source` is the key of what the reason rests on, empty where it is what the owner typed.
    """

    code: str
    owner: str
    others: str
    cure: str
    chapter: str = ""
    source: str = ""
