"""Spray records as a table for a spreadsheet: a row for each product of each record."""

from collections.abc import Mapping

from generator.book.cells import Cell, Table, as_day, as_number, yes_no
from generator.inventory.fields import Where
from generator.inventory.log import Used
from generator.inventory.log_work import Sprayed
from generator.inventory.stock import Product
from generator.plan.model import Plan
from generator.plan.spray_record import SprayRecord, kept_until, missing_by_rule, missing_extras

RECORD_COLUMNS = (
    "entry", "done_on", "recorded_on", "place", "site", "area_ac", "spot", "product", "epa_reg_no",
    "restricted_use", "amount", "unit", "by", "licence_number", "started_at", "stopped_at",
    "wind_mph", "wind_from_deg", "temperature_f", "humidity_fraction", "sprayer", "nozzle",
    "carrier_gal_per_ac", "spray_gal", "weeds", "weed_height_in", "growth_stage", "lot_number",
    "neighbour_told", "copy_given_on", "keep_until", "left_out", "note",
)  # fmt: skip
NOTHING_SAID = Sprayed(where=Where("", 0, 0))


def record_table(plan: Plan) -> Table:
    """Return the spray records, a row for each product of each of them."""
    sprayers = {one.id: one.name for one in plan.sprayers}
    rows = [
        _record_row(one, product, used, sprayers)
        for one in plan.records
        for product, used in (one.products or ((None, None),))
    ]
    return Table("Records", RECORD_COLUMNS, rows)


def _record_row(
    one: SprayRecord, product: Product | None, used: Used | None, sprayers: Mapping[str, str]
) -> tuple[Cell, ...]:
    entry, said = one.entry, one.entry.sprayed or NOTHING_SAID
    card = product.label if product is not None else None
    return (
        entry.id, as_day(entry.done_on), as_day(entry.recorded_on), one.location, one.site,
        as_number(one.area), yes_no(said.spot), product.name if product is not None else None,
        card.epa_reg_no if card is not None else None,
        yes_no(card.restricted_use if card is not None else None),
        as_number(used.amount if used is not None else None),
        used.amount.unit if used is not None else None,
        one.who, one.licence_number, said.started_at, said.stopped_at,
        as_number(said.wind_mph), as_number(said.wind_from_deg), as_number(said.temperature_f),
        as_number(said.humidity_fraction), sprayers.get(said.sprayer or ""), said.nozzle,
        as_number(said.carrier_gal_per_ac), as_number(said.spray_gal), said.weeds,
        as_number(said.weed_height_in), said.growth_stage, said.lot_number,
        yes_no(said.neighbour_told), as_day(said.copy_given_on), as_day(kept_until(one)),
        ", ".join((*missing_by_rule(one), *missing_extras(one))), entry.note,
    )  # fmt: skip
