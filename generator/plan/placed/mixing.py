"""Places to mix, held against what the labels of products keep mixing away from."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from generator.dataclass import dataclass
from generator.geometry.plane import middle_of_plane, snapped_ft
from generator.inventory.label import Setback
from generator.inventory.land import LandThing
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.findings.about_land import LandCaution, LandStop
from generator.plan.findings.order import about_record, all_listed, finding
from generator.plan.land.kept_kinds import (
    EDGE_DOUBT_TIMES,
    KeptThing,
    edge_of,
    is_edge_in_doubt,
    kept_as,
    kind_kept_from,
)
from generator.plan.land.kept_things import drawn_kinds
from generator.plan.land.lying import lying_of, piece_of
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding
from generator.plan.placed.measured import measured_on
from generator.working import Figure, Given, Reference

MIXING_PLACE = "mixing_place"


@dataclass(frozen=True, slots=True)
class _Kept:
    """What a label keeps mixing away from: a kind of thing, the distance, the product."""

    kind: str
    setback: Setback
    product: str

    @property
    def distance(self) -> Given:
        return self.setback.distance_ft


@dataclass(frozen=True, slots=True)
class _Apart:
    """How far a thing lies from a place to mix by their points, and how far each may be off."""

    apart_ft: float
    off: tuple[Given | Reference, Given | Reference]

    @property
    def surely_ft(self) -> float:
        return self.apart_ft - sum(one.value for one in self.off)


def mixing_findings(inventory: Inventory) -> Iterator[Finding]:
    """Yield a stop for each thing that a place to mix is too near to, a caution where it may be.

    Of kinds of which nobody says that all are drawn, a caution says so.
    """
    kept = tuple(_kept(inventory.products))
    told = drawn_kinds(inventory)
    things: tuple[KeptThing, ...] = (*inventory.land, *inventory.water_holes)
    for mixing in inventory.land:
        if mixing.kind == MIXING_PLACE:
            for thing in things:
                yield from _too_near(inventory, mixing, thing, kept)
            yield from _not_told(mixing, [one for one in kept if one.kind not in told])


def _kept(products: Iterable[Product]) -> Iterator[_Kept]:
    for product in products:
        listed = product.label.mixing_setbacks_ft if product.label is not None else None
        for setback in listed if isinstance(listed, tuple) else ():
            yield _Kept(kind_kept_from(setback), setback, product.name)


def _too_near(
    inventory: Inventory, mixing: LandThing, thing: KeptThing, every: Iterable[_Kept]
) -> Iterator[Finding]:
    kept = [one for one in every if one.kind == kept_as(thing)]
    apart = _apart(inventory, mixing, thing) if kept else None
    if apart is None:
        return
    near = [one for one in kept if _may_be_near(one, thing, apart)]
    if not near:
        return
    too_near = [one for one in near if apart.apart_ft < one.distance.value]
    reason = LandStop.MIXED_TOO_NEAR if too_near else LandCaution.MIXED_NEAR
    names: Mapping[str, str] = {
        "mixing": mixing.name,
        "kept_from": thing.name,
        "products": _products(too_near or near),
    }
    figures = _figures(mixing, thing, apart, near)
    yield finding(reason, about_record(mixing), mixing.where, figures, **names)


def _apart(inventory: Inventory, mixing: LandThing, thing: KeptThing) -> _Apart | None:
    lies, lies_too = lying_of(mixing), lying_of(thing)
    if lies is None or lies_too is None:
        return None
    middle = middle_of_plane(inventory.property.location_lat_lon or lies.points_lat_lon[0])
    apart_ft = snapped_ft(float(piece_of(lies, middle).distance(piece_of(lies_too, middle))))
    return _Apart(apart_ft, (off_ft(mixing), off_ft(thing)))


def _may_be_near(kept: _Kept, thing: KeptThing, apart: _Apart) -> bool:
    """Return whether a thing may be nearer than a label allows, by its points or another edge."""
    times = 1
    if is_edge_in_doubt(kept.kind, kept.setback.counts_from, edge_of(thing)):
        times = EDGE_DOUBT_TIMES
    return apart.surely_ft < times * kept.distance.value


def _figures(
    mixing: LandThing, thing: KeptThing, apart: _Apart, near: Sequence[_Kept]
) -> tuple[tuple[str, Figure], ...]:
    longest = max((one.distance for one in near), key=lambda distance: distance.value)
    return (
        ("Apart, by their points", measured_on("apart_ft", apart.apart_ft, "ft", mixing, thing)),
        ("To keep, at the most", longest),
        ("Points of the one may be off", apart.off[0]),
        ("Points of the other may be off", apart.off[1]),
    )


def _not_told(mixing: LandThing, kept: Sequence[_Kept]) -> Iterator[Finding]:
    if kept:
        names = {
            "mixing": mixing.name,
            "kept_from": all_listed(dict.fromkeys(one.setback.words for one in kept)),
            "products": _products(kept),
        }
        reason = LandCaution.MIXED_WHERE_NOT_TOLD
        yield finding(reason, about_record(mixing), mixing.where, (), **names)


def _products(kept: Iterable[_Kept]) -> str:
    return all_listed(dict.fromkeys(one.product for one in kept))
