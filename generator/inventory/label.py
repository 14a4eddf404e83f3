"""The label card: numbers an owner types from the label in hand.

Every entry may be `not_on_label`; an entry left out is a stop later, never a zero.
"""

import datetime
import re
from typing import ClassVar, Literal

from generator.dataclass import dataclass
from generator.inventory.fields import (
    Limits,
    Record,
    amount,
    choice,
    day,
    measure,
    month,
    month_day,
    record,
    reference,
    text,
    whole,
    yes_no,
)
from generator.reference.active_names import ActiveName
from generator.working import Given

NotOnLabel = Literal["not_on_label"]
TIMINGS = (
    "before_sowing",
    "at_sowing",
    "after_sowing_before_emergence",
    "seedlings",
    "established_dormant",
    "established_growing",
)
RATE_UNITS = ("fl_oz_per_ac", "lb_per_ac")
MIX_OR_RATE_UNITS = (*RATE_UNITS, "fraction")
WORKS = (
    "auxin",
    "grass_killer",
    "soil_residual",
    "total_killer",
    "sulfonylurea",
    "other",
)
# What a crop on a label may mean beside kinds and species of ours.
NO_KIND = "none"
ALL_OTHER_KINDS = "all_other_kinds"
WAITED_BEFORE = ("grazing", "hay", "game", "dogs")


def year_in(label_date: str | None) -> int | None:
    """Return the year in the date a label prints, the last of several, or None.

    >>> year_in("Rev. 02/2024"), year_in("20240215"), year_in("not_on_label")
    (2024, 2024, None)
    """
    years = re.findall(r"(?<!\d)((?:19|20)\d\d)(?=\D|\d{4}(?!\d)|$)", label_date or "")
    return max(map(int, years), default=None)


