"""Every stop, caution and note the plan can find, with its reason and its cure in words."""

from dataclasses import dataclass
from enum import Enum
from typing import Literal

LABEL_CHAPTER = "label-card"
TAG_CHAPTER = "seed-tag"
CALIBRATION_CHAPTER = "calibration"
SOIL_CHAPTER = "soil-test"
COUNTING_CHAPTER = "counting"
SOD_CHAPTER = "sod-the-year-before"


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
        "{what} is more than its label allows at one time.",
        "Type a rate that the label allows for this use, all that is in the tank counted.",
    )
    OVER_YEAR = _label(
        "S112",
        "{what} is more than its label allows in a year.",
        "{cure} within what the label allows.",
    )
    TOO_OFTEN = _label(
        "S113",
        "The product is planned on this ground more often in a year than the label allows.",
        "Leave one of the sprayings out.",
    )
    RESTRICTED = Words(
        "S114",
        "{product} is a restricted use product: only a certified applicator may buy or use it, or "
        "someone under their direct supervision. No licence that fits this product, and is good on "
        "the last open day, is typed for whoever does this job.",
        _NOT_CLEARED,
        "Ask your state agency which licence fits, or hire a licensed applicator. Once somebody "
        "holds it, type it under applicators: in people.yaml: its class and last day, the product "
        "under fits:, and the day the agency said so under asked_on:. A crew that is paid needs a "
        "licence that covers hire.",
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
    DATES_DO_NOT_MEET = Words(
        "S123",
        "In a careful reading there is no day on which this job works: it closes on {closes}, "
        "before it opens on {opens}.",
        "There is no day on which this job works. Do not begin; ask the owner.",
        "Its sheet names the signs its dates come from: check each, early, typical and late, under "
        "season_signs in property.yaml. If they are right, leave the job out, or give it other "
        "dates in a step plan of your own.",
    )
    SEED_WAITS = Words(
        "S140",
        "Lot {lot} does not reach this place this season. Places before it in turn get the full "
        "rate. Sown thin everywhere, it would fail everywhere.",
        "The seed for this place is not there yet. Do not begin; ask the owner.",
        "Get more seed and raise most_to_be_had or on_hand of the lot, give the planting an "
        "earlier priority, sow another lot here, or sow it a season later.",
    )
    NO_MEASURE = Words(
        "S150",
        "No {measure} is named on the sprayer, and {product} has to be measured with one.",
        _NOT_CLEARED,
        "Add it under measures: in equipment.yaml and name it under measure: of the sprayer.",
        CALIBRATION_CHAPTER,
    )
    NO_TREATED_GROUND = Words(
        "S151",
        "Spots are to be sprayed, and the ground they make together is not measured.",
        _NOT_CLEARED,
        "Measure the spots and type treated_sq_ft: without it nobody can say what an acre gets.",
    )
    MORE_THAN_THE_PLACE = Words(
        "S152",
        "More ground is to be sprayed than the place has.",
        _NOT_CLEARED,
        "Measure again: correct treated_sq_ft, or the length and width of the place.",
    )
    PERCENT_OF_RESIDUAL = Words(
        "S153",
        "{product} works through the soil, or its card does not say how it works. A percent mix "
        "sprayed until leaves are wet puts far more on an acre than a soil residual may have.",
        _NOT_CLEARED,
        "Type a rate to an acre for a broadcast use the label names. Of an active that leaves "
        "nothing in the soil, type works_as: other on the card.",
        LABEL_CHAPTER,
    )
    TANK_NOT_CLEANED = Words(
        "S154",
        "{item} held {held} last, and no clean-out is noted since. A trace of it harms what grows "
        "on this place.",
        _NOT_CLEARED,
        "Clean tank, hoses, screens and nozzles as the label of the last product says, and log it "
        "with cleaned_out:, or type cleaned_out_on: under last_load: of the sprayer.",
        CALIBRATION_CHAPTER,
    )
    NO_ADJUVANT_RATE = Words(
        "S155",
        "No rate is typed for {item}, which is to go into the tank.",
        _NOT_CLEARED,
        "Type what the herbicide's label asks for: rate_product, mix_pct or rate_lb_per_100_gal.",
    )
    NOT_TO_BE_ADDED_UP = _label(
        "S156",
        "What is planned here of {product}, and of what its label counts with it, cannot be added "
        "up and held against the card: a rate is not typed, or a strength or a limit is not known "
        "in the same basis.",
        "Type the rate of every spraying of this ground, each card's strengths in the basis of the "
        "panel, and basis: beside a year's limit: what it counts.",
    )
    LIME_BASE = Words(
        "S160",
        "The lab counts lime in {base}, and {lime} states no {base}. Figures of one kind are not "
        "turned into another.",
        "How much lime to spread is not worked out. Ask the owner before you begin.",
        "Ask the seller for the {base} of this lime and type {key}, or choose a lime that states "
        "it.",
        SOIL_CHAPTER,
    )
    LIVING_SOD = Words(
        "S180",
        "Perennial sod stands on this place, or nobody knows what does, and no kill before the "
        "sowing is logged or planned. Seed sown into living sod comes up here and there, and dies "
        "in summer. The sod has to be killed in the autumn of {autumn}, for a sowing in season "
        "{season}.",
        "Do not sow here yet. Ask the owner.",
        "Plan the kill under work: with its product, or log the one that was done. Where the kill "
        "was missed, set the season of the planting to the one named. Where no sod is left, say "
        "under cover_now: what grows there now.",
        SOD_CHAPTER,
    )
    BURN_BANNED = Words(
        "S190",
        "A burn ban holds on this place: {days}.",
        "Burning is banned. Do not burn. Ask the owner.",
        "Wait until the ban is over. If it is lifted early, correct its last day in dates.yaml, "
        "with the day you looked it up.",
    )
    NO_BURN_PERMIT = Words(
        "S191",
        "No burn permit is typed that is given in writing and good on every open day of this job.",
        "Do not burn. Ask the owner.",
        "Ask your fire authority which permit a burn takes. Once it is in your hand, type it under "
        "permits: in papers.yaml with places, approved_on and expires_on.",
    )
    NESTING_ON_CONTRACT = Words(
        "S192",
        "The ground is under a contract, and this job falls into nesting dates: {days}. Mowing or "
        "spraying then, without leave in writing beforehand, can cost payments or the contract.",
        "Do not begin this job yet. Ask the owner.",
        "Ask the office of the contract. Once it allows the work in writing, type the contract "
        "under contracts: in papers.yaml, with this step or kind of work under "
        "written_permission_for: and the day of the letter under permission_on:. Or keep the work "
        "out of the dates.",
    )
    AMOUNT_NOT_LOGGED = _label(
        "S200",
        "The log leaves out how much was sprayed on this ground, or on how much of it: {days}. "
        "What this job adds cannot be held against what the label allows in a year.",
        "Write an entry that corrects it, with used: of every product and area_ac: of the job, or "
        "treated_ac: where it was no job. Where another product was used than planned, change the "
        "product of that step to it.",
    )
    SOWN_IN_RESIDUE = Words(
        "S210",
        "{product} {sprayed} on this ground {day}. By its label card this planting may be sown "
        "from {earliest} on, and the open dates begin {opens}.",
        "This ground may not be sown yet. Do not begin; ask the owner.",
        "Sow a season later, or choose another product for a spraying that is not done yet. What "
        "the label asks for is on the page What can I plant here, when.",
        LABEL_CHAPTER,
    )


class Caution(Enum):
    """A thing to look at before going on."""

    DORMANT = Words(
        "C201",
        "Part of the live seed in lot {lot} was asleep in the test. Sown in winter it can wake. "
        "It does not change the pounds to buy or spread.",
        "Part of the live seed was asleep in the test; sow while winter remains.",
        "Sow within the open dates.",
        TAG_CHAPTER,
    )
    NO_SEED_TEST = Words(
        "C202",
        "What sows this has no catch test with lot {lot}, so setting and passes are not worked "
        "out, and there is nothing to measure without one.",
        "What sows this has not been tested with this seed. Ask the owner.",
        "Catch what falls over a measured distance, weigh it, and note it in equipment.yaml.",
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
    DATES_OPEN = Words(
        "C206",
        "The open dates are not known, because this season sign is not typed: {signs}.",
        "The open dates are not known. Ask the owner.",
        "Look the sign up for your county and type it under season_signs in property.yaml.",
    )
    SOD_NOT_CLEARED = Words(
        "C207",
        "The kill of the sod on this place is planned, and a stop stands on it. Seed sown into "
        "living sod fails.",
        "Do not sow into living sod. Ask the owner.",
        "Lift the stop of the kill first, or sow a year later.",
        SOD_CHAPTER,
    )
    NO_PRICE = Words(
        "C208",
        "Package size or price of {item} is not noted, so packages or cost are left out.",
        "",
        "Note the package and the price with the day you asked.",
    )
    GROUNDS_DISAGREE = Words(
        "C220",
        "Two ways to the ground of this place do not agree: {counts}, which counts, and {other}.",
        "",
        "Measure again, and correct the one that is wrong.",
    )
    COARSE_OUTLINE = Words(
        "C221",
        "The ground comes from an outline that may be far off: what the points miss counts on both "
        "long sides.",
        "",
        "Tape the width, measure the length, and type width_ft and length_ft; they count first. If "
        "the outline was surveyed, type how far off a side may be as outline_error_ft.",
    )
    SEED_SHORT = Words(
        "C230",
        "Lot {lot} does not reach the whole place. Sow part of it at the full rate, never all of "
        "it thinner.",
        "The seed is for part of the place: sow the acres on this sheet at the full rate, no more.",
        "Mark off the acres to sow. Keep the rest for the next season, and hold its weeds down.",
    )
    ORDER_GUESSED = Words(
        "C231",
        "A lot is short, and not every place that wants it has a priority of its own. Their turn "
        "goes by priority where it is typed, then by the earlier open date, then by the id.",
        "",
        "Type priority: on each planting that wants this lot, 1 for the first.",
    )
    OLD_SEED_TEST = Words(
        "C232",
        "The seed test of lot {lot} {why}. After a year a test says little, and many states do "
        "not let such seed be sold (common practice; the law of your state decides).",
        "The seed test is old or has no date. Ask the owner.",
        "Have the seed tested again, or ask the seller for a new test, and type tested_on.",
        TAG_CHAPTER,
    )
    NOXIOUS = Words(
        "C233",
        "The tag of lot {lot} lists noxious weed seed: {weeds}.",
        "The tag lists noxious weed seed. Ask the owner before you sow.",
        "Look the weed up with your county or state: it may not be sown at all. Ask for a clean "
        "lot.",
        TAG_CHAPTER,
    )
    TREATED = Words(
        "C234",
        "The seed of lot {lot} is treated: {treated}. Wear gloves and whatever else its tag asks "
        "for. It is not for food or feed. Pick up what is spilled and keep leftover seed where "
        "wildlife and stock cannot reach it.",
        "The seed is treated. Wear gloves and whatever else its tag asks for. It is not for food "
        "or feed. Pick up what is spilled; leave no seed where wildlife and stock can reach it.",
        "Read the treatment part of the tag before you open the bag; the tag decides.",
        TAG_CHAPTER,
    )
    NO_INOCULANT = Words(
        "C235",
        "{species} is a legume, and lot {lot} has no inoculant: {group}.",
        "The seed is a legume and no inoculant is noted. Ask the owner.",
        "Get fresh inoculant for this plant and type inoculant: of the lot, with group and "
        "expires_on from its package. Seed that comes inoculated has the same on its tag.",
        TAG_CHAPTER,
    )
    INOCULANT_UNFIT = Words(
        "C236",
        "The inoculant of lot {lot} {why}. {species} gets little from it.",
        "The inoculant does not fit this seed or is past its date. Ask the owner.",
        "Get fresh inoculant for this plant and type its group and expires_on.",
        TAG_CHAPTER,
    )
    DORMANT_LATE = Words(
        "C237",
        "Part of the live seed in lot {lot} was asleep in the test, and this late little winter is "
        "left to wake it. Count on what is ready to grow in the first year. It does not change "
        "the pounds to buy or spread.",
        "Part of the live seed was asleep in the test; some of it may come up a year later.",
        "Sow in winter if you can, or ask the seller for a lot with less dormant seed.",
        TAG_CHAPTER,
    )
    FALLS_BESIDE = Words(
        "C238",
        "The throw is wider than the place, so seed falls beside it. The seed to load counts that "
        "in.",
        "The throw is wider than the place, so seed falls beside it. The seed to load counts that "
        "in.",
        "Close part of the throw, catch again and note the narrower width; or count the seed "
        "beside in, as this sheet does.",
        CALIBRATION_CHAPTER,
    )
    CATCHES_APART = Words(
        "C239",
        "The last two catches at this setting are too far apart to trust either.",
        "Two catches at this setting do not agree. Catch again before you begin.",
        "Steady pace and cranking, and catch until two in a row agree.",
        CALIBRATION_CHAPTER,
    )
    NOZZLES_DIFFER = Words(
        "C240",
        "A nozzle gave over a tenth more or less than the mean of the boom in the last catch test.",
        "A nozzle of the sprayer gives more or less than the others. Catch again before you begin.",
        "Clean or change that nozzle and catch again.",
        CALIBRATION_CHAPTER,
    )
    NO_TANK_HISTORY = Words(
        "C241",
        "It is not noted what {item} held last.",
        "It is not noted what the tank held last. Ask the owner, or clean it out first.",
        "Type last_load: of the sprayer, with the day it was cleaned out.",
        CALIBRATION_CHAPTER,
    )
    CAUGHT_OTHER_SEED = Words(
        "C242",
        "The catch test was made with {caught}, and this job sows {sown}. Other seed runs through "
        "the same opening at another rate (common practice).",
        "The catch test was not made with just this seed. Catch again before you begin.",
        "Mix the seed as it is sown and catch it. Note the test with lot: and, of a mixture, the "
        "other lots under mixed_with:.",
        CALIBRATION_CHAPTER,
    )
    WEED_SEED = Words(
        "C243",
        "Much of lot {lot} is weed seed: more than in a clean lot of native seed.",
        "The seed holds much weed seed. Ask the owner before you sow.",
        "Ask the seller for a cleaner lot, and what weeds these are. Your state may not let such "
        "seed be sold.",
        TAG_CHAPTER,
    )
    OTHER_CROP = Words(
        "C244",
        "Much of lot {lot} is seed of another crop: more than in a clean lot of native seed.",
        "The seed holds much seed of another crop. Ask the owner before you sow.",
        "Ask the seller what it is: a cool-season grass in it smothers what is sown. Ask for a "
        "cleaner lot.",
        TAG_CHAPTER,
    )
    TAG_NOT_TYPED = Words(
        "C245",
        "Not typed from the tag of lot {lot}: {missing}. What is left out does not count as none.",
        "Part of the seed tag is not known. Read it before you open the bag, and take the seed for "
        "treated until the tag says otherwise: gloves, no food or feed, no spills.",
        "Read the tag and type {missing}; none where it says none.",
        TAG_CHAPTER,
    )
    OLD_SOIL_TEST = Words(
        "C250",
        "Soil test {test} is older on the day of this job than a soil test is good for.",
        "The soil test behind this sheet is old. Ask the owner.",
        "Sample again and type the new test.",
        SOIL_CHAPTER,
    )
    NO_LIME_TEST = Words(
        "C251",
        "A lime is chosen, and the planting names no soil test, so how much goes on is not known.",
        "How much lime to spread is not worked out. Ask the owner.",
        "Take a soil test, type it in ground.yaml and name it under the planting.",
        SOIL_CHAPTER,
    )
    NO_LIME_NEED = Words(
        "C252",
        "A lime is chosen, and soil test {test} asks for none.",
        "How much lime to spread is not worked out. Ask the owner.",
        "Type lime_need as the lab prints it. If the lab asks for no lime, leave the lime out.",
        SOIL_CHAPTER,
    )
    NO_NEED = Words(
        "C253",
        "Fertilizer is chosen, and nothing says how much is needed.",
        "How much fertilizer to spread is not worked out. Ask the owner.",
        "Type need: on the soil test as the lab prints it, and name the test under the planting.",
        SOIL_CHAPTER,
    )
    NO_FERTILIZER = Words(
        "C254",
        "A need is stated, and no fertilizer is named to meet it.",
        "Which fertilizer to spread is not decided. Ask the owner.",
        "List fertilizers in products.yaml and name them under the planting.",
    )
    NEED_NOT_MET = Words(
        "C255",
        "No fertilizer named carries {nutrient}, so its need is not met in full.",
        "",
        "Name one more fertilizer under the planting, or let it be.",
    )
    NO_NITROGEN_AT_SOWING = Words(
        "C256",
        "Nitrogen is asked for and is left out: at the sowing of native grass it feeds the weeds, "
        "which then smother the seedlings.",
        "No nitrogen is to be added at this sowing.",
        "Once the grass stands, in its second spring, ask for nitrogen then.",
        SOIL_CHAPTER,
    )
    NITROGEN_CARRIED = Words(
        "C257",
        "{item}, spread for its {nutrient}, brings nitrogen with it, which feeds the weeds.",
        "",
        "{instead}",
        SOIL_CHAPTER,
    )
    LIME_IN_PARTS = Words(
        "C258",
        "The lab asks for more lime than may lie on top at once. This sheet spreads the first "
        "part; the rest waits for years and is not counted in what to buy.",
        "This is the first part of the lime. Do not spread more.",
        "Note the day it was spread. Test again before the rest.",
        SOIL_CHAPTER,
    )
    STEEP_OR_NO_WAY_OUT = Words(
        "C259",
        "The water hole has {what}.",
        "",
        "{cure}",
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
    )
    APPROVED_LATE = Words(
        "C265",
        "The planting has a job that opens before the day on which cost-share {contract} is "
        "approved. Work begun before that day forfeits the payment.",
        "",
        "Begin no job of the planting before approved_on.",
    )
    BEGUN_UNAPPROVED = Words(
        "C266",
        "Work on the planting was logged before cost-share {contract} was approved, so its payment "
        "is not counted: work begun before written approval forfeits the payment.",
        "",
        "Ask the office at once whether a waiver is possible, and begin nothing more before the "
        "answer.",
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
    ROWS_NOT_MEASURED = Words(
        "C270",
        "The length of the rows is not known, so plants and guards are not counted.",
        "The length of the rows is not known. Ask the owner how many plants there are to set.",
        "Measure the place and type length_ft, give it a line, or type row_ft of the row.",
    )
    ROWS_TOO_WIDE = Words(
        "C271",
        "From the first row to the last is more than the place is wide.",
        "The rows as described do not fit the place. Ask the owner.",
        "Fewer rows_count, a smaller rows_apart_ft, or measure the place again.",
    )
    LIME_UNIT = Words(
        "C274",
        "The lime to an acre is {what} than a lab asks for. A figure typed in another unit gives "
        "such an amount.",
        "The amount of lime on this sheet is out of the ordinary. Ask the owner before you spread.",
        "Check the unit: of amount in lime_need, of its percent, and of the strength of the lime, "
        "each against the paper it was typed from.",
        SOIL_CHAPTER,
    )
    FERTILIZER_UNIT = Words(
        "C275",
        "{what} A figure typed in another unit gives such a number.",
        "The amount of fertilizer on this sheet is out of the ordinary. Ask the owner before you "
        "spread.",
        "Check the unit: of the need against the lab's paper, and of the grade against the bag. "
        "The 46 on a bag is n_pct: 46.",
        SOIL_CHAPTER,
    )
    MORE_THAN_ASKED = Words(
        "C276",
        "More {nutrient} goes on than is asked for: it comes along with {items}.{law}",
        "",
        "{instead}",
        SOIL_CHAPTER,
    )
    SAMPLED_AFTER = Words(
        "C277",
        "Soil test {test} was sampled after the last open day of this job, so nobody can have "
        "spread by it in time.",
        "The soil test behind this sheet is of a later day than the job. Ask the owner.",
        "Check sampled_on. If it is right, name the test that was there before, or move the "
        "planting to a later season.",
        SOIL_CHAPTER,
    )
    BEGUN = Words(
        "C280",
        "This job is logged as begun and not as finished. The amounts on this sheet are for the "
        "whole place, not for what is left.",
        "Part of this may be done already. The amounts on this sheet are for the whole place. Ask "
        "the owner where to go on.",
        "Do what is left, and log it with finished: true under job: of the entry. If nothing is "
        "left, correct the entry with another that says so.",
    )
    ALL_QUIET = Words(
        "C300",
        "All open days that are left lie in dates you keep free of this work: {days}.",
        "No open day is left on which this may be done. Ask the owner.",
        "Do it before those dates begin, shorten them in dates.yaml, or leave the job out. Its "
        "sheet says what to do when it is missed.",
    )
    OTHERS_HUNTING = Words(
        "C301",
        "Open days of this job fall into hunting dates, and the job is handed to somebody: {days}.",
        "Others may be hunting here on some of the open days. The sheet names them under Safety.",
        "Agree on a day, tell everybody who hunts, and see that whoever works wears blaze orange.",
    )
    ENTRY_IN_HUNTING = Words(
        "C302",
        "Sprayed on the last open day, people may not enter until {until} by the label's hours, "
        "and others may be hunting from {first} on.",
        "Keep people out for as long as the label says: others may come here to hunt.",
        "Spray earlier, tell everybody who hunts here, and post the place until the time is over.",
    )
    NO_ONE_CALL = Words(
        "C303",
        "Ground is opened, and no request to mark buried lines is typed for this place and these "
        "days.",
        "Call before you dig: 811. Do not open ground until buried lines are marked.",
        "Call 811 two working days before, or more where your state says so, and type the request "
        "under one_calls: in papers.yaml with its number, clear_on and expires_on.",
    )
    CONTRACT_NOT_APPROVED = Words(
        "C304",
        "Contract {contract} {why}. Work begun before written approval can forfeit the payment.",
        "",
        "Begin nothing on its ground before the approval is in your hand, then type approved_on. "
        "Where something is begun, ask the office at once whether a waiver is possible.",
    )
    NOT_IN_CONTRACT = Words(
        "C305",
        "Contract {contract} holds on this place, and its written plan as typed does not name this "
        "work.",
        "",
        "Look the work up in the plan. If it is there, add its step or kind of work to "
        "work_allowed:; if not, ask the office before you begin.",
    )
    HIRE_UNLICENSED = Words(
        "C306",
        "Spraying is hired, and no licence that covers spraying for hire, good on the last open "
        "day, is typed for who does it. Most states ask for one whatever is sprayed (from memory; "
        "your state agency decides).",
        "",
        "Ask to see the licence, and type it under applicators: in people.yaml with "
        "licence_class: commercial, for_hire: true and its last day. Ask for a copy of the record.",
    )
    NOT_INSURED = Words(
        "C307",
        "Work is handed to contractor {contractor}, and {why}.",
        "",
        "Ask for proof of insurance before the first job, and type insured: true and "
        "insured_until.",
    )
    TOO_FEW_HOURS = Words(
        "C308",
        "More hours of work fall into {months} than you and your helpers have free. Work that can "
        "be done in other months is not counted.",
        "",
        "Begin what opens first in its first days, find a helper or hire a job, or leave one out.",
    )
    BAN_IN_PART = Words(
        "C309",
        "A burn ban takes part of the open days: {days}.",
        "Burning is banned on some of the open days. Do not burn on them.",
        "Burn on a day that is left, and look the ban up again that morning.",
    )
    RECORD_GAPS = Words(
        "C310",
        "The record of the spraying of {day} leaves out: {missing}. The rule 7 CFR 110.3 lists "
        "these for restricted use products; many states ask for them of every product.",
        "",
        "Write an entry that corrects it, with everything said again. The page Records shows the "
        "whole of it.",
    )
    RECORDED_LATE = Words(
        "C311",
        "The spraying of {day} with a restricted use product was written down {late}. The federal "
        "rule gave {days} days, and a state may give fewer.",
        "",
        "Write down a spraying on the day itself, with recorded_on.",
    )
    NO_COPY = Words(
        "C312",
        "The hired spraying of {day}: {late}. Whoever sprays a restricted use product for hire "
        "owes you the record within {days} days, and your state may ask it of every product.",
        "",
        "Ask for the record and keep it. Then write an entry that corrects this one, with "
        "copy_given_on: under sprayed:.",
    )
    CLEAN_OUT_BETWEEN = Words(
        "C313",
        "{item} may hold {product} before this job, from {other}: {held}. A trace of it harms what "
        "grows on this place.",
        "",
        "Clean tank, hoses, screens and nozzles between the two as the label of the first product "
        "says, and log it with cleaned_out:. Or spray one of the two with another sprayer.",
        CALIBRATION_CHAPTER,
    )
    KEEP_OUT = Words(
        "C314",
        "{product} was sprayed here on {day}. Its label may keep people and dogs out until some "
        "time on {last}; other words hold where it is no farm use.",
        "This ground was sprayed lately. Keep out until the owner says that the label lets you "
        "back.",
        "Wait until the label lets you back, and tell everybody who may come.",
        LABEL_CHAPTER,
    )
    STRETCH_THIN = Words(
        "C320",
        "{planting} stands too thin {stretch}, counted {day}. Overseed it.",
        "",
        "Counts and decisions says how much seed the stretch takes. Sow it in the next open dates "
        "of the planting, and count again in the second summer after.",
        COUNTING_CHAPTER,
    )
    START_OVER = Words(
        "C321",
        "{planting} stands too thin over the whole place, counted {day}. Starting over goes back "
        "to the kill in the autumn before the sowing. {residue}",
        "",
        "Give the place a planting of a later season with its autumn kill. Keep what stands until "
        "then if it hides anything.",
        COUNTING_CHAPTER,
    )
    WEEDS_HEAVY = Words(
        "C322",
        "{planting} has plants enough {stretch}, counted {day}, and much of {weeds}. Hold the "
        "weeds down. {ways}",
        "",
        "Mow above the grass first. Spray only where a label card clears this planting at this "
        "age. Log the weed again with its share once you have looked.",
        COUNTING_CHAPTER,
    )
    NOXIOUS_SEEN = Words(
        "C323",
        "{weed} was seen in {planting} on {day}, and you have typed it as noxious here, looked up "
        "{looked_up}: {source}.",
        "",
        "Do what that law asks of a landowner. Once it is gone, log the weed again with share: "
        "none.",
        COUNTING_CHAPTER,
    )
    WAIT_NOT_KNOWN = Words(
        "C324",
        "What was sprayed on this ground on {day} may hold this sowing back, and that is not "
        "answerable yet. {unknown}",
        "",
        "With the label in hand, type what is missing; not_on_label where it is silent.",
        LABEL_CHAPTER,
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
        "Log entry {entry} is of a day after the one this plan was made for and does not count "
        "yet.",
        "",
        "Set as_of in property.yaml to a later day, or leave it out.",
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
    )
    COUNT_LATER = Words(
        "N357",
        "{item} was counted on a day after the one this plan was made for. The count does not "
        "count yet, so packages and cost are left out.",
        "",
        "Set as_of in property.yaml to a later day, or leave it out.",
    )
    APPROVED_LATER = Words(
        "N358",
        "Cost-share {contract} is approved on a day after the one this plan was made for. The "
        "approval does not count yet.",
        "",
        "Set as_of in property.yaml to a later day, or leave it out.",
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
    )
    PAPER_LATER = Words(
        "N384",
        "{paper} is approved on a day after the one this plan was made for. The approval does not "
        "count yet.",
        "",
        "Set as_of in property.yaml to a later day, or leave it out.",
    )
    RECORD_EXTRAS = Words(
        "N390",
        "The record of the spraying of {day} leaves out what is good to have if anyone asks later: "
        "{missing}.",
        "",
        "Fill in the blank record of the next job while you spray, and type what stands on it.",
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
    )
    COUNT_IN_AUTUMN = Words(
        "N402",
        "{planting} is in the first autumn of its life, and no count is typed. A count in "
        "September decides nothing, and shows where to look next June.",
        "",
        "Lay the frame as the chapter says, and type counted: in an entry of the log. From "
        "{decide_on} on count again, to decide.",
        COUNTING_CHAPTER,
    )
    COUNT_NOW = Words(
        "N403",
        "{planting} is in its second summer or later, and no count since {decide_on} is typed. "
        "Whether to keep it, overseed it or start over rests on one.",
        "",
        "Lay the frame as the chapter says, and type counted: in an entry of the log.",
        COUNTING_CHAPTER,
    )


Reason = Stop | Caution | Note


def severity_of(reason: Reason) -> Literal["stop", "caution", "note"]:
    """Return how grave a reason is."""
    if isinstance(reason, Stop):
        return "stop"
    return "caution" if isinstance(reason, Caution) else "note"
