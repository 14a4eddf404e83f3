"""What is said of sprayers, tanks and passes."""

from generator.plan.findings.words import (
    CALIBRATION_CHAPTER,
    LABEL_CHAPTER,
    NOT_CLEARED,
    Caution,
    Note,
    Stop,
    Words,
    label_words,
)


class SprayStop(Stop):
    """A thing that must not be done yet."""

    NO_PRODUCT = Words(
        "S101",
        "No product is chosen for this step.",
        NOT_CLEARED,
        "Choose a product whose label allows this, its rate, and the sprayer.",
        to_type="Under the planting, add the step to work: with product, rate, method and sprayer.",
    )
    NO_SPRAYER = Words(
        "S119",
        "No sprayer with a catch test, and a measure to pour with, is named for this step.",
        NOT_CLEARED,
        "Make a catch test, and name the sprayer and what you pour with.",
        CALIBRATION_CHAPTER,
        to_type="In equipment.yaml, note what each nozzle catches in a time and name a measure; "
        "then name the sprayer under work:.",
    )
    CARRIER_OUTSIDE = Words(
        "S120",
        "By its last catch test the sprayer puts on {carrier} gal/ac; the card of {product} allows "
        "{low} to {high}.",
        NOT_CLEARED,
        "Check what was caught, seconds, speed and spacing, or the ground, of that test. If they "
        "are right, change nozzle, pressure or speed, catch again, and note the new test.",
        CALIBRATION_CHAPTER,
        source="label_in_hand",
    )
    MARK_TOO_COARSE = Words(
        "S121",
        "Your measure is too coarse: none of its marks gives a rate that the label allows.",
        NOT_CLEARED,
        "Pour with a measure that has finer marks.",
        CALIBRATION_CHAPTER,
        source="label_in_hand",
    )
    NO_MEASURE = Words(
        "S150",
        "The sprayer has no {measure}, and {product} has to be measured with one.",
        NOT_CLEARED,
        "Get a {measure} and name it on the sprayer.",
        CALIBRATION_CHAPTER,
        to_type="Add the {measure}, with a {mark}, under measures: in equipment.yaml and name it "
        "under measure: of the sprayer.",
    )
    NO_TREATED_GROUND = Words(
        "S151",
        "Spots are to be sprayed, and the ground they make together is not measured. Without it "
        "nobody can say what an acre gets.",
        NOT_CLEARED,
        "Measure the spots and add them up.",
        to_type="Type the sum as treated_sq_ft.",
    )
    MORE_THAN_THE_PLACE = Words(
        "S152",
        "More ground is to be sprayed than the place has.",
        NOT_CLEARED,
        "Measure again.",
        to_type="Correct treated_sq_ft, or the length and width of the place.",
    )
    PERCENT_OF_RESIDUAL = Words(
        "S153",
        "{product} works through the soil, or its card does not say how it works. A percent mix "
        "sprayed until leaves are wet puts far more on an acre than a soil residual may have.",
        NOT_CLEARED,
        "Give a rate to an acre, for a broadcast use that the label names.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="Of an active that leaves nothing in the soil, type works_as: total_killer, "
        "grass_killer or other on the card.",
    )
    NO_ADJUVANT_RATE = Words(
        "S155",
        "No rate is given for {item}, which is to go into the tank.",
        NOT_CLEARED,
        "Write down what the herbicide's label asks for.",
        to_type="Type it as rate_product, mix_pct or rate_lb_per_100_gal.",
    )
    OVER_WHERE_PASSES_LAP = label_words(
        "S158",
        "Side by side, passes of this spraying, or of another on this ground, lap by more than a "
        "tenth of their width. Some ground is sprayed {times}, and there {product} is more than "
        "its label allows {when}.",
        "Make the place as wide as whole passes, or use a pattern that fits, and go over just that "
        "width. Where the laps are another spraying's, do so there. Or lap less, or lower a rate "
        "until what the ground gets there holds.",
        to_type="Type a width_ft that fits, or catch and type a pattern that does. Where lap_in is "
        "typed for the sprayer, type a smaller one.",
    )
    LAP_TOO_WIDE = Words(
        "S159",
        "The lap given for {item} is half of a pass or more: {how}.",
        NOT_CLEARED,
        "Give what passes lap, a smaller width, or leave it out.",
        CALIBRATION_CHAPTER,
        to_type="Type it as lap_in of the sprayer.",
    )
    NOTHING_LEFT = Words(
        "S500",
        "All of this place lies nearer to {things} than the labels in the tank let you spray.",
        NOT_CLEARED,
        "Spray nothing here with these products. Hold the growth down another way, or choose a "
        "product whose label keeps less. Where what lies near is farther off than it is drawn, "
        "measure it.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="Correct its points in land.yaml, or the distance under near: of the place.",
    )
    EDGE_IN_DOUBT = Words(
        "S501",
        "A label counts its distance from {counted} of {item}; what you measured is {measured}. "
        "The edge that counts may lie nearer, so nobody can say how much of the place is left.",
        NOT_CLEARED,
        "Go and look which edge you measured. Where it is another one, measure from {counted}.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="Type counts_from: {edge}, with the points or the distance of that edge.",
    )
    NO_WIDTH_TO_LEAVE_OUT = Words(
        "S502",
        "Something lies nearer to this place than a label lets you spray, and nobody has taped how "
        "wide the place is. So nobody can say how much of it is left.",
        NOT_CLEARED,
        "Tape the width of the place.",
        LABEL_CHAPTER,
        to_type="Type it as width_ft of the place.",
    )
    MORE_THAN_IS_LEFT = Words(
        "S503",
        "More ground is to be sprayed than the labels leave of this place beside {things}.",
        NOT_CLEARED,
        "Measure what lies outside of the distances, and spray no more than that.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="Correct treated_sq_ft, or leave it out: then what is left is worked out.",
    )


