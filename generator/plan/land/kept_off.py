"""The ground of a place that is left to spray beside all that labels keep the spray from."""

from collections.abc import Iterable, Mapping, Sequence

from generator.compute import left_out
from generator.dataclass import dataclass
from generator.geometry.treated import is_nothing
from generator.inventory.label import Setback
from generator.inventory.land import NearThing
from generator.inventory.places import PlantedGround
from generator.plan.land.kept_kinds import EdgeDoubt, kind_kept_from
from generator.plan.land.kept_things import Around, not_told
from generator.plan.land.left_drawn import DrawnLeft, drawn_left, edges_in_doubt
from generator.plan.land.left_typed import TypedLeft, typed_left, widest_of_sides
from generator.plan.model.place import KeptOff
from generator.working import Figure, Quantity


@dataclass(frozen=True, slots=True)
class GroundLeft:
    """The ground of a place that is left to spray, by what it is left out, and what is not known.

    `numbers` are empty where all of it is left. `width` is what passes are laid over: less than the
    taped width where what is left out runs all along. `not_told` are the distances of labels of
    which nobody says how far such things lie. `needs_width` is a typed distance that takes some of
    a place whose width nobody taped.
    """

    ground: Quantity
    width: Figure | None
    numbers: Mapping[str, Quantity]
    left_fraction: float = 1.0
    kept_off: tuple[KeptOff, ...] = ()
    not_told: tuple[Setback, ...] = ()
    in_doubt: tuple[EdgeDoubt, ...] = ()
    needs_width: NearThing | None = None

    @property
    def is_none(self) -> bool:
        """Whether nothing is left."""
        return is_nothing(self.left_fraction)


def all_left(ground: PlantedGround, area: Quantity) -> GroundLeft:
    """Return all of a place, where nothing is left out of it."""
    return GroundLeft(area, ground.width_ft, {})


def ground_left(
    base: str,
    ground: PlantedGround,
    area: Quantity,
    setbacks: Sequence[Setback],
    land: Around,
) -> GroundLeft:
    """Return what is left of a place to a spraying whose labels keep these distances.

    `base` begins the ids of its numbers. Of a kind of thing whose distances are typed and that is
    drawn too, what takes more counts.
    """
    by_kind = _by_kind(setbacks)
    typed = typed_left(base, ground, by_kind)
    drawn = drawn_left(base, ground, area, by_kind, land, typed.shares(ground))
    typed = typed.without(drawn.kinds)
    left_fraction, width, numbers = _left(base, ground, area, drawn, typed)
    return GroundLeft(
        numbers.get("treated_ac", area),
        width,
        numbers,
        left_fraction,
        (*drawn.kept_off, *typed.kept_off(base, ground, area)),
        not_told(ground, setbacks, land.drawn),
        (*edges_in_doubt(ground, by_kind, land), *typed.in_doubt),
        typed.beside[0].near if typed.beside and ground.width_ft is None else None,
    )


def _by_kind(setbacks: Iterable[Setback]) -> dict[str, list[Setback]]:
    """Return distances by the kind of thing they are kept from, the longest first."""
    found: dict[str, list[Setback]] = {}
    for setback in sorted(setbacks, key=lambda one: -one.distance_ft.value):
        found.setdefault(kind_kept_from(setback), []).append(setback)
    return found


def _left(
    base: str, ground: PlantedGround, area: Quantity, drawn: DrawnLeft, typed: TypedLeft
) -> tuple[float, Figure | None, dict[str, Quantity]]:
    """Return the share that is left, the width for passes, and the numbers of it by name."""
    width, share = ground.width_ft, drawn.left
    beside = widest_of_sides(typed.beside)
    if width is None or not beside:
        if share is None:
            return 1.0, width, {}
        treated = left_out.GROUND_LEFT(f"{base}/left_ac", area_ac=area, left_fraction=share)
        even = {"left_width_ft": drawn.width} if drawn.width is not None else {}
        return share.value, drawn.width or width, {"treated_ac": treated, **even}
    narrow = left_out.LEFT_WIDTH(
        f"{base}/left_width_ft", width_ft=width, left_out_ft=tuple(one.width for one in beside)
    )
    left = left_out.LEFT_BY_WIDTH(
        f"{base}/left_by_width_fraction", left_width_ft=narrow, width_ft=width
    )
    if share is not None:
        left = left_out.BOTH_LEFT(
            f"{base}/both_left_fraction", left_fraction=share, left_by_width_fraction=left
        )
        if drawn.width is not None:
            narrow = left_out.LEFT_ALONG(
                f"{base}/both_left_width_ft", width_ft=width, left_fraction=left
            )
    treated = left_out.GROUND_LEFT(f"{base}/left_ac", area_ac=area, left_fraction=left)
    return left.value, narrow, {"treated_ac": treated, "left_width_ft": narrow}
