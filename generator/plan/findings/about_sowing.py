"""What is said of seed, rows, fertilizer and lime."""

from generator.plan.findings.words import (
    CALIBRATION_CHAPTER,
    SOIL_CHAPTER,
    TAG_CHAPTER,
    Caution,
    Note,
    Stop,
    Words,
)


class SowStop(Stop):
    """A thing that must not be done yet."""

    SEED_WAITS = Words(
        "S140",
        "Lot {lot} does not reach this place this season. Places before it in turn get the full "
        "rate. Sown thin everywhere, it would fail everywhere.",
        "The seed for this place is not there yet. Do not begin; ask the owner.",
        "Get more seed, give the planting an earlier turn, sow another lot here, or sow it a "
        "season later.",
        to_type="Raise most_to_be_had or on_hand of the lot, or type an earlier priority: on the "
        "planting.",
    )
    LIME_BASE = Words(
        "S160",
        "The lab counts lime in {base}, and {lime} states no {base}. Figures of one kind are not "
        "turned into another.",
        "How much lime to spread is not worked out. Ask the owner before you begin.",
        "Ask the seller for the {base} of this lime, or choose a lime that states it.",
        SOIL_CHAPTER,
        to_type="Type it as {key} of the lime.",
    )


class SowCaution(Caution):
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
        "What sows this has no catch test with lot {lot}. Without one there is no setting, no "
        "number of passes, and nothing to measure by.",
        "What sows this has not been tested with this seed. Ask the owner.",
        "Catch what falls over a measured distance, weigh it, and note it.",
        CALIBRATION_CHAPTER,
        to_type="Type the test in equipment.yaml.",
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
        "A lot is short, and you have not said of every place that wants it when its turn comes. "
        "Turns go by your order where you gave one, then by the earlier open date, then by the "
        "letters of the name in the files.",
        "",
        "Say which place gets the seed first.",
        to_type="Type priority: on each planting that wants this lot, 1 for the first.",
    )
    OLD_SEED_TEST = Words(
        "C232",
        "The seed test of lot {lot} {why}. After a year a test says little, and many states do "
        "not let such seed be sold (common practice; the law of your state decides).",
        "The seed test is old or has no date. Ask the owner.",
        "Have the seed tested again, or ask the seller for a new test.",
        TAG_CHAPTER,
        source="common_practice",
        to_type="Type its day as tested_on.",
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
        "Get fresh inoculant for this plant. Seed that comes inoculated says so on its tag.",
        TAG_CHAPTER,
        to_type="Type inoculant: of the lot, with group and expires_on from the package or tag.",
    )
    INOCULANT_UNFIT = Words(
        "C236",
        "The inoculant of lot {lot} {why}. {species} gets little from it.",
        "The inoculant does not fit this seed or is past its date. Ask the owner.",
        "Get fresh inoculant for this plant.",
        TAG_CHAPTER,
        to_type="Type its group and expires_on.",
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
        "Keep a steady pace and crank, and catch until two in a row agree.",
        CALIBRATION_CHAPTER,
    )
    NO_FROST = Words(
        "C246",
        "Frost seeding rests on nights of frost and days of thaw that work the seed in. This "
        "sowing is open while the ground is warm: seed left on top dries out or is eaten.",
        "This seed is noted as frost seeded, in warm months. Ask the owner how it is to be sown.",
        "Spread it on a prepared bed, or drill it.",
        source="uky_frost_seeding",
        to_type="Type method: broadcast where it is spread on a prepared bed, or method: drill.",
    )
    CAUGHT_OTHER_SEED = Words(
        "C242",
        "The catch test was made with {caught}, and this job sows {sown}. Other seed runs through "
        "the same opening at another rate (common practice).",
        "The catch test was not made with just this seed. Catch again before you begin.",
        "Mix the seed as it is sown, and catch it.",
        CALIBRATION_CHAPTER,
        source="common_practice",
        to_type="Note the test with lot: and, of a mixture, the other lots under mixed_with:.",
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
        "Not written down from the tag of lot {lot}: {told}. What is left out does not count as "
        "none.",
        "Part of the seed tag is not known. Read it before you open the bag, and take the seed for "
        "treated until the tag says otherwise: gloves, no food or feed, no spills.",
        "Read the tag, and write down what it says.",
        TAG_CHAPTER,
        to_type="Type {missing}; none where the tag says none.",
    )
    NO_LIME_TEST = Words(
        "C251",
        "A lime is chosen, and the planting names no soil test, so how much goes on is not known.",
        "How much lime to spread is not worked out. Ask the owner.",
        "Take a soil test.",
        SOIL_CHAPTER,
        to_type="Type the test in ground.yaml and name it under the planting.",
    )
    NO_LIME_NEED = Words(
        "C252",
        "A lime is chosen, and the soil test asks for none.",
        "How much lime to spread is not worked out. Ask the owner.",
        "Copy what the lab prints about lime. If the lab asks for no lime, leave the lime out.",
        SOIL_CHAPTER,
        to_type="Type lime_need of soil test {test} as the lab prints it.",
    )
    NO_NEED = Words(
        "C253",
        "Fertilizer is chosen, and nothing says how much is needed.",
        "How much fertilizer to spread is not worked out. Ask the owner.",
        "Copy what the lab asks for from its soil test.",
        SOIL_CHAPTER,
        to_type="Type need: on the soil test as the lab prints it, and name the test under the "
        "planting.",
    )
    NO_FERTILIZER = Words(
        "C254",
        "Your soil test or you ask for nutrients, and no fertilizer is named to bring them.",
        "Which fertilizer to spread is not decided. Ask the owner.",
        "Choose the fertilizers for this planting.",
        to_type="List fertilizers in products.yaml and name them under the planting.",
    )
    NEED_NOT_MET = Words(
        "C255",
        "No fertilizer named carries {nutrient}, so its need is not met in full.",
        "",
        "Name one more fertilizer for this planting, or let it be.",
    )
    NO_NITROGEN_AT_SOWING = Words(
        "C256",
        "Nitrogen is asked for and is left out: at the sowing of native grass it feeds the weeds, "
        "which then smother the seedlings.",
        "No nitrogen is to be added at this sowing.",
        "Ask for nitrogen once the grass is established, in its second spring.",
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
        to_type="List a fertilizer in products.yaml and name it under fertilizers: of the "
        "planting.",
    )
    LIME_IN_PARTS = Words(
        "C258",
        "The lab asks for more lime than may lie on top at once. This sheet spreads the first "
        "part; the rest waits for years and is not counted in what to buy.",
        "This is the first part of the lime. Do not spread more.",
        "Note the day it was spread. Test again before the rest.",
        SOIL_CHAPTER,
    )
    ROWS_NOT_MEASURED = Words(
        "C270",
        "The length of the rows is not known, so plants and browse cages are not counted.",
        "The length of the rows is not known. Ask the owner how many plants there are to set.",
        "Measure the place or the row.",
        to_type="Type length_ft of the place, give it a line, or type row_ft of the row.",
    )
    ROWS_TOO_WIDE = Words(
        "C271",
        "From the first row to the last is more than the place is wide.",
        "The rows as described do not fit the place. Ask the owner.",
        "Plant fewer rows or set them closer, or measure the place again.",
        to_type="Lower rows_count or rows_apart_ft, or correct width_ft.",
    )
    LIME_UNIT = Words(
        "C274",
        "The lime to an acre is {what} than a lab asks for. A figure typed in another unit gives "
        "such an amount.",
        "The amount of lime on this sheet is out of the ordinary. Ask the owner before you spread.",
        "Check each figure against the paper it was copied from.",
        SOIL_CHAPTER,
        to_type="Check the unit: of amount in lime_need, of its percent, and of the strength of "
        "the lime.",
    )
    FERTILIZER_UNIT = Words(
        "C275",
        "{what} A figure typed in another unit gives such a number.",
        "The amount of fertilizer on this sheet is out of the ordinary. Ask the owner before you "
        "spread.",
        "Check the need against the lab's paper, and the grade against the bag.",
        SOIL_CHAPTER,
        to_type="Check the unit of each. The 46 on a bag is n_pct: 46.",
    )
    MORE_THAN_ASKED = Words(
        "C276",
        "More {nutrient} goes on than is asked for: it comes along with {items}.{law}",
        "",
        "{instead}",
        SOIL_CHAPTER,
        to_type="List a fertilizer in products.yaml, and name it under fertilizers: of the "
        "planting, or leave the other out there.",
    )


