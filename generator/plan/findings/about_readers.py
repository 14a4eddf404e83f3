"""What is said of what readers are told."""

from generator.plan.findings.words import Caution, Words


class ReaderCaution(Caution):
    """A thing to look at before going on."""

    BEGUN = Words(
        "C280",
        "This job is logged as begun and not as finished. The amounts on this sheet are for the "
        "whole place, not for what is left.",
        "Part of this may be done already. The amounts on this sheet are for the whole place. Ask "
        "the owner where to go on.",
        "Do what is left, and log it with finished: true under job: of the entry. If nothing is "
        "left, correct the entry with another that says so.",
    )
    NAMES_WHAT_IS_KEPT = Words(
        "C380",
        '{field} of {whose} is read by {readers} and holds "{name}", {what} that is not '
        "shared with them.",
        "",
        "Change {field} of {whose} in {file} so that it does not name it. Where the words mean "
        "something else, leave them.",
    )
    HANDED_WITHOUT_A_JOB = Words(
        "C430",
        "Step {step} of planting {planting} is handed to {reader}, and no job comes of it: {why}. "
        "Nobody gets a sheet for it.",
        "",
        "Hand over the step that is meant, or ask for this one in the planting. The page Step "
        "plans and their steps names every step of each plan.",
    )
