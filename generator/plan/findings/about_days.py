"""What is said of season markers, days, dates, papers and people."""

from generator.plan.findings.words import (
    CONTRACTS_CHAPTER,
    LATER_DAY,
    LATER_DAY_TYPED,
    MACHINES_CHAPTER,
    Caution,
    Note,
    Stop,
    Words,
)


class DayStop(Stop):
    """A thing that must not be done yet."""

    BURN_BANNED = Words(
        "S190",
        "A burn ban holds on this place: {days}.",
        "Burning is banned. Do not burn. Ask the owner.",
        "Wait until the ban is over.",
        source="nrcs_burn_338",
        to_type="If it is lifted early, correct its last day in dates.yaml, with the day you "
        "looked it up.",
    )
    NO_BURN_PERMIT = Words(
        "S191",
        "No written burn permit covers every open day of this job.",
        "Do not burn. Ask the owner.",
        "Ask your fire authority which permit a burn takes, and get it in writing.",
        CONTRACTS_CHAPTER,
        source="nrcs_burn_338",
        to_type="Once it is in your hand, type it under permits: in papers.yaml with places, "
        "approved_on and expires_on.",
    )
    NESTING_ON_CONTRACT = Words(
        "S192",
        "The ground is under a contract, and this job falls into nesting dates: {days}. Mowing or "
        "spraying then, without leave in writing beforehand, can cost payments or the contract.",
        "Do not begin this job yet. Ask the owner.",
        "Ask the office of the contract for leave in writing, or keep the work out of these dates.",
        CONTRACTS_CHAPTER,
        source="nrcs_de_contract",
        to_type="Type the contract under contracts: in papers.yaml, with this step or kind of work "
        "under written_permission_for: and the day of the letter under permission_on:.",
    )


class DayCaution(Caution):
    """A thing to look at before going on."""

    ALL_QUIET = Words(
        "C300",
        "Stay-out dates take every open day that is left: {days}.",
        "No open day is left on which this may be done. Ask the owner.",
        "Do it before those dates begin, shorten them, or leave the job out. Its sheet says what "
        "to do when it is missed.",
        to_type="Shorten them in dates.yaml.",
    )
    OTHERS_HUNTING = Words(
        "C301",
        "Open days of this job fall into hunting dates, and the job is handed to somebody: {days}.",
        "Others may be hunting here on some of the open days. The sheet names them.",
        "Agree on a day, tell everybody who hunts, and see that whoever works wears blaze orange.",
        source="common_practice",
    )
    ENTRY_IN_HUNTING = Words(
        "C302",
        "Sprayed on the last open day, people must keep out through {until} by the label's hours, "
        "and others may be hunting from {first} on.",
        "Keep people out for as long as the label says: others may come here to hunt.",
        "Spray earlier, tell everybody who hunts here, and post the place until the time is over.",
    )
    NO_ONE_CALL = Words(
        "C303",
        "This job opens the ground, and no request to mark buried lines is noted for this place "
        "and these days.",
        "Call before you dig: 811. Do not open ground until buried lines are marked.",
        "Call 811 two working days before, or more where your state says so.",
        MACHINES_CHAPTER,
        source="call_811",
        to_type="Type the request under one_calls: in papers.yaml with its number, clear_on and "
        "expires_on.",
    )
    CONTRACT_NOT_APPROVED = Words(
        "C304",
        "Contract {contract} {why}. Work begun before written approval can forfeit the payment.",
        "",
        "Begin nothing on its ground before the approval is in your hand. Where something is "
        "begun, ask the office at once whether a waiver is possible.",
        CONTRACTS_CHAPTER,
        source="nrcs_de_contract",
        to_type="Then type approved_on.",
    )
    NOT_IN_CONTRACT = Words(
        "C305",
        "Contract {contract} holds on this place, and its plan, as you noted it, does not name "
        "this work.",
        "",
        "Look the work up in the written plan. If it is not there, ask the office first.",
        CONTRACTS_CHAPTER,
        to_type="If it is there, add its step or kind of work to work_allowed:.",
    )
    HIRE_UNLICENSED = Words(
        "C306",
        "Spraying is hired, and no license that covers spraying for hire, good on the last open "
        "day, is noted for who does it. Most states ask for one whatever is sprayed (from memory; "
        "your state agency decides).",
        "",
        "Ask to see the license, and ask for a copy of the spray record.",
        CONTRACTS_CHAPTER,
        to_type="Type the license under applicators: in people.yaml with "
        "licence_class: commercial, for_hire: true and its last day.",
    )
    NOT_INSURED = Words(
        "C307",
        "You hand work to this contractor, and {why}.",
        "",
        "Ask for proof of insurance before the first job.",
        source="common_practice",
        to_type="Type insured: true and insured_until on contractor {contractor}.",
    )
    CONTRACTOR_OF_NO_READER = Words(
        "C431",
        "You hand work to {readers}, and nothing says whether this contractor is who that is. "
        "Nobody can say whether who does it is insured.",
        "",
        "Say which reader this contractor is, or add the contractor who does it.",
        source="common_practice",
        to_type="Type {cure} on contractor {contractor} if that is who does it; for anybody else "
        "add a contractor with reader:, insured: and insured_until.",
    )
    BAN_IN_PART = Words(
        "C309",
        "A burn ban takes part of the open days: {days}.",
        "Burning is banned on some of the open days. Do not burn on them.",
        "Burn on a day that is left, and look the ban up again that morning.",
        source="nrcs_burn_338",
    )
    HOURS_OF_BEFORE = Words(
        "C315",
        "You looked these shooting hours up on {day}, before these dates ended on {ended} a year "
        "ago. They may have changed since.",
        "",
        "Look them up again for this season.",
        source="common_practice",
        to_type="Type the day under shooting_hours: of {dates} in dates.yaml.",
    )
    LAW_OF_BEFORE = Words(
        "C460",
        "You looked up what the law says ({of}) on {day}, before hunting dates ended on "
        "{ended} a year ago.",
        "",
        "Look it up again for this season.",
        to_type="Type what it says now and the day under looked_up: of {entry} in dates.yaml.",
    )
    STATION_FAR = Words(
        "C350",
        "The weather station {station} is {how}. Its season may not be yours.",
        "",
        "Use the record of a nearer station at your own height, or the season markers you see on "
        "your own ground.",
        source="common_practice",
        to_type="Type markers of your own under season_signs in property.yaml.",
    )
    SIGN_FROM_NORMALS = Words(
        "C351",
        "{sign} rests on monthly normals. They give a typical day alone, so the early and the late "
        "year of it are the same day and its dates are not on the careful side.",
        "",
        "Use a daily record of ten years or more.",
        source="common_practice",
        to_type="Or type early, typical and late under season_signs in property.yaml.",
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
        "You noted a dry spell for {days}. {why}",
        "It is dry here for this work. Ask the owner before you begin.",
        "If none comes: {missed}",
        source="common_practice",
        to_type="Once it has rained, set the last day of the dry spell in dates.yaml to the day it "
        "ended.",
    )


