"""A fertilizing job: phosphate first, then potash, then nitrogen, each with what is carried along.

At the sowing of native grass nitrogen is not topped up, whatever is typed: it feeds the weeds.
"""

from collections.abc import Sequence

from generator.compute import fertility
from generator.dataclass import dataclass
from generator.inventory.ground import SoilTest
from generator.inventory.spreadable import Fertilizer
from generator.plan.feeding.doses import (
    NITROGEN,
    ORDER,
    FertilizerDose,
    nutrient_of,
    nutrients_met,
    solved,
)
from generator.plan.feeding.fertilizing_findings import (
    need_findings,
    nitrogen_findings,
    over_findings,
    unit_findings,
)
from generator.plan.findings.about_sowing import SowCaution, SowNote
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.jobs.soil import age_findings, need_of, soil_test_of
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import Nutrient, Spreading
from generator.reference.library import values
from generator.working import Given, Quantity


@dataclass(frozen=True, slots=True)
class Fertilized:
    """What planning a fertilizing job gave."""

    spreadings: tuple[Spreading, ...] = ()
    nutrients: tuple[Nutrient, ...] = ()
    findings: tuple[Finding, ...] = ()


def plan_fertilizing(
    request: JobRequest, soil_tests: tuple[SoilTest, ...], fertilizers: tuple[Fertilizer, ...]
) -> Fertilized:
    """Return what goes on, what each nutrient gets of its need, and what is to be looked at."""
    job, planting = request.job_id, request.planting
    need = need_of(planting, soil_tests)
    test = soil_test_of(planting, soil_tests)
    found = age_findings(request, test) if test is not None else []
    if need is None:
        missing = finding(SowCaution.NO_NEED, about_job(job), planting.where)
        return Fertilized(findings=(*found, missing))
    if test is None:
        found.append(finding(SowNote.NO_SOIL_TEST, about_job(job), need.where))
    chosen = [_listed(identity, fertilizers) for identity in planting.fertilizers]
    if not chosen:
        found.append(finding(SowCaution.NO_FERTILIZER, about_job(job), need.where))
        return Fertilized(findings=tuple(found))
    doses = solved(job, need, chosen, nutrients_met(request.kind))
    # told as the three numbers of a bag stand, not in the order of the doses
    nutrients = tuple(nutrient_of(job, name, need, doses) for name in (NITROGEN, *ORDER[:-1]))
    spreadings = _spreadings(request, doses)
    found += need_findings(request, need, nutrients)
    found += over_findings(request, need, doses, nutrients, fertilizers)
    found += nitrogen_findings(request, need, doses, nutrients[0], fertilizers)
    found += unit_findings(job, spreadings)
    return Fertilized(spreadings, nutrients, tuple(found))


def _listed(identity: str, fertilizers: tuple[Fertilizer, ...]) -> Fertilizer:
    return next(item for item in fertilizers if item.id == identity)


def _spreadings(request: JobRequest, doses: tuple[FertilizerDose, ...]) -> tuple[Spreading, ...]:
    items = dict.fromkeys(dose.item.id for dose in doses)
    return tuple(
        _spreading(request, [dose for dose in doses if dose.item.id == item]) for item in items
    )


def _spreading(request: JobRequest, doses: Sequence[FertilizerDose]) -> Spreading:
    item = doses[0].item
    base = f"{request.job_id}/{item.id}"
    rate = doses[0].rate
    if len(doses) > 1:
        rate = fertility.PRODUCT_TOGETHER(
            f"{base}.rate_lb_per_ac", parts_lb_per_ac=tuple(dose.rate for dose in doses)
        )
    product = fertility.FERTILIZER_LB(
        f"{base}.product_lb", area_ac=request.area, product_lb_per_ac=rate
    )
    numbers = {"rate_lb_per_ac": rate, "product_lb": product}
    if request.ground.width_ft is not None:
        numbers["stretch_lb"] = fertility.FERTILIZER_STRETCH(
            f"{base}.stretch_lb",
            product_lb_per_ac=rate,
            width_ft=request.ground.width_ft,
            stretch_ft=values()["stretch_of_strip_ft"],
        )
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
