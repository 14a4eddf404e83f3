"""Every stop, caution and note the plan can find, with its reason and its cure in words."""

from dataclasses import dataclass
from enum import Enum
from typing import Literal

LABEL_CHAPTER = "label-card"
TAG_CHAPTER = "seed-tag"
CALIBRATION_CHAPTER = "calibration"


@dataclass(frozen=True, slots=True)
class Words:
    """A reason for the owner, one for other readers, the cure, and the chapter that helps."""

    code: str
    owner: str
    others: str
    cure: str
    chapter: str = ""


_NOT_CLEARED = "This job is not cleared. Do not mix or spray. Ask the owner."


def _label(code: str, owner: str, cure: str) -> Words:
    return Words(code, owner, _NOT_CLEARED, cure, LABEL_CHAPTER)


class Stop(Enum):
    """A thing that must not be done yet."""

    NO_PRODUCT = Words(
        "S101",
        "No product is chosen for this step.",
        _NOT_CLEARED,
        "Under the planting, add the step to work: with product, rate, method and sprayer.",
    )
    NO_CARD = _label(
        "S102",
        "The label card of {product} is empty, so nothing is known of what its label allows.",
        "With the label in hand, fill in its card in products.yaml. A thing the label does not say "
        "is not_on_label.",
    )
    CARD_GAPS = _label(
        "S103",
        "The label card of {product} leaves out: {missing}.",
        "Read the label and type what it says, or not_on_label where it is silent.",
    )
    NO_USE = _label(
        "S104",
        "No use on the label card of {product} covers {kind} with {species}, {timing}, {method}, "
        "on {land}.",
        "A label that does not name this site does not allow it, and no entry lifts this stop. "
        "Look for a product whose label names the site, or kill the growth another way: mow, "
        "graze, or till. If the label does name the site, type that use.",
    )
    USE_SAYS_NO = _label(
        "S105",
        "The card of {product} says the label does not allow this.",
        "No entry lifts this stop. Choose a product whose label names this use, or do without.",
    )
    USE_UNSURE = _label(
        "S106",
        "The card of {product} is unsure whether the label allows this, which counts as no.",
        "Ask the maker, your state agency or an extension office, then change allowed: on the use.",
    )
    USES_DISAGREE = _label(
        "S107",
        "Two uses on the card of {product} cover this job and do not agree.",
        "Read the label again and make each use cover only the site it was printed for.",
    )
    USE_GAPS = _label(
        "S108",
        "The use of {product} this job rests on leaves out: {missing}.",
        "Read the label and type what it says, or not_on_label where it is silent.",
    )
    NO_RATE = _label(
        "S109",
        "No rate is typed for this step, or it cannot be compared with the card: "
        "the strength of one active in the same basis is needed.",
        "Type the rate you mean to use, within what the label allows for this use.",
    )
    RATE_OUTSIDE = _label(
        "S110",
        "The typed rate is not between the lowest and highest rate of this use.",
        "Type a rate that the label allows for this use.",
    )
    OVER_ONE_TIME = _label(
        "S111",
        "The typed rate is more than the label allows at one time.",
        "Type a rate that the label allows for this use.",
    )
    OVER_YEAR = _label(
        "S112",
        "Together with the other sprayings planned on this ground, the rate is more than the label "
        "allows in a year.",
        "Leave one of them out, or lower a rate within what the label allows.",
    )
    TOO_OFTEN = _label(
        "S113",
        "The product is planned on this ground more often in a year than the label allows.",
        "Leave one of the sprayings out.",
    )
    RESTRICTED = Words(
        "S114",
        "{product} is a restricted use product: only a certified applicator may buy or use it, or "
        "someone under their direct supervision.",
        _NOT_CLEARED,
        "Ask your state agency which licence fits, or hire a licensed applicator. Nothing you can "
        "type here lifts this stop.",
        LABEL_CHAPTER,
    )
    NOT_REGISTERED = _label(
        "S115",
        "{product} is not known to be registered in this state.",
        "Look it up with your state agency and type state_registered: yes only if it is.",
    )
    NO_BULLETIN = _label(
        "S116",
        "The label sends you to a use-limitation bulletin, and none is noted for every month of "
        "the open dates, looked up within six months before.",
        "Look the bulletin up for the month of use and type checked_on and month.",
    )
    PAST_LAST_DATE = _label(
        "S117",
        "The open dates run past the last day of the year this use allows, or are not known.",
        "Spray by the label's last day: type the season signs, or choose another use or product.",
    )
    SOWN_TOO_SOON = _label(
        "S118",
        "The label asks for more days between spraying and sowing than the open dates leave.",
        "Spray earlier, sow later, or choose another product.",
    )
    NO_SPRAYER = Words(
        "S119",
        "No sprayer with a catch test and a measure to pour with is named for this step.",
        _NOT_CLEARED,
        "In equipment.yaml, note what each nozzle catches in a time and name a measure; then name "
        "the sprayer under work:.",
        CALIBRATION_CHAPTER,
    )
    CARRIER_OUTSIDE = Words(
        "S120",
        "By its last catch test the sprayer puts on more or less spray than the label asks for.",
        _NOT_CLEARED,
        "Change nozzle, pressure or speed, catch again, and note the new test.",
        CALIBRATION_CHAPTER,
    )
    MARK_TOO_COARSE = Words(
        "S121",
        "No mark on the measure gives a rate within what the label allows.",
        _NOT_CLEARED,
        "Pour with a measure that has finer marks.",
        CALIBRATION_CHAPTER,
    )
    NO_NAME_FOR_OTHERS = Words(
        "S122",
        "This job is handed to another reader, and the place has no name for others.",
        "The place has no name yet. Ask the owner before you begin.",
        "Add known_as: to the place, a name that gives nothing away.",
    )


