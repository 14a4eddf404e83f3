"""What is said of entries of the log that cannot be, or hardly, and of what rests on them."""

from generator.plan.findings.words import (
    LABEL_CHAPTER,
    Caution,
    Stop,
    Words,
    label_words,
)

IF_IT_WAS_THAT_DAY = "Correct the day or the job in the log, or say that it was that day."
CORRECT_OR_CONFIRM = (
    "Write an entry that corrects {entry}, with the day or the job as it was. If it was that day, "
    "an entry with confirms: [{entry}]."
)
ONE_TRUE_LINE = (
    "Write down what is true: correct the entry, note the purchase that is missing, or say that "
    "all is as it was."
)
ONE_TRUE_LINE_TYPED = (
    "An entry that corrects {entry}; the purchase that is not noted, with its day; or, where all "
    "is as it was, an entry with confirms: [{entry}]."
)
WHICH_OF_THE_TWO = "Say whether one is too many, one is wrong, or both are true."
WHICH_OF_THE_TWO_TYPED = (
    "Where one is too many, write an entry with corrects: {entry} and not_done: true. Where one is "
    "wrong, an entry that corrects it. Where both are true, an entry with "
    "confirms: [{other}, {entry}]."
)


class DoubtStop(Stop):
    """A thing that must not be done yet."""

    AMOUNT_IN_QUESTION = label_words(
        "S240",
        "By what is counted and bought, more of {item} is logged as used on {day} than was there. "
        "The amount, the product or the ground in that entry may be wrong, and what this job adds "
        "to what a label allows in a year rests on it.",
        ONE_TRUE_LINE,
        to_type=ONE_TRUE_LINE_TYPED,
    )
    SPRAYING_SAID_TWICE = label_words(
        "S241",
        "Two log entries, the later one of {day}, say the same: {what}. Where one of them was on "
        "another day, on other ground or with another product, what this job adds to what a label "
        "allows in a year is not what is counted here.",
        WHICH_OF_THE_TWO,
        to_type=WHICH_OF_THE_TWO_TYPED,
    )
    DAY_IN_QUESTION = label_words(
        "S242",
        "{job} is logged on {day}, and {why}. The day in that entry may be wrong, and what this "
        "job adds to what a label allows in a year rests on it.",
        IF_IT_WAS_THAT_DAY,
        to_type=CORRECT_OR_CONFIRM,
    )
    WAIT_IN_QUESTION = Words(
        "S243",
        "{job} is logged on {day}, and {why}. The day in that entry may be wrong, and how long a "
        "label asks to wait before this sowing is counted from it.",
        "This ground may not be sown yet. Do not begin; ask the owner.",
        IF_IT_WAS_THAT_DAY,
        LABEL_CHAPTER,
        to_type=CORRECT_OR_CONFIRM,
    )
    REENTRY_IN_QUESTION = Words(
        "S244",
        "{job} is logged on {day}, and {why}. The day in that entry may be wrong, and until when a "
        "label keeps people off this ground is counted from it.",
        "Keep out of this ground until the owner says that the label lets you back.",
        f"Keep out until it is settled. {IF_IT_WAS_THAT_DAY}",
        LABEL_CHAPTER,
        to_type=CORRECT_OR_CONFIRM,
    )


class DoubtCaution(Caution):
    """A thing to look at before going on."""

    MORE_USED_THAN_THERE = Words(
        "C370",
        "By what is counted and bought, more of {item} is logged as used on {day} than was there.",
        "",
        ONE_TRUE_LINE,
        to_type=ONE_TRUE_LINE_TYPED,
    )
    SAID_TWICE = Words(
        "C371",
        "Two log entries, the later one of {day}, say the same: {what}. Both count.",
        "",
        WHICH_OF_THE_TWO,
        to_type=WHICH_OF_THE_TWO_TYPED,
    )
    OUT_OF_SEASON = Words(
        "C372",
        "{job} is logged on {day}, and {why}.",
        "",
        IF_IT_WAS_THAT_DAY,
        to_type=f"{CORRECT_OR_CONFIRM} For a step that comes back, season: under job: says which "
        "one it counts for.",
    )
    SEEN_FAR_OFF = Words(
        "C440",
        "{marker} is logged as seen on {day}. In that season its early year is {early} and its "
        "late year {late}. The jobs that wait for it go by the day that was seen.",
        "",
        IF_IT_WAS_THAT_DAY,
        to_type=CORRECT_OR_CONFIRM,
    )
    ANSWERED_BEFORE = Words(
        "C373",
        "{job} was answered on {day}, and {why}. What waits for the answer goes by it.",
        "",
        "Look once more, and log the day and the answer. If it could be answered that day, say so.",
        to_type="Write an entry that corrects {entry}, or one with confirms: [{entry}].",
    )
    NO_WIND = Words(
        "C374",
        "No wind is written down for the spraying of {day}, and the label of {product} says in "
        "which wind it may be sprayed.",
        "",
        "Write down the wind as it was measured then. Do not make up later a wind that nobody "
        "measured: say that it was not measured.",
        source="label_in_hand",
        to_type="Write an entry that corrects {entry}, with everything said again and wind_mph:, "
        "or wind_not_measured: true. Or write an entry with confirms: [{entry}].",
    )
    WIND_OUTSIDE = Words(
        "C375",
        "The wind written down for the spraying of {day} is outside what the label of {product} "
        "allows.",
        "",
        "If the number is wrong, correct it. If it blew so, look for harm around the place and log "
        "what you find.",
        source="label_in_hand",
        to_type="Write an entry that corrects {entry}; or log the look under drift_checked:, in an "
        "entry with confirms: [{entry}].",
    )
