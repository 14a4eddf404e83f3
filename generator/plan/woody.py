"""Rows of trees and shrubs: what is planted, guarded and replaced, and what is to be said of it."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.compute import woody
from generator.compute.buying import TOTAL_COUNT
from generator.inventory.places import PlantedGround
from generator.inventory.schema import Inventory
from generator.inventory.woody import Guard, Plant, WoodyRow
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.ground import line_length
from generator.plan.model import Finding, RowPlanted
from generator.plan.notes import Note
from generator.working import Figure, Given, Measured, Quantity


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of a planting with their numbers, and what is to be said of them."""

    rows: tuple[RowPlanted, ...] = ()
    findings: tuple[Finding, ...] = ()


def plan_planting(asked: JobAsked, inventory: Inventory) -> Rows:
    """Return what is planted and guarded; nothing where the length of the rows is not known."""
    found: list[Finding] = []
    rows: list[RowPlanted] = []
    for row in asked.planting.woody:
        planted = _planted(asked, row, inventory)
        rows += [planted] if planted is not None else []
        found += _row_findings(asked, row, planted)
    return Rows(tuple(rows), tuple(found))


def plan_replacing(asked: JobAsked, inventory: Inventory) -> Rows:
    """Return how many of the rows may have to be replaced, where a share is typed."""
    found: list[Finding] = []
    rows: list[RowPlanted] = []
    for row in asked.planting.woody:
        planted = _planted(asked, row, inventory)
        if planted is None:
            found.append(finding(Caution.ROWS_NOT_MEASURED, asked.job_id, row.where))
        elif row.replace_fraction is None:
            name = planted.plant.name
            found.append(finding(Note.NO_REPLACE_SHARE, asked.job_id, row.where, item=name))
        else:
            base = f"{asked.job_id}/{row.plants}"
            again = woody.REPLACED(
                f"{base}.replaced_count",
                plants_count=planted.numbers["plants_count"],
                replace_fraction=row.replace_fraction,
            )
            rows.append(
                RowPlanted(
                    planted.plant,
                    None,
                    row.spacing_ft,
                    row.rows_apart_ft,
                    {"replaced_count": again},
                )
            )
    return Rows(tuple(rows), tuple(found))


def _planted(asked: JobAsked, row: WoodyRow, inventory: Inventory) -> RowPlanted | None:
    length = row.row_ft or length_of(asked.ground)
    if length is None:
        return None
    base = f"{asked.job_id}/{row.plants}"
    in_row = woody.IN_ROW(f"{base}.plants_in_row_count", row_ft=length, spacing_ft=row.spacing_ft)
    numbers = {
        "plants_in_row_count": in_row,
        "plants_count": woody.PLANTS(
            f"{base}.plants_count", plants_in_row_count=in_row, rows_count=row.rows_count
        ),
    }
    if row.rows_apart_ft is not None and row.rows_count.value > 1:
        numbers["rows_width_ft"] = woody.ROWS_WIDTH(
            f"{base}.rows_width_ft", rows_count=row.rows_count, rows_apart_ft=row.rows_apart_ft
        )
    return RowPlanted(
        plant_of(row, inventory),
        guard_of(row, inventory),
        row.spacing_ft,
        row.rows_apart_ft,
        numbers,
    )


def length_of(ground: PlantedGround) -> Given | Measured | None:
    """Return the length of a place: measured, else that of its line; None where neither is."""
    if ground.length_ft is not None:
        return ground.length_ft
    return line_length(ground.line_lat_lon) if ground.line_lat_lon is not None else None


def plant_of(row: WoodyRow, inventory: Inventory) -> Plant:
    """Return what stands in a row."""
    return next(one for one in inventory.plants if one.id == row.plants)


def guard_of(row: WoodyRow, inventory: Inventory) -> Guard | None:
    """Return the guard every plant of a row gets."""
    return next((one for one in inventory.guards if one.id == row.guards), None)


def used_up(job_id: str, rows: tuple[RowPlanted, ...]) -> Iterator[tuple[str, str, Quantity]]:
    """Yield kind, id and count of everything the rows of a job take, each thing once."""
    guarded: dict[str, list[Quantity]] = {}
    for row in rows:
        count = row.numbers.get("replaced_count") or row.numbers["plants_count"]
        yield "plant", row.plant.id, count
        if row.guard is not None:
            guarded.setdefault(row.guard.id, []).append(count)
    for guard, counts in guarded.items():
        yield "guard", guard, _in_all(f"{job_id}/{guard}.guards_count", counts)


def _in_all(identity: str, counts: list[Quantity]) -> Quantity:
    return counts[0] if len(counts) == 1 else TOTAL_COUNT(identity, parts=tuple(counts))


def _row_findings(asked: JobAsked, row: WoodyRow, planted: RowPlanted | None) -> Iterator[Finding]:
    if planted is None:
        yield finding(Caution.ROWS_NOT_MEASURED, asked.job_id, row.where)
        return
    if planted.guard is None:
        yield finding(Note.NO_GUARDS, asked.job_id, row.where, item=planted.plant.name)
    across, width = planted.numbers.get("rows_width_ft"), asked.ground.width_ft
    if across is not None and width is not None and across.value > width.value:
        figures: tuple[tuple[str, Figure], ...] = (
            ("From first row to last", across),
            ("Width of the place", width),
        )
        yield finding(Caution.ROWS_TOO_WIDE, asked.job_id, row.where, figures)
