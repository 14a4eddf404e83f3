"""Rules between fields and records, each small, with the sentence that says what it wants."""

from collections.abc import Collection, Iterator
from typing import Any

from generator.inventory.fields import SeasonMarker, Where
from generator.inventory.label import LabelCard, NotOnLabel, Use, YearlyLimit
from generator.inventory.page_names import names_a_page, slug
from generator.inventory.places import PlantedGround, Planting
from generator.inventory.problems import Problem, bad_id, listed, meant_or_listed, shown_value
from generator.inventory.reading_values import is_id
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.rules_area import AREA_RULES, FAR_APART, points_beside
from generator.inventory.rules_counts import COUNTS_RULES
from generator.inventory.rules_dates import DATES_RULES
from generator.inventory.rules_decide import DECIDE_RULES, HEIGHT_RULES
from generator.inventory.rules_fert import FERT_RULES
from generator.inventory.rules_land import LAND_RULES
from generator.inventory.rules_money import MONEY_RULES
from generator.inventory.rules_readers import READER_RULES, SHOWN_RULES
from generator.inventory.rules_records import RECORDS_RULES, SPRAYED_RULES
from generator.inventory.rules_seed import SEED_RULES
from generator.inventory.rules_sits import SIT_RULES
from generator.inventory.rules_slips import SLIP_RULES
from generator.inventory.rules_spray import SPRAY_RULES, WAIT_RULES
from generator.inventory.rules_standing import STANDING_RULES
from generator.inventory.rules_steps import STEP_RULES
from generator.inventory.rules_weather import WEATHER_RULES
from generator.inventory.rules_winds import TYPED_WIND_RULES
from generator.inventory.rules_woody import WOODY_RULES
from generator.inventory.schema import Inventory
from generator.inventory.season import FIRST_MONTH_OF_A_SEASON
from generator.reference.library import marker_names
from generator.units import convert
from generator.working import Given

NOT_A_CONTRACT = ("no", "n/a", "na", "nil", "not any", "without", "-", "false", "yes", "true", "?")


def broken_rules(sound: Inventory | None, read: Inventory) -> list[Problem]:
    """Return a problem for every rule that is broken.

    `read` is every record that could be read, `sound` those that lead to none but such, None where
    nothing is sound. Rules that look from record to record are asked of what is sound.
    """
    asked = [(rule, read if rule.alone else sound) for rule in RULES]
    return [
        Problem(where.file, where.line, where.column, rule.code, broken.what, broken.accepted)
        for rule, inventory in asked
        if inventory is not None
        for broken in rule.check(inventory)
        for where in (broken.where,)
    ]


def broken_beside(
    sound: Inventory | None, read: Inventory, astray: Collection[Where]
) -> list[Problem]:
    """Return the broken rules, but for points astray, which lie far from the others of a place.

    `astray` are the places of points of which something else is told already.
    """
    told = points_beside(read, astray) if astray else set()
    return [
        problem
        for problem in broken_rules(sound, read)
        if problem.code != FAR_APART
        or Where(problem.file, problem.line, problem.column) not in told
    ]


def _plantings(inventory: Inventory) -> Iterator[tuple[PlantedGround, Planting]]:
    for place in inventory.places():
        for planting in place.plantings:
            yield place, planting


def _viable_parts(inventory: Inventory) -> Iterator[Broken]:
    for lot in inventory.lots:
        tag = lot.tag
        parts = (tag.germination_fraction, tag.hard_fraction, tag.dormant_fraction)
        percent = convert(sum(part.value for part in parts), "fraction", "pct")
        # parts typed in percent come back as binary fractions a hair off
        if not 0 < percent <= 100 + 1e-9:
            yield Broken(
                typed_at(tag.germination_fraction),
                f"germination, hard and dormant add up to {percent:g} percent",
                "parts of the pure seed: together more than 0 and at most 100 percent",
            )
        if tag.purity_fraction.value == 0:
            yield Broken(
                typed_at(tag.purity_fraction), "purity is 0", "the pure seed on the tag, above 0"
            )


