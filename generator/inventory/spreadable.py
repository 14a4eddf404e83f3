"""What is spread to feed or sweeten the ground: fertilizers by grade, limes by strength."""

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    SHARE,
    Limits,
    identity,
    measure,
    text,
    yes_no,
)
from generator.inventory.ground import LIME_STRENGTH
from generator.inventory.stocked import Stocked, on_hand, price_of
from generator.working import Given

# A ton holds two thousand pounds, and no lime works as more than its own weight of lime.
ENM = Limits(above=0, at_most=2000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fertilizer(Stocked):
    """A dry fertilizer; its grade is the three numbers on the bag, in percent."""

    id: str = identity("id of the fertilizer")
    name: str = text("page", "name, by grade", required=True)
    n_fraction: Given = measure(
        "page", "nitrogen (N), the first number", "fraction", SHARE, required=True
    )
    p2o5_fraction: Given = measure(
        "page", "phosphate (P2O5), the second number", "fraction", SHARE, required=True
    )
    k2o_fraction: Given = measure(
        "page", "potash (K2O), the third number", "fraction", SHARE, required=True
    )
    package_lb: Given | None = measure("page", "a bag holds", "lb", POSITIVE)
    price_usd: Given | None = price_of("a bag")
    on_hand_lb: Given | None = on_hand("lb")


@dataclass(frozen=True, slots=True, kw_only=True)
class Lime(Stocked):
    """A lime; its strength in the figures its seller states, one or several."""

    id: str = identity("id of the lime")
    name: str = text("page", "name you use", required=True)
    enm_lb_per_ton: Given | None = measure(
        "page", "effective neutralizing material (ENM)", "lb_per_ton", ENM
    )
    cce_fraction: Given | None = measure(
        "page", "calcium carbonate equivalent (CCE)", "fraction", LIME_STRENGTH
    )
    ecce_fraction: Given | None = measure(
        "page", "effective calcium carbonate equivalent (ECCE)", "fraction", LIME_STRENGTH
    )
    loose: bool | None = yes_no("page", "true where it comes loose, by the truck")
    package_lb: Given | None = measure("page", "a bag holds, or is sold by", "lb", POSITIVE)
    price_usd: Given | None = price_of("that much")
    on_hand_lb: Given | None = on_hand("lb")
