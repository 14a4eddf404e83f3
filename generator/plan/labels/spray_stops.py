"""Why a product may not go onto a place yet: what its card says against the job."""

from collections.abc import Iterator

from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.label import Bulletin, LabelCard, Use
from generator.inventory.places import Partner, Work
from generator.inventory.schema import Workers
from generator.inventory.stock import Product
from generator.plan.days.contracts import land_of
from generator.plan.findings.about_labels import LabelStop
from generator.plan.findings.order import finding
from generator.plan.findings.words import Stop
from generator.plan.jobs.licenses import lack_of_a_licence, may_be_restricted
from generator.plan.jobs.request import JobRequest
from generator.plan.jobs.slope import steep_stops
from generator.plan.labels.clearance import (
    Asked,
    gaps_in_matching,
    missing_on_card,
    missing_on_use,
    nearly_matching,
)
from generator.plan.labels.label_harm import seedling_stops
from generator.plan.labels.limit_stops import Judged, limit_stops
from generator.plan.labels.rates import JobRate, counted_basis, is_dry
from generator.plan.labels.sowing_wait import sown_too_soon
from generator.plan.labels.yearly_sums import PlannedSpray
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import OpenDates
from generator.reference.library import planting_kinds, species
from generator.units import UNITS

MONTHS_BULLETIN_IS_GOOD = 6
LAST_OF_YEAR = (12, 31)
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


def chosen_products(request: JobRequest, products: tuple[Product, ...]) -> tuple[Chosen, ...]:
    """Return the products a job means to put into one tank, the first without a prefix."""
    work = request.work
    if work is None or work.product is None:
        return ()
    by_id = {product.id: product for product in products}
    partners = tuple(
        Chosen(f"part-{number}.", partner, by_id[partner.product])
        for number, partner in enumerate(work.partners, 2)
    )
    return (Chosen("", work, by_id[work.product]), *partners)


def asked_of_label(request: JobRequest) -> Asked:
    """Return what the job asks of a label."""
    assert request.work is not None
    return Asked(
        request.kind,
        request.species,
        request.ground.id,
        land_of(request.ground),
        request.step.timing,
        # a method nobody typed goes over all of the ground: a use for spots must not clear it
        request.work.method or "broadcast",
    )


def no_use(stop: Stop, request: JobRequest, product: Product) -> Finding:
    """Return the stop of a card without a matching use, or with an answer against the job."""
    want = asked_of_label(request)
    land = {"contract": "contract land", "not_contract": "land under no contract"}
    nearly = nearly_matching(product.label, want)
    return finding(
        stop,
        about_job(request.job_id),
        product.where,
        product=product.name,
        kind=planting_kinds()[want.kind].lower(),
        species=", ".join(species()[species_id].name.lower() for species_id in want.species),
        timing=want.timing.replace("_", " "),
        method=want.method,
        land=land.get(want.land or "", "land whose contract is not stated"),
        nearly="".join(
            f' The use "{use.site_words}" may be meant, and is not finished.' for use in nearly
        ),
        gaps="".join(_gaps_told(use, want) for use in nearly),
    )


def _gaps_told(use: Use, asked: Asked) -> str:
    gaps = ", ".join(gaps_in_matching(use))
    on_land = asked.land is None and use.covers is not None and use.covers.land not in ANY_LAND
    missing = " and ".join(gap for gap in (gaps, "contract of the place" if on_land else "") if gap)
    return f'Of the use "{use.site_words}", {missing} is left out. '


def card_stops(request: JobRequest, product: Product, workers: Workers) -> Iterator[Finding]:
    """Yield what the head of the card leaves open or says against the job."""
    card, job = product.label, request.job_id
    if card is None:
        yield finding(
            LabelStop.NO_CARD,
            about_job(job),
            product.where,
            thing=product.name,
            product=product.name,
        )
        return
    missing = missing_on_card(card)
    if missing:
        yield finding(
            LabelStop.CARD_GAPS,
            about_job(job),
            card.where,
            thing=product.name,
            product=product.name,
            missing=", ".join(missing),
        )
    if card.restricted_use and not may_be_restricted(
        product.id, request.planting.id, request.step.id, request.dates.closes, workers
    ):
        why = lack_of_a_licence(
            product.id, request.planting.id, request.step.id, request.dates.closes, workers
        )
        yield finding(
            LabelStop.RESTRICTED, about_job(job), card.where, product=product.name, why=why
        )
    # left out, it is told among the gaps above, as the other answers of the head are
    if card.state_registered in ("no", "unsure"):
        yield finding(LabelStop.NOT_REGISTERED, about_job(job), card.where, product=product.name)
    noted = card.bulletin if isinstance(card.bulletin, tuple) else ()
    if noted and not _bulletins_cover(noted, request.dates):
        yield finding(LabelStop.NO_BULLETIN, about_job(job), card.where, product=product.name)


def _bulletins_cover(bulletins: tuple[Bulletin, ...], dates: OpenDates) -> bool:
    # dates that are not known may fall into any month
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
    # looked up after its month it was no look ahead
    return bulletin.month == wanted and 0 <= month - checked <= MONTHS_BULLETIN_IS_GOOD


