"""What counts of a planting say, and when what may be sown on a place, as the plan keeps them."""

import datetime
from dataclasses import replace
from typing import Literal

from generator.dataclass import dataclass
from generator.inventory.counted import Counted, NoxiousWeed, WeedSeen
from generator.inventory.label import CropDays
from generator.inventory.log import LogEntry
from generator.inventory.places import Planting
from generator.inventory.stock import SeedLot
from generator.reference.weeds import Weed
from generator.working import Given, Quantity

Outcome = Literal["too_early", "keep", "weeds", "overseed", "start_over"]


@dataclass(frozen=True, slots=True)
class SeedNeeded:
    """Seed of one lot for a stretch, and what it costs where the lot's price is noted."""

    lot: SeedLot
    bulk: Quantity
    cost: Quantity | None


@dataclass(frozen=True, slots=True)
class WeedFound:
    """A weed as last seen near a count, with the ways of working that spare the planting.

    `weed` is None where the owner's words are not in our list; `noxious` is the owner's own entry.
    """

    seen: WeedSeen
    seen_on: datetime.date
    weed: Weed | None
    ways: tuple[str, ...]
    noxious: NoxiousWeed | None

    @property
    def name(self) -> str:
        """What the weed is called."""
        return self.weed.name if self.weed is not None else self.seen.weed

    @property
    def in_text(self) -> str:
        """The name within a sentence; the owner's own words stay as they are."""
        return self.weed.name.lower() if self.weed is not None else self.seen.weed


@dataclass(frozen=True, slots=True)
class CountSaid:
    """One count that is still the last of its stretch: its numbers by name and its outcome.

    `area` is the ground of the stretch, None without a taped width; `seed` is for overseeding it.
    """

    entry: LogEntry
    counted: Counted
    year: int
    outcome: Outcome
    numbers: dict[str, Quantity]
    area: Quantity | None
    seed: tuple[SeedNeeded, ...]
    weeds: tuple[WeedFound, ...]

    @property
    def by_frame(self) -> bool:
        """Whether the frame was used; else plants were counted in rows."""
        return self.counted.placements_count is not None


@dataclass(frozen=True, slots=True)
class PlantingCounts:
    """A planting of native grass with its counts, and the next day to count from, if one is due.

    `look_on` is the September of the first year, `decide_on` the June of the second;
    `superseded` says that something else is planted on the place later.
    """

    place_id: str
    planting: Planting
    counts: tuple[CountSaid, ...]
    look_on: datetime.date
    decide_on: datetime.date
    superseded: bool

    def decided(self) -> bool:
        """Return whether a count of the second year or later is there."""
        return any(count.outcome != "too_early" for count in self.counts)


@dataclass(frozen=True, slots=True)
class Spraying:
    """One product put on a place: on the day logged, or by the last open day of a planned job.

    `works` is how its actives work, empty where the card does not say.
    """

    place_id: str
    planting_id: str
    step_id: str
    step_name: str
    product_id: str
    product_name: str
    logged: bool
    first: datetime.date | None
    last: datetime.date | None
    works: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Ask:
    """What a wait rests on and a card does not say, and the line that settles it.

    `longest` is the most that the answer can be, None where nothing tells; `crops` are those it is
    asked for, none where it is any; `line` is the one whose crop is no name of ours.
    """

    about: str
    cure: str
    longest: Given | None
    crops: tuple[str, ...] = ()
    line: CropDays | None = None

    @property
    def asks(self) -> str:
        """What is asked, with the crops it is asked for."""
        return f"{self.about} {', '.join(self.crops)}." if self.crops else self.about

    @property
    def words(self) -> str:
        """What is asked and what settles it."""
        return f"{self.asks} {self.cure}".strip()


@dataclass(frozen=True, slots=True)
class Earliest:
    """The first day a kind of planting may be sown, as far as labels tell.

    `day` is None where nothing holds it back, or where `asks` says what is not known;
    `by` and `wait` are the spraying that decides and what its card asks for.
    """

    kind: str
    day: datetime.date | None
    by: Spraying | None
    wait: Given | None
    asks: tuple[Ask, ...]

    @property
    def unknown(self) -> tuple[str, ...]:
        """What is not known, in words."""
        return tuple(ask.words for ask in self.asks)


@dataclass(frozen=True, slots=True)
class PlaceWaits:
    """What was and will be sprayed on a place, and the first day for every kind of planting.

    `logged` counts what the log says, `planned` the planned sprayings beside it.
    """

    place_id: str
    sprayings: tuple[Spraying, ...]
    logged: tuple[Earliest, ...]
    planned: tuple[Earliest, ...]

    def not_answered(self, why: str) -> "PlaceWaits":
        """Return the same place with no answer for any kind, and why."""

        def opened(answer: Earliest) -> Earliest:
            # no day stands beside the question: it would be read as the answer
            return Earliest(answer.kind, None, None, None, (Ask(why, "", None), *answer.asks))

        return replace(
            self,
            logged=tuple(opened(answer) for answer in self.logged),
            planned=tuple(opened(answer) for answer in self.planned),
        )

    def any_logged(self) -> bool:
        """Return whether the log has a spraying here."""
        return any(spraying.logged for spraying in self.sprayings)

    def open_questions(self) -> tuple[Ask, ...]:
        """Return what is not known of any kind, each once with all the crops it is asked for."""
        asks = [ask for answer in (*self.logged, *self.planned) for ask in answer.asks]
        crops: dict[tuple[str, str], list[str]] = {}
        # what settles it for one crop settles it for every other, so it is asked once
        for ask in asks:
            crops.setdefault((ask.about, ask.cure), []).extend(ask.crops)
        return tuple(
            Ask(about, cure, None, tuple(dict.fromkeys(named)))
            for (about, cure), named in crops.items()
        )

    def logged_for(self, kind: str) -> Earliest:
        """Return the answer for one kind by the log alone. Raises StopIteration for no kind."""
        return next(answer for answer in self.logged if answer.kind == kind)


@dataclass(frozen=True, slots=True)
class Decided:
    """Counts by planting, waits by place, and log entries that do not say where they sprayed."""

    plantings: tuple[PlantingCounts, ...] = ()
    waits: tuple[PlaceWaits, ...] = ()
    nowhere: tuple[LogEntry, ...] = ()
    noxious: tuple[NoxiousWeed, ...] = ()

    def numbers(self) -> tuple[Quantity, ...]:
        """Return every number of the counts."""
        counts = [count for planting in self.plantings for count in planting.counts]
        seed = [needed for count in counts for needed in count.seed]
        return (
            *(number for count in counts for number in count.numbers.values()),
            *(needed.bulk for needed in seed),
            *(needed.cost for needed in seed if needed.cost is not None),
        )

    def of_place(self, place_id: str) -> tuple[PlantingCounts, ...]:
        """Return the plantings of a place that are to be counted."""
        return tuple(planting for planting in self.plantings if planting.place_id == place_id)


NOTHING_DECIDED = Decided()  # what readers other than the owner are given
