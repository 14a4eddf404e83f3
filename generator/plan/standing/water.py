"""Water holes: what each holds, what deer take, how long it lasts, whether a fawn gets out."""

from generator.compute import water as rates
from generator.inventory.ground import WaterHole
from generator.plan.findings.about_places import PlaceCaution, PlaceNote
from generator.plan.findings.order import finding
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.place import DeerWater, Water
from generator.reference.library import values
from generator.working import Figure, Given, Quantity, Reference

LOW, HIGH = "deer_water_low_qt_per_100_lb_per_day", "deer_water_high_qt_per_100_lb_per_day"
STEEPEST, RAMP = "steepest_pond_side_ft_per_ft", "pond_ramp_ft_per_ft"
FLATTER_SIDES = (
    "Dug in earth, the bank caves in: lay the sides back. A tank with made walls is no dug pond: "
    "fence it so that nothing falls in over the wall, and leave this caution."
)
A_WAY_OUT = (
    "Lay back a side, or build a rough ramp from the bottom to the edge. Deer take a slick ramp "
    "only once netting or brush covers it."
)
A_POINT = Reference("bottom_ft", 0, "ft", "arithmetic", "a cone runs to a point")


def waters(water_holes: tuple[WaterHole, ...], season: int) -> tuple[Water, ...]:
    """Return every water hole with its numbers."""
    return tuple(_water(hole, f"water/{season}/{hole.id}") for hole in water_holes)


def _water(hole: WaterHole, base: str) -> Water:
    volume = _volume(hole, base)
    held = rates.WATER(f"{base}/water_gal", volume_cu_ft=volume)
    numbers = {
        "volume_cu_ft": volume,
        "water_gal": held,
        "ramp_run_ft": rates.RAMP_RUN(
            f"{base}/ramp_run_ft", depth_ft=hole.depth_ft, ramp_ft_per_ft=values()[RAMP]
        ),
    }
    return Water(hole, numbers | _sides(hole, base), _drunk(hole, base, held))


def _volume(hole: WaterHole, base: str) -> Quantity:
    identity = f"{base}/volume_cu_ft"
    if hole.shape == "round":
        assert hole.top_ft is not None
        assert hole.bottom_ft is not None
        return rates.ROUND(
            identity, top_ft=hole.top_ft, bottom_ft=hole.bottom_ft, depth_ft=hole.depth_ft
        )
    if hole.shape == "cone":
        assert hole.top_ft is not None
        return rates.CONE(identity, top_ft=hole.top_ft, depth_ft=hole.depth_ft)
    assert hole.length_ft is not None
    assert hole.width_ft is not None
    assert hole.side_ft_per_ft is not None
    return rates.RECTANGLE(
        identity,
        length_ft=hole.length_ft,
        width_ft=hole.width_ft,
        depth_ft=hole.depth_ft,
        side_ft_per_ft=hole.side_ft_per_ft,
    )


def _sides(hole: WaterHole, base: str) -> dict[str, Quantity]:
    """Return the slope of a round hole's sides, or the edges of a rectangle's bottom."""
    if hole.top_ft is not None:
        slope = rates.SLOPE(
            f"{base}/side_ft_per_ft",
            top_ft=hole.top_ft,
            bottom_ft=hole.bottom_ft or A_POINT,
            depth_ft=hole.depth_ft,
        )
        return {"side_ft_per_ft": slope}
    edges = {"bottom_length_ft": hole.length_ft, "bottom_width_ft": hole.width_ft}
    return {
        name: rates.BOTTOM_EDGE(
            f"{base}/{name}",
            top_edge_ft=edge,
            depth_ft=hole.depth_ft,
            side_ft_per_ft=hole.side_ft_per_ft,
        )
        for name, edge in edges.items()
        if edge is not None and hole.side_ft_per_ft is not None
    }


def _drunk(hole: WaterHole, base: str, held: Quantity) -> tuple[DeerWater, ...]:
    """Return what deer take: by the need the owner typed, else by both ends of the range."""
    if hole.deer_count is None or hole.deer_weight_lb is None:
        return ()
    typed = hole.need_qt_per_100_lb_per_day
    if typed is not None:
        return (_deer_water(hole, base, held, "typed", typed),)
    return (
        _deer_water(hole, base, held, "low", values()[LOW]),
        _deer_water(hole, base, held, "high", values()[HIGH]),
    )


def _deer_water(
    hole: WaterHole, base: str, held: Quantity, name: str, need: Given | Reference
) -> DeerWater:
    assert hole.deer_count is not None
    assert hole.deer_weight_lb is not None
    daily = rates.DEER_WATER(
        f"{base}/{name}_gal_per_day",
        deer_count=hole.deer_count,
        deer_weight_lb=hole.deer_weight_lb,
        need_qt_per_100_lb_per_day=need,
    )
    refills = None
    if hole.dry_spell_days is not None and hole.refill_gal is not None:
        refills = rates.REFILLS(
            f"{base}/{name}_refills_count",
            deer_water_gal_per_day=daily,
            dry_days=hole.dry_spell_days,
            water_gal=held,
            refill_gal=hole.refill_gal,
        )
    lasts = rates.LASTS(f"{base}/{name}_lasts_days", water_gal=held, deer_water_gal_per_day=daily)
    return DeerWater(name != "low", daily, lasts, refills)


def water_findings(water: Water) -> list[Finding]:
    """Return what to look at before digging a hole or relying on it."""
    hole = water.hole
    found = _shape_findings(water)
    if not water.drunk:
        found.append(finding(PlaceNote.NO_DEER_COUNT, Subject("water_hole", hole.id), hole.where))
    elif any(drink.refills is None for drink in water.drunk):
        found.append(finding(PlaceNote.NO_DRY_SPELL, Subject("water_hole", hole.id), hole.where))
    elif hole.refill_gal is not None and water.load() != hole.refill_gal:
        figures = (("One load", hole.refill_gal), ("The hole holds", water.numbers["water_gal"]))
        found.append(
            finding(PlaceNote.LOAD_OVER_HOLE, Subject("water_hole", hole.id), hole.where, figures)
        )
    return found


def _shape_findings(water: Water) -> list[Finding]:
    """Return a caution on steep sides, and on no way out, with the cure and figures of each."""
    hole, typed = water.hole, water.hole.ramp_ft_per_ft
    sides: Figure | None = water.numbers.get("side_ft_per_ft", hole.side_ft_per_ft)
    assert isinstance(sides, Given | Quantity)
    steepest, ramp = values()[STEEPEST], values()[RAMP]
    # feet out to a foot up, so more is flatter; one way out is enough
    flattest_ft_per_ft = max(sides.value, typed.value if typed is not None else 0)
    faults, cures = [], []
    figures: list[tuple[str, Figure]] = [("Sides here", sides)]
    if sides.value < steepest.value:
        faults.append("sides steeper than dug ponds should have")
        cures.append(FLATTER_SIDES)
        figures.append(("Sides not steeper than", steepest))
    if flattest_ft_per_ft < ramp.value:
        faults.append("neither a side nor a ramp flat enough for a fawn to climb out")
        cures.append(A_WAY_OUT)
        figures.append(("A ramp no steeper than", ramp))
        figures.append(("Such a ramp runs out from the bottom", water.numbers["ramp_run_ft"]))
    if not faults:
        return []
    return [
        finding(
            PlaceCaution.STEEP_OR_NO_WAY_OUT,
            Subject("water_hole", hole.id),
            hole.where,
            tuple(figures),
            what=", and ".join(faults),
            cure=" ".join(cures),
        )
    ]