class SowNote(Note):
    """A thing worth knowing."""

    NO_SIZE = Words(
        "N303",
        "Lot {lot} has no count of seeds in a pound, so seeds on a square foot are left out.",
        "",
        "Look on the tag, or ask the seller.",
        TAG_CHAPTER,
        to_type="Type live_seeds_per_lb.",
    )
    INOCULANT_UNDATED = Words(
        "N321",
        "The inoculant of lot {lot} has no date, so whether it is still good is not known.",
        "",
        "Look for the date on its package.",
        TAG_CHAPTER,
        to_type="Type it as expires_on.",
    )
    NOT_PRESSED_IN = Words(
        "N322",
        "Seed spread on a prepared bed has to be worked in or pressed in, and no packing of the "
        "ground is planned.",
        "Seed spread on top has to be worked in shallow or pressed in the same day.",
        "Drag or roll it the same day.",
        source="common_practice",
        to_type="Where the step plan has a packing step, name it under work: and it becomes a job "
        "with a sheet of its own.",
    )
    NO_SOIL_TEST = Words(
        "N340",
        "The need is stated without a soil test.",
        "",
        "Test first: sample the ground and send it to a lab.",
        SOIL_CHAPTER,
        to_type="Type what the lab prints in ground.yaml.",
    )
    NO_GUARDS = Words(
        "N360",
        "{item} has no browse cages or tubes. Deer browse and rub young trees, mice gnaw them.",
        "",
        "Choose tubes, cages or wraps. Where you fence the row or mean to go without, leave it as "
        "it is.",
        source="common_practice",
        to_type="List them under guards: in seed.yaml and name one under guards: of the row.",
    )
    NO_REPLACE_SHARE = Words(
        "N361",
        "You have not said what may have to be replaced of {item}, so no plants are set aside.",
        "",
        "Ask your nursery what share to expect to lose.",
        to_type="Type it as replace_pct of the row.",
    )
