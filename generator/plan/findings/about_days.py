"""What is said of season markers, days, dates, papers and people."""

from generator.plan.findings.words import (
    CONTRACTS_CHAPTER,
    LATER_DAY,
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


class DayCaution(Caution):
    """A thing to look at before going on."""

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
        "Spraying is hired, and no license that covers spraying for hire, good on the last open "
        "day, is typed for who does it. Most states ask for one whatever is sprayed (from memory; "
        "your state agency decides).",
        "",
        "Ask to see the license, and type it under applicators: in people.yaml with "
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
    BAN_IN_PART = Words(
        "C309",
        "A burn ban takes part of the open days: {days}.",
        "Burning is banned on some of the open days. Do not burn on them.",
        "Burn on a day that is left, and look the ban up again that morning.",
        source="nrcs_burn_338",
    )
    HOURS_OF_BEFORE = Words(
        "C315",
        "The shooting hours of {dates} were looked up on {day}, before these dates ended on "
        "{ended} a year ago. They may have changed since.",
        "",
        "Look them up again for this season and type the day under shooting_hours: in dates.yaml.",
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


class DayNote(Note):
    """A thing worth knowing."""

    PART_QUIET = Words(
        "N380",
        "Part of the open days lies in dates you keep free of this work. Left are: {left}.",
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
        "Dates {dates} are not looked up yet: they differ by state and from year to year.",
        "",
        "Look them up with your state or county, and type source and looked_up_on.",
    )
    NO_CONTRACT_PAPER = Words(
        "N383",
        "{place} is under contract {contract}, and what its written plan allows is not typed.",
        "",
        "Type the contract under contracts: in papers.yaml, with approved_on and work_allowed.",
        CONTRACTS_CHAPTER,
    )
    PAPER_LATER = Words(
        "N384",
        "{paper} is approved on a day after the one this plan was made for. The approval does not "
        "count yet.",
        "",
        LATER_DAY,
    )
    FEW_YEARS_OF_WEATHER = Words(
        "N415",
        "{sign} rests on few years of weather: {count}. One year in ten is guessed from them.",
        "",
        "Bring a longer record, of twenty years or more, or type the days under season_signs in "
        "property.yaml.",
        source="common_practice",
    )
    STATION_READ_EARLY = Words(
        "N416",
        "The station {station} is read in the morning, so a high stands under the day after it. "
        "Signs that rest on sums and on soil may be a day late.",
        "",
        "Nothing to do, where a day matters little; else take a station read in the evening.",
        source="common_practice",
    )