class DayNote(Note):
    """A thing worth knowing."""

    PART_QUIET = Words(
        "N380",
        "Stay-out dates take part of the open days. Left are: {left}.",
        "",
        "{cure}",
    )
    NESTING = Words(
        "N381",
        "Hens may sit or fawns may lie here on open days of this job: {days}.",
        "",
        "Do it outside those days if it can wait. If not, walk the ground first, work from the "
        "middle outward, and leave what you find.",
        source="common_practice",
    )
    NOT_LOOKED_UP = Words(
        "N382",
        "Nobody has looked these dates up yet: they differ by state and from year to year.",
        "",
        "Look them up with your state or county.",
        to_type="Type source and looked_up_on of {dates} in dates.yaml.",
    )
    NO_CONTRACT_PAPER = Words(
        "N383",
        "{place} is under contract, and what its written plan allows is not noted.",
        "",
        "Look in the written plan for the work it allows.",
        CONTRACTS_CHAPTER,
        to_type="Type contract {contract} under contracts: in papers.yaml, with approved_on and "
        "work_allowed.",
    )
    PAPER_LATER = Words(
        "N384",
        "{paper} is approved after the day of this plan. The approval does not count yet.",
        "",
        LATER_DAY,
        to_type=LATER_DAY_TYPED,
    )
    FEW_YEARS_OF_WEATHER = Words(
        "N415",
        "{sign} rests on few years of weather: {count}. One year in ten is guessed from them.",
        "",
        "Use a longer record, of twenty years or more.",
        source="common_practice",
        to_type="Or type the days under season_signs in property.yaml.",
    )
    STATION_READ_EARLY = Words(
        "N416",
        "The station {station} is read in the morning, so a high stands under the day after it. "
        "Markers that rest on sums and on soil may be a day late.",
        "",
        "Nothing to do where a day matters little; else use a station read in the evening.",
        source="common_practice",
    )
