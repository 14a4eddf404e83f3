"""Why a product may not go onto a place yet: what its card says against the job."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.inventory.fields import Where
from generator.inventory.label import Bulletin, LabelCard, Use
from generator.inventory.places import Partner, PlantedGround, Work
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.asked import JobAsked
from generator.plan.clearance import (
    Asked,
    gaps_in_matching,
    missing_on_card,
    missing_on_use,
    nearly_matching,
)
from generator.plan.findings import finding
from generator.plan.label_harm import seedling_stops
from generator.plan.licences import lack_of_a_licence, may_be_restricted
from generator.plan.limit_stops import Judged, limit_stops
from generator.plan.model import Finding, OpenDates
from generator.plan.rate_lacks import lack_of_a_rate
from generator.plan.rates import JobRate
from generator.plan.slope import steep_stops
from generator.plan.sowing_wait import sown_too_soon
from generator.plan.stops import Stop
from generator.plan.years import PlannedSpray
from generator.reference.load import planting_kinds, species

MONTHS_BULLETIN_IS_GOOD = 6
LAST_OF_YEAR = (12, 31)
MEETS_DAYS = (
    28  # common practice: nearer than this, the day to spray and to sow are chosen together
)
NO_CONTRACT = "none"
ANY_LAND = (None, "any")


@dataclass(frozen=True, slots=True)
class Chosen:
    """A product chosen for a job: how its rate was typed, and how its numbers' ids begin."""

    prefix: str
    typed: Work | Partner
    product: Product

    @property
    def where(self) -> Where:
        """Where the choice was typed."""
        return self.typed.where


def asked_of_label(asked: JobAsked) -> Asked:
    """Return what the job asks of a label."""
    assert asked.work is not None
    return Asked(
        asked.kind,
        asked.species,
        asked.ground.id,
        land_of(asked.ground),
        asked.step.timing,
        asked.work.method or "broadcast",
    )


def land_of(ground: PlantedGround) -> str | None:
    """Return contract or not_contract, None where the owner has not said."""
    if ground.contract is None:
        return None
    return "not_contract" if ground.contract.strip().casefold() == NO_CONTRACT else "contract"


def no_use(stop: Stop, asked: JobAsked, product: Product) -> Finding:
    """Return the stop of a card without a matching use, or with an answer against the job."""
    want = asked_of_label(asked)
    land = {"contract": "contract land", "not_contract": "land under no contract"}
    return finding(
        stop,
        asked.job_id,
        product.where,
        product=product.name,
        kind=planting_kinds()[want.kind].lower(),
        species=", ".join(species()[one].name.lower() for one in want.species),
        timing=want.timing.replace("_", " "),
        method=want.method,
        land=land.get(want.land or "", "land whose contract is not stated"),
        nearly="".join(_nearly_told(one, want) for one in nearly_matching(product.label, want)),
    )


def _nearly_told(use: Use, asked: Asked) -> str:
    gaps = ", ".join(gaps_in_matching(use))
    on_land = asked.land is None and use.covers is not None and use.covers.land not in ANY_LAND
    missing = " and ".join(one for one in (gaps, "contract of the place" if on_land else "") if one)
    return f' The use "{use.site_words}" may be meant, and {missing} is left out.'


def card_stops(asked: JobAsked, product: Product, inventory: Inventory) -> Iterator[Finding]:
    """Yield what the head of the card leaves open or says against the job."""
    card, job = product.label, asked.job_id
    if card is None:
        yield finding(Stop.NO_CARD, job, product.where, product=product.name)
        return
    missing = missing_on_card(card)
    if missing:
        yield finding(
            Stop.CARD_GAPS, job, card.where, product=product.name, missing=", ".join(missing)
        )
    if card.restricted_use and not may_be_restricted(
        product.id, asked.planting.id, asked.step.id, asked.dates.closes, inventory
    ):
        why = lack_of_a_licence(
            product.id, asked.planting.id, asked.step.id, asked.dates.closes, inventory
        )
        yield finding(Stop.RESTRICTED, job, card.where, product=product.name, why=why)
    if card.state_registered in ("no", "unsure"):
        yield finding(Stop.NOT_REGISTERED, job, card.where, product=product.name)
    noted = card.bulletin if isinstance(card.bulletin, tuple) else ()
    if noted and not _bulletins_cover(noted, asked.dates):
        yield finding(Stop.NO_BULLETIN, job, card.where, product=product.name)


def _bulletins_cover(bulletins: tuple[Bulletin, ...], dates: OpenDates) -> bool:
    if dates.opens is None or dates.closes is None:
        return False
    first = dates.opens.year * 12 + dates.opens.month - 1
    last = dates.closes.year * 12 + dates.closes.month - 1
    return all(
        any(_good_for(bulletin, month) for bulletin in bulletins)
        for month in range(first, last + 1)
    )


def _good_for(bulletin: Bulletin, month: int) -> bool:
    checked = bulletin.checked_on.year * 12 + bulletin.checked_on.month - 1
    wanted = f"{month // 12:04}-{month % 12 + 1:02}"
    return bulletin.month == wanted and 0 <= month - checked <= MONTHS_BULLETIN_IS_GOOD


def use_stops(
    asked: JobAsked,
    chosen: Chosen,
    card: LabelCard,
    use: Use,
    rate: JobRate | None,
    sprays: tuple[PlannedSpray, ...],
) -> Iterator[Finding]:
    """Yield what the use leaves open, and where the job goes past what it allows."""
    job, name = asked.job_id, chosen.product.name
    missing = missing_on_use(use)
    if missing:
        listed = ", ".join(missing)
        yield finding(Stop.USE_GAPS, job, use.where, product=name, missing=listed)
    if rate is not None and use.basis is not None and rate.in_basis(use.basis) is not None:
        yield from limit_stops(Judged(asked, chosen.product, card, use, rate), sprays)
    elif lack := lack_of_a_rate(chosen.typed, chosen.product.name, card, use, rate):
        yield finding(Stop.NO_RATE, job, chosen.where, why=lack.why, cure=lack.cure)
    yield from steep_stops(asked, use)
    yield from seedling_stops(asked, card, use)
    if isinstance(use.last_date, tuple) and not _ends_by(use.last_date, asked.dates):
        yield finding(Stop.PAST_LAST_DATE, job, use.where)
    yield from sown_too_soon(asked, use)


def _ends_by(last: tuple[int, int], dates: OpenDates) -> bool:
    """Whether every open day lies on or before the label's last day of its own calendar year."""
    opens, closes = dates.opens, dates.closes
    if opens is None or closes is None:
        return False
    if opens.year < closes.year and last != LAST_OF_YEAR:
        return False
    return (closes.month, closes.day) <= last