def _lot_species(inventory: Inventory) -> Iterator[Broken]:
    by_id = {lot.id: lot for lot in inventory.lots}
    for _, planting in _plantings(inventory):
        for seed in planting.seed:
            lot = by_id[seed.lot]
            if lot.species != seed.species:
                yield Broken(
                    seed.where_of("lot"),
                    f"lot {shown_value(lot.id)} is {lot.species}, not {seed.species}",
                    "a lot of the species that is sown",
                )


GO_WITH = (
    "liquid product in a volume to an acre, dry product, ai and ae in pounds to an acre, "
    "mix in percent"
)
RATES = (
    "rate_product",
    "rate_ai_lb_per_ac",
    "rate_ae_lb_per_ac",
    "rate_lb_per_100_gal",
    "mix_fraction",
)


def _one_rate(inventory: Inventory) -> Iterator[Broken]:
    for _, planting in _plantings(inventory):
        for work in planting.work:
            for part in (work, *work.partners, *work.adjuvants):
                typed = [name for name in RATES if getattr(part, name, None) is not None]
                if len(typed) > 1:
                    where = part.where_of(typed[1])
                    yield Broken(where, "the rate is given more than once", "one rate only")


def _each_lot_once(inventory: Inventory) -> Iterator[Broken]:
    for _, planting in _plantings(inventory):
        seen: set[str] = set()
        for seed in planting.seed:
            if seed.lot in seen:
                what = f"lot {shown_value(seed.lot)} is sown twice in this planting"
                yield Broken(seed.where_of("lot"), what, "each lot once, with its whole rate")
            seen.add(seed.lot)


def _steps_of_plan(inventory: Inventory) -> Iterator[Broken]:
    for _, planting in _plantings(inventory):
        known = [step.id for step in inventory.steps_of(planting)]
        seen: set[str] = set()
        for work in planting.work:
            if work.step not in known:
                what = f"step plan {planting.steps} has no step {shown_value(work.step)}"
                yield Broken(work.where_of("step"), what, meant_or_listed(work.step, known))
            elif work.step in seen:
                what = f"step {shown_value(work.step)} is described twice"
                yield Broken(work.where_of("step"), what, "each step once")
            seen.add(work.step)


def _each_step_once_a_season(inventory: Inventory) -> Iterator[Broken]:
    for place in inventory.places():
        seen: set[tuple[str, str]] = set()
        for planting in place.plantings:
            plans = inventory.plans()
            keys = [
                (f"in season {planting.season + planned.seasons_later}", planned.id)
                for planned in (plans[planting.once].steps if planting.once is not None else ())
            ]
            if planting.yearly is not None:
                yearly = plans[planting.yearly].steps
                keys += [("in every season", planned.id) for planned in yearly]
            for season, step in (key for key in keys if key in seen):
                yield Broken(
                    planting.where_of("season"),
                    f"two plantings here have step {step} {season}",
                    "one planting with all its seed, another season, or two places",
                )
                break  # two plantings by one plan meet in every step of it
            seen.update(keys)


def _names_for_others(inventory: Inventory) -> Iterator[Broken]:
    seen: set[str] = set()
    for place in inventory.places():
        if place.known_as is None:
            continue
        # as file names: two that differ in capitals or marks alone would be one page
        short = slug(place.known_as)
        if not short:
            what = f"known_as {shown_value(place.known_as)} has no letter or digit"
            yield Broken(place.where_of("known_as"), what, "a short plain name, as in Strip 1")
        elif not names_a_page(short):
            what = f"known_as {shown_value(place.known_as)} cannot name a page"
            yield Broken(place.where_of("known_as"), what, "a short plain name, as in Strip 1")
        elif short in seen:
            what = f"known_as {shown_value(place.known_as)} is used for another place too"
            yield Broken(place.where_of("known_as"), what, "a name of its own for every place")
        seen.add(short)


def _low_and_high(inventory: Inventory) -> Iterator[Broken]:
    for product in inventory.products:
        for use in product.label.uses if product.label else ():
            for low, high in _ranges(use):
                if low.unit == high.unit and low.value > high.value:
                    what = f"the lower number {low.typed:g} is above the higher {high.typed:g}"
                    yield Broken(typed_at(low), what, "the lower number first")
                elif low.unit != high.unit and (low != use.rate_low or use.basis is None):
                    # with a basis said, F308 says which of two rates is in the wrong unit
                    what = "one rate is a volume and the other a weight"
                    yield Broken(typed_at(low), what, "both in the same kind of unit")