class Caution(Enum):
    """A thing to look at before going on."""

    DORMANT = Words(
        "C201",
        "Part of the live seed in lot {lot} was asleep in the test. Sown in winter it can wake; "
        "later in spring count on less. It does not change the pounds to buy or spread.",
        "Part of the live seed was asleep in the test; sow while winter remains.",
        "Sow within the open dates.",
        TAG_CHAPTER,
    )
    NO_SEED_TEST = Words(
        "C202",
        "The spreader has no catch test with lot {lot}, so passes and setting are not worked out.",
        "The spreader has not been tested with this seed. Ask the owner.",
        "Walk a measured distance over a sheet, weigh what fell, and note it in equipment.yaml.",
        CALIBRATION_CHAPTER,
    )
    OLD_LABEL = Words(
        "C203",
        "The label was read more than a year before this job.",
        "Read the label on the container again before mixing.",
        "Read the label on the container you will use, and set read_on.",
        LABEL_CHAPTER,
    )
    OLD_CATCH_TEST = Words(
        "C204",
        "The catch test is more than a year older than this job.",
        "The catch test is old. Catch again before you begin.",
        "Catch again and note the new test.",
        CALIBRATION_CHAPTER,
    )
    DATES_DO_NOT_MEET = Words(
        "C205",
        "In a careful reading there is no day on which this job works: it closes before it opens.",
        "There may be no day on which this job works. Ask the owner.",
        "Look at the ground in the season and be ready to leave the job out.",
    )
    DATES_OPEN = Words(
        "C206",
        "The open dates are not known, because this season sign is not typed: {signs}.",
        "The open dates are not known. Ask the owner.",
        "Look the sign up for your county and type it under season_signs in property.yaml.",
    )
    SOD_NOT_CLEARED = Words(
        "C207",
        "The sod on this place has no cleared kill before the sowing. Grass sown into living sod "
        "fails.",
        "Do not sow into living sod. Ask the owner.",
        "Clear the autumn kill first, or sow a year later.",
    )
    NO_PRICE = Words(
        "C208",
        "Package size or price of {item} is not noted, so packages or cost are left out.",
        "",
        "Note the package and the price with the day you asked.",
    )


class Note(Enum):
    """A thing worth knowing."""

    SINGLE_DAY_SIGN = Words(
        "N301",
        "{sign} is one day, used for early, typical and late years alike.",
        "",
        "Type {{early, typical, late}} once you know how far it moves.",
    )
    PAST = Words(
        "N302",
        "The open dates were over on the day this plan was made for.",
        "The open dates are over. Ask the owner.",
        "See on the sheet what to do when the dates are missed.",
    )
    NO_SIZE = Words(
        "N303",
        "Lot {lot} has no count of seeds in a pound, so seeds on a square foot are left out.",
        "",
        "Type live_seeds_per_lb from the tag or the seller.",
        TAG_CHAPTER,
    )


Reason = Stop | Caution | Note


def severity_of(reason: Reason) -> Literal["stop", "caution", "note"]:
    """Return how grave a reason is."""
    if isinstance(reason, Stop):
        return "stop"
    return "caution" if isinstance(reason, Caution) else "note"
