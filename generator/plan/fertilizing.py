"""A fertilizing job: phosphate first, then potash, then nitrogen, each with what is carried along.

At the sowing of native grass nitrogen is not topped up, whatever is typed: it feeds the weeds.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from generator.compute import fertility
from generator.inventory.ground import Need
from generator.inventory.schema import Inventory
from generator.inventory.spreadable import Fertilizer
from generator.plan.asked import JobAsked
from generator.plan.findings import finding
from generator.plan.model import Finding
from generator.plan.reasons import Caution, Note
from generator.plan.soil import age_findings, need_of, soil_test_of
from generator.plan.spreading import Nutrient, Spreading
from generator.working import Figure, Given, Quantity

NITROGEN = "n"
ORDER = ("p2o5", "k2o", NITROGEN)
NUTRIENT_WORDS = {NITROGEN: "nitrogen (N)", "p2o5": "phosphate (P2O5)", "k2o": "potash (K2O)"}
NO_NITROGEN_AT_SOWING = ("native_grass",)
NOTHING_LB_PER_AC = 1e-9


@dataclass(frozen=True, slots=True)
class Dose:
    """So much of a fertilizer to an acre, chosen for one nutrient."""

    item: Fertilizer
    nutrient: str
    rate: Quantity


@dataclass(frozen=True, slots=True)
class Fertilized:
    """What planning a fertilizing job gave."""

    spreadings: tuple[Spreading, ...] = ()
    nutrients: tuple[Nutrient, ...] = ()
    findings: tuple[Finding, ...] = ()


def plan_fertilizing(asked: JobAsked, inventory: Inventory) -> Fertilized:
    """Return what goes on, what each nutrient gets of its need, and what is to be looked at."""
    job, planting = asked.job_id, asked.planting
    need = need_of(planting, inventory)
    test = soil_test_of(planting, inventory)
    found = age_findings(asked, test) if test is not None else []
    if need is None:
        missing = finding(Caution.NO_NEED, job, planting.where)
        return Fertilized(findings=(*found, missing))
    if test is None:
        found.append(finding(Note.NO_SOIL_TEST, job, need.where))
    chosen = [_listed(identity, inventory) for identity in planting.fertilizers]
    if not chosen:
        found.append(finding(Caution.NO_FERTILIZER, job, need.where))
        return Fertilized(findings=tuple(found))
    doses = solved(job, need, chosen, nutrients_met(asked.kind))
    nutrients = tuple(_nutrient(job, name, need, doses) for name in (NITROGEN, *ORDER[:-1]))
    found += _need_findings(asked, need, nutrients)
    found += _nitrogen_findings(asked, need, doses, nutrients[0], inventory)
    return Fertilized(_spreadings(asked, doses), nutrients, tuple(found))


def _listed(identity: str, inventory: Inventory) -> Fertilizer:
    return next(one for one in inventory.fertilizers if one.id == identity)


def nutrients_met(kind: str) -> tuple[str, ...]:
    """Return the nutrients that are met at the sowing of a kind of planting, in order."""
    return tuple(one for one in ORDER if one != NITROGEN or kind not in NO_NITROGEN_AT_SOWING)


def share(item: Fertilizer, nutrient: str) -> Given:
    """Return the part of a fertilizer that is a nutrient."""
    part: Given = getattr(item, f"{nutrient}_fraction")
    return part


def asked_lb(need: Need, nutrient: str) -> Given:
    """Return what is asked for of a nutrient, pounds to an acre."""
    amount: Given = getattr(need, f"{nutrient}_lb_per_ac")
    return amount


def solved(
    job_id: str, need: Need, chosen: Sequence[Fertilizer], order: tuple[str, ...]
) -> tuple[Dose, ...]:
    """Return doses that meet the nutrients in this order, crediting what earlier doses carry.

    A nutrient that no chosen fertilizer carries gets no dose.
    """
    doses: list[Dose] = []
    for nutrient in order:
        still = still_needed(job_id, need, nutrient, doses)
        item = _carrier(
            nutrient, chosen, [one for one in ORDER if not _may_rise(one, nutrient, order)]
        )
        if still.value <= NOTHING_LB_PER_AC or item is None:
            continue
        rate = fertility.PRODUCT_RATE(
            f"{job_id}/{item.id}.rate_for_{nutrient}_lb_per_ac",
            nutrient_lb_per_ac=still,
            nutrient_fraction=share(item, nutrient),
        )
        doses.append(Dose(item, nutrient, rate))
    return tuple(doses)


def _may_rise(one: str, nutrient: str, order: tuple[str, ...]) -> bool:
    """Return whether more of a nutrient is welcome: what is still to be met, this one included."""
    return one in order and order.index(one) >= order.index(nutrient)


def still_needed(job_id: str, need: Need, nutrient: str, doses: Sequence[Dose]) -> Given | Quantity:
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


def carried_by(job_id: str, nutrient: str, doses: Sequence[Dose]) -> tuple[Quantity, ...]:
    """Return what each dose carries of a nutrient, those that carry none left out."""
    return tuple(
        fertility.CARRIED(
            f"{job_id}/{one.item.id}.{nutrient}_with_{one.nutrient}_lb_per_ac",
            product_lb_per_ac=one.rate,
            nutrient_fraction=share(one.item, nutrient),
        )
        for one in doses
        if share(one.item, nutrient).value > 0
    )


def _carrier(
    nutrient: str, chosen: Sequence[Fertilizer], unwelcome: Sequence[str]
) -> Fertilizer | None:
    """Return the first that carries a nutrient, before others one with nothing unwelcome in it."""
    carriers = [one for one in chosen if share(one, nutrient).value > 0]
    return min(
        carriers,
        key=lambda one: any(share(one, other).value > 0 for other in unwelcome),
        default=None,
    )


def _nutrient(job_id: str, name: str, need: Need, doses: tuple[Dose, ...]) -> Nutrient:
    wanted, carried = asked_lb(need, name), carried_by(job_id, name, doses)
    if not carried:
        return Nutrient(name, wanted, None, wanted if wanted.value > NOTHING_LB_PER_AC else None)
    got = fertility.NUTRIENT_TOGETHER(f"{job_id}/{name}_got_lb_per_ac", parts_lb_per_ac=carried)
    short = fertility.STILL_NEEDED(
        f"{job_id}/{name}_short_lb_per_ac", need_lb_per_ac=wanted, credits_lb_per_ac=carried
    )
    return Nutrient(name, wanted, got, short if short.value > NOTHING_LB_PER_AC else None)


def _spreadings(asked: JobAsked, doses: tuple[Dose, ...]) -> tuple[Spreading, ...]:
    items = dict.fromkeys(one.item.id for one in doses)
    return tuple(_spreading(asked, [one for one in doses if one.item.id == item]) for item in items)


def _spreading(asked: JobAsked, doses: Sequence[Dose]) -> Spreading:
    item = doses[0].item
    base = f"{asked.job_id}/{item.id}"
    rate = doses[0].rate
    if len(doses) > 1:
        rate = fertility.PRODUCT_TOGETHER(
            f"{base}.rate_lb_per_ac", parts_lb_per_ac=tuple(one.rate for one in doses)
        )
    product = fertility.PRODUCT(f"{base}.product_lb", area_ac=asked.area, product_lb_per_ac=rate)
    numbers = {"rate_lb_per_ac": rate, "product_lb": product}
    return Spreading(item, numbers | bags(base, product, item.package_lb))


def bags(base: str, product_lb: Quantity, package: Given | None) -> dict[str, Quantity]:
    """Return whole bags and what is weighed from one more, where the size of a bag is known."""
    if package is None:
        return {}
    whole = fertility.WHOLE_BAGS(f"{base}.bags_count", product_lb=product_lb, package_lb=package)
    part = fertility.PART_BAG(
        f"{base}.part_bag_lb", product_lb=product_lb, bags_count=whole, package_lb=package
    )
    return {"bags_count": whole, "part_bag_lb": part}


def _need_findings(asked: JobAsked, need: Need, nutrients: tuple[Nutrient, ...]) -> list[Finding]:
    met = nutrients_met(asked.kind)
    return [
        finding(
            Caution.NEED_NOT_MET,
            asked.job_id,
            need.where,
            (("Short to an acre", one.short),),
            nutrient=NUTRIENT_WORDS[one.name],
        )
        for one in nutrients
        if one.name in met and one.short is not None
    ]


def _nitrogen_findings(
    asked: JobAsked,
    need: Need,
    doses: tuple[Dose, ...],
    nitrogen: Nutrient,
    inventory: Inventory,
) -> list[Finding]:
    if NITROGEN in nutrients_met(asked.kind):
        return []
    found = []
    if need.n_lb_per_ac.value > 0:
        asked_for: tuple[tuple[str, Figure], ...] = (("Asked for", need.n_lb_per_ac),)
        found.append(finding(Caution.NO_NITROGEN_AT_SOWING, asked.job_id, need.where, asked_for))
    for one in doses:
        if nitrogen.got is not None and share(one.item, NITROGEN).value > 0:
            instead = _without_nitrogen(one.nutrient, inventory)
            found.append(
                finding(
                    Caution.NITROGEN_CARRIED,
                    asked.job_id,
                    one.item.where,
                    (("Nitrogen in all", nitrogen.got),),
                    item=one.item.name,
                    nutrient=NUTRIENT_WORDS[one.nutrient],
                    instead=instead,
                )
            )
    return found


def _without_nitrogen(nutrient: str, inventory: Inventory) -> str:
    """Return in words which listed fertilizer carries a nutrient and no nitrogen."""
    for one in inventory.fertilizers:
        if share(one, nutrient).value > 0 and share(one, NITROGEN).value == 0:
            return f"{one.name} is listed and carries none: name it under fertilizers instead."
    return "Ask your seller for one that carries none, and list it in products.yaml."
