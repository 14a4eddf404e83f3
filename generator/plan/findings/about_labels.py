"""What is said of labels: what a card allows, and what it does not say."""

from generator.plan.findings.words import (
    CALIBRATION_CHAPTER,
    CONTRACTS_CHAPTER,
    LABEL_CHAPTER,
    NOT_CLEARED,
    Caution,
    Note,
    Stop,
    Words,
    label_words,
)

READ_AND_TYPE = "Read the label and finish its card."
TYPE_OR_SILENT = "Type what the label says, or not_on_label where it is silent"


class LabelStop(Stop):
    """A thing that must not be done yet."""

    NO_CARD = label_words(
        "S102",
        "The label card of {product} is empty, so nothing is known of what its label allows.",
        "Take the label in hand and fill in its card.",
        to_type=f"Fill in the card in products.yaml. {TYPE_OR_SILENT}.",
    )
    CARD_GAPS = label_words(
        "S103",
        "The label card of {product} is not finished, so the book cannot say that its label allows "
        "this.",
        READ_AND_TYPE,
        to_type=f"Left out: {{missing}}. {TYPE_OR_SILENT}.",
    )
    NO_USE = label_words(
        "S104",
        "No use on the label card of {product} covers this: {kind} with {species}, {timing}, "
        "{method}, on {land}.{nearly}",
        "A label that does not name this site does not allow it. Nothing you type lifts this stop. "
        "Choose a product whose label names the site, or kill the growth another way: mow, graze, "
        "or till. If the label does name the site, add that use to the card.",
        to_type="{gaps}Type a use that the label does print under uses: of the card.",
    )
    USE_SAYS_NO = label_words(
        "S105",
        "The card of {product} says that the label does not allow this.",
        "Nothing you type lifts this stop. Choose a product whose label names this use, or do "
        "without.",
    )
    USE_UNSURE = label_words(
        "S106",
        "You were not sure whether the label of {product} allows this. Unsure counts as no.",
        "Ask the maker, your state agency or an extension office. Then write their answer on the "
        "card.",
        to_type="Change allowed: on the use to yes or no.",
    )
    USES_DISAGREE = label_words(
        "S107",
        "Two uses on the card of {product} cover this job and do not agree.",
        "Read the label again. Make each use cover only the site it was printed for.",
    )
    USE_GAPS = label_words(
        "S108",
        "The use on the card of {product} that this job rests on is not finished.",
        READ_AND_TYPE,
        to_type=f"Left out: {{missing}}. {TYPE_OR_SILENT}.",
    )
    NO_RATE = label_words(
        "S109",
        "{why}.",
        "Choose a rate that the label allows for this use, and write it as the card counts it.",
        to_type="{cure}",
    )
    RATE_OUTSIDE = label_words(
        "S110",
        "{what} is not between the lowest and the highest rate of this use.",
        "{cure}",
    )
    OVER_ONE_TIME = label_words(
        "S111",
        "{what} is more than its label allows at one time.",
        "{cure}, all that is in the tank counted.",
    )
    OVER_YEAR = label_words(
        "S112",
        "{what} is more than its label allows in a year.",
        "{cure} within what the label allows.",
    )
    TOO_OFTEN = label_words(
        "S113",
        "What this label counts, or what may be it, comes onto this ground more often in a year "
        "than the label allows.",
        "Leave one of the sprayings out. Other products of the same active count, and so does what "
        "the log leaves open: complete it.",
    )
    RESTRICTED = Words(
        "S114",
        "{product} is a restricted use product: only a certified applicator may buy or use it, or "
        "someone under their direct supervision. No license that fits this product, and is good on "
        "the last open day, is written down for whoever does this job.",
        NOT_CLEARED,
        "Ask your state agency which license fits, or hire a licensed applicator. A crew that is "
        "paid needs a license that covers hire.",
        CONTRACTS_CHAPTER,
        source="usc_136i_1",
        to_type="Missing: {why}. Once somebody holds it, type it under applicators: in "
        "people.yaml: its class and last day, the product under fits:, and the day the agency said "
        "so under asked_on:. For a paid crew: licence_class: commercial, for_hire: true.",
    )
    NOT_REGISTERED = label_words(
        "S115",
        "{product} is not known to be registered in this state.",
        "Look it up with your state agency.",
        source="label_in_hand",
        to_type="Type state_registered: yes only if it is.",
    )
    NO_BULLETIN = label_words(
        "S116",
        "The label sends you to a use-limitation bulletin. None is noted for every month of the "
        "open dates, looked up within six months before.",
        "Look the bulletin up for each month in which you may spray.",
        to_type="Type checked_on and month under bulletin: of the card.",
    )
    PAST_LAST_DATE = label_words(
        "S117",
        "The open dates run past the last day of the year this use allows, or are not known.",
        "Spray by the label's last day: write down the season markers, or choose another use or "
        "product.",
        to_type="Type the markers under season_signs in property.yaml.",
    )
    SOWN_TOO_SOON = label_words(
        "S118",
        "The label asks for more days between spraying and sowing than the open dates leave.",
        "Spray earlier, sow later, or choose another product.",
    )
    TANK_NOT_CLEANED = Words(
        "S154",
        "{held}, and no clean-out is noted since. {trace} what grows on this place.",
        NOT_CLEARED,
        "Clean tank, hoses, screens and nozzles as the label of the last product says, and log it.",
        CALIBRATION_CHAPTER,
        source="common_practice",
        to_type="Log it with cleaned_out:; on the day of the load itself with after_last_load: "
        "true. Or type cleaned_out_on: under last_load: of the sprayer.",
    )
    NO_TANK_HISTORY = Words(
        "S157",
        "Nobody noted what {item} held last, so it may hold a trace that harms what grows on this "
        "place.",
        "Nobody noted what the tank held last. Do not mix or spray; ask the owner.",
        "Say once what it held last, or that it is new. Or clean it out and note the day.",
        CALIBRATION_CHAPTER,
        source="common_practice",
        to_type="Type last_load: of the sprayer; new: true where it never held anything; or the "
        "day of the clean-out as cleaned_out_on:.",
    )
    NOT_TO_BE_ADDED_UP = label_words(
        "S156",
        "What is planned here of {product}, and of what its label counts with it, cannot be added "
        "up and held against the card: a rate is missing, or a strength or a limit is not known in "
        "the same basis.",
        "Write down the rate of every spraying of this ground, and each card's strengths as the "
        "label panel counts them.",
        to_type="Type the strengths in the basis of the panel, and basis: beside a year's limit: "
        "what it counts.",
    )
    SEEDLINGS_NOT_NAMED = label_words(
        "S221",
        "{active} is a growth regulator, and the card names no number of leaves from which grass "
        "seedlings bear it. Between sowing and the fourth leaf it stunts or kills them.",
        "Mow above the grass until it is older, unless the label names the leaves that seedlings "
        "must have.",
        source="seedling_auxin_stage",
        to_type="Type the label's number as seedling_leaves_at_least of this use; 0 where it "
        "allows spraying before they are up.",
    )
    AMOUNT_NOT_LOGGED = label_words(
        "S200",
        "The log leaves out how much was sprayed on this ground, or on how much of it: {days}. "
        "What this job adds cannot be held against what the label allows in a year.",
        "Complete the log: how much of every product, and on how much ground.",
        to_type="Write an entry that corrects it, with used: of every product and area_ac: of the "
        "job, or treated_ac: where it was no job. Where another product was used than planned, "
        "change the product of that step to it. What can no longer be known is bounded by unknown: "
        "in that entry, with most_fl_oz_per_ac: or most_lb_per_ac:, and checked_with:.",
    )
    PRODUCT_NOT_LOGGED = label_words(
        "S201",
        "The log has a spraying on this ground without its product, or of one whose card names no "
        "actives: {days}. It may be what this label counts in a year.",
        "Complete the log with the product, or that product's card with its actives.",
        to_type="Write an entry that corrects it, with used:, or type actives: on the card of that "
        "product. What can no longer be known is bounded by unknown: in that entry, with the "
        "products: it could have been, most_fl_oz_per_ac: or most_lb_per_ac:, and checked_with:.",
    )
    PLACE_NOT_LOGGED = label_words(
        "S202",
        "The log has a spraying that names no job, no place and no location, so it may have been "
        "on this ground: {days}. It counts with what the label allows in a year.",
        "Complete the log: where was it sprayed?",
        to_type="Write an entry that corrects it, with place: under sprayed:, or location: in "
        "words where it was on no place of yours. What can no longer be known is bounded by "
        "unknown: in that entry, with the places: it could have been on, and checked_with:.",
    )
    MAY_BE_THE_SAME_ACTIVE = label_words(
        "S203",
        "Is {theirs} of {other} the same as {mine} of {product}? The names are near each other, "
        "and both go onto this ground in what the label counts as one time or one year.",
        "Read both labels, and write down whether the two are the same.",
        to_type="Under actives: of {other}, beside {theirs}, type same_as: with the name on the "
        "other card, or other_than: with it, in brackets. Where pooled_with: names a group, type "
        "its actives one by one.",
    )
    GROUND_LOGGED_TOO_LARGE = label_words(
        "S204",
        "The log says that more ground was sprayed than the place has, by over a tenth: {days}. "
        "Spread over less ground, an acre got more.",
        "Measure again, and correct the log or the size of the place.",
        to_type="Write an entry that corrects area_ac: or treated_ac:, with an entry for each "
        "place where it was more than one. Or correct length and width of the place.",
    )
    MAY_BE_THE_SAME_PART = label_words(
        "S206",
        "Entries of one job, days apart, may be of the same part of the place: {days}. If they "
        "are, an acre of it got both, and with this job more than the label allows in a year.",
        "Say in the log which part each was. Where it was the same part, leave this job out or "
        "lower its rate.",
        to_type="Write entries that correct them, with part: of the job, what you call each part.",
    )


