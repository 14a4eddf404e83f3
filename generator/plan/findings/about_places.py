"""What is said of places, what stands on them, and the plan as a whole."""

from generator.plan.findings.words import (
    CONTRACTS_CHAPTER,
    MACHINES_CHAPTER,
    SOD_CHAPTER,
    SOIL_CHAPTER,
    STANDS_CHAPTER,
    WALKING_CHAPTER,
    Caution,
    Note,
    Stop,
    Words,
    label_words,
)


class PlaceStop(Stop):
    """A thing that must not be done yet."""

    NO_NAME_FOR_OTHERS = Words(
        "S122",
        "You hand this job to another reader, and the place has no name for others.",
        "The place has no name yet. Ask the owner before you begin.",
        "Give the place a name that gives nothing away.",
        to_type="Type it as known_as: of the place.",
    )
    DATES_DO_NOT_MEET = Words(
        "S123",
        "In a careful reading there is no day on which this job works: it closes on {closes}, "
        "before it opens on {opens}.",
        "There is no day on which this job works. Do not begin; ask the owner.",
        "Its sheet names the season markers its dates come from. Check each: early, typical and "
        "late. If they are right, leave the job out, or give it other dates in a step plan of your "
        "own.",
        to_type="The markers stand under season_signs in property.yaml.",
    )
    TOO_STEEP = label_words(
        "S220",
        "The place is steeper than the label lets this be sprayed on.",
        "Leave the steep part out as a place of its own, or hold its growth down another way.",
    )
    BURNS_TOO_MUCH = Words(
        "S222",
        "More of this screen is to be burned than may be in one season. What is burned hides "
        "nobody until late summer.",
        "This burn is not cleared. Do not light it. Ask the owner.",
        "Burn a part.",
        source="common_practice",
        to_type="Type the ground of the part as treated_sq_ft, and what you call it as part, under "
        "work.",
    )
    BURNS_AGAIN = Words(
        "S223",
        "Ground of this screen burned in the season before, or is planned to, and nothing says "
        "that another part of it burns now.",
        "This burn is not cleared. Do not light it. Ask the owner.",
        "Burn another screen. Where another part burns, name both parts.",
        source="common_practice",
        to_type="Type part under work, and part under burned in the entry of the log.",
    )
    LIVING_SOD = Words(
        "S180",
        "Perennial sod grows on this place, or nobody knows what does, and no kill before the "
        "sowing is logged or planned. Seed sown into living sod comes up here and there, and dies "
        "in summer. Kill the sod in the fall of {fall}, for a sowing in season {season}.",
        "Do not sow here yet. Ask the owner.",
        "Plan the kill with its product, or log the one you did. Where you missed the kill, sow a "
        "later season. Where no sod is left, say what grows there now.",
        SOD_CHAPTER,
        source="common_practice",
        to_type="Plan the kill under work:. Or set the season of the planting to {season}. Or type "
        "what grows there now under cover_now: of the place.",
    )
    STAND_UNSAFE = Words(
        "S331",
        "{stand} was unsafe when it was inspected on {day}{found}.",
        "It was unsafe when it was last inspected. Do not climb it. Ask the owner.",
        "Nobody climbs it. Mend it by the maker's book or take it down, inspect all of it again, "
        "and log that.",
        STANDS_CHAPTER,
        source="common_practice",
        to_type="Log it with inspected, and sound: true.",
    )


