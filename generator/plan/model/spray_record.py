"""A spraying in the log as its record says it, and what the record leaves out."""

import datetime
from collections.abc import Iterable, Iterator

from generator.dataclass import dataclass
from generator.inventory.label import LabelCard
from generator.inventory.log import LogEntry, Used
from generator.inventory.people import Applicator
from generator.inventory.places import PlantedGround, Planting
from generator.inventory.stock import Product
from generator.plan.model.days import last_day_kept_out
from generator.reference.library import values
from generator.reference.steps import Step
from generator.working import Given, Quantity

MORE_BY_A_TENTH = 1.1  # common practice: a measured place may be off by so much, and no more
# What is good to have on a record, as the log names it and as a page does.
EXTRAS = (
    ("started_at", "time begun"),
    ("stopped_at", "time ended"),
    ("wind_mph", "wind speed"),
    ("wind_from_deg", "wind direction"),
    ("temperature_f", "temperature"),
    ("humidity_fraction", "humidity"),
    ("sprayer", "sprayer"),
    ("nozzle", "nozzle"),
    ("carrier_gal_per_ac", "spray to an acre"),
    ("weeds", "weeds"),
    ("growth_stage", "how far they were"),
    ("lot_number", "lot number"),
    ("neighbour_told", "whether the neighbor was told"),
)


@dataclass(frozen=True, slots=True)
class KeepOut:
    """How long the labels of a spraying keep people out, from its latest day on.

    `hours` are those of each product whose card gives some; `unknown` says that a product or what
    its card says is not known, and `longest` is then the most that any card asks for.
    """

    day: datetime.date
    hours: tuple[tuple[str, Given], ...]
    unknown: bool
    longest: Given | None

    def known_until(self) -> datetime.date:
        """Return the last day for which the cards keep people out."""
        return max(self._days(hours for _, hours in self.hours), default=self.day)

    def until(self) -> datetime.date:
        """Return the last day for which people may have to keep out, as far as anything tells."""
        longest = [self.longest] if self.longest is not None else []
        return max((self.known_until(), *self._days(longest)))

    def _days(self, spans: Iterable[Given]) -> Iterator[datetime.date]:
        return (last_day_kept_out(self.day, hours.value) for hours in spans)


@dataclass(frozen=True, slots=True)
class SprayRecord:
    """One spraying in the log: what its record says, None or nothing where it is left out."""

    entry: LogEntry
    place: PlantedGround | None
    planting: Planting | None
    step: Step | None
    products: tuple[tuple[Product, Used], ...]
    site: str | None
    area: Given | None
    place_ac: Quantity | None
    location: str | None
    applicator: Applicator | None
    who: str | None
    licence_number: str | None
    hired: bool
    sprayer_id: str | None
    drift_check: LogEntry | None
    keep_out: KeepOut

    @property
    def restricted(self) -> bool:
        """Whether a restricted use product was sprayed, as far as the cards say."""
        return any(
            product.label is not None and product.label.restricted_use
            for product, _ in self.products
        )


def missing_by_rule(record: SprayRecord) -> tuple[str, ...]:
    """Return what the record leaves out of what federal rules ask for (source cfr_110_3)."""
    cards = [product.label for product, _ in record.products]
    wanted = (
        ("product and the amount used", bool(record.products)),
        ("EPA registration number", all(_has_number(card) for card in cards)),
        ("location", record.location is not None),
        ("size of the ground", record.area is not None or _is_small_spot(record)),
        # a size that cannot be tells nothing of the ground that was sprayed
        ("a size no larger than the place", not _is_larger_than_its_place(record)),
        ("crop or site", record.site is not None),
        ("who sprayed", record.who is not None),
        ("number of the license", record.licence_number is not None or not record.restricted),
    )
    return tuple(name for name, there in wanted if not there)


def _has_number(card: LabelCard | None) -> bool:
    return card is not None and bool(card.epa_reg_no)


def _is_larger_than_its_place(record: SprayRecord) -> bool:
    if record.area is None or record.place_ac is None:
        return False
    return larger_than_its_place(record.area, record.place_ac)


def larger_than_its_place(said_ac: Given, place_ac: Quantity) -> bool:
    """Return whether so much ground can hardly be on a place of this measured size."""
    return said_ac.value > place_ac.value * MORE_BY_A_TENTH


def _is_small_spot(record: SprayRecord) -> bool:
    """Whether it was spots, for which the rules ask no size where they are small together."""
    said = record.entry.sprayed
    most = values()["spot_record_ac"].value
    return bool(said and said.spot) and (record.area is None or record.area.value < most)


def missing_extras(record: SprayRecord) -> tuple[str, ...]:
    """Return what the record leaves out of what is good to have."""
    said = record.entry.sprayed
    return tuple(words for name, words in EXTRAS if said is None or getattr(said, name) is None)


def kept_until(record: SprayRecord) -> datetime.date:
    """Return the last day a record is kept by the federal law; a state may say longer."""
    years = round(values()["spray_record_kept_years"].value)
    day = record.entry.done_on
    try:
        return day.replace(year=day.year + years)
    except ValueError:  # the 29th of February has no day of its own in other years
        # kept a day longer rather than a day less
        return datetime.date(day.year + years, 3, 1)
