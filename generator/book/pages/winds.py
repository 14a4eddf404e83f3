"""The wind card: every stand on one leaf, by the eight winds of a forecast."""

from collections.abc import Iterator

from generator.book.pages.stands_walks import forbids, stay_out_dates
from generator.book.pages.wind_months import has_wind_months
from generator.book.pages.written import STANDS, Written, address_of, from_template
from generator.dataclass import dataclass
from generator.inventory.places import Stand
from generator.plan.model.days import Span
from generator.plan.model.finding import Finding
from generator.plan.model.place import OpenWalk
from generator.plan.model.plan import Plan
from generator.plan.winds.airs import SlopeAir
from generator.plan.winds.slope_air import slope_air
from generator.plan.winds.widths import EIGHT_WINDS_DEG, counts_from, drifts_below
from generator.plan.winds.winds_told import TellsOf, eight_winds
from generator.reference.library import values
from generator.working import Reference

WIND_CARD_ADDRESS = "winds.md"
# So many columns of words are still read at arm's length on a leaf that lies across.
STANDS_ON_A_LEAF = 6


@dataclass(frozen=True, slots=True)
class OpenedWalk:
    """A walk to a stand that is open from a day on, and the other ways in, by their names."""

    name: str
    open: OpenWalk
    ways: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class OnCard:
    """A stand on the card: what forbids it, its winds, light air, walks to it whose cover goes."""

    stand: Stand
    forbids: tuple[Finding, ...]
    is_stopped: bool
    stay_out: tuple[Span, ...]
    winds: tuple[TellsOf, ...]
    drifts: Reference
    counts: Reference
    slope: SlopeAir | None
    opened: tuple[OpenedWalk, ...]


def wind_card_page(plan: Plan) -> Written:
    """Return all stands by wind, in the order of the owner's file; a leaf holds a few of them."""
    cards = [_on_card(plan, stand) for stand in plan.land.stands]
    return from_template(
        plan,
        WIND_CARD_ADDRESS,
        "Wind card",
        STANDS,
        "winds",
        ["wind", "winds", *EIGHT_WINDS_DEG],
        leaves=[
            cards[first : first + STANDS_ON_A_LEAF]
            for first in range(0, len(cards), STANDS_ON_A_LEAF)
        ],
        winds=list(EIGHT_WINDS_DEG),
        has_months=has_wind_months(plan),
        slopes=any(card.slope is not None for card in cards),
        names_of_walks={route.id: route.name for route in plan.land.routes},
        known=values(),
        address_of=address_of,
    )


def _on_card(plan: Plan, stand: Stand) -> OnCard:
    found = tuple(one for one in plan.findings_on(stand.id) if forbids(one))
    return OnCard(
        stand,
        found,
        any(one.severity == "stop" for one in found),
        stay_out_dates(plan, stand.id, plan.as_of),
        eight_winds(stand, plan.land.routes),
        drifts_below(stand),
        counts_from(stand),
        slope_air(stand),
        tuple(_opened(plan, stand)),
    )


def _opened(plan: Plan, stand: Stand) -> Iterator[OpenedWalk]:
    """Yield the walks to a stand whose cover goes."""
    names = {route.id: route.name for route in plan.land.routes}
    to_it = {route.id for route in plan.land.routes if stand.id in route.serves}
    for walk in plan.open_walks:
        if walk.route in to_it:
            ways = (names[way.route] for way in walk.ways if way.stand == stand.id)
            yield OpenedWalk(names[walk.route], walk, tuple(ways))
