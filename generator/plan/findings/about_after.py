"""What is said of what follows from the log: records, keeping out, waits, counts, crops."""

from generator.plan.findings.words import (
    COUNTING_CHAPTER,
    LABEL_CHAPTER,
    LATER_DAY,
    LATER_DAY_TYPED,
    MOWING_CHAPTER,
    RECORDS_CHAPTER,
    SORGHUM_CHAPTER,
    Caution,
    Note,
    Stop,
    Words,
    later_words,
)


class AfterStop(Stop):
    """A thing that must not be done yet."""

    REENTRY_NOT_KNOWN = Words(
        "S205",
        "The log has a spraying of {day} that may have been on this ground, and where it was, what "
        "was sprayed, or how long its label keeps people out is not written down. By the longest "
        "time on any card here people may have to keep out until some time on {last}.",
        "Do not go onto this ground yet. Ask the owner.",
        "Complete the entry and the card of that product. Else keep out until that day is over.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="Write an entry that corrects it, with its place and used:, and type reentry: on "
        "the card of that product.",
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
        "Read the label again and finish its card.{bound}",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="{cure}",
    )
    CROP_NOT_KNOWN = Words(
        "S212",
        "{product} {sprayed} on this ground {day}. {unknown} If it means this planting, that may "
        "not be sown before {until}.",
        "This ground may not be sown yet. Do not begin; ask the owner.",
        "Read the label again, and say which crops that line means.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="{cure}",
    )
    SPRAYED_LATER = later_words(
        "S230",
        "Sprayed after {as_of}, the day of this plan, on this place or on one that is not named: "
        "{told}. That does not count here, so this job may be too much for the ground or too soon.",
        "{entries}",
    )
    SOWN_LATER = later_words(
        "S231",
        "Sown or planted after {as_of}, the day of this plan, on this place or on one that is not "
        "named: {told}. That does not count here, so this job may harm what is in the ground.",
        "{entries}",
    )
    TANK_LATER = later_words(
        "S232",
        "The sprayer of this job was loaded or cleaned out after {as_of}, the day of this plan: "
        "{told}. That does not count here, so what its tank holds is not known.",
        "{entries}",
    )
    WORKED_LATER = later_words(
        "S233",
        "Work on this job is logged for a day after {as_of}, the day of this plan: {told}. That "
        "does not count here, so the job may be done already.",
        "{entries}",
    )


class AfterCaution(Caution):
    """A thing to look at before going on."""

    RECORD_GAPS = Words(
        "C310",
        "The record of the spraying of {day} leaves out: {missing}. The rule 7 CFR 110.3 lists "
        "these for restricted use products; many states ask for them of every product.",
        "",
        "Complete the record. The page Records shows the whole of it.",
        source="cfr_110_3",
        to_type="Write an entry that corrects it, with everything said again.",
    )
    RECORDED_LATE = Words(
        "C311",
        "The spraying of {day} with a restricted use product was written down {late}. The federal "
        "rule gave {days} days, and a state may give fewer.",
        "",
        "Write down a spraying on the day itself.",
        source="usc_136i_1",
        to_type="The day you write it down is recorded_on.",
    )
    NO_COPY = Words(
        "C312",
        "The hired spraying of {day}: {late}. Whoever sprays a restricted use product for hire "
        "owes you the record within {days} days, and your state may ask it of every product.",
        "",
        "Ask for the record and keep it.",
        source="usc_136i_1",
        to_type="Then write an entry that corrects this one, with copy_given_on: under sprayed:.",
    )
    CORRECTED_BY_NO_SPRAYING = Words(
        "C316",
        "A later entry corrects this spraying and does not tell where, with what, how much and on "
        "how much ground it was instead, so it still counts as it stands here.",
        "",
        "Tell the spraying in full, or say that nothing was sprayed.",
        RECORDS_CHAPTER,
        to_type="Write an entry that corrects {entry}; where nothing was sprayed, type "
        "not_done: true there. What can no longer be known is bounded by unknown:.",
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
    STRETCH_THIN = Words(
        "C320",
        "The planting is too thin {stretch}, counted {day}. Overseed it.",
        "",
        "Sow it in its next open dates, and count again in the second summer after. Counts and "
        "decisions says how much seed the stretch takes.",
        COUNTING_CHAPTER,
        source="schmer_thresholds",
    )
    START_OVER = Words(
        "C321",
        "The planting is too thin over the whole place, counted {day}. Starting over goes back to "
        "the kill in the fall before the sowing. {residue}",
        "",
        "Plan a planting of a later season here, with its fall kill. Keep what grows until then if "
        "it hides anything.",
        COUNTING_CHAPTER,
        source="schmer_thresholds",
        to_type="Add a planting with a later season: under the place.{to_answer}",
    )
    WEEDS_HEAVY = Words(
        "C322",
        "There are plants enough {stretch}, counted {day}, and much {weeds}. Hold the "
        "weeds down. {ways}",
        "",
        "Mow above the grass first. Spray only where a label card clears this planting at this "
        "age. Log the weed again with its share once you have looked.",
        COUNTING_CHAPTER,
        source="common_practice",
    )
    NOXIOUS_SEEN = Words(
        "C323",
        "{weed} was seen here on {day}. You noted it as noxious here, looked up {looked_up}: "
        "{source}.",
        "",
        "Do what the law asks of a landowner, and log it once the weed is gone.",
        COUNTING_CHAPTER,
        to_type="Log the weed again with share: none.",
    )
    WAIT_NOT_KNOWN = Words(
        "C324",
        "What was sprayed on this ground {day} may hold this sowing back, and nobody can answer "
        "that yet. {unknown}",
        "",
        "Read the label and finish its card.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="{cure} Type not_on_label where the label is silent.",
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
        "Read the label and finish its card.",
        LABEL_CHAPTER,
        source="label_in_hand",
        to_type="{cure}",
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
        "it, there is nothing to do.",
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


class AfterNote(Note):
    """A thing worth knowing."""

    ENTRY_LATER = Words(
        "N352",
        "A log entry is of {day}, after the day of this plan. It does not count yet.",
        "",
        LATER_DAY,
        to_type=f"The entry is {{entry}}. {LATER_DAY_TYPED}",
    )
    RECORD_EXTRAS = Words(
        "N390",
        "The record of the spraying of {day} leaves out what is good to have if anyone asks later: "
        "{missing}.",
        "",
        "Fill in the blank record of the next job while you spray, and copy from it.",
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
        "The planting was counted {day}, before its second summer. That is too early to condemn "
        "it: seed that was asleep can come in the second spring.",
        "",
        "Keep the weeds off it and count again in mid-June, from {decide_on} on.",
        COUNTING_CHAPTER,
        source="common_practice",
    )
    COUNT_IN_AUTUMN = Words(
        "N402",
        "The planting is in the first fall of its life, and nobody has counted it. A count in "
        "September decides nothing, and shows where to look next June.",
        "",
        "Lay the frame as the chapter says. From {decide_on} on count again, to decide.",
        COUNTING_CHAPTER,
        source="common_practice",
        to_type="Type counted: in an entry of the log.",
    )
    COUNT_NOW = Words(
        "N403",
        "The planting is in its second summer or later, and no count since {decide_on} is noted. "
        "Whether to keep it, overseed it or start over rests on one.",
        "",
        "Lay the frame as the chapter says.",
        COUNTING_CHAPTER,
        source="common_practice",
        to_type="Type counted: in an entry of the log.",
    )
