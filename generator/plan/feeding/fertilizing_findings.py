"""What is to be looked at before fertilizing: not met, too much, unwanted, or a slip of unit."""

from collections.abc import Iterable, Iterator, Sequence

from generator.inventory.ground import NutrientNeed
from generator.inventory.spreadable import Fertilizer
from generator.plan.feeding.doses import (
    NITROGEN,
    NUTRIENT_WORDS,
    FertilizerDose,
    needless,
    nutrients_met,
    share,
)
from generator.plan.findings.about_sowing import SowCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import Nutrient, Spreading
from generator.reference.library import values
from generator.units import convert
from generator.working import Figure

PHOSPHATE_LAW = (
    " Some states forbid phosphate that no test asks for (from memory; the law of yours decides)."
)


def need_findings(
    request: JobRequest, need: NutrientNeed, nutrients: tuple[Nutrient, ...]
) -> list[Finding]:
    """Return a caution for each nutrient whose need is not met in full."""
    met = nutrients_met(request.kind)
    return [
        finding(
            SowCaution.NEED_NOT_MET,
            about_job(request.job_id),
            need.where,
            (("Short to an acre", nutrient.short),),
            nutrient=NUTRIENT_WORDS[nutrient.name],
        )
        for nutrient in nutrients
        # nitrogen that is left out on purpose is not short
        if nutrient.name in met and nutrient.short is not None
    ]


def over_findings(
    request: JobRequest,
    need: NutrientNeed,
    doses: tuple[FertilizerDose, ...],
    nutrients: tuple[Nutrient, ...],
    fertilizers: tuple[Fertilizer, ...],
) -> list[Finding]:
    """Return a caution for each nutrient that goes on beyond what is asked for.

    Of nitrogen that is not wanted at all every pound is told, with its own words.
    """
    met = nutrients_met(request.kind)
    found = []
    for nutrient in nutrients:
        if nutrient.over is None or nutrient.got is None or nutrient.name not in met:
            continue
        bringing = [dose for dose in doses if _brings_along(dose, nutrient.name)]
        found.append(
            finding(
                SowCaution.MORE_THAN_ASKED,
                about_job(request.job_id),
                need.where,
                (("Asked for", nutrient.need), ("Goes on", nutrient.got)),
                nutrient=NUTRIENT_WORDS[nutrient.name],
                items=_together(dose.item.name for dose in bringing),
                law=PHOSPHATE_LAW if nutrient.name == "p2o5" else "",
                instead=" ".join(
                    (
                        *_left_out(nutrient, request, need, fertilizers),
                        _without(nutrient.name, bringing, request, fertilizers),
                    )
                ),
            )
        )
    return found


def _left_out(
    nutrient: Nutrient, request: JobRequest, need: NutrientNeed, fertilizers: tuple[Fertilizer, ...]
) -> Iterator[str]:
    """Yield in words which named fertilizer is not needed, since a later dose carries its part."""
    named = request.planting.fertilizers
    chosen = [listed for name in named for listed in fertilizers if listed.id == name]
    item = needless(request.job_id, need, chosen, nutrients_met(request.kind), nutrient.name)
    if item is not None:
        words = NUTRIENT_WORDS[nutrient.name]
        yield (
            f"{item.name} is not needed: without it every need is met as well, and less {words} "
            "goes on beyond it. Leave it out."
        )


def _brings_along(dose: FertilizerDose, nutrient: str) -> bool:
    """Return whether a dose chosen for another nutrient carries this one too."""
    return dose.nutrient != nutrient and share(dose.item, nutrient).value > 0


def nitrogen_findings(
    request: JobRequest,
    need: NutrientNeed,
    doses: tuple[FertilizerDose, ...],
    nitrogen: Nutrient,
    fertilizers: tuple[Fertilizer, ...],
) -> list[Finding]:
    """Return what is to be said of nitrogen where it is not wanted: asked for, carried along."""
    if NITROGEN in nutrients_met(request.kind):
        return []
    found = []
    if need.n_lb_per_ac.value > 0:
        asked_for: tuple[tuple[str, Figure], ...] = (("Asked for", need.n_lb_per_ac),)
        found.append(
            finding(
                SowCaution.NO_NITROGEN_AT_SOWING, about_job(request.job_id), need.where, asked_for
            )
        )
    carriers = [dose for dose in doses if _brings_along(dose, NITROGEN)]
    for item in dict.fromkeys(dose.item.id for dose in carriers):
        of_item = [dose for dose in carriers if dose.item.id == item]
        assert nitrogen.got is not None
        found.append(
            finding(
                SowCaution.NITROGEN_CARRIED,
                about_job(request.job_id),
                of_item[0].item.where,
                (("Nitrogen in all", nitrogen.got),),
                item=of_item[0].item.name,
                nutrient=_together(NUTRIENT_WORDS[dose.nutrient] for dose in of_item),
                instead=_without(NITROGEN, of_item, request, fertilizers),
            )
        )
    return found


def _together(names: Iterable[str]) -> str:
    return " and ".join(dict.fromkeys(names))


def _without(
    unwanted: str,
    doses: Sequence[FertilizerDose],
    request: JobRequest,
    fertilizers: tuple[Fertilizer, ...],
) -> str:
    """Return in words which fertilizers do what these doses do without a nutrient."""
    wanted = dict.fromkeys(dose.nutrient for dose in doses)
    return " ".join(_carrying(nutrient, unwanted, request, fertilizers) for nutrient in wanted)


def _carrying(
    nutrient: str, unwanted: str, request: JobRequest, fertilizers: tuple[Fertilizer, ...]
) -> str:
    words, none = NUTRIENT_WORDS[nutrient], NUTRIENT_WORDS[unwanted]
    for item in fertilizers:
        if share(item, nutrient).value > 0 and share(item, unwanted).value == 0:
            if item.id in request.planting.fertilizers:
                how = "is named already: leave the other out"
            else:
                how = "is on your list: use it instead"
            return f"For {words}, {item.name} carries no {none} and {how}."
    return f"For {words}, ask your seller for one without {none}."


def unit_findings(job_id: str, spreadings: tuple[Spreading, ...]) -> list[Finding]:
    """Return cautions where a rate or a grade looks like a slip of unit."""
    most, least = values()["most_fertilizer_lb_per_ac"], values()["least_grade_pct"]
    found = []
    for spreading in spreadings:
        rate, item = spreading.numbers["rate_lb_per_ac"], spreading.item
        assert isinstance(item, Fertilizer)
        if rate.value > most.value:
            figures: tuple[tuple[str, Figure], ...] = (("To an acre", rate), ("Seldom over", most))
            what = f"{item.name}: more to an acre than is spread at once."
            found.append(
                finding(
                    SowCaution.FERTILIZER_UNIT, about_job(job_id), item.where, figures, what=what
                )
            )
        # a grade typed as shares of one is a hundred times too small in all three numbers
        grade = {NUTRIENT_WORDS[name]: share(item, name) for name in NUTRIENT_WORDS}
        if max(convert(part.value, "fraction", "pct") for part in grade.values()) < least.value:
            figures = (*grade.items(), ("A bag has one of at least", least))
            what = f"{item.name}: none of the three numbers is a percent."
            found.append(
                finding(
                    SowCaution.FERTILIZER_UNIT, about_job(job_id), item.where, figures, what=what
                )
            )
    return found
