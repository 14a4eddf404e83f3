"""Places and their ground, walks that are open, water holes, as a reader sees them."""

from __future__ import annotations

import datetime
from typing import Literal

from generator.dataclass import dataclass
from generator.geometry.arcs import OnGround
from generator.inventory.fields import Where
from generator.inventory.ground import WaterHole
from generator.inventory.places import PlantedGround
from generator.units import LatLon
from generator.working import Figure, Given, Measured, Quantity


@dataclass(frozen=True, slots=True)
class GroundWay:
    """One way to the ground of a place; `apart` is how far from the one that counts."""

    kind: Literal["tape", "line", "outline", "stated"]
    area: Quantity
    apart: Quantity | None
    where: Where


@dataclass(frozen=True, slots=True)
class OutlineError:
    """How far the ground inside an outline may be off, and the least and most there may be."""

    share: Quantity
    least: Quantity
    most: Quantity


@dataclass(frozen=True, slots=True)
class Ground:
    """Every way to the ground of a place that is given, the one that counts first.

    `line_error` is how far ground may be off whose length is that of a line, as a share of it.
    """

    ways: tuple[GroundWay, ...]
    outline_error: OutlineError | None
    line_error: Quantity | None
    line_without_width: bool

    def numbers(self) -> tuple[Quantity, ...]:
        """Return every number beside the ground that counts."""
        error = self.outline_error
        return (
            *(way.area for way in self.ways[1:]),
            *(way.apart for way in self.ways if way.apart is not None),
            *((error.share, error.least, error.most) if error is not None else ()),
            *((self.line_error,) if self.line_error is not None else ()),
        )


@dataclass(frozen=True, slots=True)
class Place:
    """A place as a reader sees it: `typed` and `ground` are there for the owner alone.

    `typed` is the place as the owner typed it: a screen, or a strip or plot. `sides` are its length
    and width where its ground counts by them, so that whoever works there can find them. `lies` is
    where it lies, for drawings and for files to take along, `begins_lat_lon` where work on it
    begins; None where nothing typed says so.
    """

    id: str
    address: str
    name: str
    area: Quantity
    typed: PlantedGround | None
    ground: Ground | None = None
    sides: tuple[Figure, Figure] | None = None
    lies: OnGround | None = None
    begins_lat_lon: LatLon | None = None


@dataclass(frozen=True, slots=True)
class DangerNear:
    """A thing of the land that may hurt or be hurt by work on a place, by its id, and how far off.

    `name` is what every reader reads; `apart` is from edge to edge, 0 where it lies on the place.
    """

    thing_id: str
    kind: str
    name: str
    apart: Measured


@dataclass(frozen=True, slots=True)
class SharedGround:
    """Two places on some of the same ground, by their ids, and how that is known."""

    one: str
    other: str
    why: str


# By an entry of the log, as typed, or from the day it is meant to be cut: no word says otherwise.
CutKnown = Literal["logged", "typed", "planned"]


@dataclass(frozen=True, slots=True)
class OtherWay:
    """Another walk to a stand that no cut crop opened; `is_hidden` if its last look says so."""

    stand: str
    route: str
    is_hidden: bool


@dataclass(frozen=True, slots=True)
class OpenWalk:
    """A walk that counts as open from a day on: its crop, how its cut is known, other ways in.

    `stands` are those the walk leads to. `crop` and `beside` are empty for readers who are not told
    what stands where; `beside` names the screen the crop stands beside, where it is not the walk.
    """

    route: str
    since: datetime.date
    known: CutKnown
    stands: tuple[str, ...]
    ways: tuple[OtherWay, ...]
    crop: str = ""
    beside: str = ""
    stubble_in: Given | None = None

    def is_open_on(self, day: datetime.date) -> bool:
        """Return whether whoever walks it on a day counts as seen."""
        return day >= self.since


@dataclass(frozen=True, slots=True)
class DeerWater:
    """What deer drink at a hole and how long it lasts them, for one need: `careful` is the most."""

    careful: bool
    daily: Quantity
    lasts: Quantity
    refills: Quantity | None


@dataclass(frozen=True, slots=True)
class Water:
    """A water hole, its numbers by name, and what deer take from it, least need first."""

    hole: WaterHole
    numbers: dict[str, Quantity]
    drunk: tuple[DeerWater, ...]

    def load(self) -> Given | Quantity | None:
        """Return what one load brings in: all of it, or no more than the hole holds."""
        held, brought = self.numbers["water_gal"], self.hole.refill_gal
        return held if brought is not None and brought.value > held.value else brought

    def all_numbers(self) -> tuple[Quantity, ...]:
        """Return every number of the hole."""
        taken = [(need.daily, need.lasts, need.refills) for need in self.drunk]
        return (*self.numbers.values(), *(q for some in taken for q in some if q is not None))
