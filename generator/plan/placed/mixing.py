"""Places to mix, held against what the labels of products keep mixing away from."""

from collections.abc import Iterable, Iterator, Mapping

from generator.dataclass import dataclass
from generator.geometry.plane import middle_of_plane, snapped_ft
from generator.inventory.label import Setback
from generator.inventory.land import LandThing
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.findings.about_land import LandCaution, LandStop
from generator.plan.findings.order import about_record, all_listed, finding
from generator.plan.land.lying import lying_of, piece_of
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding
from generator.plan.placed.measured import measured_on
from generator.reference.land_kinds import land_kinds
from generator.working import Given

MIXING_PLACE = "mixing_place"


@dataclass(frozen=True, slots=True)
class _Kept:
    """What a label keeps mixing away from: a kind of thing, the distance, the product."""

    kind: str
    distance: Given
    product: str


def mixing_findings(inventory: Inventory) -> Iterator[Finding]:
    """Yield a stop for each thing that a place to mix is too near to, a caution where it may be."""
    kept = tuple(_kept(inventory.products))
    for mixing in inventory.land:
        if mixing.kind == MIXING_PLACE:
            for thing in inventory.land:
                yield from _too_near(inventory, mixing, thing, kept)


def _kept(products: Iterable[Product]) -> Iterator[_Kept]:
    for product in products:
        listed = product.label.mixing_setbacks_ft if product.label is not None else None
        for setback in listed if isinstance(listed, tuple) else ():
            yield from _of(product, setback)


def _of(product: Product, setback: Setback) -> Iterator[_Kept]:
    if setback.kind is not None:
        yield _Kept(setback.kind, setback.distance_ft, product.name)


def _too_near(
    inventory: Inventory, mixing: LandThing, thing: LandThing, every: Iterable[_Kept]
) -> Iterator[Finding]:
    kind = land_kinds()[thing.kind].keeps
    kept = [one for one in every if one.kind == kind]
    lies, lies_too = lying_of(mixing), lying_of(thing)
    if not kept or lies is None or lies_too is None:
        return
    middle = middle_of_plane(inventory.property.location_lat_lon or lies.points_lat_lon[0])
    apart_ft = snapped_ft(float(piece_of(lies, middle).distance(piece_of(lies_too, middle))))
    both_off = (off_ft(mixing), off_ft(thing))
    surely_ft = apart_ft - sum(off.value for off in both_off)
    near = [one for one in kept if surely_ft < one.distance.value]
    if not near:
        return
    too_near = [one for one in near if apart_ft < one.distance.value]
    reason = LandStop.MIXED_TOO_NEAR if too_near else LandCaution.MIXED_NEAR
    longest = max((one.distance for one in near), key=lambda distance: distance.value)
    figures = (
        ("Apart, by their points", measured_on("apart_ft", apart_ft, "ft", mixing, thing)),
        ("To keep, at the most", longest),
        ("Points of the one may be off", both_off[0]),
        ("Points of the other may be off", both_off[1]),
    )
    names: Mapping[str, str] = {
        "mixing": mixing.name,
        "kept_from": thing.name,
        "products": all_listed(dict.fromkeys(one.product for one in too_near or near)),
    }
    yield finding(reason, about_record(mixing), mixing.where, figures, **names)
