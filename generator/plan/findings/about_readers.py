"""What is said of other readers, and of who hunts where."""

from generator.plan.findings.words import STANDS_CHAPTER, Caution, Note, Stop, Words

_OTHERS = (
    "Another hunter is out in these hours, and you two are not known to be clear of each other's "
    "shots. Do not go. Call the owner."
)
_CURE = "Sit another day, in other hours or at another stand, and tell both."
_TYPED = "Change sit {sit} or {beside}, in sits.yaml or the folder sits."


class ReaderCaution(Caution):
    """A thing to look at before going on."""

    BEGUN = Words(
        "C280",
        "This job is logged as begun and not as finished. Amounts on this sheet cover the whole "
        "place, not what is left.",
        "Part of this may be done already. The amounts on this sheet are for the whole place. Ask "
        "the owner where to go on.",
        "Do what is left, and log it as finished. If nothing is left, log that.",
        to_type="Type finished: true under job: of the entry. If nothing is left, correct the "
        "entry with another that says so.",
    )
    NAMES_WHAT_IS_KEPT = Words(
        "C380",
        'A text that goes to {readers} holds "{name}", {what} that is not shared with them.',
        "",
        "Change the text so that it does not name it. Where the words mean something else, leave "
        "them.",
        to_type="Change {field} of {whose} in {file}.",
    )
    HANDED_WITHOUT_A_JOB = Words(
        "C430",
        "You hand {reader} a step, and no job comes of it: {why}. Nobody gets a sheet for it.",
        "",
        "Hand over the step you mean, or ask for this one in the planting. The page Step plans and "
        "their steps names every step of each plan.",
        to_type="The step is {step} of planting {planting}.{typed}",
    )


class SitStop(Stop):
    """A thing that must not be done yet."""

    TWO_AT_ONE_STAND = Words(
        "S430",
        "Two sits at {stand} on {day} lie over each other: {hours}, and {other}.",
        _OTHERS,
        _CURE,
        STANDS_CHAPTER,
        source="common_practice",
        to_type=_TYPED,
    )
    WALK_THROUGH_ARC = Words(
        "S431",
        "On {day} a walk of one sit goes through the arc of fire of another: {walks}. {stand} is "
        "hunted from {hours}, {other_stand} from {other}.",
        _OTHERS,
        f"Take a walk that keeps clear of it. Or: {_CURE}",
        STANDS_CHAPTER,
        source="common_practice",
        to_type=_TYPED,
    )
    ARCS_REACH = Words(
        "S432",
        "On {day} the arcs of fire of {stand}, {hours}, and of {other_stand}, {other}, reach each "
        "other.",
        _OTHERS,
        _CURE,
        STANDS_CHAPTER,
        source="common_practice",
        to_type=f"{_TYPED} Or type its own arc_of_fire on it.",
    )
    NOT_KNOWN_APART = Words(
        "S433",
        "On {day} two are out at once, at {stand} from {hours} and at {other_stand} from {other}, "
        "and nothing typed says that they keep clear of each other's shots.",
        _OTHERS,
        "Settle where each shot may go and where each walk runs. Until then one of them stays out.",
        STANDS_CHAPTER,
        source="common_practice",
        to_type="Type {missing}.",
    )


class SitNote(Note):
    """A thing worth knowing."""

    NO_ARC = Words(
        "N430",
        "Where shots from {stands} may go is not typed. So all ground counts as in the way of them "
        "in the hours of the sits there, and nobody else goes to it then.",
        "",
        "Stand there with a compass: say how far to the left and to the right a shot may go, and "
        "how far out nobody may be.",
        STANDS_CHAPTER,
        to_type="Type {missing}.",
    )
    MAY_LIE_IN_ARC = Words(
        "N431",
        "Where these lie is not typed: {things}. So they count as in the way of whoever sits, and "
        "nobody else goes to them or on them in those hours.",
        "",
        "Walk them once and write down the points.",
        STANDS_CHAPTER,
        to_type="Type {missing}.",
    )
