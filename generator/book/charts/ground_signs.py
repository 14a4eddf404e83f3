"""How each kind is drawn: a pattern for ground, strokes for a line, a small sign for a point.

In ink alone, told apart by pattern and form: the same in black and white, in the dark, in the sun.
"""

from generator.dataclass import dataclass


@dataclass(frozen=True, slots=True)
class Sign:
    """How a kind is drawn: `ground` is a pattern, `strokes` are classes of lines laid over another.

    `point` is the path of what stands for it where it is a point, or too small to be drawn.
    `is_edge` says that its name stands along its outline, since all else lies inside.
    """

    ground: str = ""
    strokes: tuple[str, ...] = ("thin",)
    point: str = "M-3-3h6v6h-6z"
    is_edge: bool = False


# What each pattern repeats: the width and height of its tile in pixels, and what stands there.
TILES: dict[str, tuple[int, int, str]] = {
    "crowns": (15, 15, '<circle cx="4" cy="4" r="2.6"/><circle cx="11.5" cy="11" r="2.6"/>'),
    "level": (12, 6, '<path d="M0 1.5h12M0 4.5h12"/>'),
    "broken": (14, 8, '<path d="M1 2h7M8 6h5"/>'),
    "rows": (7, 10, '<path d="M2 0v6M5.5 4v6"/>'),
    "arcs": (14, 10, '<path d="M1 4q3-4 6 0M8 9q3-4 6 0"/>'),
    "dots": (9, 9, '<circle cx="3" cy="3" r=".9"/><circle cx="7.5" cy="7.5" r=".9"/>'),
    "hatch": (7, 7, '<path d="M-2 2l4-4M0 7l7-7M5 9l4-4"/>'),
}

_RING = "M-3.6 0a3.6 3.6 0 1 0 7.2 0a3.6 3.6 0 1 0-7.2 0"
_GATE = "M-4-4v8M4-4v8M-4-1h8M-4 2h8"
_WATER = Sign("level", ("water",), f"{_RING}M-2.5-1h5M-2.5 1h5")

KIND_SIGNS: dict[str, Sign] = {
    "boundary": Sign(strokes=("edge",), is_edge=True),
    "woods": Sign("crowns"),
    "creek": _WATER,
    "pond": _WATER,
    "wet_ground": Sign("broken", ("dashed",), "M-4-1.5h8M-2.5 1.5h5"),
    "well": Sign(point=f"{_RING}M-.8 0h1.6"),
    "sinkhole": Sign(strokes=("dashed",), point=f"{_RING}M-3.6 0h2M1.6 0h2M0-3.6v2M0 1.6v2"),
    "tile_inlet": Sign(point="M-3.5-3.5h7v7h-7zM-1.2-3.5v7M1.2-3.5v7"),
    "runoff_point": Sign(strokes=("dashed",), point="M-4-2.5l4 5l4-5"),
    "building": Sign("solid"),
    "dwelling": Sign("solid", point="M-3.5-3.5h7v7h-7zM-2-2h4v4h-4z"),
    "line_above": Sign(strokes=("thin", "beads")),
    "line_below": Sign(strokes=("buried",)),
    "road": Sign(strokes=("road", "core")),
    "driven_trail": Sign(strokes=("wheels", "core")),
    "fence": Sign(strokes=("thin", "posts")),
    "gate": Sign(point=_GATE),
    "culvert": Sign(point="M-4-2.4h8M-4 2.4h8"),
    "crossing": Sign(strokes=("bridge",), point="M-4-4q3 4 0 8M4-4q-3 4 0 8"),
    "deer_trail": Sign(strokes=("deer",)),
    "crop_block": Sign("rows"),
    "neighbors_crop": Sign("rows", point="M-3.5-3.5v7M0-3.5v7M3.5-3.5v7"),
    "bees": Sign(point="M-4 0l2-3.5h4l2 3.5l-2 3.5h-4z"),
    "bedding": Sign("arcs", ("dashed",)),
    "mixing_place": Sign(point="M-3.8-3.2h7.6l-1.4 6.4h-4.8zM-2.9 0h5.8"),
    "feeding": Sign("dots", ("dashed",)),
    "place": Sign(strokes=("strip",)),
    "stand": Sign(point="M0-4.5l4.2 7.5h-8.4z"),
    "walk": Sign(strokes=("walk",)),
    "water_hole": Sign(point=f"{_RING}M-2.5 0h5"),
    "emergency_gate": Sign(point=_GATE),
    "walk_gate": Sign(point=_GATE),
    "parking": Sign(point="M-4.5-4.5h9v9h-9zM-1.5 3v-6h2a1.7 1.7 0 0 1 0 3.4h-2"),
    "begin": Sign(point="M-4-4l8 8M4-4l-8 8"),
}
