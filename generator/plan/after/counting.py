"""What one count of a planting comes to: cells, plants, the ground and seed of its stretch."""

from generator.compute import plant_count as formulas
from generator.compute.area import STRIP_AREA
from generator.compute.money import USED
from generator.inventory.counted import Counted
from generator.inventory.places import Planting
from generator.inventory.stock import SeedLot
from generator.plan.model.counts import SeedNeeded
from generator.plan.model.place import Place
from generator.plan.sowing.seed_rates import sowings
from generator.plan.standing.stretches import stations
from generator.working import Figure, Quantity

WHOLE_PLACE = "over the whole place"


def count_numbers(base: str, counted: Counted) -> dict[str, Quantity]:
    """Return the numbers of a count by name; `plants_per_sq_m` is the one that counts."""
    row, spacing = counted.mean_plants_per_row_ft, counted.row_spacing_in
    if row is not None and spacing is not None:
        numbers = {
            "plants_per_sq_m": formulas.ROW_PER_SQ_M(
                f"{base}/plants_per_sq_m", plants_per_row_ft=row, row_spacing_in=spacing
            ),
            "plants_per_ac": formulas.ROW_PER_AC(
                f"{base}/plants_per_ac", plants_per_row_ft=row, row_spacing_in=spacing
            ),
        }
    else:
        numbers = _frame_numbers(base, counted)
    return numbers | {
        "plants_per_sq_ft": formulas.PER_SQ_FT(
            f"{base}/plants_per_sq_ft", plants_per_sq_m=numbers["plants_per_sq_m"]
        )
    }


def _frame_numbers(base: str, counted: Counted) -> dict[str, Quantity]:
    placed, with_plant = counted.placements_count, counted.cells_with_plant_count
    assert placed is not None
    assert with_plant is not None
    cells: Figure = counted.cells_count or formulas.CELLS_LOOKED_AT(
        f"{base}/cells_count", placements_count=placed
    )
    frequency = formulas.FREQUENCY(
        f"{base}/frequency_fraction", cells_with_plant_count=with_plant, cells_count=cells
    )
    careful = formulas.CAREFUL(f"{base}/careful_plants_per_sq_m", frequency_fraction=frequency)
    one_each = formulas.ONE_IN_A_CELL(
        f"{base}/one_in_a_cell_plants_per_sq_m",
        cells_with_plant_count=with_plant,
        cells_count=cells,
    )
    # of two ways to read one count the lower: thin must not pass for thick
    lower = formulas.LOWER(
        f"{base}/plants_per_sq_m",
        careful_plants_per_sq_m=careful,
        one_in_a_cell_plants_per_sq_m=one_each,
    )
    return {
        **({"cells_count": cells} if isinstance(cells, Quantity) else {}),
        "frequency_fraction": frequency,
        "careful_plants_per_sq_m": careful,
        "one_in_a_cell_plants_per_sq_m": one_each,
        "plants_per_sq_m": lower,
    }


def ground_of(base: str, counted: Counted, place: Place) -> Quantity | None:
    """Return the ground of what was counted; None of a stretch on a place without taped width."""
    if counted.from_ft is None or counted.to_ft is None:
        return place.area
    width = place.typed.width_ft if place.typed is not None else None
    # an outline has no one width that a stretch of it could be taken by
    if width is None:
        return None
    length = formulas.STRETCH_LENGTH(
        f"{base}/stretch_length_ft", to_ft=counted.to_ft, from_ft=counted.from_ft
    )
    return STRIP_AREA(f"{base}/stretch_ac", length_ft=length, width_ft=width)


def placements_wanted(base: str, area: Quantity) -> Quantity:
    """Return at how many places the frame is to be laid on so much ground."""
    return formulas.PLACEMENTS_WANTED(f"{base}/placements_count", area_ac=area)


def seed_for(
    base: str, planting: Planting, area: Quantity, lots: tuple[SeedLot, ...]
) -> tuple[SeedNeeded, ...]:
    """Return the seed of every lot that so much ground takes at the planting's own rate."""
    return tuple(
        SeedNeeded(
            sowing.lot,
            sowing.numbers["bulk_seed_lb"],
            USED(
                f"{base}/{sowing.lot.id}.used_usd",
                amount=sowing.numbers["bulk_seed_lb"],
                package_size=sowing.lot.package_lb,
                price_usd=sowing.lot.price_usd,
            )
            if sowing.lot.package_lb is not None and sowing.lot.price_usd is not None
            else None,
        )
        for sowing in sowings(base, planting, area, lots)
    )


def covers(later: Counted, earlier: Counted) -> bool:
    """Return whether one count takes in the whole stretch of another."""
    (begins, ends), (first, last) = stations(later), stations(earlier)
    return begins <= first and last <= ends


def apart(counted: Counted, other: Counted) -> bool:
    """Return whether two counts have no stretch in common."""
    (begins, ends), (first, last) = stations(counted), stations(other)
    # stretches that only touch share no ground
    return ends <= first or last <= begins


def stretch_words(counted: Counted) -> str:
    """Return what was counted in words: a stretch, or the whole place."""
    return WHOLE_PLACE if counted.from_ft is None else "on a stretch"


def stretch_figures(counted: Counted) -> tuple[tuple[str, Figure], ...]:
    """Return the stations of a stretch, none of the whole place."""
    if counted.from_ft is None or counted.to_ft is None:
        return ()
    return (("From", counted.from_ft), ("To", counted.to_ft))
