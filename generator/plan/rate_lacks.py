"""What keeps a rate from being held against a card: the one thing that is missing, in words."""

from dataclasses import dataclass

from generator.inventory.label import LabelCard, Use
from generator.inventory.places import Partner, Work
from generator.plan.rates import JobRate, counted_basis, is_dry
from generator.units import UNITS

COUNTS = {
    "ai": "active ingredient",
    "ae": "acid equivalent",
    "product": "product",
    "mix": "percent of the spray",
}
WITHIN = "Type the rate you mean to use, within what the label allows for this use."


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
        return Lack(f"No rate of {product} is typed for this step", WITHIN)
    if rate is None:
        return _not_had(typed, product, card)
    if use.basis is None:
        return None
    basis = counted_basis(card)
    if use.basis in ("ai", "ae") and basis is None:
        why = f"The use counts {COUNTS[use.basis]}, and the card of {product} holds several actives"
        cure = (
            "Where the label counts them together, type their names under pooled_with:, each with "
            "its strength in the basis of the use."
        )
        return Lack(f"{why} that it does not count together in one basis", cure)
    cure = "Type the rate in what the use counts, or correct basis: of the use by the label."
    counted = basis if use.basis in ("ai", "ae") and basis is not None else said
    why = f"The rate of {product} is {COUNTS[counted]}, and the use counts {COUNTS[use.basis]}"
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
        why = f"The rate is typed as {COUNTS[said]}, and the card of {product} counts no one active"
        return Lack(why, "Type the rate as product: rate_product, with its unit.")
    why = f"The rate of {product} is typed as {COUNTS[said]}, and its card states {COUNTS[basis]}"
    return Lack(why, f"Type it as rate_{basis}_lb_per_ac, or as product.")