def _ranges(use: Use) -> Iterator[tuple[Given, Given]]:
    if use.rate_low is not None and use.rate_high is not None:
        yield use.rate_low, use.rate_high
    carrier: object | NotOnLabel | None = use.carrier_gal_per_ac
    if carrier is not None and not isinstance(use.carrier_gal_per_ac, str):
        assert use.carrier_gal_per_ac is not None
        yield use.carrier_gal_per_ac.low_gal_per_ac, use.carrier_gal_per_ac.high_gal_per_ac
    if use.wind_mph is not None and not isinstance(use.wind_mph, str):
        yield use.wind_mph.low_mph, use.wind_mph.high_mph


def _basis_and_unit(inventory: Inventory) -> Iterator[Broken]:
    for product in inventory.products:
        for use in product.label.uses if product.label else ():
            rates = [given for given in (use.rate_low, use.rate_high) if given is not None]
            for counted in (_by_basis(use, rates), _limits_counted(use)):
                wrong = [pair for pair in counted if not _counts(*pair, product.label)]
                # where neither rate goes with it, the basis is wrong: one fault, not two
                if 1 < len(rates) == len(wrong) and wrong[0][0] in rates:
                    yield _one_basis_for_both(use, [given for given, _ in wrong])
                    continue
                for rate, basis in wrong:
                    what = f"a rate in {_unit(rate)} does not go with basis {basis}"
                    yield Broken(typed_at(rate), what, GO_WITH)


def _one_basis_for_both(use: Use, rates: list[Given]) -> Broken:
    """Return the one fault of a basis that goes with neither rate."""
    units = " and ".join(dict.fromkeys(map(_unit, rates)))
    what = f"basis {use.basis} does not go with rates in {units}"
    return Broken(use.where_of("basis"), what, GO_WITH)


def _unit(rate: Given) -> str:
    return rate.typed_unit.replace("_", " ")


def _by_basis(use: Use, rates: list[Given]) -> list[tuple[Given, str]]:
    return [(rate, use.basis) for rate in rates if use.basis is not None]


def _limits_counted(use: Use) -> list[tuple[Given, str]]:
    """Return each limit of a use with what it counts.

    That may be something else than what the rates count: what is said beside it, or what its unit
    is of. A volume is of product; pounds are of active, beside the rates of a dry product too.
    """
    found, yearly = [], use.max_per_year
    if isinstance(use.max_per_application, Given):
        found.append((use.max_per_application, _of_unit(use.max_per_application)))
    if isinstance(yearly, YearlyLimit):
        found.append((yearly.amount, yearly.basis or _of_unit(yearly.amount)))
    return found


def _of_unit(limit: Given) -> str:
    return "product" if limit.unit == "fl_oz_per_ac" else "ai"


def _counts(rate: Given, basis: str, card: LabelCard | None) -> bool:
    actives = card.actives if card is not None else ()
    # by the strength of its actives, since the unit of the rate is what is in question
    dry = bool(actives) and all(active.strength_fraction is not None for active in actives)
    wanted = {
        "product": "lb_per_ac" if dry else "fl_oz_per_ac",
        "mix": "fraction",
        "ai": "lb_per_ac",
        "ae": "lb_per_ac",
    }
    return rate.unit == wanted[basis]


def _sign_order(inventory: Inventory) -> Iterator[Broken]:
    signs = inventory.property.season_signs
    if signs is None:
        return
    for name in marker_names():
        sign: SeasonMarker | None = getattr(signs, name)
        if sign is None:
            continue
        days = [season_order(day) for day in (sign.early, sign.typical, sign.late)]
        if days != sorted(days):
            yield Broken(
                sign.where,
                f"{name} is not in order of the season",
                "early, then typical, then late, counted from September",
            )


def season_order(month_day: tuple[int, int]) -> tuple[int, int]:
    """Return a key that sorts days of the year from September on.

    >>> season_order((9, 1)) < season_order((1, 20))
    True
    """
    month, day = month_day
    return ((month - FIRST_MONTH_OF_A_SEASON) % 12, day)