class LabelCaution(Caution):
    """A thing to look at before going on."""

    WAIT_BEFORE_SOWING = Words(
        "C247",
        "This spraying and the sowing are open in the same weeks, and the label asks for days "
        "between the two. Spray by {latest}, and sow no sooner than that many days after it.",
        "The label asks for days between this spraying and the sowing. Ask the owner which day to "
        "spray by.",
        "Choose the day to spray first, and log it. The sheet of the sowing then says from which "
        "day on.",
        LABEL_CHAPTER,
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
        "Read what the label says of this grass, or choose another product.",
        LABEL_CHAPTER,
    )
    DRIFTS_FAR = Words(
        "C345",
        "A growth regulator goes into this tank: {active}. Its drift, and in heat its vapor, "
        "harms gardens, vines, trees and broad-leaved crops far off. Near here: {neighbours}",
        "A growth regulator goes into this tank. Its drift, and in heat its vapor, harms gardens, "
        "vines, trees and broad-leaved crops far off.",
        "Tell the neighbors. Spray when the wind blows away from them and the day stays cool. Keep "
        "what the label says of sensitive crops.",
        LABEL_CHAPTER,
        source="common_practice",
    )


class LabelNote(Note):
    """A thing worth knowing."""

    DISTANCE_WITHOUT_KIND = Words(
        "N426",
        "The label card of {product} keeps distances from things without saying of what kind they "
        "are: {kept}.",
        "",
        "Say of each what kind of thing it is, and where the label counts from.",
        LABEL_CHAPTER,
        to_type="Add it to each, so: {line}. Kinds are {kinds}; counts_from is {edges}.",
    )

    CARD_NOT_FILLED_IN = Words(
        "N425",
        "The label card of {product} is not finished. A job that rests on it is stopped until "
        "then.",
        "",
        READ_AND_TYPE,
        LABEL_CHAPTER,
        to_type=f"Left out: {{missing}}. {TYPE_OR_SILENT}.",
    )
