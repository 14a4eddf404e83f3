"""A liming job: the lab's need on its own base, in tons of the lime at hand, and how many times."""

from collections.abc import Mapping
from types import MappingProxyType

from generator.compute import lime as rates
from generator.dataclass import dataclass
from generator.inventory.ground import LimeNeed, SoilTest
from generator.inventory.spreadable import Lime
from generator.plan.feeding.fertilizing import bags
from generator.plan.findings.about_sowing import SowCaution, SowStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.jobs.soil import age_findings, setting, soil_test_of
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import LimeAsked, Spreading
from generator.reference.library import values
from generator.working import Given, Quantity

# Figures of one base are never turned into another: each asks for its own field of the lime.
FIELD_OF_BASE: Mapping[str, str] = MappingProxyType(
    {"enm": "enm_lb_per_ton", "cce": "cce_fraction", "ecce": "ecce_fraction"}
)
TYPED_AS = {"enm": "enm_lb_per_ton", "cce": "cce_pct", "ecce": "ecce_pct"}


@dataclass(frozen=True, slots=True)
class Limed:
    """What planning a liming job gave."""

    spreading: Spreading | None = None
    asked: LimeAsked | None = None
    findings: tuple[Finding, ...] = ()


def plan_liming(
    request: JobRequest, soil_tests: tuple[SoilTest, ...], limes: tuple[Lime, ...]
) -> Limed:
    """Return the lime that goes on, or why it is not worked out."""
    planting, job = request.planting, request.job_id
    lime = next(listed for listed in limes if listed.id == planting.lime)
    test = soil_test_of(planting, soil_tests)
    if test is None:
        return Limed(findings=(finding(SowCaution.NO_LIME_TEST, about_job(job), planting.where),))
    found = age_findings(request, test)
    need = test.lime_need
    if need is None:
        missing = finding(SowCaution.NO_LIME_NEED, about_job(job), test.where, test=test.id)
        return Limed(findings=(*found, missing))
    strength: Given | None = getattr(lime, FIELD_OF_BASE[need.base])
    # a stop: by the strength on another base the tons would be wrong, and look right
    if strength is None:
        stop = finding(
            SowStop.LIME_BASE,
            about_job(job),
            lime.where,
            lime=lime.name,
            base=need.base.upper(),
            key=TYPED_AS[need.base],
        )
        return Limed(findings=(*found, stop))
    rate = lime_rate(job, lime, need, strength)
    spreading = _spreading(request, lime, rate)
    found += _in_parts(request, spreading, lime) + _unit_findings(request, rate, lime)
    lime_asked = LimeAsked(need.base, need.amount_lb_per_ac, need.base_fraction, strength)
    return Limed(spreading, lime_asked, tuple(found))


def lime_rate(job_id: str, lime: Lime, need: LimeNeed, strength: Given) -> Quantity:
    """Return the lime to an acre, each base by its own conversion."""
    identity, amount = f"{job_id}/{lime.id}.lime_ton_per_ac", need.amount_lb_per_ac
    if need.base == "enm":
        return rates.LIME_BY_ENM(identity, need_enm_lb_per_ac=amount, enm_lb_per_ton=strength)
    assert need.base_fraction is not None  # a rule of the property folder
    if need.base == "cce":
        return rates.LIME_BY_CCE(
            identity,
            need_lb_per_ac=amount,
            base_cce_fraction=need.base_fraction,
            cce_fraction=strength,
        )
    return rates.LIME_BY_ECCE(
        identity,
        need_lb_per_ac=amount,
        base_ecce_fraction=need.base_fraction,
        ecce_fraction=strength,
    )


def _spreading(request: JobRequest, lime: Lime, rate: Quantity) -> Spreading:
    base, most = f"{request.job_id}/{lime.id}", setting(request.step, "at_once_ton_per_ac")
    now = rates.LIME_NOW(f"{base}.now_ton_per_ac", lime_ton_per_ac=rate, at_once_ton_per_ac=most)
    # of this time alone: the rest is bought when it goes on, years from now
    pounds = rates.LIME_LB(f"{base}.product_lb", area_ac=request.area, lime_ton_per_ac=now)
    numbers = {
        "lime_ton_per_ac": rate,
        "now_ton_per_ac": now,
        "now_ton": rates.LIME_TON(f"{base}.now_ton", area_ac=request.area, lime_ton_per_ac=now),
        "product_lb": pounds,
        "times_count": rates.APPLICATIONS(
            f"{base}.times_count", lime_ton_per_ac=rate, at_once_ton_per_ac=most
        ),
    }
    if request.ground.width_ft is not None:
        numbers["stretch_lb"] = rates.LIME_STRETCH(
            f"{base}.stretch_lb",
            lime_ton_per_ac=now,
            width_ft=request.ground.width_ft,
            stretch_ft=values()["stretch_of_strip_ft"],
        )
    if numbers["times_count"].value > 1:
        later = rates.LIME_LATER(
            f"{base}.later_ton_per_ac", lime_ton_per_ac=rate, now_ton_per_ac=now
        )
        numbers["later_ton_per_ac"] = later
        numbers["later_ton"] = rates.LIME_TON(
            f"{base}.later_ton", area_ac=request.area, lime_ton_per_ac=later
        )
    return Spreading(lime, numbers | bags(base, pounds, None if lime.loose else lime.package_lb))


def _unit_findings(request: JobRequest, rate: Quantity, lime: Lime) -> list[Finding]:
    """Return a caution where the lime to an acre looks like a slip of unit."""
    most, least = values()["most_lime_ton_per_ac"], values()["least_lime_ton_per_ac"]
    if least.value <= rate.value <= most.value:
        return []
    what, bound = ("more", most) if rate.value > most.value else ("less", least)
    figures = (("Lime to an acre", rate), (f"Seldom {what} than", bound))
    return [
        finding(SowCaution.LIME_UNIT, about_job(request.job_id), lime.where, figures, what=what)
    ]


def _in_parts(request: JobRequest, spreading: Spreading, lime: Lime) -> list[Finding]:
    if "later_ton" not in spreading.numbers:
        return []
    figures = (
        ("This time, to an acre", spreading.numbers["now_ton_per_ac"]),
        ("Later, to an acre", spreading.numbers["later_ton_per_ac"]),
        ("At most on top at once", setting(request.step, "at_once_ton_per_ac")),
        ("Wait before the rest, from", setting(request.step, "rest_low_years")),
        ("to", setting(request.step, "rest_high_years")),
    )
    return [finding(SowCaution.LIME_IN_PARTS, about_job(request.job_id), lime.where, figures)]
