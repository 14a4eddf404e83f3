"""What is said of figures far from what is usual."""

from generator.plan.findings.words import (
    CALIBRATION_CHAPTER,
    COUNTING_CHAPTER,
    LABEL_CHAPTER,
    TAG_CHAPTER,
    Caution,
    Words,
)

LEAVE_IT = "leave it: nothing is kept from being printed."


class UsualCaution(Caution):
    """A thing to look at before going on."""

    SIZE_OUT_OF_USUAL = Words(
        "C400",
        "The {what} of {place} is {much} than is usual. A digit too many or too few, or another "
        "unit, gives such a figure, and with it wrong amounts and hours.",
        "",
        f"Measure again. If it is as it is, {LEAVE_IT}",
        to_type="Check {key} and its unit.",
    )
    TAG_OUT_OF_USUAL = Words(
        "C401",
        "Lot {lot} has {much} {what} by its tag than seed that is sold. A digit too few gives such "
        "a tag, and with it many times the seed to buy.",
        "",
        "Check the figures against the tag. If the tag says so, ask the seller what is in the bag.",
        TAG_CHAPTER,
        to_type="Check {keys}, in percent.",
    )
    SEED_COUNT_OUT_OF_USUAL = Words(
        "C402",
        "You noted {many} seeds in a pound of lot {lot} than a pound of {species} has. Most likely "
        "zeros are left out, as where a seller counts in thousands, or one is too many. Seeds on a "
        "square foot, and every rate in seeds, are wrong with it.",
        "",
        "Take the number from the tag, the seller or your extension office. If it is so, "
        f"{LEAVE_IT}",
        TAG_CHAPTER,
        to_type="Type live_seeds_per_lb as the whole number with all its zeros, as 259000 and not "
        "259.",
    )
    RATE_OUT_OF_USUAL = Words(
        "C403",
        "{what}: {much} seed to an acre than is usual. A digit too many or too few, or another "
        "unit, gives such a rate.",
        "The rate of seed on this sheet is out of the ordinary. Ask the owner before you sow.",
        "Check the rate against what the seller or the extension office names. If you mean it, "
        f"{LEAVE_IT}",
        TAG_CHAPTER,
        to_type="Check {key}.",
    )
    MACHINE_OUT_OF_USUAL = Words(
        "C404",
        "{machine}: {what}, as you noted it, is {much} than such a machine has. Most likely a "
        "digit is too many or too few, or the number is in another unit. Loads, passes and hours "
        "that rest on it are wrong with it.",
        "",
        f"Hold the number against the machine, or measure again. If the machine is so, {LEAVE_IT}",
        CALIBRATION_CHAPTER,
        to_type="Check {key} in equipment.yaml; the key ends in the unit it is read in.",
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
        "Check its latitude and longitude. If it truly lies there, say so.",
        source="common_practice",
        to_type="Check {key}: latitude, then longitude. If it is right, type far: yes under "
        "{beside}.",
    )
    MIDDLE_FAR = Words(
        "C410",
        "Everything with a point lies farther from the middle of the property than ground of one "
        "property does.",
        "",
        "Check the middle of the property: its latitude and longitude.",
        source="common_practice",
        to_type="Check location_lat_lon in property.yaml: latitude, then longitude. If it is "
        "right, type far: yes under everything that truly lies so far.",
    )
    ADJUVANT_OUT_OF_USUAL = Words(
        "C411",
        "{item}: {much} of it in the tank than is usual. A digit too many or too few, or another "
        "unit, gives such a share.",
        "The share of what goes into the tank beside the product is out of the ordinary. Ask the "
        "owner before you mix.",
        "Check it against both labels: of the product, and of what goes in with it.",
        LABEL_CHAPTER,
        to_type="Check {key}.",
    )
    TEST_TO_COME = Words(
        "C412",
        "A catch test of {machine} is of {tested}, after the day of this plan. A slip in a year "
        "gives such a day, and hides how old the tests are.",
        "",
        "Check the day. If the test is right, make the plan of a later day.",
        CALIBRATION_CHAPTER,
        to_type="The day is tested_on.",
    )
    NOZZLE_FAR_OFF = Words(
        "C413",
        "{machine}: in the last catch test nozzle {number} of {count} is far from the mean of all. "
        "A worn nozzle gives a tenth more. So far off is a digit too many or too few, or a nozzle "
        "that is stopped up, and every amount of the sprayer rests on it.",
        "",
        "Check that figure against your notes. If you caught that much, clean or change the nozzle "
        "and catch again.",
        CALIBRATION_CHAPTER,
        to_type="The figure stands in caught_fl_oz.",
    )
    HEIGHT_OUT_OF_USUAL = Words(
        "C414",
        "{what} is far more than anything of that kind reaches. Most likely a digit is too many, "
        "or the number is in another unit. What a screen hides rests on heights.",
        "",
        f"Check the height and its unit. If it was measured so, {LEAVE_IT}",
        COUNTING_CHAPTER,
        to_type="Check {key}, and the unit it ends in.",
    )
    STOCK_OUT_OF_USUAL = Words(
        "C415",
        "Far more of {item} is on hand, as you noted it, than all jobs that take of it need. Most "
        "likely a digit is too many, or the number is in another unit: then too little is bought.",
        "",
        "Weigh or count again. If it is so, leave it.",
        source="common_practice",
        to_type="Check on_hand and its unit.",
    )
    PRICE_OUT_OF_USUAL = Words(
        "C416",
        "{item} costs many times {much}, as you noted it, than what else was asked or paid for the "
        "same thing. Most likely a digit is too many or too few in the price, or in what a package "
        "holds: then costs are wrong with it.",
        "",
        "Check both prices, and what a package of each holds. If they are so, leave them.",
        source="common_practice",
    )
    DAY_TO_COME = Words(
        "C417",
        "A day that has to be gone by is after the day of this plan: {told}. Most likely the year "
        "or the month is a slip. What rests on it is taken for newer than it is.",
        "",
        "Check that day. If it is right, make the plan of a later day.",
        to_type="Check {days}.",
    )
    DAYS_AFTER_THE_PLAN = Words(
        "C418",
        "Days that have to be gone by are after the day of this plan, in {many} places of your "
        "files. Most likely the plan is made for too early a day.",
        "",
        "Check the day of this plan. If it is right, check those days.",
        to_type="Check as_of in property.yaml, or --as-of. The days are with {names}.",
    )
