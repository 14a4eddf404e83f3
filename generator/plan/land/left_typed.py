"""What typed distances leave of a place: widths that are left out along its sides."""

from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import replace

from generator.compute import left_out
from generator.dataclass import dataclass
from generator.inventory.label import Setback
from generator.inventory.land import NearThing
from generator.inventory.places import PlantedGround
from generator.plan.land.kept_kinds import (
    EDGE_DOUBT_TIMES,
    EdgeDoubt,
    is_edge_in_doubt,
    kind_words,
)
from generator.plan.model.place import KeptOff
from generator.working import Quantity


@dataclass(frozen=True, slots=True)
class LeftBeside:
    """The width that is left out beside one thing whose distance is typed."""

    near: NearThing
    setback: Setback
    width: Quantity


@dataclass(frozen=True, slots=True)
class TypedLeft:
    """What typed distances take of a place, and where they leave a doubt."""

    beside: tuple[LeftBeside, ...]
    in_doubt: tuple[EdgeDoubt, ...]

    def shares(self, ground: PlantedGround) -> dict[str, float]:
        """Return the share of a place that is left out beside things of each kind."""
        if ground.width_ft is None:
            return {}
        kinds = dict.fromkeys(one.near.kind for one in self.beside)
        of_kind = {kind: [one for one in self.beside if one.near.kind == kind] for kind in kinds}
        return {
            kind: sum(one.width.value for one in widest_of_sides(several)) / ground.width_ft.value
            for kind, several in of_kind.items()
        }

    def without(self, kinds: Container[str]) -> "TypedLeft":
        """Return the same without things of some kinds."""
        return replace(self, beside=tuple(o for o in self.beside if o.near.kind not in kinds))

    def kept_off(self, base: str, ground: PlantedGround, area: Quantity) -> Iterator[KeptOff]:
        """Yield what is kept off beside each thing."""
        if ground.width_ft is None:
            return
        for number, one in enumerate(self.beside, 1):
            name = kind_words(one.near.kind).capitalize()
            lost = left_out.LOST_BESIDE(
                f"{base}/beside-{number}/lost_ac",
                area_ac=area,
                left_out_ft=one.width,
                width_ft=ground.width_ft,
            )
            side = one.near.side
            yield KeptOff("", name, name, one.setback, None, lost, (), one.width, side)


def typed_left(
    base: str, ground: PlantedGround, by_kind: Mapping[str, Sequence[Setback]]
) -> TypedLeft:
    """Return what the typed distances of a place take of it, by the longest that labels keep."""
    near = ground.near.distances if ground.near is not None else ()
    beside: list[LeftBeside] = []
    doubts: list[EdgeDoubt] = []
    for number, one in enumerate(near, 1):
        kept = by_kind.get(one.kind, ())
        doubts += _doubts(one, kept)
        if kept and one.distance_ft.value < kept[0].distance_ft.value:
            width = left_out.WIDTH_LEFT_OUT(
                f"{base}/near-{number}/left_out_ft",
                kept_ft=kept[0].distance_ft,
                near_edge_ft=one.distance_ft,
            )
            beside.append(LeftBeside(one, kept[0], width))
    return TypedLeft(tuple(beside), tuple(doubts))


def _doubts(near: NearThing, kept: Sequence[Setback]) -> Iterator[EdgeDoubt]:
    for setback in kept:
        is_near = near.distance_ft.value < EDGE_DOUBT_TIMES * setback.distance_ft.value
        if is_near and is_edge_in_doubt(near.kind, setback.counts_from, near.counts_from):
            yield EdgeDoubt(kind_words(near.kind), setback, near.counts_from, near.where)


def widest_of_sides(beside: Sequence[LeftBeside]) -> tuple[LeftBeside, ...]:
    """Return the widest that is left out on each side; without a side each is on one of its own."""
    widest: dict[object, LeftBeside] = {}
    for number, one in enumerate(beside):
        side = one.near.side.value if one.near.side is not None else f"own {number}"
        if side not in widest or widest[side].width.value < one.width.value:
            widest[side] = one
    return tuple(widest.values())
