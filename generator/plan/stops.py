"""What must not be done yet: every stop, with its reason and its cure in words."""

from enum import Enum

from generator.plan.words import (
    CALIBRATION_CHAPTER,
    CONTRACTS_CHAPTER,
    LABEL_CHAPTER,
    LATER_DAY,
    SOD_CHAPTER,
    SOIL_CHAPTER,
    Words,
)

_NOT_CLEARED = "This job is not cleared. Do not mix or spray. Ask the owner."


def _label(code: str, owner: str, cure: str, source: str = "label_in_hand") -> Words:
    return Words(code, owner, _NOT_CLEARED, cure, LABEL_CHAPTER, source)


def _later(code: str, owner: str) -> Words:
    others = "This sheet may be older than work that was done. Do not begin; ask the owner."
    return Words(code, owner, others, LATER_DAY)


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
        "on {land}.{nearly}",
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
        "{why}.",
        "{cure}",
    )
    RATE_OUTSIDE = _label(
        "S110",
        "{what} is not between the lowest and highest rate of this use.",
        "{cure}",
    )
    OVER_ONE_TIME = _label(
        "S111",
        "{what} is more than its label allows at one time.",
        "{cure}, all that is in the tank counted.",
    )
    OVER_YEAR = _label(
        "S112",
        "{what} is more than its label allows in a year.",
        "{cure} within what the label allows.",
    )
    TOO_OFTEN = _label(
        "S113",
        "What this label counts, or what may be it, comes onto this ground more often in a year "
        "than the label allows.",
        "Leave one of the sprayings out. Other products of the same active count, and so does what "
        "the log leaves open: complete it.",
    )
    RESTRICTED = Words(
        "S114",
        "{product} is a restricted use product: only a certified applicator may buy or use it, or "
        "someone under their direct supervision. No licence that fits this product, and is good on "
        "the last open day, is typed for whoever does this job: {why}.",
        _NOT_CLEARED,
        "Ask your state agency which licence fits, or hire a licensed applicator. Once somebody "
        "holds it, type it under applicators: in people.yaml: its class and last day, the product "
        "under fits:, and the day the agency said so under asked_on:. A crew that is paid needs a "
        "licence that covers hire.",
        CONTRACTS_CHAPTER,
        source="usc_136i_1",
    )
    NOT_REGISTERED = _label(
        "S115",
        "{product} is not known to be registered in this state.",
        "Look it up with your state agency and type state_registered: yes only if it is.",
        source="label_in_hand",
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
        "By its last catch test the sprayer puts on {carrier} gal/ac; the card of {product} allows "
        "{low} to {high}.",
        _NOT_CLEARED,
        "Check what was caught, seconds, speed and spacing, or the ground, of that test. If they "
        "are right, change nozzle, pressure or speed, catch again, and note the new test.",
        CALIBRATION_CHAPTER,
        source="label_in_hand",
    )
    MARK_TOO_COARSE = Words(
        "S121",
        "No mark on the measure gives a rate within what the label allows.",
        _NOT_CLEARED,
        "Pour with a measure that has finer marks.",
        CALIBRATION_CHAPTER,
        source="label_in_hand",
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
        "nothing in the soil, type works_as: total_killer, grass_killer or other on the card.",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    TANK_NOT_CLEANED = Words(
        "S154",
        "{held}, and no clean-out is noted since. {trace} what grows on this place.",
        _NOT_CLEARED,
        "Clean tank, hoses, screens and nozzles as the label of the last product says, and log it "
        "with cleaned_out:; on the day of the load itself with after_last_load: true. Or type "
        "cleaned_out_on: under last_load: of the sprayer.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    NO_TANK_HISTORY = Words(
        "S157",
        "It is not noted what {item} held last, so it may hold a trace that harms what grows on "
        "this place.",
        "It is not noted what the tank held last. Do not mix or spray; ask the owner.",
        "Type last_load: of the sprayer once, new: true where it never held anything, or clean it "
        "out and type the day as cleaned_out_on:.",
        CALIBRATION_CHAPTER,
        source="common_practice",
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
    TOO_STEEP = _label(
        "S220",
        "The place is steeper than the label lets this be sprayed on.",
        "Leave the steep part out as a place of its own, or hold its growth down another way.",
    )
    SEEDLINGS_NOT_NAMED = _label(
        "S221",
        "{active} is a growth regulator, and the card names no number of leaves from which grass "
        "seedlings bear it. Between sowing and the fourth leaf it stunts or kills them.",
        "Mow above the grass until it is older. If the label names the leaves that seedlings must "
        "have, type them as seedling_leaves_at_least of this use; 0 where it allows spraying "
        "before they are up.",
        source="seedling_auxin_stage",
    )
    BURNS_TOO_MUCH = Words(
        "S222",
        "More of this screen is to be burnt than may be in one season: what is burnt hides nobody "
        "until late summer.",
        "This burn is not cleared. Do not light it. Ask the owner.",
        "Burn a part, and type its ground as treated_sq_ft and what you call it as part under "
        "work.",
        source="common_practice",
    )
    BURNS_AGAIN = Words(
        "S223",
        "Ground of this screen burnt in the season before, or is planned to, and nothing says that "
        "another part of it burns now.",
        "This burn is not cleared. Do not light it. Ask the owner.",
        "Burn another screen. Where another part burns, name both parts: part under work, and part "
        "under burned in the entry of the log.",
        source="common_practice",
    )
    OVER_WHERE_PASSES_LAP = _label(
        "S158",
        "Side by side, passes of this spraying, or of another on this ground, lap by more than a "
        "tenth of their width. Some ground is sprayed {times}, and there {product} is more than "
        "its label allows {when}.",
        "Type a width_ft that fits, or catch and type a pattern that does, and go over just that "
        "width; where the laps are another spraying's, there; where lap_in is typed for the "
        "sprayer, a smaller one. Or lower a rate until what the "
        "ground gets there holds.",
    )
    LAP_TOO_WIDE = Words(
        "S159",
        "The lap typed for {item} is half of a pass or more: {how}.",
        _NOT_CLEARED,
        "Type what passes lap as lap_in of the sprayer, a smaller one, or leave it out.",
        CALIBRATION_CHAPTER,
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
        source="common_practice",
    )
    BURN_BANNED = Words(
        "S190",
        "A burn ban holds on this place: {days}.",
        "Burning is banned. Do not burn. Ask the owner.",
        "Wait until the ban is over. If it is lifted early, correct its last day in dates.yaml, "
        "with the day you looked it up.",
        source="nrcs_burn_338",
    )
    NO_BURN_PERMIT = Words(
        "S191",
        "No burn permit is typed that is given in writing and good on every open day of this job.",
        "Do not burn. Ask the owner.",
        "Ask your fire authority which permit a burn takes. Once it is in your hand, type it under "
        "permits: in papers.yaml with places, approved_on and expires_on.",
        CONTRACTS_CHAPTER,
        source="nrcs_burn_338",
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
        CONTRACTS_CHAPTER,
        source="nrcs_de_contract",
    )
    AMOUNT_NOT_LOGGED = _label(
        "S200",
        "The log leaves out how much was sprayed on this ground, or on how much of it: {days}. "
        "What this job adds cannot be held against what the label allows in a year.",
        "Write an entry that corrects it, with used: of every product and area_ac: of the job, or "
        "treated_ac: where it was no job. Where another product was used than planned, change the "
        "product of that step to it. What can no longer be known is bounded by unknown: in that "
        "entry, with most_fl_oz_per_ac: or most_lb_per_ac:, and checked_with:.",
    )
    PRODUCT_NOT_LOGGED = _label(
        "S201",
        "The log has a spraying on this ground without its product, or of one whose card names no "
        "actives: {days}. It may be what this label counts in a year.",
        "Write an entry that corrects it, with used:, or type actives: on the card of that "
        "product. What can no longer be known is bounded by unknown: in that entry, with the "
        "products: it could have been, most_fl_oz_per_ac: or most_lb_per_ac:, and checked_with:.",
    )
    PLACE_NOT_LOGGED = _label(
        "S202",
        "The log has a spraying that names no job, no place and no location, so it may have been "
        "on this ground: {days}. It counts with what the label allows in a year.",
        "Write an entry that corrects it, with place: under sprayed:, or location: in words where "
        "it was on no place of yours. What can no longer be known is bounded by unknown: in that "
        "entry, with the places: it could have been on, and checked_with:.",
    )
    MAY_BE_THE_SAME_ACTIVE = _label(
        "S203",
        "Is {theirs} of {other} the same as {mine} of {product}? The names are near each other, "
        "and both go onto this ground in what the label counts as one time or one year.",
        "Read both labels. Under actives: of {other}, beside {theirs}, type same_as: with the name "
        "on the other card, or other_than: with it, in brackets. Where pooled_with: names a group, "
        "type its actives one by one.",
    )
    GROUND_LOGGED_TOO_LARGE = _label(
        "S204",
        "The log says that more ground was sprayed than the place has, by over a tenth: {days}. "
        "Spread over less ground, an acre got more.",
        "Measure again: write an entry that corrects area_ac: or treated_ac:, with an entry for "
        "each place where it was more than one, or correct length and width of the place.",
    )
    REENTRY_NOT_KNOWN = Words(
        "S205",
        "The log has a spraying of {day} that may have been on this ground, and where it was, what "
        "was sprayed, or how long its label keeps people out is not typed. By the longest time on "
        "any card here people may have to keep out until some time on {last}.",
        "Do not go onto this ground yet. Ask the owner.",
        "Write an entry that corrects it, with its place and used:, and type reentry: on the card "
        "of that product. Else wait until that day is over.",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    MAY_BE_THE_SAME_PART = _label(
        "S206",
        "Entries of one job, days apart, may be of the same part of the place: {days}. If they "
        "are, an acre of it got both, and with this job more than the label allows in a year.",
        "Write entries that correct them, with part: of the job, what you call each part. Where it "
        "was the same part, leave this job out or lower its rate.",
    )
    AMOUNT_IN_QUESTION = _label(
        "S240",
        "By what is counted and bought, more of {item} is logged as used on {day} than was there. "
        "The amount, the product or the ground in entry {entry} may be wrong, and what this job "
        "adds to what a label allows in a year rests on it.",
        "Write the one line that is true: an entry that corrects {entry}; the purchase that is not "
        "noted, with its day; or, where all is as it was, an entry with confirms: [{entry}].",
    )
    SPRAYING_SAID_TWICE = _label(
        "S241",
        "Entries {other} and {entry} say the same: {what}. Where one of them was on another day, "
        "on other ground or with another product, what this job adds to what a label allows in a "
        "year is not what is counted here.",
        "Where one is too many, write an entry with corrects: {entry} and not_done: true. Where "
        "one is wrong, an entry that corrects it. Where both are true, an entry with "
        "confirms: [{other}, {entry}].",
    )
    DAY_IN_QUESTION = _label(
        "S242",
        "{job} is logged on {day}, and {why}. The day in entry {entry} may be wrong, and what this "
        "job adds to what a label allows in a year rests on it.",
        "Write an entry that corrects it, with the day or the job as it was. If it was that day, "
        "an entry with confirms: [{entry}].",
    )
    WAIT_IN_QUESTION = Words(
        "S243",
        "{job} is logged on {day}, and {why}. The day in entry {entry} may be wrong, and how long "
        "a label asks to wait before this sowing is counted from it.",
        "This ground may not be sown yet. Do not begin; ask the owner.",
        "Write an entry that corrects it, with the day or the job as it was. If it was that day, "
        "an entry with confirms: [{entry}].",
        LABEL_CHAPTER,
    )
    REENTRY_IN_QUESTION = Words(
        "S244",
        "{job} is logged on {day}, and {why}. The day in entry {entry} may be wrong, and until "
        "when a label keeps people off this ground is counted from it.",
        "Keep out of this ground until the owner says that the label lets you back.",
        "Write an entry that corrects it, with the day or the job as it was. If it was that day, "
        "an entry with confirms: [{entry}].",
        LABEL_CHAPTER,
    )
    SOWN_IN_RESIDUE = Words(
        "S210",
        "{product} {sprayed} on this ground {day}. By its label card this planting may be sown "
        "from {earliest} on, and {opens}.",
        "This ground may not be sown yet. Do not begin; ask the owner.",
        "Where that day comes while the sowing is open, build the book again on it. Else sow a "
        "season later, or choose another product for a spraying that is not done yet. What the "
        "label asks for is on the page What can I plant here, when.",
        LABEL_CHAPTER,
    )
    WAIT_NOT_KNOWN = Words(
        "S211",
        "{product} {sprayed} on this ground {day}, and how long this planting has to wait after it "
        "is not known. {unknown}",
        "This ground may not be sown yet. Do not begin; ask the owner.",
        "{cure}{bound}",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    CROP_NOT_KNOWN = Words(
        "S212",
        "{product} {sprayed} on this ground {day}. {unknown} If it means this planting, that may "
        "not be sown before {until}.",
        "This ground may not be sown yet. Do not begin; ask the owner.",
        "{cure}",
        LABEL_CHAPTER,
        source="label_in_hand",
    )
    SPRAYED_LATER = _later(
        "S230",
        "Sprayed after {as_of}, the day of this plan, on this place or on one that is not named: "
        "{told}. That does not count here, so this job may be too much for the ground or too soon.",
    )
    SOWN_LATER = _later(
        "S231",
        "Sown or planted after {as_of}, the day of this plan, on this place or on one that is not "
        "named: {told}. That does not count here, so this job may harm what is in the ground.",
    )
    TANK_LATER = _later(
        "S232",
        "The sprayer of this job was loaded or cleaned out after {as_of}, the day of this plan: "
        "{told}. That does not count here, so what its tank holds is not known.",
    )
    WORKED_LATER = _later(
        "S233",
        "Work on this job is written down for a day after {as_of}, the day of this plan: {told}. "
        "That does not count here, so the job may be done already.",
    )
