"""What is said of money, stock and hours."""

from generator.plan.findings.words import CONTRACTS_CHAPTER, LATER_DAY, Caution, Note, Words


class MoneyCaution(Caution):
    """A thing to look at before going on."""

    NO_PRICE = Words(
        "C208",
        "Package size or price of {item} is not noted, so packages or cost are left out.",
        "",
        "Note the package and the price with the day you asked.",
    )
    NO_COUNT = Words(
        "C260",
        "How much of {item} is on hand is not noted, so packages and cost are left out.",
        "",
        "Count what is there and type on_hand with counted_on; 0 where there is none.",
    )
    NO_COUNT_DAY = Words(
        "C261",
        "The log names {item}, and the day it was counted is not noted, so what is on hand now is "
        "not known.",
        "",
        "Type counted_on: what was used or bought on that day or before is in the count.",
    )
    BELOW_NOTHING = Words(
        "C262",
        "By count and log, more of {item} was used than was there. What to buy is worked out as if "
        "nothing were there.",
        "",
        "Look for a use noted twice or a purchase not noted, or count again and type the new count "
        "with its day.",
    )
    TOO_LATE = Words(
        "C263",
        "Ordered now, {item} comes after the last open day of: {jobs}. What is on hand does not "
        "reach, so nothing is bought for it.",
        "",
        "Ask who has it nearby and how fast: fetched in time, set lead_days to the days it takes. "
        "If nobody has it, do what the sheet of the job says for when it is missed.",
    )
    NOT_APPROVED = Words(
        "C264",
        "Cost-share {contract} is not approved yet, so its payment is not counted. Work begun "
        "before written approval forfeits the payment.",
        "",
        "Begin nothing on the planting before the approval is in your hand, then type approved_on.",
        CONTRACTS_CHAPTER,
        source="nrcs_de_contract",
    )
    APPROVED_LATE = Words(
        "C265",
        "The planting has a job that opens before the day on which cost-share {contract} is "
        "approved. Work begun before that day forfeits the payment.",
        "",
        "Begin no job of the planting before approved_on.",
        CONTRACTS_CHAPTER,
        source="nrcs_de_contract",
    )
    BEGUN_UNAPPROVED = Words(
        "C266",
        "Work on the planting was logged before cost-share {contract} was approved, so its payment "
        "is not counted: work begun before written approval forfeits the payment.",
        "",
        "Ask the office at once whether a waiver is possible, and begin nothing more before the "
        "answer.",
        CONTRACTS_CHAPTER,
        source="nrcs_de_contract",
    )
    PAID_ABOVE_COST = Words(
        "C267",
        "Cost-share on planting {planting} pays more than all that is planned for it costs.",
        "",
        "Check pays and cap of each contract against the paper, and ask the offices whether both "
        "pay for the same work: most do not pay above the cost.",
    )
    USE_NOT_LOGGED = Words(
        "C268",
        "Work that takes {item} is logged on {days}, and how much of it was used is not. What is "
        "on hand now is not known, so packages and cost are left out.",
        "",
        "Write an entry that corrects it, with used: for each thing and its amount. Or count what "
        "is there and type the new count with its day.",
    )
    TOO_FEW_HOURS = Words(
        "C308",
        "More hours of work fall into {months} than you and your helpers have free. Work that can "
        "be done in other months is not counted.",
        "",
        "Begin what opens first in its first days, find a helper or hire a job, or leave one out.",
        source="common_practice",
    )


class MoneyNote(Note):
    """A thing worth knowing."""

    ON_HAND_NOT_KNOWN = Words(
        "N320",
        "What can still be had of lot {lot} is typed and what is on hand on the day of this plan "
        "is not known, so whether the seed reaches is not worked out.",
        "",
        "Weigh what is on hand and type on_hand_lb, 0 if there is none, with counted_on.",
    )
    OLD_PRICE = Words(
        "N350",
        "The price of {item} is more than a year old.",
        "",
        "Ask again and set priced_on.",
        source="common_practice",
    )
    NO_LEAD = Words(
        "N351",
        "How long {item} takes from order to hand is not noted, so the day to order by is not "
        "known.",
        "",
        "Ask the seller and type lead_days; 0 where you fetch it from the shelf.",
    )
    NO_FUEL_PRICE = Words(
        "N353",
        "{machine} burns fuel whose price is not noted, so the cost of fuel is left out.",
        "",
        "Type fuel_usd_per_gal.",
    )
    NO_WORK_DAY = Words(
        "N354",
        "{machine} is rented by the day, and how long you work on such a day is not noted, so rent "
        "is left out.",
        "",
        "Type work_day_hours, the hours on the ground on a day of rent.",
    )
    HIRE_NO_HOURS = Words(
        "N355",
        "Hire {hire} is paid by the hour, and the hours of its jobs are not known, so its cost is "
        "left out.",
        "",
        "Name the machine of each of its jobs under work:, or type a price by the acre or in all.",
    )
    OLD_HIRE = Words(
        "N356",
        "The price of hire {hire} is more than a year old.",
        "",
        "Ask again and set priced_on.",
        source="common_practice",
    )
    COUNT_LATER = Words(
        "N357",
        "{item} was counted on a day after the one this plan was made for. The count does not "
        "count yet, so packages and cost are left out.",
        "",
        LATER_DAY,
    )
    APPROVED_LATER = Words(
        "N358",
        "Cost-share {contract} is approved on a day after the one this plan was made for. The "
        "approval does not count yet.",
        "",
        LATER_DAY,
    )
    ORDER_NOW = Words(
        "N359",
        "Ordered now, {item} comes after the first open day of a job that needs it and no later "
        "than the last.",
        "",
        "Order it now, or ask who has it nearby. What to buy says which open dates are left.",
    )
    CONTRACT_NOT_SAID = Words(
        "N362",
        "Cost-share {contract} is for a planting on {place}, and {place} says contract: none. What "
        "a label allows on contract land alone, and not on it, goes by that word.",
        "",
        "If the cost-share puts the ground under a contract, type its name under contract: of the "
        "place. If it does not, nothing is to do.",
    )
    ORDER_DAY_OPEN = Words(
        "N363",
        "The first open day of a job that lacks {item} is not known, so the day to order by leaves "
        "it out: {jobs}.",
        "",
        "Look the missing season sign up and type it under season_signs in property.yaml.",
    )
    COUNT_UNDATED = Words(
        "N364",
        "The day {item} was counted is not noted, so the count is taken for that of the day of "
        "this plan.",
        "",
        "Type counted_on. Without it nothing can be used or bought in the log.",
    )
    WANTED_LATER = Words(
        "N365",
        "Jobs of another season take {item} too: {seasons}. The plan of each season counts on all "
        "that is on hand.",
        "",
        "What is on hand covers one of them. Buy for the season that comes first, log what its "
        "jobs use, and make the plan of the other after that.",
    )
    LET_GO = Words(
        "N405",
        "{item} is short by less than a hundredth of a package, and none is bought for so little.",
        "",
        "Do a little less ground at the full rate, or buy one more.",
        source="common_practice",
    )