# What a label may keep a distance from; water that a ditch or a pond holds is open water.
KEPT_FROM = (
    "open_water", "well", "sinkhole", "tile_inlet", "runoff_point", "dwelling", "road",
    "neighbors_crop", "bees", "other",
)  # fmt: skip
# Kinds of which an owner can say that all there are have their points.
KEPT_FROM_KINDS = tuple(kind for kind in KEPT_FROM if kind != "other")
# Where such a distance counts from, and what that is called.
COUNTED_FROM = {
    "bank": "the bank",
    "waters_edge": "the water's edge",
    "inlet": "the inlet",
    "wall": "the wall",
    "as_printed": "",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ActiveStrength(Record):
    """One active of a product and how strong it is: by the gallon, or as a share of its weight."""

    active: str = text("page", "active ingredient as the label prints it", required=True)
    strength_lb_per_gal: Given | None = measure(
        "page", "pounds in a gallon of a liquid", "lb_per_gal", Limits(above=0, at_most=20)
    )
    strength_fraction: Given | None = measure(
        "page", "share of the weight of a dry product", "fraction", Limits(above=0, at_most=1)
    )
    basis: str = choice(
        "page", "ai: active ingredient, ae: acid equivalent", "ai", "ae", required=True
    )
    works_as: tuple[str, ...] = choice("page", "what the active does", *WORKS, many=True)
    same_as: str | None = text("page", "the name of the same active on another card")
    other_than: tuple[str, ...] = text(
        "page", "names on other cards that are not this active", many=True
    )

    @property
    def named(self) -> ActiveName:
        """The name as names are compared, with what the owner says of it."""
        return ActiveName(self.active, self.same_as, self.other_than)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bulletin(Record):
    """A use-limitation bulletin the owner looked up for one month."""

    checked_on: datetime.date = day("page", "looked up on", required=True)
    month: str = month("page", "month it is for, as 2026-09", required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reentry(Record):
    """When people may return."""

    EMPTY_IS_LEFT_OUT: ClassVar[bool] = True

    agricultural_hours: Given | NotOnLabel | None = measure(
        "page",
        "restricted-entry interval in the agricultural use box",
        "hours",
        Limits(at_least=0),
        label=True,
        safety=True,
    )
    elsewhere: str | None = text(
        "page", "entry words for other uses, such as until dry", label=True, safety=True
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Setback(Record):
    """A distance to keep from something: what, in the label's words, and what kind of thing."""

    keep_from: str = text("page", "what to keep away from, as printed", required=True)
    distance_ft: Given = measure("page", "distance", "ft", Limits(at_least=0), required=True)
    kind: str | None = choice("page", "what kind of thing that is", *KEPT_FROM)
    counts_from: str | None = choice("page", "where the distance counts from", *COUNTED_FROM)

    @property
    def words(self) -> str:
        """What to keep away from as printed, with where the distance counts from."""
        where = COUNTED_FROM.get(self.counts_from or "as_printed", "")
        return f"{self.keep_from}, counted from {where}" if where else self.keep_from


@dataclass(frozen=True, slots=True, kw_only=True)
class CropDays(Record):
    """Days from spraying until a crop may be sown."""

    crop: str = text("page", "crop as printed", required=True)
    wait_days: Given = measure("page", "days to wait", "days", Limits(at_least=0), required=True)
    means: tuple[str, ...] = reference(
        "page",
        "kinds or species it means, all_other_kinds that no line names, or none",
        "planting_kind",
        "species",
        ALL_OTHER_KINDS,
        NO_KIND,
        many=True,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class WaitingDays(Record):
    """Days from spraying until stock, hay, game or dogs may come to the ground."""

    before: str = choice("page", "what has to wait", *WAITED_BEFORE, required=True)
    wait_days: Given = measure("page", "days to wait", "days", Limits(at_least=0), required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class YearlyLimit(Record):
    """The most that may be put on the same ground in a year."""

    amount: Given = amount("page", "most in a year", RATE_UNITS, required=True)
    counted: str = choice(
        "page",
        "how the label counts the year",
        "calendar_year",
        "any_12_months",
        "crop",
        required=True,
    )
    basis: str | None = choice(
        "page",
        "what the limit counts, where its unit or the rates leave it open",
        "ai",
        "ae",
        "product",
    )
    same_day_next_year: str | None = choice(
        "page",
        "whether the same day a year later counts too; together where left out",
        "together",
        "apart",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class CarrierRange(Record):
    """Spray volume the label asks for."""

    low_gal_per_ac: Given = measure(
        "page", "least spray to an acre", "gal_per_ac", Limits(above=0), required=True
    )
    high_gal_per_ac: Given = measure(
        "page", "most spray to an acre", "gal_per_ac", Limits(above=0), required=True
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class WindRange(Record):
    """Wind in which the label lets one spray."""

    low_mph: Given = measure("page", "least wind", "mph", Limits(at_least=0), required=True)
    high_mph: Given = measure("page", "most wind", "mph", Limits(above=0), required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Covers(Record):
    """What the label's site words cover, in the owner's own reading."""

    EMPTY_IS_LEFT_OUT: ClassVar[bool] = True

    kinds: tuple[str, ...] = reference(
        "page", "kinds of planting the site words cover", "planting_kind", many=True
    )
    species: tuple[str, ...] = reference(
        "page", "species the site words cover, or any", "species", "any", many=True
    )
    land: str | None = choice("page", "land the use is for", "any", "contract", "not_contract")
    places: tuple[str, ...] = reference(
        "place", "places it is for, or any", "place", "any", many=True
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Use(Record):
    """One use on a label: a site, a time, a method, and their numbers."""

    EMPTY_IS_LEFT_OUT: ClassVar[bool] = True

    site_words: str = text("page", "the site as the label prints it", required=True)
    page: str | None = text("page", "where on the label", label=True, numbered=True)
    covers: Covers | None = record("page", "what the site words cover", Covers)
    timing: str | None = choice("page", "when the label allows it", *TIMINGS)
    growth_stage: str | None = text("page", "growth stage as printed", label=True)
    seedling_leaves_at_least: int | NotOnLabel | None = whole(
        "page",
        "leaves that grass seedlings must have at least; 0 where they need not be up",
        Limits(at_least=0, at_most=12),
        label=True,
    )
    weed_height_in: Given | NotOnLabel | None = measure(
        "page", "tallest weed", "in", Limits(above=0), label=True
    )
    method: str | None = choice("page", "broadcast or spot", "broadcast", "spot")
    rate_low: Given | None = amount("page", "lowest rate", MIX_OR_RATE_UNITS)
    rate_high: Given | None = amount("page", "highest rate", MIX_OR_RATE_UNITS)
    max_per_application: Given | NotOnLabel | None = amount(
        "page", "most at one time", RATE_UNITS, label=True
    )
    max_per_year: YearlyLimit | NotOnLabel | None = record(
        "page", "most in a year on the same ground", YearlyLimit, label=True
    )
    basis: str | None = choice("page", "what the two rates count", "ai", "ae", "product", "mix")
    times_per_year: int | NotOnLabel | None = whole(
        "page", "how often in a year", Limits(at_least=1, at_most=20), label=True
    )
    carrier_gal_per_ac: CarrierRange | NotOnLabel | None = record(
        "page", "spray volume asked for", CarrierRange, label=True
    )
    wind_mph: WindRange | NotOnLabel | None = record(
        "page", "wind it may be sprayed in", WindRange, label=True, safety=True
    )
    droplet: str | None = text("page", "droplet size or nozzle words", label=True, safety=True)
    setbacks_ft: tuple[Setback, ...] | NotOnLabel | None = record(
        "page", "distances to keep", Setback, many=True, label=True, safety=True
    )
    plant_back_days: tuple[CropDays, ...] | NotOnLabel | None = record(
        "page", "days until a crop may be sown", CropDays, many=True, label=True
    )
    seeding_interval_days: Given | NotOnLabel | None = measure(
        "page",
        "days to wait before sowing the planting it covers",
        "days",
        Limits(at_least=0),
        label=True,
    )
    waiting_days: tuple[WaitingDays, ...] | NotOnLabel | None = record(
        "page",
        "days until stock may graze, hay be made, game be taken or dogs run there",
        WaitingDays,
        many=True,
        label=True,
        safety=True,
    )
    soil_limits: str | None = text("page", "soil and ground words as printed", label=True)
    slope_limit_pct: Given | NotOnLabel | None = measure(
        "page", "steepest ground", "pct", Limits(at_least=0), label=True, safety=True
    )
    last_date: tuple[int, int] | NotOnLabel | None = month_day(
        "page", "last day of the year it may be sprayed, as 10-31", label=True
    )
    allowed: str | None = choice("page", "does the label allow it here", "yes", "no", "unsure")


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelCard(Record):
    """What one label says, with every use the owner means to rest on."""

    EMPTY_IS_LEFT_OUT: ClassVar[bool] = True

    read_on: datetime.date | None = day("page", "label in hand read on")
    label_date: str | None = text(
        "page", "date or revision printed on the label", label=True, numbered=True
    )
    epa_reg_no: str | None = text("page", "EPA registration number", label=True, safety=True)
    signal_word: str | None = choice(
        "page",
        "signal word",
        "danger_poison",
        "danger",
        "warning",
        "caution",
        label=True,
        safety=True,
    )
    restricted_use: bool | None = yes_no("page", "true for a restricted use product", safety=True)
    state_registered: str | None = choice("page", "registered in this state", "yes", "no", "unsure")
    actives: tuple[ActiveStrength, ...] = record(
        "page", "actives with their strength", ActiveStrength, many=True
    )
    pooled_with: tuple[str, ...] | NotOnLabel | None = text(
        "page", "actives whose yearly amounts count together with this", many=True, label=True
    )
    bulletin: tuple[Bulletin, ...] | NotOnLabel | None = record(
        "page", "use-limitation bulletins looked up", Bulletin, many=True, label=True
    )
    reentry: Reentry | None = record("page", "when people may return", Reentry, safety=True)
    protective_equipment: tuple[str, ...] | None = text(
        "page", "what to wear, as printed", many=True, label=True, safety=True
    )
    rainfast_hours: Given | NotOnLabel | None = measure(
        "page", "hours until rain does no harm", "hours", Limits(at_least=0), label=True
    )
    mixing_setbacks_ft: tuple[Setback, ...] | NotOnLabel | None = record(
        "page", "distances to keep when mixing", Setback, many=True, label=True, safety=True
    )
    uses: tuple[Use, ...] = record("page", "the uses on the label", Use, many=True)

    @property
    def named_actives(self) -> tuple[ActiveName, ...]:
        """The names of its actives, as names are compared."""
        return tuple(one.named for one in self.actives)

    @property
    def named_pooled(self) -> tuple[ActiveName, ...]:
        """The names of what its limits count together; none if unsaid."""
        said = self.pooled_with if isinstance(self.pooled_with, tuple) else ()
        return tuple(map(ActiveName, said))