class SprayCaution(Caution):
    """A thing to look at before going on."""

    LEFT_OUT = Words(
        "C500",
        "A part of this place is left out: it lies nearer to {things} than the labels in the tank "
        "let you spray.",
        "",
        "Measure and flag the distances before you mix. Amounts are for what is left.",
        LABEL_CHAPTER,
        source="label_in_hand",
    )

    OLD_LABEL = Words(
        "C203",
        "The label was read more than a year before this job.",
        "Read the label on the container again before mixing.",
        "Read the label on the container you will use.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="Type the day you read it as read_on.",
    )
    OLD_CATCH_TEST = Words(
        "C204",
        "The catch test is more than a year older than this job.",
        "The catch test is old. Catch again before you begin.",
        "Catch again before you begin, and note the new test.",
        CALIBRATION_CHAPTER,
        source="common_practice",
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
        "Your {measure} is too coarse: {item} comes to over a tenth more or less to an acre than "
        "you meant.",
        "The marks of the {measure} miss the rate by over a tenth: the amounts are to be measured "
        "as they stand here.",
        "Use finer marks, or loads that come out even.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    LAID_TWICE = Words(
        "C325",
        "The passes lap by more than a tenth of their width, and some ground is sprayed {times}. "
        "No setting of this sprayer covers the width without.",
        "The passes lap by more than a tenth of their width, and some ground is sprayed more than "
        "once. Keep the passes of this sheet, so that the laps get no wider.",
        "Make the place as wide as whole passes and go over just that, or use a pattern that fits, "
        "or lap less. Where the label bears it on that ground, as it does here, it may stay.",
        CALIBRATION_CHAPTER,
        source="common_practice",
        to_type="Type a width_ft that fits, or catch and type a pattern that fits. Where lap_in is "
        "typed for the sprayer, type a smaller one.",
    )
    SPRAYED_BESIDE = Words(
        "C326",
        "The sprayer sprays wider than this place, even with as much of it shut as can be: over a "
        "tenth of the spray lands on the ground along both edges. Nothing here has looked at what "
        "grows there, whose it is, and whether the label lets it be sprayed.",
        "The sprayer sprays wider than this place, and spray lands on the ground along both edges. "
        "Do not begin before you know what grows there, whose it is, and that it may be sprayed.",
        "Walk both edges. Where that ground is yours and may be sprayed with this, make the place "
        "as wide as the pass. Where it may not, spray only as wide as a narrower pass covers, or "
        "take a narrower pattern, a gun or a backpack.",
        CALIBRATION_CHAPTER,
        source="common_practice",
        to_type="Type the width that fits as width_ft of the place.",
    )
    NO_PASSES = Words(
        "C327",
        "The spray may not reach: passes are not worked out, because {why}. Amounts cover the bare "
        "ground, each foot of it sprayed once. What passes lap, and what a last pass sprays beyond "
        "the edge, comes on top, and the tank runs dry that much too early.",
        "The spray may not reach: the amounts are for the bare ground, each foot of it sprayed "
        "once. Where passes lap, the tank runs dry before the end. Ask the owner for the passes, "
        "and mix nothing on top by guess.",
        "{cure}. If you spray before that: where the tank runs dry, flag the spot, measure what is "
        "left, and mix for that ground alone.",
        CALIBRATION_CHAPTER,
        to_type="{typed}",
    )
    CLEAN_OUT_BETWEEN = Words(
        "C313",
        "{item} may hold {product} before this job, from {other}. {held}",
        "",
        "Clean tank, hoses, screens and nozzles between the two as the label of the first product "
        "says, and log it. Or spray one of the two with another sprayer.",
        CALIBRATION_CHAPTER,
        source="common_practice",
        to_type="Log it with cleaned_out:{or_type}.",
    )
    NOTHING_SET_BACK = Words(
        "C344",
        "The label keeps the spray away from: {kept}. Buffers are subtracted only for what is "
        "drawn or typed, which may not be all.",
        "Nothing is set back for some of what the label keeps the spray away from.",
        "Measure and flag the distances, and mix less by what is left out.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="Type distances: under near: of the place. Or give place and things points, and "
        "name kinds that are all in land.yaml, or of which there are none, as all_drawn: in "
        "property.yaml.",
    )


class SprayNote(Note):
    """A thing worth knowing."""

    NO_PASSES = Words(
        "N391",
        "Passes are not worked out for a part of a place. Amounts cover just the ground you gave: "
        "where it leaves out what passes lap, the tank runs dry before the end.",
        "Passes are not worked out for a part of a place. Where passes lap, the tank may run dry "
        "before the end.",
        "Measure what the passes cover, laps counted. Where you gave that already, leave it.",
        CALIBRATION_CHAPTER,
        to_type="Type it as treated_sq_ft.",
    )
    NO_FORMULATION = Words(
        "N330",
        "How a part of this tank is made up is not written down, so no mixing order is given.",
        "No mixing order is given: follow the labels.",
        "Look it up on each label.",
        to_type="Type formulation: of each product and adjuvant.",
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
        "The card holds no year of its label, so nobody can say how old the label is.",
        "",
        "Look for the date or revision that the label prints.",
        LABEL_CHAPTER,
        to_type="Type it as label_date, its year in four digits.",
    )
