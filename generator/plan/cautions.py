"""What to look at before going on: every caution, with its reason and its cure in words."""

from enum import Enum

from generator.plan.words import (
    CALIBRATION_CHAPTER,
    CONTRACTS_CHAPTER,
    COUNTING_CHAPTER,
    LABEL_CHAPTER,
    MACHINES_CHAPTER,
    MOWING_CHAPTER,
    RECORDS_CHAPTER,
    SOD_CHAPTER,
    SOIL_CHAPTER,
    SORGHUM_CHAPTER,
    STANDS_CHAPTER,
    TAG_CHAPTER,
    Words,
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
        source="label_in_hand",
    )
    OLD_CATCH_TEST = Words(
        "C204",
        "The catch test is more than a year older than this job.",
        "The catch test is old. Catch again before you begin.",
        "Catch again and note the new test.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    DATES_OPEN = Words(
        "C206",
        "The open dates are not known, because this season sign is not known: {signs}.",
        "The open dates are not known. Ask the owner.",
        "Look the sign up for your county and type it under season_signs in property.yaml, or "
        "bring the record of a weather station and name it in weather.yaml.",
    )
    SOD_NOT_CLEARED = Words(
        "C207",
        "The kill of the sod on this place is planned, and a stop stands on it. Seed sown into "
        "living sod fails.",
        "Do not sow into living sod. Ask the owner.",
        "Lift the stop of the kill first, or sow a year later.",
        SOD_CHAPTER,
        source="common_practice",
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
        source="common_practice",
    )
    NOXIOUS = Words(
        "C233",
        "The tag of lot {lot} lists noxious weed seed: {weeds}.",
        "The tag lists noxious weed seed. Ask the owner before you sow.",
        "Look the weed up with your county or state: it may not be sown at all. Ask for a clean "
        "lot.",
        TAG_CHAPTER,
        source="common_practice",
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
        source="common_practice",
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
    WAIT_BEFORE_SOWING = Words(
        "C247",
        "This spraying and the sowing are open in the same weeks, and the label asks for days "
        "between the two. Spray by {latest}, and sow no sooner than that many days after it.",
        "The label asks for days between this spraying and the sowing. Ask the owner which day to "
        "spray by.",
        "Choose the day to spray first, and log it: the sheet of the sowing then keeps the days.",
        LABEL_CHAPTER,
    )
    NO_FROST = Words(
        "C246",
        "Frost seeding rests on nights of frost and days of thaw that work the seed in, and this "
        "sowing is open while the ground is warm: seed left on top dries out or is eaten.",
        "This seed is noted as frost seeded, in warm months. Ask the owner how it is to be sown.",
        "Type method: broadcast where it is spread on a prepared bed, or method: drill.",
        source="uky_frost_seeding",
    )
    NOZZLES_DIFFER = Words(
        "C240",
        "A nozzle gave over a tenth more or less than the mean of the boom in the last catch test.",
        "A nozzle of the sprayer gives more or less than the others. Catch again before you begin.",
        "Clean or change that nozzle and catch again.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    MARKS_MISS_THE_RATE = Words(
        "C209",
        "At the marks of the {measure}, {item} comes to over a tenth more or less to an acre than "
        "was typed.",
        "The marks of the {measure} miss the rate by over a tenth: the amounts are to be measured "
        "as they stand here.",
        "Take a measure with finer marks, or loads that come out even on these.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    LAID_TWICE = Words(
        "C325",
        "The passes lap by more than a tenth of their width, and some ground is sprayed {times}. "
        "No setting of this sprayer covers the width without.",
        "The passes lap by more than a tenth of their width, and some ground is sprayed more than "
        "once. Keep the passes of this sheet, so that the laps get no wider.",
        "Type a width_ft that fits and go over just that, or catch and type a pattern that fits; "
        "where lap_in is typed for the sprayer, a smaller one. Where the label bears it on that "
        "ground, as it does here, it may stay.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    SPRAYED_BESIDE = Words(
        "C326",
        "The sprayer sprays wider than this place, even with as much of it shut as can be: over a "
        "tenth of the spray lands on the ground along both edges. What grows there, whose it is "
        "and whether the label lets it be sprayed, nothing here has looked at.",
        "The sprayer sprays wider than this place, and spray lands on the ground along both edges. "
        "Do not begin before you know what grows there, whose it is, and that it may be sprayed.",
        "Walk both edges. Where that ground is yours and may be sprayed with this, make the place "
        "as wide as the pass: type the wider width_ft that fits. Where it may not, spray only as "
        "wide as a narrower pass covers, and type that width_ft, or take a narrower pattern, a gun "
        "or a backpack.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    NO_PASSES = Words(
        "C327",
        "The spray may not reach: passes are not worked out, because {why}. The amounts are for "
        "the bare ground, each foot of it sprayed once. What passes lap, and what a last pass "
        "sprays beyond the edge, comes on top, and the tank runs dry that much too early.",
        "The spray may not reach: the amounts are for the bare ground, each foot of it sprayed "
        "once. Where passes lap, the tank runs dry before the end. Ask the owner for the passes, "
        "and mix nothing on top by guess.",
        "{cure}. If you spray before that: where the tank runs dry, flag the spot, measure what is "
        "left, and mix for that ground alone.",
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
        source="common_practice",
    )
    WEED_SEED = Words(
        "C243",
        "Much of lot {lot} is weed seed: more than in a clean lot of native seed.",
        "The seed holds much weed seed. Ask the owner before you sow.",
        "Ask the seller for a cleaner lot, and what weeds these are. Your state may not let such "
        "seed be sold.",
        TAG_CHAPTER,
        source="common_practice",
    )
    OTHER_CROP = Words(
        "C244",
        "Much of lot {lot} is seed of another crop: more than in a clean lot of native seed.",
        "The seed holds much seed of another crop. Ask the owner before you sow.",
        "Ask the seller what it is: a cool-season grass in it smothers what is sown. Ask for a "
        "cleaner lot.",
        TAG_CHAPTER,
        source="common_practice",
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
        source="utk_switchgrass",
    )
    NITROGEN_CARRIED = Words(
        "C257",
        "{item}, spread for its {nutrient}, brings nitrogen with it, which feeds the weeds.",
        "",
        "{instead}",
        SOIL_CHAPTER,
        source="utk_switchgrass",
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
        source="pond_practice_378",
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
        source="common_practice",
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
        MACHINES_CHAPTER,
        source="call_811",
    )
    CONTRACT_NOT_APPROVED = Words(
        "C304",
        "Contract {contract} {why}. Work begun before written approval can forfeit the payment.",
        "",
        "Begin nothing on its ground before the approval is in your hand, then type approved_on. "
        "Where something is begun, ask the office at once whether a waiver is possible.",
        CONTRACTS_CHAPTER,
        source="nrcs_de_contract",
    )
    NOT_IN_CONTRACT = Words(
        "C305",
        "Contract {contract} holds on this place, and its written plan as typed does not name this "
        "work.",
        "",
        "Look the work up in the plan. If it is there, add its step or kind of work to "
        "work_allowed:; if not, ask the office before you begin.",
        CONTRACTS_CHAPTER,
    )
    HIRE_UNLICENSED = Words(
        "C306",
        "Spraying is hired, and no licence that covers spraying for hire, good on the last open "
        "day, is typed for who does it. Most states ask for one whatever is sprayed (from memory; "
        "your state agency decides).",
        "",
        "Ask to see the licence, and type it under applicators: in people.yaml with "
        "licence_class: commercial, for_hire: true and its last day. Ask for a copy of the record.",
        CONTRACTS_CHAPTER,
    )
    NOT_INSURED = Words(
        "C307",
        "Work is handed to contractor {contractor}, and {why}.",
        "",
        "Ask for proof of insurance before the first job, and type insured: true and "
        "insured_until.",
        source="common_practice",
    )
    CONTRACTOR_OF_NO_READER = Words(
        "C431",
        "Contractor {contractor} stands in people.yaml without reader:, and work is handed to "
        "{readers}. Nobody can say whether who does it is insured.",
        "",
        "Type {cure} on contractor {contractor} if that is who does it; for anybody else add a "
        "contractor with reader:, insured: and insured_until.",
        source="common_practice",
    )
    TOO_FEW_HOURS = Words(
        "C308",
        "More hours of work fall into {months} than you and your helpers have free. Work that can "
        "be done in other months is not counted.",
        "",
        "Begin what opens first in its first days, find a helper or hire a job, or leave one out.",
        source="common_practice",
    )
    BAN_IN_PART = Words(
        "C309",
        "A burn ban takes part of the open days: {days}.",
        "Burning is banned on some of the open days. Do not burn on them.",
        "Burn on a day that is left, and look the ban up again that morning.",
        source="nrcs_burn_338",
    )
    RECORD_GAPS = Words(
        "C310",
        "The record of the spraying of {day} leaves out: {missing}. The rule 7 CFR 110.3 lists "
        "these for restricted use products; many states ask for them of every product.",
        "",
        "Write an entry that corrects it, with everything said again. The page Records shows the "
        "whole of it.",
        source="cfr_110_3",
    )
    MORE_USED_THAN_THERE = Words(
        "C370",
        "By what is counted and bought, more of {item} is logged as used on {day} than was there.",
        "",
        "Write the one line that is true: an entry that corrects {entry}; the purchase that is not "
        "noted, with its day; or, where all is as it was, an entry with confirms: [{entry}].",
    )
    SAID_TWICE = Words(
        "C371",
        "Entries {other} and {entry}, the later one of {day}, say the same: {what}. Both count.",
        "",
        "Where one is too many, write an entry with corrects: {entry} and not_done: true. Where "
        "one is wrong, an entry that corrects it. Where both are true, an entry with "
        "confirms: [{other}, {entry}].",
    )
    OUT_OF_SEASON = Words(
        "C372",
        "{job} is logged on {day}, and {why}.",
        "",
        "Write an entry that corrects it, with the day or the job as it was; for a step that comes "
        "back, season: under job: says which one it counts for. If it was that day, an entry with "
        "confirms: [{entry}].",
    )
    ANSWERED_BEFORE = Words(
        "C373",
        "{job} was answered on {day}, and {why}. What waits for the answer goes by it.",
        "",
        "Look once more and write an entry that corrects it, with the day and the answer. If it "
        "could be answered that day, an entry with confirms: [{entry}].",
    )
    NO_WIND = Words(
        "C374",
        "No wind is written down for the spraying of {day}, and the label of {product} says in "
        "which wind it may be sprayed.",
        "",
        "Write an entry that corrects it, with everything said again and wind_mph: as it was "
        "measured then. A wind that nobody measured is not made up later: say "
        "wind_not_measured: true there, or write an entry with confirms: [{entry}].",
        source="label_in_hand",
    )
    WIND_OUTSIDE = Words(
        "C375",
        "The wind written down for the spraying of {day} is outside what the label of {product} "
        "allows.",
        "",
        "If it was typed wrong, write an entry that corrects it. If it blew so, look for harm "
        "around the place and log it under drift_checked:, in an entry with confirms: [{entry}].",
        source="label_in_hand",
    )
    RECORDED_LATE = Words(
        "C311",
        "The spraying of {day} with a restricted use product was written down {late}. The federal "
        "rule gave {days} days, and a state may give fewer.",
        "",
        "Write down a spraying on the day itself, with recorded_on.",
        source="usc_136i_1",
    )
    NO_COPY = Words(
        "C312",
        "The hired spraying of {day}: {late}. Whoever sprays a restricted use product for hire "
        "owes you the record within {days} days, and your state may ask it of every product.",
        "",
        "Ask for the record and keep it. Then write an entry that corrects this one, with "
        "copy_given_on: under sprayed:.",
        source="usc_136i_1",
    )
    CLEAN_OUT_BETWEEN = Words(
        "C313",
        "{item} may hold {product} before this job, from {other}. {held}",
        "",
        "Clean tank, hoses, screens and nozzles between the two as the label of the first product "
        "says, and log it with cleaned_out:. Or spray one of the two with another sprayer"
        "{or_type}.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    CORRECTED_BY_NO_SPRAYING = Words(
        "C316",
        "Entry {entry} corrects this spraying and does not tell where, with what, how much and on "
        "how much ground it was instead, so it still counts as it stands here.",
        "",
        "Tell the spraying in full in an entry that corrects {entry}; where nothing was sprayed, "
        "type not_done: true there; what can no longer be known is bounded by unknown:.",
        RECORDS_CHAPTER,
    )
    KEEP_OUT = Words(
        "C314",
        "{product} was sprayed here on {day}. Its label may keep people and dogs out until some "
        "time on {last}; other words hold where it is no farm use.",
        "This ground was sprayed lately. Keep out until the owner says that the label lets you "
        "back.",
        "Wait until the label lets you back, and tell everybody who may come.",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    HOURS_OF_BEFORE = Words(
        "C315",
        "The shooting hours of {dates} were looked up on {day}, before these dates ended on "
        "{ended} a year ago. They may have changed since.",
        "",
        "Look them up again for this season and type the day under shooting_hours: in dates.yaml.",
        source="common_practice",
    )
    STRETCH_THIN = Words(
        "C320",
        "{planting} stands too thin {stretch}, counted {day}. Overseed it.",
        "",
        "Counts and decisions says how much seed the stretch takes. Sow it in the next open dates "
        "of the planting, and count again in the second summer after.",
        COUNTING_CHAPTER,
        source="schmer_thresholds",
    )
    START_OVER = Words(
        "C321",
        "{planting} stands too thin over the whole place, counted {day}. Starting over goes back "
        "to the kill in the autumn before the sowing. {residue}",
        "",
        "Give the place a planting of a later season with its autumn kill. Keep what stands until "
        "then if it hides anything.",
        COUNTING_CHAPTER,
        source="schmer_thresholds",
    )
    WEEDS_HEAVY = Words(
        "C322",
        "{planting} has plants enough {stretch}, counted {day}, and much of {weeds}. Hold the "
        "weeds down. {ways}",
        "",
        "Mow above the grass first. Spray only where a label card clears this planting at this "
        "age. Log the weed again with its share once you have looked.",
        COUNTING_CHAPTER,
        source="common_practice",
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
        "What was sprayed on this ground {day} may hold this sowing back, and that is not "
        "answerable yet. {unknown}",
        "",
        "With the label in hand, type what is missing; not_on_label where it is silent.",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    STEEP = Words(
        "C340",
        "The place is steeper than the limit you typed for machines.",
        "The place is steep for a machine: walk it first, and leave out what you would not drive.",
        "Do the steep part by hand, or leave it out. A machine tips before it slides.",
        source="nasd_rollover",
    )
    HARMS_WHAT_GROWS = Words(
        "C341",
        "{active} works as {works}, which harms {kind}. The card says that its label allows it "
        "here.",
        "What goes into this tank can harm what grows here. Ask the owner before you begin.",
        "Read that use again, with its growth stage and rate, before you rest on it.",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    HARD_ON_SPECIES = Words(
        "C342",
        "{active} has thinned or stunted {species} in trials: {source}.",
        "What goes into this tank can thin the grass. Ask the owner before you begin.",
        "Read on the label what it says of this grass, or choose another product.",
        LABEL_CHAPTER,
    )
    NOTHING_SET_BACK = Words(
        "C344",
        "The label keeps the spray away from: {kept}. Amounts are for the whole place, nothing set "
        "back, since where these lie is not known here.",
        "Amounts are for the whole place: nothing is set back for what the label keeps the spray "
        "away from.",
        "Measure and flag the distances, and mix less by what is left out.",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    DRIFTS_FAR = Words(
        "C345",
        "A growth regulator goes into this tank: {active}. Its drift, and in heat its vapour, "
        "harms gardens, vines, trees and broad-leaved crops far off. Near here: {neighbours}",
        "A growth regulator goes into this tank. Its drift, and in heat its vapour, harms gardens, "
        "vines, trees and broad-leaved crops far off.",
        "Tell the neighbours, spray when the wind blows away from them and the day stays cool, and "
        "keep what the label says of sensitive crops.",
        LABEL_CHAPTER,
        source="common_practice",
    )
    HIDES_NOBODY = Words(
        "C343",
        "This screen hides {routes}. What is {cut} now hides nobody until late summer, and whether "
        "it has grown back by opening day is not worked out.",
        "",
        "Leave standing what hides the walk, or keep off that walk until the grass is up again. "
        "Measure its height in August.",
        source="common_practice",
    )
    STRAPS_NOT_LOOKED_OVER = Words(
        "C330",
        "Straps, harness and line of {stand} {since}. Hunting {begins}.",
        "No look over its straps, harness and line in the year before it is hunted is written "
        "down. Do not climb it until all of it has been looked over. Ask the owner.",
        "Look every strap, bolt, step and line over from the ground up, replace what is worn or "
        "older than its maker allows, and log it: inspected, with sound: true.",
        STANDS_CHAPTER,
        source="ar_stand_falls",
    )
    STAND_NOT_SOUND = Words(
        "C331",
        "{stand} was looked over on {day}, and something has to be mended first{found}.",
        "It was not sound when it was last looked over. Do not climb it. Ask the owner.",
        "Nobody climbs it. Mend it by the maker's book or take it down, look all of it over again, "
        "and log that: inspected, with sound: true.",
        STANDS_CHAPTER,
        source="common_practice",
    )
    STATION_FAR = Words(
        "C350",
        "The weather station {station} is {how}. Its season may not be yours.",
        "",
        "Bring the record of a nearer station of your own height, or type the signs you see on "
        "your own ground under season_signs in property.yaml.",
        source="common_practice",
    )
    SIGN_FROM_NORMALS = Words(
        "C351",
        "{sign} rests on monthly normals. They give a typical day alone, so the early and the late "
        "year of it are the same day and its dates are not on the careful side.",
        "",
        "Bring a daily record of ten years or more, or type early, typical and late under "
        "season_signs in property.yaml.",
        source="common_practice",
    )
    HARDLY_A_DAY = Words(
        "C360",
        "In half of the past years or more no day of those left suited this work.",
        "",
        "Be ready before it opens: machine, product and help at hand. If no day comes: {missed}",
        source="common_practice",
    )
    NO_DAY_IN_SOME_YEARS = Words(
        "C361",
        "In one past year of ten no day of those left suited this work.",
        "",
        "Take the first day that suits. If none comes: {missed}",
        source="common_practice",
    )
    DRY_SPELL = Words(
        "C362",
        "A dry spell is typed for {days}. {why}",
        "It is dry here for this work. Ask the owner before you begin.",
        "Wait for rain, then set the last day of the dry spell in dates.yaml to the day it ended. "
        "If none comes: {missed}",
        source="common_practice",
    )
    WAITS_STILL = Words(
        "C390",
        "{product} was sprayed here {day}. By its label card nothing of this before: {what}.",
        "This ground was sprayed lately. No stock, no hay, no dogs and no game from it before the "
        "owner says that the wait of the label is over.",
        "Keep stock and dogs out and make no hay until the day named, and tell everybody who hunts "
        "here or has stock near.",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    HUNTED_IN_WAIT = Words(
        "C391",
        "{product} {sprayed} here {day}, and its label card asks to wait until {until} before: "
        "{what}. Hunting dates here fall into that wait: {days}.",
        "This ground is hunted while a wait of the label may still run. Take no game here and "
        "bring no dogs before the owner says that it is over.",
        "{cure}",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    WAITING_NOT_KNOWN = Words(
        "C392",
        "{product} was sprayed here {day}, and how long grazing, hay, game and dogs have to wait "
        "is not known.",
        "",
        "{cure}",
        LABEL_CHAPTER,
        source="label_in_hand",
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
    SORGHUM_AND_STOCK = Words(
        "C393",
        "Sorghum grows here, or did last season. Frosted, short of water, stunted or growing "
        "again it can hold enough prussic acid to kill stock within minutes; after drought or "
        "much nitrogen it can hold too much nitrate, in hay as well.",
        "Sorghum that frost or drought has hurt, or that grows again, can kill stock that eat it. "
        "Let none reach it, and cut none for them. Ask the owner.",
        "Keep stock off it by a fence. Before any is let in or fed from it, ask your veterinarian "
        "or extension office, who know when and how to have it tested. Where no stock can reach "
        "it, nothing is to do.",
        SORGHUM_CHAPTER,
        source="ksu_prussic_acid",
    )
    MOWN_GRAIN = Words(
        "C394",
        "Work on this job can lay down a standing crop with grain. Where doves, ducks or geese "
        "are hunted, that can make baited ground of it under the federal rule, 50 CFR 20.11 and "
        "20.21(i), and under your state's law, which may ask more. Whether it does here is not "
        "said in this book.",
        "Laying down a crop with grain can make baited ground for those who hunt birds. Ask the "
        "owner whether the rule was looked up before you begin.",
        "Look the rule up before you mow: ask your state's wildlife agency, read the federal "
        "rule, and write down where and when. Until you know, hunt no birds on it or near it.",
        MOWING_CHAPTER,
        source="cfr_20_21",
    )
    SIZE_OUT_OF_USUAL = Words(
        "C400",
        "The {what} of {place} is {much} than is usual. A digit too many or too few, or another "
        "unit, gives such a figure, and with it wrong amounts and hours.",
        "",
        "Measure again, or check {key} and its unit. If it is as it is, leave it: nothing is kept "
        "from being printed.",
    )
    TAG_OUT_OF_USUAL = Words(
        "C401",
        "Lot {lot} has {much} {what} by its tag than seed that is sold. A digit too few gives such "
        "a tag, and with it many times the seed to buy.",
        "",
        "Check {keys} against the tag, in percent. If the tag says so, ask the seller what is in "
        "the bag.",
        TAG_CHAPTER,
    )
    SEED_COUNT_OUT_OF_USUAL = Words(
        "C402",
        "Lot {lot} has {many} seeds in a pound, as typed, than a pound of {species} has. Most "
        "likely zeros are left out, as where a seller counts in thousands, or one is too many. "
        "Seeds on a square foot, and every rate typed in seeds, are wrong with it.",
        "",
        "Type live_seeds_per_lb as the whole number with all its zeros, as 259000 and not 259. "
        "Take it from the tag, the seller or your extension office. If it is so, leave it: nothing "
        "is kept from being printed.",
        TAG_CHAPTER,
    )
    RATE_OUT_OF_USUAL = Words(
        "C403",
        "{what}: {much} seed to an acre than is usual. A digit too many or too few, or another "
        "unit, gives such a rate.",
        "The rate of seed on this sheet is out of the ordinary. Ask the owner before you sow.",
        "Check {key} against what the seller or the extension office names. If it is meant, leave "
        "it: nothing is kept from being printed.",
        TAG_CHAPTER,
    )
    MACHINE_OUT_OF_USUAL = Words(
        "C404",
        "{machine}: {what}, as typed, is {much} than such a machine has. Most likely a digit is "
        "too many or too few, or the number is in another unit than its key says. Loads, passes "
        "and hours that rest on it are wrong with it.",
        "",
        "Hold {key} in equipment.yaml against the machine, or measure again; the key ends in the "
        "unit it is read in. If the machine is so, leave it: nothing is kept from being printed.",
        CALIBRATION_CHAPTER,
    )
    CARRIER_OUT_OF_USUAL = Words(
        "C405",
        "The last catch test of {machine} puts {much} spray on an acre than is usual. A slip in "
        "what was caught, in the time or in the ground gives such a test.",
        "",
        "Check caught, seconds, speed and ground of the test, or catch again with clean water.",
        CALIBRATION_CHAPTER,
    )
    CATCH_FAR_OFF = Words(
        "C406",
        "The catch test is far from what is wanted: each pass has to put down {much} than it did. "
        "An opening far off, or a figure of the test that is a digit off, gives such a test.",
        "The opening is set far from what is wanted. Do not sow at it. Ask the owner.",
        "Check what was caught, its unit, the width and the distance of the test. If they are "
        "right, change the opening and catch until it gives about what is wanted.",
        CALIBRATION_CHAPTER,
    )
    MANY_PASSES = Words(
        "C407",
        "More passes than a place of this width takes. A width of the throw, of the boom or of the "
        "place that is a digit off gives so many, or a catch test of far too little.",
        "So many passes are out of the ordinary. Ask the owner before you begin.",
        "Check the widths and the catch test. If they are right, open wider and catch again.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    MANY_FILLS = Words(
        "C408",
        "More {what} than anybody carries for one job. A size of the tank, of the hopper or of the "
        "place that is a digit off gives so many.",
        "So many fills or loads are out of the ordinary. Ask the owner before you begin.",
        "Check tank, hopper and ground. If they are right, use something larger.",
        CALIBRATION_CHAPTER,
    )
    POINT_FAR = Words(
        "C409",
        "{name} lies farther from the middle of the property than ground of one property does. A "
        "slip in a digit, a sign or the order gives such a point.",
        "",
        "Check {key}: latitude, then longitude. If it truly lies there, type far: yes under "
        "{beside}.",
        source="common_practice",
    )
    MIDDLE_FAR = Words(
        "C410",
        "Everything with a point lies farther from the middle of the property than ground of one "
        "property does.",
        "",
        "Check location_lat_lon in property.yaml: latitude, then longitude. If it is right, type "
        "far: yes under everything that truly lies so far.",
        source="common_practice",
    )
    ADJUVANT_OUT_OF_USUAL = Words(
        "C411",
        "{item}: {much} of it in the tank than is usual. A digit too many or too few, or another "
        "unit, gives such a share.",
        "The share of what goes into the tank beside the product is out of the ordinary. Ask the "
        "owner before you mix.",
        "Check {key} against both labels: of the product, and of what goes in with it.",
        LABEL_CHAPTER,
    )
    TEST_TO_COME = Words(
        "C412",
        "A catch test of {machine} is of {tested}, after the day of this plan. A slip in a year "
        "gives such a day, and hides how old the tests are.",
        "",
        "Check tested_on. If the test is right, make the plan of a later day.",
        CALIBRATION_CHAPTER,
    )
    NOZZLE_FAR_OFF = Words(
        "C413",
        "{machine}: in the last catch test nozzle {number} of {count} is far from the mean of all. "
        "A worn nozzle gives a tenth more. So far off is a digit too many or too few, or a nozzle "
        "that is stopped up, and every amount of the sprayer rests on it.",
        "",
        "Check that figure in caught_fl_oz against your notes. If you caught that much, clean or "
        "change the nozzle and catch again.",
        CALIBRATION_CHAPTER,
    )
    HEIGHT_OUT_OF_USUAL = Words(
        "C414",
        "{what} is far more than anything of that kind reaches. Most likely a digit is too many, "
        "or the number is in another unit than its key says. What a screen hides rests on heights.",
        "",
        "Check {key}, and the unit it ends in. If it was measured so, leave it: nothing is kept "
        "from being printed.",
        COUNTING_CHAPTER,
    )
    STOCK_OUT_OF_USUAL = Words(
        "C415",
        "Far more of {item} is on hand, as typed, than all jobs that take of it need. Most likely "
        "a digit is too many, or the number is in another unit: then too little is bought.",
        "",
        "Weigh or count again, and check on_hand and its unit. If it is so, leave it.",
        source="common_practice",
    )
    PRICE_OUT_OF_USUAL = Words(
        "C416",
        "{item} costs many times {much}, as typed, than what else was asked or paid for the same "
        "thing. Most likely a digit is too many or too few in the price, or in what a package "
        "holds: then costs are wrong with it.",
        "",
        "Check both prices, and what a package of each holds. If they are so, leave them.",
        source="common_practice",
    )
    DAY_TO_COME = Words(
        "C417",
        "A day that has to be gone by is after the day of this plan: {days}. Most likely the year "
        "or the month is a slip. What rests on it is taken for newer than it is.",
        "",
        "Check that day. If it is right, make the plan of a later day.",
    )
    DAYS_AFTER_THE_PLAN = Words(
        "C418",
        "Days that have to be gone by are after the day of this plan, in many places: {names}. "
        "Most likely the plan is made for too early a day.",
        "",
        "Check as_of in property.yaml, or --as-of. If that day is right, check those days.",
    )
    WRITTEN_FOR_ELSEWHERE = Words(
        "C420",
        "The calendar days of {plans} are written for ground between two latitudes, and your "
        "ground lies {side} of them. Days that hang on season signs fit; days of the calendar may "
        "be weeks off.",
        "",
        "Check location_lat_lon in property.yaml: latitude first. If it is right, ask your "
        "extension office, or whoever does such work near you, when the work is done there. Then "
        "take {over} in steps.yaml, {based_on}, with your own days on the steps and the day you "
        "asked as days_looked_up_on.",
        source="bioclimatic_law",
    )
