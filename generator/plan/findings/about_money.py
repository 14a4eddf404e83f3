"""What is said of money, stock and hours."""

from generator.plan.findings.words import (
    CONTRACTS_CHAPTER,
    LATER_DAY,
    LATER_DAY_TYPED,
    Caution,
    Note,
    Words,
)


class MoneyCaution(Caution):
    """A thing to look at before going on."""

    NO_PRICE = Words(
        "C208",
        "Package size or price of {item} is not noted, so packages or cost are left out.",
        "",
        "Ask what a package holds and costs, and note the day you asked.",
        to_type="Type the package, price_usd and priced_on.",
    )
    NO_COUNT = Words(
        "C260",
        "How much of {item} is on hand is not noted, so packages and cost are left out.",
        "",
        "Count what is there.",
        to_type="Type on_hand with counted_on; 0 where there is none.",
    )
    NO_COUNT_DAY = Words(
        "C261",
        "The log names {item}, and the day you counted it is not noted, so what is on hand now is "
        "not known.",
        "",
        "Note the day of the count: what was used or bought on that day or before is in the count.",
        to_type="Type counted_on.",
    )
    BELOW_NOTHING = Words(
        "C262",
        "By count and log, more of {item} was used than was there. What to buy is worked out as if "
        "nothing were there.",
        "",
        "Look for a use noted twice or a purchase not noted. Or count again and note the count "
        "with its day.",
    )
    TOO_LATE = Words(
        "C263",
        "Ordered now, {item} comes after the last open day of: {jobs}. What is on hand does not "
        "reach, so nothing is bought for it.",
        "",
        "Ask who has it nearby and how fast you can fetch it. If nobody has it, do what the sheet "
        "of the job says for when it is missed.",
        to_type="Where you can fetch it in time, set lead_days to the days that takes.",
    )
    NOT_APPROVED = Words(
        "C264",
        "Cost-share {contract} is not approved yet, so its payment is not counted. Work begun "
        "before written approval forfeits the payment.",
        "",
        "Begin nothing on the planting before the approval is in your hand.",
        CONTRACTS_CHAPTER,
        source="nrcs_de_contract",
        to_type="Then type approved_on.",
    )
    APPROVED_LATE = Words(
        "C265",
        "The planting has a job that opens before the day on which cost-share {contract} is "
        "approved. Work begun before that day forfeits the payment.",
        "",
        "Begin no job of the planting before the day of approval.",
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
        "Cost-share on one planting pays more than all that is planned for it costs.",
        "",
        "Check each contract against the paper, and ask the offices whether both pay for the same "
        "work: most do not pay above the cost.",
        to_type="Check pays and cap of each contract on planting {planting}.",
    )
    USE_NOT_LOGGED = Words(
        "C268",
        "Work that takes {item} is logged on {days}, and how much of it was used is not. What is "
        "on hand now is not known, so packages and cost are left out.",
        "",
        "Write down how much was used. Or count what is there and note the new count with its day.",
        to_type="Write an entry that corrects it, with used: for each thing and its amount.",
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
        "You noted how much of lot {lot} can still be had, and not what is on hand on the day of "
        "this plan, so whether the seed reaches is not worked out.",
        "",
        "Weigh what is on hand.",
        to_type="Type on_hand_lb, 0 if there is none, with counted_on.",
    )
    OLD_PRICE = Words(
        "N350",
        "The price of {item} is more than a year old.",
        "",
        "Ask again.",
        source="common_practice",
        to_type="Type the price, and the day as priced_on.",
    )
    NO_LEAD = Words(
        "N351",
        "How long {item} takes from order to hand is not noted, so the day to order by is not "
        "known.",
        "",
        "Ask the seller.",
        to_type="Type lead_days; 0 where you fetch it from the shelf.",
    )
    NO_FUEL_PRICE = Words(
        "N353",
        "{machine} burns fuel whose price is not noted, so the cost of fuel is left out.",
        "",
        "Look up what a gallon costs.",
        to_type="Type fuel_usd_per_gal.",
    )
    NO_WORK_DAY = Words(
        "N354",
        "{machine} is rented by the day, and how long you work on such a day is not noted, so rent "
        "is left out.",
        "",
        "Say how many hours you work the ground on a day of rent.",
        to_type="Type work_day_hours.",
    )
    HIRE_NO_HOURS = Words(
        "N355",
        "This hired work is paid by the hour, and the hours of its jobs are not known, so its cost "
        "is left out.",
        "",
        "Name the machine of each of its jobs, or agree on a price by the acre or in all.",
        to_type="Name the machine under work:, or type the price of hire {hire}.",
    )
    OLD_HIRE = Words(
        "N356",
        "The price of this hired work is more than a year old.",
        "",
        "Ask again.",
        source="common_practice",
        to_type="Type the price of hire {hire}, and the day as priced_on.",
    )
    COUNT_LATER = Words(
        "N357",
        "{item} was counted after the day of this plan. The count does not count yet, so packages "
        "and cost are left out.",
        "",
        LATER_DAY,
        to_type=LATER_DAY_TYPED,
    )
    APPROVED_LATER = Words(
        "N358",
        "Cost-share {contract} is approved after the day of this plan. The approval does not count "
        "yet.",
        "",
        LATER_DAY,
        to_type=LATER_DAY_TYPED,
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
        "Cost-share {contract} is for a planting on {place}, and {place} is noted as under no "
        "contract. What a label allows on contract land alone, and not on it, goes by that word.",
        "",
        "If the cost-share puts the ground under a contract, say so of the place. If it does not, "
        "there is nothing to do.",
        to_type="Type its name under contract: of the place.",
    )
    ORDER_DAY_OPEN = Words(
        "N363",
        "The first open day of a job that lacks {item} is not known, so the day to order by leaves "
        "it out: {jobs}.",
        "",
        "Look up the missing season marker.",
        to_type="Type it under season_signs in property.yaml.",
    )
    COUNT_UNDATED = Words(
        "N364",
        "The day {item} was counted is not noted, so the count is taken for that of the day of "
        "this plan. Without it nothing can be used or bought in the log.",
        "",
        "Note the day of the count.",
        to_type="Type counted_on.",
    )
    WANTED_LATER = Words(
        "N365",
        "Jobs of another season take {item} too: {seasons}. The plan of each season counts on all "
        "that is on hand, which covers one of them.",
        "",
        "Buy for the season that comes first, log what its jobs use, and make the plan of the "
        "other after that.",
    )
    LET_GO = Words(
        "N405",
        "{item} is short by less than a hundredth of a package, and none is bought for so little.",
        "",
        "Do a little less ground at the full rate, or buy one more.",
        source="common_practice",
    )
