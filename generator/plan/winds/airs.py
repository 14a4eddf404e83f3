"""What a wind is for a stand or a walk: the word, why, and what is worked out beside it."""

from __future__ import annotations

from enum import Enum

from generator.dataclass import dataclass
from generator.working import Given, Reference

OK, YOUR_CALL, DRIFTS, WRONG_WIND = "OK", "your call", "drifts", "wrong wind"
# From what is known to serve to what is known not to.
WIND_WORDS = (OK, YOUR_CALL, DRIFTS, WRONG_WIND)


class HowTold(Enum):
    """How a wind is known, which says how wide scent may go."""

    FORECAST = "by one of eight directions"
    RECORD = "in degrees, with its speed and hour, in the open"
    MEASURED = "in degrees, with its speed and hour, at the stand"


@dataclass(frozen=True, slots=True)
class Air:
    """A wind: where it comes from, how fast where that is known, and how it is told.

    `steady` says that the sun is low or hidden, or that it is night: a plume is narrow then.
    """

    from_deg: float
    speed_mph: float | None = None
    told: HowTold = HowTold.FORECAST
    steady: bool = False


class Because(Enum):
    """Why a wind is what it is: the key of the words a page says."""

    TYPED_FOR = "typed_for"
    TYPED_AGAINST = "typed_against"
    TYPED_BOTH = "typed_both"
    BLOWS_TO = "blows_to"
    MAY_BLOW_TO = "may_blow_to"
    NO_DISTANCE = "no_distance"
    BEYOND_REACH = "beyond_reach"
    NO_BEDS = "no_beds"
    BLOWS_PAST = "blows_past"
    TOO_SLOW = "too_slow"
    SLOPE = "slope"
    MAY_BE_TOO_SLOW = "may_be_too_slow"
    NOT_TYPED = "not_typed"
    NO_WALK = "no_walk"


@dataclass(frozen=True, slots=True)
class Downwind:
    """What scent must not reach: a bed, food, or the way deer come, by its bearing.

    `distance_yd` is None where it is not typed; deer that come to the stand come all the way.
    """

    kind: str
    name: str | None
    toward: Given
    distance_yd: float | None


@dataclass(frozen=True, slots=True)
class WindVerdict:
    """What a wind is for a stand, a walk, or a stand by a walk.

    `thing` is what it blows to or may blow to; `beside` what is worked out where a typed wind
    decides; `walk` the id of the walk that goes with it, and `of_walk` says that the walk decided.
    """

    word: str
    because: Because
    thing: Downwind | None = None
    beside: WindVerdict | None = None
    walk: str | None = None
    of_walk: bool = False


@dataclass(frozen=True, slots=True)
class SlopeAir:
    """The air that a slope makes in light wind: which way it runs, and what it runs to."""

    falls_to: Given
    below: Reference
    downhill: tuple[Downwind, ...]
    uphill: tuple[Downwind, ...]