def use_stops(
    request: JobRequest,
    chosen: Chosen,
    card: LabelCard,
    use: Use,
    rate: JobRate | None,
    sprays: tuple[PlannedSpray, ...],
) -> Iterator[Finding]:
    """Yield what the use leaves open, and where the job goes past what it allows."""
    job, name = request.job_id, chosen.product.name
    missing = missing_on_use(use)
    if missing:
        listed = ", ".join(missing)
        yield finding(LabelStop.USE_GAPS, about_job(job), use.where, product=name, missing=listed)
    if rate is not None and use.basis is not None and rate.in_basis(use.basis) is not None:
        yield from limit_stops(Judged(request, chosen.product, card, use, rate), sprays)
    elif lack := lack_of_a_rate(chosen.typed, chosen.product.name, card, use, rate):
        yield finding(LabelStop.NO_RATE, about_job(job), chosen.where, why=lack.why, cure=lack.cure)
    yield from steep_stops(request, use)
    yield from seedling_stops(request, card, use)
    if isinstance(use.last_date, tuple) and not _ends_by(use.last_date, request.dates):
        yield finding(LabelStop.PAST_LAST_DATE, about_job(job), use.where)
    yield from sown_too_soon(request, use)


def _ends_by(last: tuple[int, int], dates: OpenDates) -> bool:
    """Whether every open day lies on or before the label's last day of its own calendar year."""
    opens, closes = dates.opens, dates.closes
    if opens is None or closes is None:
        return False
    # over New Year the days after the label's last one are open in the first of the two years
    if opens.year < closes.year and last != LAST_OF_YEAR:
        return False
    return (closes.month, closes.day) <= last


_COUNTS = {
    "ai": "active ingredient",
    "ae": "acid equivalent",
    "product": "product",
    "mix": "percent of the spray",
}


_WITHIN = "Type the rate you mean to use, within what the label allows for this use."


@dataclass(frozen=True, slots=True)
class Lack:
    """Why there is no rate to hold against a card, and how to cure it."""

    why: str
    cure: str


def lack_of_a_rate(
    typed: Work | Partner, product: str, card: LabelCard, use: Use, rate: JobRate | None
) -> Lack | None:
    """Return what is missing; None where that is the basis of the use, named among its gaps."""
    said = _said(typed)
    if said is None:
        return Lack(f"No rate of {product} is typed for this step", _WITHIN)
    if rate is None:
        return _not_had(typed, product, card)
    # told among the gaps of the use: a second stop would be for the same cause
    if use.basis is None:
        return None
    basis = counted_basis(card)
    if use.basis in ("ai", "ae") and basis is None:
        why = (
            f"The use counts {_COUNTS[use.basis]}, and the card of {product} holds several actives"
        )
        cure = (
            "Where the label counts them together, type their names under pooled_with:, each with "
            "its strength in the basis of the use."
        )
        return Lack(f"{why} that it does not count together in one basis", cure)
    cure = "Type the rate in what the use counts, or correct basis: of the use by the label."
    counted = basis if use.basis in ("ai", "ae") and basis is not None else said
    why = f"The rate of {product} is {_COUNTS[counted]}, and the use counts {_COUNTS[use.basis]}"
    return Lack(why, cure)


def _said(typed: Work | Partner) -> str | None:
    """Return what the typed rate counts, None where none is typed."""
    rates = {
        "product": typed.rate_product,
        "mix": typed.mix_fraction,
        "ai": typed.rate_ai_lb_per_ac,
        "ae": typed.rate_ae_lb_per_ac,
    }
    return next((name for name, rate in rates.items() if rate is not None), None)


def _not_had(typed: Work | Partner, product: str, card: LabelCard) -> Lack:
    dry = is_dry(card)
    if typed.rate_product is not None:
        unit = UNITS[typed.rate_product.typed_unit].words.strip()
        form = "dry, in strength_pct" if dry else "liquid, in strength_lb_per_gal"
        why = f"The rate of {product} is typed in {unit}, and its card has it as {form}"
        return Lack(why, "Type the rate by weight for a dry product, by volume for a liquid one.")
    if typed.mix_fraction is not None and dry:
        why = f"A percent of the spray is typed, and {product} is dry"
        return Lack(why, "Type the weight to an acre that the label allows for this use.")
    if typed.mix_fraction is not None:
        why = (
            f"A percent of the spray is typed for {product}, and no sprayer with a catch test is "
            "named, so what an acre gets is not known"
        )
        return Lack(why, "Name the sprayer under work:, with a catch test in equipment.yaml.")
    said, basis = _said(typed) or "ai", counted_basis(card)
    if basis is None:
        why = (
            f"The rate is typed as {_COUNTS[said]}, and the card of {product} counts no one active"
        )
        return Lack(why, "Type the rate as product: rate_product, with its unit.")
    why = f"The rate of {product} is typed as {_COUNTS[said]}, and its card states {_COUNTS[basis]}"
    return Lack(why, f"Type it as rate_{basis}_lb_per_ac, or as product.")
