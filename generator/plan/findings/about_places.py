"""What is said of places, what stands on them, and the plan as a whole."""

from generator.plan.findings.words import (
    CONTRACTS_CHAPTER,
    SOD_CHAPTER,
    SOIL_CHAPTER,
    STANDS_CHAPTER,
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
    TOO_STEEP = label_words(
        "S220",
        "The place is steeper than the label lets this be sprayed on.",
        "Leave the steep part out as a place of its own, or hold its growth down another way.",
    )
    BURNS_TOO_MUCH = Words(
        "S222",
        "More of this screen is to be burned than may be in one season: what is burned hides "
        "nobody until late summer.",
        "This burn is not cleared. Do not light it. Ask the owner.",
        "Burn a part, and type its ground as treated_sq_ft and what you call it as part under "
        "work.",
        source="common_practice",
    )
    BURNS_AGAIN = Words(
        "S223",
        "Ground of this screen burned in the season before, or is planned to, and nothing says "
        "that another part of it burns now.",
        "This burn is not cleared. Do not light it. Ask the owner.",
        "Burn another screen. Where another part burns, name both parts: part under work, and part "
        "under burned in the entry of the log.",
        source="common_practice",
    )
    LIVING_SOD = Words(
        "S180",
        "Perennial sod stands on this place, or nobody knows what does, and no kill before the "
        "sowing is logged or planned. Seed sown into living sod comes up here and there, and dies "
        "in summer. The sod has to be killed in the fall of {autumn}, for a sowing in season "
        "{season}.",
        "Do not sow here yet. Ask the owner.",
        "Plan the kill under work: with its product, or log the one that was done. Where the kill "
        "was missed, set the season of the planting to the one named. Where no sod is left, say "
        "under cover_now: what grows there now.",
        SOD_CHAPTER,
        source="common_practice",
    )
    STAND_UNSAFE = Words(
        "S331",
        "{stand} was unsafe when it was inspected on {day}{found}.",
        "It was unsafe when it was last inspected. Do not climb it. Ask the owner.",
        "Nobody climbs it. Mend it by the maker's book or take it down, inspect all of it again, "
        "and log that: inspected, with sound: true.",
        STANDS_CHAPTER,
        source="common_practice",
    )


class PlaceCaution(Caution):
    """A thing to look at before going on."""

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
    OLD_SOIL_TEST = Words(
        "C250",
        "Soil test {test} is older on the day of this job than a soil test is good for.",
        "The soil test behind this sheet is old. Ask the owner.",
        "Sample again and type the new test.",
        SOIL_CHAPTER,
    )
    STEEP_OR_NO_WAY_OUT = Words(
        "C259",
        "The water hole has {what}.",
        "",
        "{cure}",
        source="pond_practice_378",
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
    STEEP = Words(
        "C340",
        "The place is steeper than the limit you typed for machines.",
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
        "No look over its straps, harness and line in the year before it is hunted is written "
        "down. Do not climb it until all of it has been looked over. Ask the owner.",
        "Look every strap, bolt, step and line over from the ground up, replace what is worn or "
        "older than its maker allows, and log it: inspected, with sound: true.",
        STANDS_CHAPTER,
        source="ar_stand_falls",
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


class PlaceNote(Note):
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
    NO_WIDTH = Words(
        "N310",
        "The place has no taped width, so lanes, passes and seed thrown past it are left out.",
        "The width of the place is not known, so lanes and passes are not worked out.",
        "Tape the width and type width_ft.",
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
    WET_GROUND_NOT_LOOKED_UP = Words(
        "N410",
        "Whether {hole} lies in a wetland or on the bank of a stream is not looked up.",
        "",
        "Ask before any digging, and type the day as wet_ground_asked_on. Rules differ by state "
        "and county, and a permit can be needed.",
        CONTRACTS_CHAPTER,
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
