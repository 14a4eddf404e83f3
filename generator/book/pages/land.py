"""The page of what lies on the land and beside it: how large it is, and how that is known."""

from generator.book.pages.lines import in_groups
from generator.book.pages.pictures_ground import whole_ground
from generator.book.pages.readers import reader_words
from generator.book.pages.written import PLACES, Written, from_template
from generator.dataclass import dataclass
from generator.inventory.ground import DRAWN, PHONE, SURVEYED, UNDER_TREES
from generator.inventory.label import KEPT_FROM_KINDS
from generator.inventory.land import LandThing
from generator.plan.land.kept_kinds import kind_words
from generator.plan.land.measured import measured_line_ft, measured_outline_ac
from generator.plan.land.off_points import off_ft
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.reference.land_kinds import land_kinds
from generator.working import Figure

LAND_ADDRESS = "land.md"
# How points were got, by the words of the file.
GOT_WORDS = {
    PHONE: "with a phone",
    UNDER_TREES: "with a phone under trees",
    SURVEYED: "surveyed",
    DRAWN: "drawn",
}
# The edge from which a label's distance counts.
EDGE_WORDS = {
    "bank": "the bank",
    "waters_edge": "the water's edge",
    "inlet": "the inlet",
    "wall": "the wall",
}


@dataclass(frozen=True, slots=True)
class LandRow:
    """A thing of the land as its line shows it: `inside` acres, or so `long`, or a point.

    `off` is how far its points may be off, as typed, else by how they were `got`; `seen_by` are
    the readers who are shown it or work near it.
    """

    thing: LandThing
    kind: str
    inside: Figure | None
    long: Figure | None
    got: str | None
    off: Figure
    counts_from: str | None
    seen_by: list[str]
    with_coordinates: list[str]


def land_page(plan: Plan) -> Written:
    """Return every thing of the land with its kind, its size, its points, and who sees it."""
    things = plan.land.things
    return from_template(
        plan,
        LAND_ADDRESS,
        "What lies where",
        PLACES,
        "land",
        [thing.name for thing in things],
        rows=[_row(plan, thing) for thing in things],
        findings=_findings(plan),
        drawn=whole_ground(plan),
        all_drawn=[kind_words(kind) for kind in plan.land.all_drawn],
        kinds=[f"<code>{kind}</code>" for kind in KEPT_FROM_KINDS],
    )


def _findings(plan: Plan) -> list[list[Finding]]:
    """Return what is found of things of the land, what asks for the same together."""
    told = [finding for finding in plan.findings if finding.subject.kind == "land"]
    return list(in_groups(told, lambda finding: (finding.code, finding.cure)).values())


def _row(plan: Plan, thing: LandThing) -> LandRow:
    told = [
        (reader_words(handed), one.with_coordinates)
        for handed in plan.handed
        for one in handed.things
        if one.thing_id == thing.id
    ]
    area, line = thing.area_lat_lon, thing.line_lat_lon
    return LandRow(
        thing,
        land_kinds()[thing.kind].name,
        measured_outline_ac(area, LandThing) if area is not None else None,
        measured_line_ft(line, LandThing) if line is not None and area is None else None,
        GOT_WORDS[thing.got] if thing.got is not None else None,
        off_ft(thing),
        EDGE_WORDS[thing.counts_from] if thing.counts_from is not None else None,
        [reader for reader, _ in told],
        [reader for reader, with_coordinates in told if with_coordinates],
    )
