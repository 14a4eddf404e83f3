"""Doses of fertilizer: phosphate, potash, then nitrogen, each less what is carried along."""

from collections.abc import Sequence

from generator.compute import fertility
from generator.dataclass import dataclass
from generator.inventory.ground import NutrientNeed
from generator.inventory.spreadable import Fertilizer
from generator.plan.model.work import Nutrient
from generator.working import Given, Quantity

NITROGEN = "n"
# Nitrogen last: what bags for the other two bring along of it is counted off first.
ORDER = ("p2o5", "k2o", NITROGEN)
NUTRIENT_WORDS = {NITROGEN: "nitrogen (N)", "p2o5": "phosphate (P2O5)", "k2o": "potash (K2O)"}
NO_NITROGEN_AT_SOWING = ("native_grass",)
NOTHING_LB_PER_AC = 1e-9  # what rounding leaves of a need that is met exactly


@dataclass(frozen=True, slots=True)
class FertilizerDose:
    """So much of a fertilizer to an acre, chosen for one nutrient."""

    item: Fertilizer
    nutrient: str
    rate: Quantity


def nutrients_met(kind: str) -> tuple[str, ...]:
    """Return the nutrients that are met at the sowing of a kind of planting, in order."""
    return tuple(
        nutrient for nutrient in ORDER if nutrient != NITROGEN or kind not in NO_NITROGEN_AT_SOWING
    )


def share(item: Fertilizer, nutrient: str) -> Given:
    """Return the part of a fertilizer that is a nutrient."""
    part: Given = getattr(item, f"{nutrient}_fraction")
    return part


def asked_lb(need: NutrientNeed, nutrient: str) -> Given:
    """Return what is asked for of a nutrient, pounds to an acre."""
    amount: Given = getattr(need, f"{nutrient}_lb_per_ac")
    return amount


def solved(
    job_id: str, need: NutrientNeed, chosen: Sequence[Fertilizer], order: tuple[str, ...]
) -> tuple[FertilizerDose, ...]:
    """Return doses that meet the nutrients in this order, crediting what earlier doses carry.

    A nutrient that no chosen fertilizer carries gets no dose.
    """
    doses: list[FertilizerDose] = []
    for nutrient in order:
        still = need_left(job_id, need, nutrient, doses)
        unwelcome = [other for other in ORDER if not _may_rise(other, nutrient, order, need)]
        item = _carrier(nutrient, chosen, unwelcome)
        if still.value <= NOTHING_LB_PER_AC or item is None:
            continue
        rate = fertility.FERTILIZER_RATE(
            f"{job_id}/{item.id}.rate_for_{nutrient}_lb_per_ac",
            nutrient_lb_per_ac=still,
            nutrient_fraction=share(item, nutrient),
        )
        doses.append(FertilizerDose(item, nutrient, rate))
    return tuple(doses)


def needless(
    job_id: str,
    need: NutrientNeed,
    chosen: Sequence[Fertilizer],
    order: tuple[str, ...],
    nutrient: str,
) -> Fertilizer | None:
    """Return the first dosed fertilizer without which every need is met as before, or None.

    Without it less goes on of a nutrient that goes beyond its need, and no more of another: a later
    dose carries what it was chosen for.
    """
    doses = solved(job_id, need, chosen, order)
    for item in dict.fromkeys(dose.item for dose in doses):
        again = solved(job_id, need, [other for other in chosen if other.id != item.id], order)
        before, after = ([nutrient_of(job_id, name, need, of) for name in order]
                         for of in (doses, again))  # fmt: skip
        # a need that was short with the bag may stay short: the bag did not meet it
        met = all(now.short is None or was.short for was, now in zip(before, after, strict=True))
        # leaving a bag out is no cure where more of another nutrient goes on for it
        rises = [_over(now) - _over(was) for was, now in zip(before, after, strict=True)]
        if (
            met
            and max(rises) <= NOTHING_LB_PER_AC
            and rises[order.index(nutrient)] < -(NOTHING_LB_PER_AC)
        ):
            return item
    return None


def _over(nutrient: Nutrient) -> float:
    return nutrient.over.value if nutrient.over is not None else 0.0


def _may_rise(other: str, nutrient: str, order: tuple[str, ...], need: NutrientNeed) -> bool:
    """Return whether more of a nutrient is welcome: asked for, and not met before this one."""
    wanted = asked_lb(need, other).value > NOTHING_LB_PER_AC
    return wanted and other in order and order.index(other) >= order.index(nutrient)


def need_left(
    job_id: str, need: NutrientNeed, nutrient: str, doses: Sequence[FertilizerDose]
) -> Given | Quantity:
    """Return what is needed of a nutrient beyond what the doses carry."""
    carried = carried_by(job_id, nutrient, doses)
    wanted = asked_lb(need, nutrient)
    if not carried:
        return wanted
    return fertility.STILL_NEEDED(
        f"{job_id}/{nutrient}_still_lb_per_ac",
        need_lb_per_ac=wanted,
        credits_lb_per_ac=carried,
    )


def carried_by(job_id: str, nutrient: str, doses: Sequence[FertilizerDose]) -> tuple[Quantity, ...]:
    """Return what each dose carries of a nutrient, those that carry none left out."""
    return tuple(
        fertility.CARRIED(
            f"{job_id}/{dose.item.id}.{nutrient}_with_{dose.nutrient}_lb_per_ac",
            product_lb_per_ac=dose.rate,
            nutrient_fraction=share(dose.item, nutrient),
        )
        for dose in doses
        if share(dose.item, nutrient).value > 0
    )


def _carrier(
    nutrient: str, chosen: Sequence[Fertilizer], unwelcome: Sequence[str]
) -> Fertilizer | None:
    """Return the first that carries a nutrient, before others one with nothing unwelcome in it."""
    # min keeps the first of equals, so that the owner's order decides between bags alike
    carriers = [item for item in chosen if share(item, nutrient).value > 0]
    return min(
        carriers,
        key=lambda item: any(share(item, other).value > 0 for other in unwelcome),
        default=None,
    )


def nutrient_of(
    job_id: str, name: str, need: NutrientNeed, doses: tuple[FertilizerDose, ...]
) -> Nutrient:
    """Return what a nutrient gets from these doses, and what is short or over."""
    wanted, carried = asked_lb(need, name), carried_by(job_id, name, doses)
    if not carried:
        all_short = wanted if wanted.value > NOTHING_LB_PER_AC else None
        return Nutrient(name, wanted, None, all_short, None)
    got = fertility.NUTRIENT_TOGETHER(f"{job_id}/{name}_got_lb_per_ac", parts_lb_per_ac=carried)
    short = fertility.STILL_NEEDED(
        f"{job_id}/{name}_short_lb_per_ac", need_lb_per_ac=wanted, credits_lb_per_ac=carried
    )
    over = fertility.BEYOND(
        f"{job_id}/{name}_over_lb_per_ac", got_lb_per_ac=got, need_lb_per_ac=wanted
    )
    return Nutrient(
        name,
        wanted,
        got,
        short if short.value > NOTHING_LB_PER_AC else None,
        over if over.value > NOTHING_LB_PER_AC else None,
    )
