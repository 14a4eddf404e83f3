"""What cards keep the spray from: the kind of thing they mean, and which edge of it counts."""

from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.ground import WaterHole
from generator.inventory.label import COUNTED_FROM, Setback
from generator.inventory.land import LandThing
from generator.reference.land_kinds import land_kinds

# What labels may keep from: a thing of land.yaml, or water that somebody dug.
KeptThing = LandThing | WaterHole
OTHER_KIND = "other"
# An edge that nobody measured may lie as much nearer as the whole distance that is kept from it.
EDGE_DOUBT_TIMES = 2
AS_PRINTED = "as_printed"
# Words that labels print, and the kind of thing they mean.
_TOLD_BY = {
    # before wells, whose word stands inside it
    "dwelling": "dwelling",
    "well": "well",
    "sinkhole": "sinkhole",
    "tile": "tile_inlet",
    "runoff": "runoff_point",
    "water": "open_water",
    "stream": "open_water",
    "pond": "open_water",
    "house": "dwelling",
    "road": "road",
    "bee": "bees",
    "crop": "neighbors_crop",
    "garden": "neighbors_crop",
    "vine": "neighbors_crop",
}
_KIND_WORDS = {"neighbors_crop": "neighbor's crop", OTHER_KIND: "what else a label keeps from"}
# What has no edge but one, so that nobody needs to say which.
_ONLY_EDGE = {"tile_inlet": "inlet"}
# The bank lies nearer to whoever comes to the water than its edge does, or as near.
_NEARER = {("bank", "waters_edge")}


@dataclass(frozen=True, slots=True)
class EdgeDoubt:
    """A thing near a place of which another edge was measured than the one a label counts from."""

    thing: str
    setback: Setback
    measured: str | None
    where: Where


def kind_kept_from(setback: Setback) -> str:
    """Return the kind of thing a card keeps from: as typed, else as its words tell it."""
    if setback.kind is not None:
        return setback.kind
    words = setback.keep_from.lower()
    return next((kind for word, kind in _TOLD_BY.items() if word in words), OTHER_KIND)


def kind_words(kind: str) -> str:
    """Return what a kind of thing that labels keep from is called.

    >>> kind_words("tile_inlet"), kind_words("neighbors_crop")
    ('tile inlet', "neighbor's crop")
    """
    return _KIND_WORDS.get(kind, kind.replace("_", " "))


def edge_words(edge: str | None) -> str:
    """Return what an edge is called, nothing where none is named."""
    return COUNTED_FROM.get(edge or AS_PRINTED, "")


def is_edge_in_doubt(kind: str, counted: str | None, measured: str | None) -> bool:
    """Return whether the edge a label counts from may lie nearer than the one that was measured.

    >>> is_edge_in_doubt("open_water", "bank", "waters_edge")
    True
    >>> is_edge_in_doubt("open_water", "waters_edge", "bank")
    False
    """
    if counted in (None, AS_PRINTED) or measured == AS_PRINTED:
        return False
    known = measured or _ONLY_EDGE.get(kind)
    return known != counted and (known, counted) not in _NEARER


def kept_as(thing: KeptThing) -> str | None:
    """Return the kind of thing a label would keep from it as; None where no label does."""
    # what is dug for water holds water
    return "open_water" if isinstance(thing, WaterHole) else land_kinds()[thing.kind].keeps


def edge_of(thing: KeptThing) -> str | None:
    """Return the edge that the points of a thing follow, as far as it is said."""
    # of what is dug the full mark is the water's edge and the bank
    return AS_PRINTED if isinstance(thing, WaterHole) else thing.counts_from


def public_name(thing: KeptThing) -> str:
    """Return what readers other than the owner call a thing."""
    if isinstance(thing, WaterHole):
        return kind_words("open_water").capitalize()
    return thing.known_as or land_kinds()[thing.kind].name.capitalize()
