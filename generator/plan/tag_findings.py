"""What is to be said of what else is in the bag: weed seed, other crop, and blanks on the tag."""

from collections.abc import Iterator

from generator.inventory.stock import SeedLot
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.model import Finding
from generator.reference.load import values
from generator.units import convert
from generator.working import Given

# A blank there must not pass for none: what the tag lists can be unlawful or unsafe to sow.
MUST_BE_READ = ("noxious_weeds", "treated")


def tag_findings(asked: JobAsked, lot: SeedLot) -> Iterator[Finding]:
    """Yield cautions on much weed seed or other crop, and on what was not typed from the tag."""
    tag = lot.tag
    yield from _much(asked, lot, tag.weed_fraction, Caution.WEED_SEED, "most_weed_seed_pct")
    yield from _much(asked, lot, tag.other_crop_fraction, Caution.OTHER_CROP, "most_other_crop_pct")
    missing = [name for name in MUST_BE_READ if getattr(tag, name) is None]
    if missing:
        words = ", ".join(missing)
        yield finding(Caution.TAG_NOT_TYPED, asked.job_id, tag.where, lot=lot.id, missing=words)


def _much(
    asked: JobAsked, lot: SeedLot, share: Given | None, reason: Caution, limit: str
) -> Iterator[Finding]:
    most = values()[limit]
    if share is not None and share.value > convert(most.value, most.unit, "fraction"):
        figures = (("On the tag", share), ("Seldom over", most))
        yield finding(reason, asked.job_id, lot.where, figures, lot=lot.id)
