"""What is said of what readers are told."""

from generator.plan.findings.words import Caution, Words


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
