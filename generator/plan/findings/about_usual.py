"""What is said of figures far from what is usual."""

from generator.plan.findings.words import (
    CALIBRATION_CHAPTER,
    COUNTING_CHAPTER,
    LABEL_CHAPTER,
    TAG_CHAPTER,
    Caution,
    Words,
)


class UsualCaution(Caution):
    """A thing to look at before going on."""

    SIZE_OUT_OF_USUAL = Words(
        "C400",
        "The {what} of {place} is {much} than is usual. A digit too many or too few, or another "
        "unit, gives such a figure, and with it wrong amounts and hours.",
        "",
        "Measure again, or check {key} and its unit. If it is as it is, leave it: nothing is kept "
        "from being printed.",
    )
    TAG_OUT_OF_USUAL = Words(
        "C401",
        "Lot {lot} has {much} {what} by its tag than seed that is sold. A digit too few gives such "
        "a tag, and with it many times the seed to buy.",
        "",
        "Check {keys} against the tag, in percent. If the tag says so, ask the seller what is in "
        "the bag.",
        TAG_CHAPTER,
    )
    SEED_COUNT_OUT_OF_USUAL = Words(
        "C402",
        "Lot {lot} has {many} seeds in a pound, as typed, than a pound of {species} has. Most "
        "likely zeros are left out, as where a seller counts in thousands, or one is too many. "
        "Seeds on a square foot, and every rate typed in seeds, are wrong with it.",
        "",
        "Type live_seeds_per_lb as the whole number with all its zeros, as 259000 and not 259. "
        "Take it from the tag, the seller or your extension office. If it is so, leave it: nothing "
        "is kept from being printed.",
        TAG_CHAPTER,
    )
    RATE_OUT_OF_USUAL = Words(
        "C403",
        "{what}: {much} seed to an acre than is usual. A digit too many or too few, or another "
        "unit, gives such a rate.",
        "The rate of seed on this sheet is out of the ordinary. Ask the owner before you sow.",
        "Check {key} against what the seller or the extension office names. If it is meant, leave "
        "it: nothing is kept from being printed.",
        TAG_CHAPTER,
    )
    MACHINE_OUT_OF_USUAL = Words(
        "C404",
        "{machine}: {what}, as typed, is {much} than such a machine has. Most likely a digit is "
        "too many or too few, or the number is in another unit than its key says. Loads, passes "
        "and hours that rest on it are wrong with it.",
        "",
        "Hold {key} in equipment.yaml against the machine, or measure again; the key ends in the "
        "unit it is read in. If the machine is so, leave it: nothing is kept from being printed.",
        CALIBRATION_CHAPTER,
    )
    CARRIER_OUT_OF_USUAL = Words(
        "C405",
        "The last catch test of {machine} puts {much} spray on an acre than is usual. A slip in "
        "what was caught, in the time or in the ground gives such a test.",
        "",
        "Check caught, seconds, speed and ground of the test, or catch again with clean water.",
        CALIBRATION_CHAPTER,
    )
    CATCH_FAR_OFF = Words(
        "C406",
        "The catch test is far from what is wanted: each pass has to put down {much} than it did. "
        "An opening far off, or a figure of the test that is a digit off, gives such a test.",
        "The opening is set far from what is wanted. Do not sow at it. Ask the owner.",
        "Check what was caught, its unit, the width and the distance of the test. If they are "
        "right, change the opening and catch until it gives about what is wanted.",
        CALIBRATION_CHAPTER,
    )
    MANY_PASSES = Words(
        "C407",
        "More passes than a place of this width takes. A width of the throw, of the boom or of the "
        "place that is a digit off gives so many, or a catch test of far too little.",
        "So many passes are out of the ordinary. Ask the owner before you begin.",
        "Check the widths and the catch test. If they are right, open wider and catch again.",
        CALIBRATION_CHAPTER,
        source="common_practice",
    )
    MANY_FILLS = Words(
        "C408",
        "More {what} than anybody carries for one job. A size of the tank, of the hopper or of the "
        "place that is a digit off gives so many.",
        "So many fills or loads are out of the ordinary. Ask the owner before you begin.",
        "Check tank, hopper and ground. If they are right, use something larger.",
        CALIBRATION_CHAPTER,
    )
    POINT_FAR = Words(
        "C409",
        "{name} lies farther from the middle of the property than ground of one property does. A "
        "slip in a digit, a sign or the order gives such a point.",
        "",
        "Check {key}: latitude, then longitude. If it truly lies there, type far: yes under "
        "{beside}.",
        source="common_practice",
    )
    MIDDLE_FAR = Words(
        "C410",
        "Everything with a point lies farther from the middle of the property than ground of one "
        "property does.",
        "",
        "Check location_lat_lon in property.yaml: latitude, then longitude. If it is right, type "
        "far: yes under everything that truly lies so far.",
        source="common_practice",
    )
    ADJUVANT_OUT_OF_USUAL = Words(
        "C411",
        "{item}: {much} of it in the tank than is usual. A digit too many or too few, or another "
        "unit, gives such a share.",
        "The share of what goes into the tank beside the product is out of the ordinary. Ask the "
        "owner before you mix.",
        "Check {key} against both labels: of the product, and of what goes in with it.",
        LABEL_CHAPTER,
    )
    TEST_TO_COME = Words(
        "C412",
        "A catch test of {machine} is of {tested}, after the day of this plan. A slip in a year "
        "gives such a day, and hides how old the tests are.",
        "",
        "Check tested_on. If the test is right, make the plan of a later day.",
        CALIBRATION_CHAPTER,
    )
    NOZZLE_FAR_OFF = Words(
        "C413",
        "{machine}: in the last catch test nozzle {number} of {count} is far from the mean of all. "
        "A worn nozzle gives a tenth more. So far off is a digit too many or too few, or a nozzle "
        "that is stopped up, and every amount of the sprayer rests on it.",
        "",
        "Check that figure in caught_fl_oz against your notes. If you caught that much, clean or "
        "change the nozzle and catch again.",
        CALIBRATION_CHAPTER,
    )
    HEIGHT_OUT_OF_USUAL = Words(
        "C414",
        "{what} is far more than anything of that kind reaches. Most likely a digit is too many, "
        "or the number is in another unit than its key says. What a screen hides rests on heights.",
        "",
        "Check {key}, and the unit it ends in. If it was measured so, leave it: nothing is kept "
        "from being printed.",
        COUNTING_CHAPTER,
    )
    STOCK_OUT_OF_USUAL = Words(
        "C415",
        "Far more of {item} is on hand, as typed, than all jobs that take of it need. Most likely "
        "a digit is too many, or the number is in another unit: then too little is bought.",
        "",
        "Weigh or count again, and check on_hand and its unit. If it is so, leave it.",
        source="common_practice",
    )
    PRICE_OUT_OF_USUAL = Words(
        "C416",
        "{item} costs many times {much}, as typed, than what else was asked or paid for the same "
        "thing. Most likely a digit is too many or too few in the price, or in what a package "
        "holds: then costs are wrong with it.",
        "",
        "Check both prices, and what a package of each holds. If they are so, leave them.",
        source="common_practice",
    )
    DAY_TO_COME = Words(
        "C417",
        "A day that has to be gone by is after the day of this plan: {days}. Most likely the year "
        "or the month is a slip. What rests on it is taken for newer than it is.",
        "",
        "Check that day. If it is right, make the plan of a later day.",
    )
    DAYS_AFTER_THE_PLAN = Words(
        "C418",
        "Days that have to be gone by are after the day of this plan, in many places: {names}. "
        "Most likely the plan is made for too early a day.",
        "",
        "Check as_of in property.yaml, or --as-of. If that day is right, check those days.",
    )
