"""Rows of trees and shrubs: what is planted, guarded and replaced, and what is to be said of it."""

from collections.abc import Iterator

from generator.compute import woody
from generator.dataclass import dataclass
from generator.inventory.woody import Guard, Plant, WoodyRow
from generator.plan.findings.about_sowing import SowCaution, SowNote
from generator.plan.findings.order import finding
from generator.plan.jobs.ground import length_of
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import RowPlanted
from generator.working import Figure


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of a planting with their numbers, and what is to be said of them."""

    rows: tuple[RowPlanted, ...] = ()
    findings: tuple[Finding, ...] = ()


def plan_planting(
    request: JobRequest, plants: tuple[Plant, ...], guards: tuple[Guard, ...]
) -> Rows:
    """Return what is planted and guarded; nothing where the length of the rows is not known."""
    found: list[Finding] = []
    rows: list[RowPlanted] = []
    for row in request.planting.woody:
        planted = _planted(request, row, plants, guards)
        rows += [planted] if planted is not None else []
        found += _row_findings(request, row, planted)
    return Rows(tuple(rows), tuple(found))


def plan_replacing(
    request: JobRequest, plants: tuple[Plant, ...], guards: tuple[Guard, ...]
) -> Rows:
    """Return how many of the rows may have to be replaced, where a share is typed."""
    found: list[Finding] = []
    rows: list[RowPlanted] = []
    for row in request.planting.woody:
        planted = _planted(request, row, plants, guards)
        if planted is None:
            found.append(
                finding(SowCaution.ROWS_NOT_MEASURED, about_job(request.job_id), row.where)
            )
        elif row.replace_fraction is None:
            name = planted.plant.name
            found.append(
                finding(SowNote.NO_REPLACE_SHARE, about_job(request.job_id), row.where, item=name)
            )
        else:
            base = f"{request.job_id}/{row.plants}"
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


def _planted(
    request: JobRequest, row: WoodyRow, plants: tuple[Plant, ...], guards: tuple[Guard, ...]
) -> RowPlanted | None:
    # the row's own length first: rows need not run the whole of a place
    length = row.row_ft or length_of(request.ground)
    if length is None:
        return None
    base = f"{request.job_id}/{row.plants}"
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
        plant_of(row, plants),
        guard_of(row, guards),
        row.spacing_ft,
        row.rows_apart_ft,
        numbers,
    )


def plant_of(row: WoodyRow, plants: tuple[Plant, ...]) -> Plant:
    """Return what stands in a row."""
    return next(plant for plant in plants if plant.id == row.plants)


def guard_of(row: WoodyRow, guards: tuple[Guard, ...]) -> Guard | None:
    """Return the guard every plant of a row gets."""
    return next((guard for guard in guards if guard.id == row.guards), None)


def _row_findings(
    request: JobRequest, row: WoodyRow, planted: RowPlanted | None
) -> Iterator[Finding]:
    if planted is None:
        yield finding(SowCaution.ROWS_NOT_MEASURED, about_job(request.job_id), row.where)
        return
    if planted.guard is None:
        yield finding(
            SowNote.NO_GUARDS, about_job(request.job_id), row.where, item=planted.plant.name
        )
    across, width = planted.numbers.get("rows_width_ft"), request.ground.width_ft
    if across is not None and width is not None and across.value > width.value:
        figures: tuple[tuple[str, Figure], ...] = (
            ("From first row to last", across),
            ("Width of the place", width),
        )
        yield finding(SowCaution.ROWS_TOO_WIDE, about_job(request.job_id), row.where, figures)