class PlaceCaution(Caution):
    """A thing to look at before going on."""

    LANE_NARROWER_THAN_MACHINE = Words(
        "C461",
        "{machine} is wider than the lane of {walk}: it cuts into the cover beside it, or does not "
        "pass.",
        "",
        "Measure both. Use a narrower machine, or keep the lane as wide as the machine.",
        MACHINES_CHAPTER,
        to_type="Correct lane_width_ft of the walk in routes.yaml, or name another machine there.",
    )
    DATES_OPEN = Words(
        "C206",
        "The open dates are not known, because this season marker is not known: {signs}.",
        "The open dates are not known. Ask the owner.",
        "Look the marker up for your county, or use the record of a weather station.",
        to_type="Type it under season_signs in property.yaml, or name the record in weather.yaml.",
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
        "Tape the width and measure the length; they count first.",
        to_type="Type width_ft and length_ft. If the outline was surveyed, type how far off a side "
        "may be as outline_error_ft.",
    )
    TYPED_WIND_IS_WRONG = Words(
        "C332",
        "You typed {winds} as a wind for {stand}. By the bearings you typed, such a wind blows to "
        "beds, food or deer.",
        "",
        "Take the bearings there again. Correct the wind or the bearing. The typed wind stands.",
        WALKING_CHAPTER,
        source="common_practice",
        to_type="Correct winds_for, beds, food or deer_come_from of the stand in stands.yaml.",
    )
    OLD_SOIL_TEST = Words(
        "C250",
        "The soil test is older on the day of this job than a soil test is good for.",
        "The soil test behind this sheet is old. Ask the owner.",
        "Sample again.",
        SOIL_CHAPTER,
        to_type="Type the new test in place of {test}.",
    )
    STEEP_OR_NO_WAY_OUT = Words(
        "C259",
        "The water hole has {what}.",
        "",
        "{cure}",
        source="pond_practice_378",
        to_type="Type the new sizes, or the ramp as ramp_ft_per_ft.",
    )
    SAMPLED_AFTER = Words(
        "C277",
        "The soil test was sampled after the last open day of this job, so nobody can have spread "
        "by it in time.",
        "The soil test behind this sheet is of a later day than the job. Ask the owner.",
        "Check the day. If it is right, name the test that was there before, or move the planting "
        "to a later season.",
        SOIL_CHAPTER,
        to_type="The day is sampled_on of soil test {test}.",
    )
    STEEP = Words(
        "C340",
        "The place is steeper than the limit you set for machines.",
        "The place is steep for a machine: walk it first, and leave out what you would not drive.",
        "Do the steep part by hand, or leave it out. A machine tips before it slides.",
        source="nasd_rollover",
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
        "Nobody has noted an inspection of its straps, harness and line in the year before it is "
        "hunted. Do not climb it until all of it has been inspected. Ask the owner.",
        "Inspect every strap, bolt, step and line from the ground up. Replace what is worn or "
        "older than its maker allows. Then log it.",
        STANDS_CHAPTER,
        source="ar_stand_falls",
        to_type="Log it with inspected, and sound: true.",
    )
    WRITTEN_FOR_ELSEWHERE = Words(
        "C420",
        "The calendar days of {plans} are written for ground between two latitudes, and your "
        "ground lies {side} of them. Days that hang on season markers fit; days of the calendar "
        "may be weeks off.",
        "",
        "Check where you said the property lies. If it is right, ask your extension office, or "
        "whoever does such work near you, when the work is done there, and write a plan with your "
        "own days.",
        source="bioclimatic_law",
        to_type="Check location_lat_lon in property.yaml: latitude first. Then take {over} in "
        "steps.yaml, {based_on}, with your own days on the steps and the day you asked as "
        "days_looked_up_on.",
    )

    WALK_OPEN = Words(
        "C455",
        "The {crop} beside {beside} {cut}. From that day whoever walks {walk} counts as seen. "
        "{ways}",
        "The crop that hid this walk is cut, or counts as cut. Whoever walks it counts as seen. "
        "Ask the owner for another way in.",
        "Take another walk in. Or look at this one from where nobody should be seen, and log what "
        "you saw.",
        WALKING_CHAPTER,
        source="common_practice",
        to_type="Log the look with sight_checked, and hidden: true where nobody was seen. Log the "
        "cut with harvested. Where the crop still stands, type its new harvest_planned_on.",
    )
    LAID_DOWN = Words(
        "C456",
        "{by} laid this screen down on {day}. Until it is measured, no more of it counts than the "
        "winter leaves in a careful reading.",
        "",
        "Measure it along its whole length before you count on it, and look at its walk from where "
        "nobody should be seen.",
        WALKING_CHAPTER,
        source="common_practice",
        to_type="Log the heights with measured, station by station.",
    )


