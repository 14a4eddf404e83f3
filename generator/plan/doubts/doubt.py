"""One thing the log says that cannot be, or hardly, and the line of the log that settles it."""

from collections.abc import Iterable, Mapping

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround, Planting
from generator.inventory.season import season_of
from generator.plan.findings.words import Caution
from generator.plan.model.days import day_words
from generator.plan.model.items import Taking
from generator.reference.steps import Step, StepPlan
from generator.working import Figure

Confirmed = tuple[frozenset[str], ...]  # ids of entries that one entry confirms together


@dataclass(frozen=True, slots=True)
class Doubt:
    """What is asked about an entry: why, in which words, and what it does not go with.

    `beside` is the other entry of two that say the same; `item` is the id of the thing of which
    more was used than was there; `season` is the one that the day of the entry lies outside of.
    """

    reason: Caution
    entry: LogEntry
    words: dict[str, str]
    figures: tuple[tuple[str, Figure], ...] = ()
    beside: LogEntry | None = None
    item: str | None = None
    season: int | None = None
    is_of_work: bool = True


@dataclass(frozen=True, slots=True)
class StepLogged:
    """A step that an entry can be about, with the plan it stands in and where it is done."""

    place: PlantedGround
    planting: Planting
    plan: StepPlan
    step: Step

    @property
    def words(self) -> str:
        """The step and its place, as a sentence names them."""
        return f"{self.step.name}, {self.place.name}"

    def season_for(self, entry: LogEntry) -> int:
        """Return the season an entry about the step counts for."""
        if self.plan.yearly_from is None:
            return self.planting.season + self.step.seasons_later
        named = entry.job.season if entry.job is not None else None
        return season_of(entry.done_on) if named is None else named


def steps_to_log(
    places: tuple[PlantedGround, ...], plans: Mapping[str, StepPlan]
) -> dict[Taking, StepLogged]:
    """Return every step an entry can be about, by its planting and its id."""
    return {
        (planting.id, step.id): StepLogged(place, planting, plan, step)
        for place in places
        for planting in place.plantings
        for plan in (plans[name] for name in (planting.steps, planting.upkeep) if name is not None)
        for step in plan.steps
    }


def about(entry: LogEntry, steps: dict[Taking, StepLogged]) -> StepLogged | None:
    """Return the step an entry is about, None where it is about no job."""
    return steps[entry.job.planting, entry.job.step] if entry.job is not None else None


def confirmations(entries: Iterable[LogEntry]) -> Confirmed:
    """Return what entries say is right as it stands: those they name, and themselves."""
    return tuple(frozenset({entry.id, *entry.confirms}) for entry in entries if entry.confirms)


def is_confirmed(confirmed: Confirmed, *doubted: LogEntry) -> bool:
    """Return whether one entry says of all of these that they are right as they stand."""
    wanted = {entry.id for entry in doubted}
    # by one entry together: confirmed beside a third, two may still be one said twice
    return any(wanted <= ids for ids in confirmed)


def day_of(entry: LogEntry) -> str:
    """Return the day of an entry in words."""
    return day_words(entry.done_on)
