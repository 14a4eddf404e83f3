"""What is said of where things lie: on each other, past the boundary, in water, near work."""

from generator.plan.findings.words import (
    MACHINES_CHAPTER,
    MIXING_CHAPTER,
    STANDS_CHAPTER,
    WALKING_CHAPTER,
    Caution,
    Stop,
    Words,
)


class LandStop(Stop):
    """A thing that must not be done yet."""

    MIXED_TOO_NEAR = Words(
        "S520",
        "By their points {mixing} is nearer to {kept_from} than {products} may be mixed.",
        "Do not mix here. Ask the owner.",
        "Mix farther off: measure the distance of the label from {kept_from} and set the place to "
        "mix outside of it.",
        MIXING_CHAPTER,
        source="label_in_hand",
        to_type="Correct at_lat_lon of the mixing place in land.yaml.",
    )


class LandCaution(Caution):
    """A thing to look at before going on."""

    EDGES_CROSS = Words(
        "C520",
        "By their points {place} and {other} lie on each other, by no more than the points may be "
        "off. They count as different ground.",
        "",
        "Look at the edge between them. Where they do not share ground, take its points again.",
        to_type="Where they do, type same_ground_as of one of the two places.",
    )
    ON_EACH_OTHER = Words(
        "C521",
        "By their points {place} and {other} lie on each other. What is sprayed or sown on one "
        "counts on both.",
        "",
        "If they share ground, say so. If they do not, correct the points that are wrong.",
        to_type="If they share ground, type same_ground_as of one of the two places.",
    )
    STRIP_ON_ITSELF = Words(
        "C522",
        "Length times width of this place is more ground than its strip holds: its line comes back "
        "onto the strip, or its points wander from side to side.",
        "",
        "Draw the line again along the middle, with fewer points and once each way. What goes "
        "around a corner and back is two places, or an outline.",
        to_type="Correct line_lat_lon of the place, or type area_lat_lon.",
    )
    PAST_THE_BOUNDARY = Words(
        "C523",
        "By its points {name} lies past the boundary, by more than the points may be off.",
        "",
        "Take the points again, of the one and of the boundary. Ground past it that you may use "
        "belongs inside: draw it as a boundary too.",
        to_type="Correct the points, or list the ground you may use in land.yaml as one more thing "
        "with kind: boundary.",
    )
    PLACE_IN_WATER = Words(
        "C524",
        "By their points {place} lies in {water}.",
        "",
        "Look how far the water reaches in a wet spring. Draw the place so that it ends before it.",
        source="common_practice",
        to_type="Correct the points of the place, or of the water in land.yaml.",
    )
    WALK_THROUGH_WATER = Words(
        "C525",
        "By its points {walk} goes through {across} where no crossing is written down.",
        "",
        "Say where one gets over dry, or take the walk around. Nobody wades in the dark.",
        WALKING_CHAPTER,
        source="common_practice",
        to_type="Type the crossing in land.yaml with kind: crossing or kind: culvert, or correct "
        "line_lat_lon of the walk.",
    )
    WALK_ACROSS_FENCE = Words(
        "C526",
        "By its points {walk} goes across {across} where no gate is written down.",
        "",
        "Say where the gate is, or take the walk through one. A fence is not climbed with a loaded "
        "weapon in hand: unload, lay it down, then cross.",
        WALKING_CHAPTER,
        source="common_practice",
        to_type="Type the gate in land.yaml with kind: gate, or correct line_lat_lon of the walk.",
    )
    MIXED_NEAR = Words(
        "C527",
        "By their points {mixing} may be nearer to {kept_from} than {products} may be mixed: they "
        "are no farther off than the distance and what the points may be off.",
        "The place to mix may be too near to something. Measure before you mix.",
        "Measure the distance on the ground before you mix, and mark it.",
        MIXING_CHAPTER,
        source="label_in_hand",
        to_type="Type how far the points may be off as off_ft of the mixing place, or take them "
        "again.",
    )
    BURN_NEAR = Words(
        "C528",
        "The burn of this place comes near {things}.",
        "Something that fire and smoke must be kept from lies near. Ask the owner where.",
        "The written plan says for each how it is kept from fire and smoke. Where it does not, do "
        "not light it. No smoke under a power line or over a road.",
        source="nrcs_burn_338",
        to_type="Where a point is wrong, correct it in land.yaml.",
    )
    THROWN_NEAR = Words(
        "C529",
        "A rotary cutter can throw stones and wire as far as {things}.",
        "A house, a road or bees lie within throw of a rotary cutter. Ask the owner where.",
        "Walk it first, chains on, and mow so that what is thrown goes the other way. Nobody "
        "is outside there meanwhile.",
        MACHINES_CHAPTER,
        source="lsu_cutters",
        to_type="Where a point is wrong, correct it in land.yaml.",
    )
    UNDER_A_LINE = Words(
        "C530",
        "By its points {things} above ground runs over this place, or may.",
        "A line above ground runs over this place or close to it. Look up before you raise "
        "anything.",
        "Know how tall the machine is, folded and raised, and keep every part of it off the line. "
        "Ask the company where you do not know how high it hangs.",
        MACHINES_CHAPTER,
        source="overhead_lines_rule",
        to_type="Where a point is wrong, correct it in land.yaml.",
    )
    RUNS_TO_WATER = Words(
        "C531",
        "The ground of this place falls to the {way}, toward {things}. What rain washes off it "
        "runs there.",
        "The ground falls toward water, a well or an inlet. Ask the owner where, and put nothing "
        "down before rain.",
        "Spray or spread nothing when rain is on its way or the ground is soaked. Leave the grass "
        "between as it is. The label's distances hold all the same.",
        source="common_practice",
        to_type="Where the ground falls another way, correct falls_to under near: of the place.",
    )
    MIXED_WHERE_NOT_TOLD = Words(
        "C532",
        "The labels of {products} keep mixing away from: {kept_from}. Where all of these lie near "
        "{mixing} is not known here.",
        "The label keeps mixing away from things that may lie near the place to mix.",
        "Look around for each of them, and measure, before you mix.",
        MIXING_CHAPTER,
        source="label_in_hand",
        to_type="Once all of a kind near your work are in land.yaml, or you know of none, list the "
        "kind as all_drawn: in property.yaml.",
    )
    DUG_NEAR_A_LINE = Words(
        "C533",
        "By its points {things} runs under this ground, or may.",
        "A buried line runs under this ground or beside it. Ask the owner where.",
        "Open no ground until it is marked. Dig by hand beside a mark, and no machine goes in "
        "there. Nobody marks a private line for you: find its ends and mark it yourself.",
        MACHINES_CHAPTER,
        source="call_811",
        to_type="Where a point is wrong, correct it in land.yaml.",
    )
    STAND_BY_A_LINE = Words(
        "C534",
        "By their points {name} stands by {things}, or may.",
        "A line above ground runs close to this stand. Ask the owner where before you climb or "
        "raise anything.",
        "Raise no ladder, pole or stand that could touch the line, or fall on it. Where it could, "
        "put the stand elsewhere.",
        STANDS_CHAPTER,
        source="overhead_lines_rule",
        to_type="Where a point is wrong, correct it in land.yaml or stands.yaml.",
    )
    HOLE_BY_A_WALK = Words(
        "C535",
        "By their points {name} comes by {things}, or may.",
        "An open hole may lie close to this walk. Ask the owner where before you walk it in the "
        "dark.",
        "Cover or fence the hole, or take the walk around. Mark it so that it is seen in the dark.",
        WALKING_CHAPTER,
        source="common_practice",
        to_type="Where a point is wrong, correct it in land.yaml or routes.yaml.",
    )
    NONE_TYPED_BUT_DRAWN = Words(
        "C536",
        'Of {what} it was typed: "{typed}". By their points {things} lies near this place.',
        "",
        "Go and look. Both stand on the sheets until they agree.",
        to_type="Correct the words under near: of the place, or the points in land.yaml.",
    )