class PlaceNote(Note):
    """A thing worth knowing."""

    TYPED_WIND_IS_RIGHT = Words(
        "N331",
        "You typed {winds} as a wind {stand} is not for. By the bearings you typed, such a wind "
        "blows past all beds, food and deer.",
        "",
        "Write down what it blows to, if you know it. What you typed stands.",
        WALKING_CHAPTER,
        source="common_practice",
        to_type="Type what it blows to as beds, food or deer_come_from of the stand in "
        "stands.yaml, or take the wind out of winds_against.",
    )
    WALK_OPENS = Words(
        "N455",
        "The {crop} beside {beside} {cut}. From that day whoever walks {walk} counts as seen. "
        "{ways}",
        "",
        "Plan the way in for after that day, and write down the day on which it was cut.",
        WALKING_CHAPTER,
        source="common_practice",
        to_type="Log the cut with harvested. Where the day moves, type harvest_planned_on anew.",
    )
    NO_DAY_OF_CUT = Words(
        "N456",
        "Nobody wrote down when the {crop} beside {beside} is cut.",
        "",
        "Ask whoever farms it. On the day it is cut it hides nobody any more.",
        WALKING_CHAPTER,
        to_type="Type the day as harvest_planned_on of the crop.",
    )

    SINGLE_DAY_SIGN = Words(
        "N301",
        "{sign} is one day, used for early, typical and late years alike.",
        "",
        "Say how early and how late it can come, once you know.",
        to_type="Type {{early, typical, late}} in place of the day.",
    )
    PAST = Words(
        "N302",
        "The open dates were over on the day of this plan.",
        "The open dates are over. Ask the owner.",
        "Do what its sheet says for when the dates are missed.",
    )
    NO_WIDTH = Words(
        "N310",
        "Nobody has taped the width of the place, so lanes, passes and seed thrown past it are "
        "left out.",
        "The width of the place is not known, so lanes and passes are not worked out.",
        "Tape the width.",
        to_type="Type it as width_ft.",
    )
    LIME_LEFT_UNDONE = Words(
        "N341",
        "The soil test asks for lime, and the planting names none.",
        "",
        "Choose a lime for the planting, or let it be.",
        SOIL_CHAPTER,
        to_type="List a lime in products.yaml and name it under the planting. The test is {test}.",
    )
    FERTILIZER_LEFT_UNDONE = Words(
        "N342",
        "The soil test asks for phosphate or potash, and the planting names no fertilizer.",
        "",
        "Choose a fertilizer for the planting, or let it be.",
        SOIL_CHAPTER,
        to_type="List fertilizers in products.yaml and name them under the planting. The test is "
        "{test}.",
    )
    NO_DEER_COUNT = Words(
        "N343",
        "How many deer drink at the water hole, or what one weighs, is not noted, so how long its "
        "water lasts is left out.",
        "",
        "Say how many deer drink, and what one weighs.",
        to_type="Type deer_count and deer_weight_lb.",
    )
    NO_DRY_SPELL = Words(
        "N344",
        "The longest dry spell, or what one load of water brings, is not noted, so loads are left "
        "out.",
        "",
        "Say how long it stays dry, and what you haul at once.",
        to_type="Type dry_spell_days and refill_gal.",
    )
    LOAD_OVER_HOLE = Words(
        "N345",
        "One load of water is more than the hole holds, so a load counts as a full hole and no "
        "more.",
        "",
        "Bring what the hole takes; more of it runs over. Or dig or set a larger hole.",
        to_type="Type the sizes of the larger hole.",
    )
    NO_LIME_ASKED = Words(
        "N346",
        "The soil test asks for no lime, so the lime named is not spread and there is no job for "
        "it.",
        "",
        "Leave the lime out, or copy what the lab asks for.",
        SOIL_CHAPTER,
        to_type="Leave lime: out of the planting, or type lime_need of soil test {test}.",
    )
    WET_GROUND_NOT_LOOKED_UP = Words(
        "N410",
        "Nobody has looked up whether {hole} lies in a wetland or on the bank of a stream.",
        "",
        "Ask before any digging. Rules differ by state and county, and you may need a permit.",
        CONTRACTS_CHAPTER,
        to_type="Type the day as wet_ground_asked_on.",
    )
    PASSED_OVER = Words(
        "N420",
        "Not read, because it is hidden or left by an editor: {names}.",
        "",
        "Nothing to do, unless one of them holds what you typed. Then give it the name of a file "
        "that is read.",
        to_type="Such a name is log.yaml.",
    )
    LATITUDE_NOT_TYPED = Words(
        "N421",
        "Where the property lies is not written down, so nobody can say whether the calendar days "
        "of its step plans are written for there.",
        "",
        "Look up latitude and longitude of the middle of your ground.",
        source="bioclimatic_law",
        to_type="Type location_lat_lon in property.yaml, latitude first.",
    )