def _reader_steps(inventory: Inventory) -> Iterator[Broken]:
    plantings = {planting.id: planting for _, planting in _plantings(inventory)}
    for reader in inventory.readers:
        for jobs in reader.jobs:
            known = [step.id for step in inventory.steps_of(plantings[jobs.planting])]
            if not jobs.steps:
                what = f"no step of planting {shown_value(jobs.planting)} is handed over"
                yield Broken(jobs.where_of("steps"), what, listed(["all", *known]))
            for number, step in enumerate(jobs.steps):
                if step != "all" and step not in known:
                    what = f"planting {shown_value(jobs.planting)} has no step {shown_value(step)}"
                    where = jobs.where_of("steps", number=number)
                    yield Broken(where, what, meant_or_listed(step, ["all", *known]))


def _reserved_reader(inventory: Inventory) -> Iterator[Broken]:
    for reader in inventory.readers:
        if reader.id == "owner":
            yield Broken(
                reader.where_of("id"), "owner is the reader you are yourself", "another id"
            )


def _former_names(inventory: Inventory) -> Iterator[Broken]:
    records: list[Any] = [
        *inventory.places(), *inventory.stands, *inventory.routes, *inventory.land, *inventory.lots,
        *inventory.plants, *inventory.guards,
        *inventory.products, *inventory.adjuvants, *inventory.measures,
        *inventory.sprayers, *inventory.spreaders, *inventory.drills,
        *inventory.soil_tests, *inventory.water_holes, *inventory.fertilizers, *inventory.limes,
    ]  # fmt: skip
    # a page keeps the address of the first id, so that a given-up id still stands for one thing
    taken = {thing.id for thing in records}
    for thing in records:
        for number, former in enumerate(thing.was):
            where = thing.where_of("was", number=number)
            if not is_id(former):
                told = bad_id(former)
                yield Broken(where, f"was: {told.what}", told.accepted)
            elif former in taken:
                what = f"was: {shown_value(former)} is the id of something else"
                yield Broken(where, what, "an id nothing else has or had")
            taken.add(former)


def _contract_said(inventory: Inventory) -> Iterator[Broken]:
    for place in inventory.places():
        if place.contract is not None and place.contract.strip().casefold() in NOT_A_CONTRACT:
            what = f"contract: {shown_value(place.contract)} names no contract"
            yield Broken(
                place.where_of("contract"), what, "none where there is no contract, else its name"
            )


RULES = (
    Rule("F301", "The live parts of a tag are parts of one whole.", _viable_parts, alone=True),
    Rule("F302", "A planting is sown from a lot of its own species.", _lot_species),
    Rule("F303", "A step has one rate.", _one_rate, alone=True),
    Rule("F304", "Work is described for steps the plan has.", _steps_of_plan),
    Rule("F305", "A job is known by place, season and step.", _each_step_once_a_season),
    Rule("F306", "Other readers know a place by one name of its own.", _names_for_others),
    Rule("F307", "A range goes from low to high in one kind of unit.", _low_and_high, alone=True),
    Rule("F308", "A rate's unit goes with what it counts.", _basis_and_unit, alone=True),
    Rule("F309", "An early year comes before a late one.", _sign_order),
    Rule("F310", "A reader is handed steps that exist.", _reader_steps),
    Rule("F311", "An id that was given up stays unused.", _former_names),
    Rule("F312", "The owner's book is always built.", _reserved_reader, alone=True),
    Rule("F313", "A sowing's numbers are known by their lot.", _each_lot_once, alone=True),
    Rule("F314", "Land under no contract is marked by one word.", _contract_said, alone=True),
    *AREA_RULES,
    *SEED_RULES,
    *SPRAY_RULES,
    *FERT_RULES,
    *MONEY_RULES,
    *WOODY_RULES,
    *STEP_RULES,
    *DATES_RULES,
    *RECORDS_RULES,
    *DECIDE_RULES,
    *READER_RULES,
    *WEATHER_RULES,
    *COUNTS_RULES,
    *SPRAYED_RULES,
    *WAIT_RULES,
    *HEIGHT_RULES,
    *SLIP_RULES,
    *STANDING_RULES,
    *TYPED_WIND_RULES,
    *SIT_RULES,
    *LAND_RULES,
    *SHOWN_RULES,
)
