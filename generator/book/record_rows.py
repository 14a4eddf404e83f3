"""Spray records as rows of a table: a row for each product of each record."""

from generator.book.cells import Cell, as_number, as_time, yes_no_cell
from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.log import LogEntry, Used
from generator.inventory.log_work import Sprayed
from generator.inventory.stock import Product
from generator.plan.model.plan import Plan
from generator.plan.model.spray_record import (
    SprayRecord,
    kept_until,
    missing_by_rule,
    missing_extras,
)

SAID_COLUMNS = (
    "entry", "done_on", "recorded_on", "place", "part", "site", "area_ac", "spot", "product",
    "epa_reg_no", "restricted_use", "amount", "unit", "by", "licence_number", "started_at",
    "stopped_at", "wind_mph", "wind_not_measured", "wind_from_deg", "temperature_f",
    "humidity_fraction", "sprayer", "own_sprayer", "nozzle", "carrier_gal_per_ac", "spray_gal",
    "weeds", "weed_height_in", "growth_stage", "lot_number", "neighbour_told", "copy_given_on",
)  # fmt: skip
# What can no longer be known of the spraying, and how far it is bounded.
UNKNOWN_COLUMNS = (
    "could_be_products", "at_most", "at_most_unit", "could_be_places", "latest_on", "checked_with",
)  # fmt: skip
LAST_COLUMNS = ("keep_until", "left_out", "confirmed_by", "note")
RECORD_COLUMNS = (*SAID_COLUMNS, *UNKNOWN_COLUMNS, *LAST_COLUMNS)
NOTHING_SAID = Sprayed(where=Where("", 0, 0))


@dataclass(frozen=True, slots=True)
class _Names:
    """What the things that a record names by their ids are called."""

    sprayers: dict[str, str]
    products: dict[str, str]
    places: dict[str, str]


def record_rows(plan: Plan) -> list[tuple[Cell, ...]]:
    """Return the spray records under `RECORD_COLUMNS`."""
    names = _Names(
        {sprayer.id: sprayer.name for sprayer in plan.land.sprayers},
        {product.id: product.name for product in plan.land.products},
        {place.id: place.name for place in plan.places},
    )
    return [
        (
            *_said(record, product, used, names),
            *_unknown(record.entry, names),
            kept_until(record),
            ", ".join((*missing_by_rule(record), *missing_extras(record))),
            ", ".join(other.id for other in plan.entries if record.entry.id in other.confirms),
            record.entry.note,
        )
        for record in plan.records
        # a record that names no product is a spraying all the same, and keeps its row
        for product, used in (record.products or ((None, None),))
    ]


def _said(
    record: SprayRecord, product: Product | None, used: Used | None, names: _Names
) -> tuple[Cell, ...]:
    entry, said = record.entry, record.entry.sprayed or NOTHING_SAID
    card = product.label if product is not None else None
    return (
        entry.id, entry.done_on, entry.recorded_on, record.location,
        entry.job.part if entry.job is not None else said.part, record.site,
        as_number(record.area), yes_no_cell(said.spot),
        product.name if product is not None else None,
        card.epa_reg_no if card is not None else None,
        yes_no_cell(card.restricted_use if card is not None else None),
        as_number(used.amount if used is not None else None),
        used.amount.unit if used is not None else None,
        record.who, record.licence_number, as_time(said.started_at), as_time(said.stopped_at),
        as_number(said.wind_mph), yes_no_cell(said.wind_not_measured),
        as_number(said.wind_from_deg),
        as_number(said.temperature_f), as_number(said.humidity_fraction),
        names.sprayers.get(said.sprayer or ""), yes_no_cell(said.own_sprayer), said.nozzle,
        as_number(said.carrier_gal_per_ac), as_number(said.spray_gal), said.weeds,
        as_number(said.weed_height_in), said.growth_stage, said.lot_number,
        yes_no_cell(said.neighbour_told), said.copy_given_on,
    )  # fmt: skip


def _unknown(entry: LogEntry, names: _Names) -> tuple[Cell, ...]:
    unknown = entry.unknown
    if unknown is None:
        return (None,) * len(UNKNOWN_COLUMNS)
    return (
        ", ".join(names.products.get(name, name) for name in unknown.products) or "any product",
        as_number(unknown.most),
        unknown.most.unit if unknown.most is not None else None,
        ", ".join(names.places.get(name, name) for name in unknown.places),
        unknown.latest_on,
        unknown.checked_with,
    )
