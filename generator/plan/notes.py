"""What is worth knowing: every note, with its reason and its cure in words."""

from enum import Enum

from generator.plan.words import (
    CALIBRATION_CHAPTER,
    CONTRACTS_CHAPTER,
    COUNTING_CHAPTER,
    LABEL_CHAPTER,
    LATER_DAY,
    SOIL_CHAPTER,
    TAG_CHAPTER,
    Words,
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
    NO_WIDTH = Words(
        "N310",
        "The place has no taped width, so lanes, passes and seed thrown past it are left out.",
        "The width of the place is not known, so lanes and passes are not worked out.",
        "Tape the width and type width_ft.",
    )
    NO_PASSES = Words(
        "N391",
        "Passes are not worked out for a part of a place. The amounts are for just the ground that "
        "was typed: where it leaves out what passes lap, the tank runs dry before the end.",
        "Passes are not worked out for a part of a place. Where passes lap, the tank may run dry "
        "before the end.",
        "Measure what the passes cover, laps counted, and type that as treated_sq_ft. Where it is "
        "that already, leave it.",
        CALIBRATION_CHAPTER,
    )
    ON_HAND_NOT_KNOWN = Words(
        "N320",
        "What can still be had of lot {lot} is typed and what is on hand on the day of this plan "
        "is not known, so whether the seed reaches is not worked out.",
        "",
        "Weigh what is on hand and type on_hand_lb, 0 if there is none, with counted_on.",
    )
    INOCULANT_UNDATED = Words(
        "N321",
        "The inoculant of lot {lot} has no date, so whether it is still good is not known.",
        "",
        "Type expires_on from its package.",
        TAG_CHAPTER,
    )
    NOT_PRESSED_IN = Words(
        "N322",
        "Seed spread on a prepared bed has to be worked in or pressed in, and no packing of the "
        "ground is planned.",
        "Seed spread on top has to be worked in shallow or pressed in the same day.",
        "Drag or roll it the same day. Where the step plan has a packing step, name it under "
        "work: and it becomes a job with a sheet of its own.",
        source="common_practice",
    )
    NO_FORMULATION = Words(
        "N330",
        "How a part of this tank is made up is not typed, so no mixing order is given.",
        "No mixing order is given: follow the labels.",
        "Type formulation: of each product and adjuvant, from its label.",
    )
    NO_SOIL_TEST = Words(
        "N340",
        "The need is stated without a soil test.",
        "",
        "Test first: sample the ground, and type what the lab prints in ground.yaml.",
        SOIL_CHAPTER,
    )
    LIME_LEFT_UNDONE = Words(
        "N341",
        "Soil test {test} asks for lime, and the planting names none.",
        "",
        "List a lime in products.yaml and name it under the planting, or let it be.",
        SOIL_CHAPTER,
    )
    FERTILIZER_LEFT_UNDONE = Words(
        "N342",
        "Soil test {test} asks for phosphate or potash, and the planting names no fertilizer.",
        "",
        "List fertilizers in products.yaml and name them under the planting, or let it be.",
        SOIL_CHAPTER,
    )
    NO_DEER_COUNT = Words(
        "N343",
        "How many deer drink at the water hole, or what one weighs, is not typed, so how long its "
        "water lasts is left out.",
        "",
        "Type deer_count and deer_weight_lb.",
    )
    NO_DRY_SPELL = Words(
        "N344",
        "The longest dry spell, or what one load of water brings, is not typed, so loads are left "
        "out.",
        "",
        "Type dry_spell_days and refill_gal.",
    )
    LOAD_OVER_HOLE = Words(
        "N345",
        "One load of water is more than the hole holds, so a load counts as a full hole and no "
        "more.",
        "",
        "Bring what the hole takes; more of it runs over. Or dig or set a larger hole, and type "
        "its sizes.",
    )
    NO_LIME_ASKED = Words(
        "N346",
        "Soil test {test} asks for no lime, so the lime named is not spread and there is no job "
        "for it.",
        "",
        "Leave lime: out of the planting, or type what the lab asks for.",
        SOIL_CHAPTER,
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
    ENTRY_LATER = Words(
        "N352",
        "Log entry {entry} is of {day}, after the day this plan was made for, and does not count "
        "yet.",
        "",
        LATER_DAY,
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
    NO_GUARDS = Words(
        "N360",
        "No guard is named for {item}. Deer browse and rub young trees, mice gnaw them.",
        "",
        "List tubes, cages or wraps under guards: in seed.yaml and name one under guards: of the "
        "row; where you fence the row or mean to go without, leave it as it is.",
        source="common_practice",
    )
    NO_REPLACE_SHARE = Words(
        "N361",
        "No share is typed for what may have to be replaced of {item}, so no plants are set aside.",
        "",
        "Type replace_pct of the row: what you or your nursery expect to lose.",
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
    PART_QUIET = Words(
        "N380",
        "Part of the open days lies in dates you keep free of this work. Left are: {left}.",
        "",
        "{cure}",
    )
    NESTING = Words(
        "N381",
        "Hens may sit or fawns may lie here on open days of this job: {days}.",
        "",
        "Do it outside those days if it can wait. If not, walk the ground first, work from the "
        "middle outward, and leave what you find.",
        source="common_practice",
    )
    NOT_LOOKED_UP = Words(
        "N382",
        "Dates {dates} are not looked up yet: they differ by state and from year to year.",
        "",
        "Look them up with your state or county, and type source and looked_up_on.",
    )
    NO_CONTRACT_PAPER = Words(
        "N383",
        "{place} is under contract {contract}, and what its written plan allows is not typed.",
        "",
        "Type the contract under contracts: in papers.yaml, with approved_on and work_allowed.",
        CONTRACTS_CHAPTER,
    )
    PAPER_LATER = Words(
        "N384",
        "{paper} is approved on a day after the one this plan was made for. The approval does not "
        "count yet.",
        "",
        LATER_DAY,
    )
    RECORD_EXTRAS = Words(
        "N390",
        "The record of the spraying of {day} leaves out what is good to have if anyone asks later: "
        "{missing}.",
        "",
        "Fill in the blank record of the next job while you spray, and type what stands on it.",
        source="pesticide_records",
    )
    FEW_PLACEMENTS = Words(
        "N400",
        "The frame was laid at fewer places {stretch} than are asked for on so much ground, "
        "counted {day}. One thick or thin spot can sway the count.",
        "",
        "Lay it at more places next time, spread evenly and not where it looks good.",
        COUNTING_CHAPTER,
    )
    TOO_EARLY = Words(
        "N401",
        "{planting} was counted {day}, before its second summer. That is too early to condemn it: "
        "seed that was asleep can come in the second spring.",
        "",
        "Keep the weeds off it and count again in mid-June, from {decide_on} on.",
        COUNTING_CHAPTER,
        source="common_practice",
    )
    COUNT_IN_AUTUMN = Words(
        "N402",
        "{planting} is in the first autumn of its life, and no count is typed. A count in "
        "September decides nothing, and shows where to look next June.",
        "",
        "Lay the frame as the chapter says, and type counted: in an entry of the log. From "
        "{decide_on} on count again, to decide.",
        COUNTING_CHAPTER,
        source="common_practice",
    )
    COUNT_NOW = Words(
        "N403",
        "{planting} is in its second summer or later, and no count since {decide_on} is typed. "
        "Whether to keep it, overseed it or start over rests on one.",
        "",
        "Lay the frame as the chapter says, and type counted: in an entry of the log.",
        COUNTING_CHAPTER,
        source="common_practice",
    )
    LET_GO = Words(
        "N405",
        "{item} is short by less than a hundredth of a package, and none is bought for so little.",
        "",
        "Do a little less ground at the full rate, or buy one more.",
        source="common_practice",
    )
    LABEL_PRINTED_LONG_AGO = Words(
        "N411",
        "The label was printed in {year}, more than two years before this job.",
        "",
        "Look whether a newer label is out. The one on the container in hand decides.",
        LABEL_CHAPTER,
        source="common_practice",
    )
    LABEL_UNDATED = Words(
        "N412",
        "The card holds no year of its label, so how old the label is cannot be said.",
        "",
        "Type the date or revision that the label prints as label_date, its year in four digits.",
        LABEL_CHAPTER,
    )
    CARD_NOT_FILLED_IN = Words(
        "N425",
        "The label card of {product} leaves out: {missing}.",
        "",
        "Read the label and type what it says, or not_on_label where it is silent. A job that "
        "rests on the card is stopped until then.",
        LABEL_CHAPTER,
    )
    WET_GROUND_NOT_LOOKED_UP = Words(
        "N410",
        "Whether {hole} lies in a wetland or on the bank of a stream is not looked up.",
        "",
        "Ask before any digging, and type the day as wet_ground_asked_on. Rules differ by state "
        "and county, and a permit can be needed.",
        CONTRACTS_CHAPTER,
    )
    FEW_YEARS_OF_WEATHER = Words(
        "N415",
        "{sign} rests on few years of weather: {count}. One year in ten is guessed from them.",
        "",
        "Bring a longer record, of twenty years or more, or type the days under season_signs in "
        "property.yaml.",
        source="common_practice",
    )
    STATION_READ_EARLY = Words(
        "N416",
        "The station {station} is read in the morning, so a high stands under the day after it. "
        "Signs that rest on sums and on soil may be a day late.",
        "",
        "Nothing to do, where a day matters little; else take a station read in the evening.",
        source="common_practice",
    )
    PASSED_OVER = Words(
        "N420",
        "Not read, because it is hidden or left by an editor: {names}.",
        "",
        "Nothing to do, unless one of them holds what you typed. Then give it the name of a file "
        "that is read, such as log.yaml.",
    )
    LATITUDE_NOT_TYPED = Words(
        "N421",
        "Where the property lies is not typed, so nobody can say whether the calendar days of its "
        "step plans are written for there.",
        "",
        "Type location_lat_lon in property.yaml: the middle of your ground, latitude first.",
        source="bioclimatic_law",
    )
