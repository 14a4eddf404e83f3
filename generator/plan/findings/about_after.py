"""What is said of the log: what it leaves in doubt, and what follows from it."""

from generator.plan.findings.words import (
    COUNTING_CHAPTER,
    LABEL_CHAPTER,
    LATER_DAY,
    MOWING_CHAPTER,
    RECORDS_CHAPTER,
    SORGHUM_CHAPTER,
    Caution,
    Note,
    Stop,
    Words,
    label_words,
    later_words,
)


class AfterStop(Stop):
    """A thing that must not be done yet."""

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
    AMOUNT_IN_QUESTION = label_words(
        "S240",
        "By what is counted and bought, more of {item} is logged as used on {day} than was there. "
        "The amount, the product or the ground in entry {entry} may be wrong, and what this job "
        "adds to what a label allows in a year rests on it.",
        "Write the one line that is true: an entry that corrects {entry}; the purchase that is not "
        "noted, with its day; or, where all is as it was, an entry with confirms: [{entry}].",
    )
    SPRAYING_SAID_TWICE = label_words(
        "S241",
        "Entries {other} and {entry} say the same: {what}. Where one of them was on another day, "
        "on other ground or with another product, what this job adds to what a label allows in a "
        "year is not what is counted here.",
        "Where one is too many, write an entry with corrects: {entry} and not_done: true. Where "
        "one is wrong, an entry that corrects it. Where both are true, an entry with "
        "confirms: [{other}, {entry}].",
    )
    DAY_IN_QUESTION = label_words(
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
    SPRAYED_LATER = later_words(
        "S230",
        "Sprayed after {as_of}, the day of this plan, on this place or on one that is not named: "
        "{told}. That does not count here, so this job may be too much for the ground or too soon.",
    )
    SOWN_LATER = later_words(
        "S231",
        "Sown or planted after {as_of}, the day of this plan, on this place or on one that is not "
        "named: {told}. That does not count here, so this job may harm what is in the ground.",
    )
    TANK_LATER = later_words(
        "S232",
        "The sprayer of this job was loaded or cleaned out after {as_of}, the day of this plan: "
        "{told}. That does not count here, so what its tank holds is not known.",
    )
    WORKED_LATER = later_words(
        "S233",
        "Work on this job is written down for a day after {as_of}, the day of this plan: {told}. "
        "That does not count here, so the job may be done already.",
    )


class AfterCaution(Caution):
    """A thing to look at before going on."""

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
        "to the kill in the fall before the sowing. {residue}",
        "",
        "Give the place a planting of a later season with its fall kill. Keep what stands until "
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


class AfterNote(Note):
    """A thing worth knowing."""

    ENTRY_LATER = Words(
        "N352",
        "Log entry {entry} is of {day}, after the day this plan was made for, and does not count "
        "yet.",
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
        "{planting} is in the first fall of its life, and no count is typed. A count in "
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
