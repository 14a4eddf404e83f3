"""Safety lines of a job sheet: what no reader may lose, blanks included."""

from collections.abc import Iterator
from dataclasses import replace

from generator.inventory.fields import NOT_ON_LABEL, rules_of
from generator.inventory.label import LabelCard, Setback, Use, WaitingDays, WindRange
from generator.inventory.places import Hazards
from generator.inventory.schema import EmergencyCard
from generator.plan.model.finding import SafetyLine
from generator.plan.model.work import Mix, MixPart
from generator.working import Given, Measured

EMERGENCY_LABELS = {
    "address_911": "Address for 911",
    "gate_lat_lon": "Gate, latitude and longitude",
    "gate_words": "Gate",
    "hospital": "Hospital",
    "neighbour": "Neighbor or caretaker",
    "owner_telephone": "Owner",
    "signal": "Phone signal",
}
NEAR_LABELS = {
    "water_and_wells": "Water, wells, tile inlets",
    "slope": "Slopes and soft ground",
    "slope_pct": "Steepest slope here",
    "lines": "Lines above and below ground",
    "neighbours": "Neighboring crops, bees, dwellings",
    "others": "Others present or hunting",
    "block_lat_lon": "Work begins at, latitude and longitude",
}
WAIT_LABELS = {
    "grazing": "No grazing for",
    "hay": "No hay or silage for",
    "game": "No game to be taken for",
    "dogs": "No dogs for",
}
RESTRICTED_WORDS = "for certified applicators, or under their direct supervision, only"
SIGNAL_WORDS = {
    "danger_poison": "DANGER POISON",
    "danger": "DANGER",
    "warning": "WARNING",
    "caution": "CAUTION",
}


def safety_lines(
    emergency: EmergencyCard | None, near: Hazards | None, mix: Mix | None
) -> tuple[SafetyLine, ...]:
    """Return the lines in the order a person needs them: product, ground, emergency."""
    parts = mix.parts if mix is not None else ()
    lines = [
        line
        for number, part in enumerate(parts, 1)
        for line in _part_lines(part, number if len(parts) > 1 else None)
    ]
    lines += _lines("near", NEAR_LABELS, near)
    return (*lines, *emergency_lines(emergency))


def _part_lines(part: MixPart, number: int | None) -> Iterator[SafetyLine]:
    """Yield the label's lines of one product; of several in a tank, each with its name."""
    for line in _label_lines(part.card, part.use):
        if number is None:
            yield line
        else:
            # a key of its own for each product: a finished page must have every key
            yield replace(line, key=f"{line.key}.{number}", product=part.product.name)


def emergency_lines(emergency: EmergencyCard | None) -> tuple[SafetyLine, ...]:
    """Return the lines of the emergency card; those left out are blank."""
    return tuple(_lines("emergency", EMERGENCY_LABELS, emergency))


def _lines(
    part: str, labels: dict[str, str], entry: EmergencyCard | Hazards | None
) -> Iterator[SafetyLine]:
    for name, label in labels.items():
        # what is not typed is a bold blank: not passed over in silence, nor a stop of the rest
        value = getattr(entry, name) if entry is not None else None
        if isinstance(value, tuple):
            value = f"{value[0]!r}, {value[1]!r}"
        if isinstance(value, Given | Measured):
            yield SafetyLine(f"{part}.{name}", label, None, value)
        else:
            yield SafetyLine(f"{part}.{name}", label, value)


def _label_lines(card: LabelCard, use: Use) -> Iterator[SafetyLine]:
    yield _words(
        "signal_word", "Signal word", SIGNAL_WORDS.get(str(card.signal_word), card.signal_word)
    )
    if card.restricted_use:
        yield _words("restricted_use", "Restricted use product", RESTRICTED_WORDS)
    worn = card.protective_equipment
    worn_text = worn if isinstance(worn, str) or worn is None else "; ".join(worn)
    yield _words("protective_equipment", "Wear", worn_text)
    reentry = card.reentry
    yield _number(
        "reentry_hours",
        "Back in, where farm-worker rules apply, after",
        reentry.agricultural_hours if reentry else None,
    )
    yield _words(
        "reentry_elsewhere",
        "Back in, everywhere else, after",
        reentry.elsewhere if reentry else None,
    )
    yield from _waiting(use.waiting_days)
    yield from _wind(use)
    yield _words("droplet", "Droplets", use.droplet)
    yield from _setbacks("setback", "Keep the spray from", use.setbacks_ft)
    yield from _setbacks("mixing", "Mix away from", card.mixing_setbacks_ft)
    yield _number("slope_limit_pct", "Steepest ground", use.slope_limit_pct)
    yield _words("soil_limits", "Soil and ground", use.soil_limits)
    yield _number("rainfast_hours", "No rain for", card.rainfast_hours)
    yield _words("epa_reg_no", "EPA registration number", card.epa_reg_no)


def _waiting(entries: tuple[WaitingDays, ...] | str | None) -> Iterator[SafetyLine]:
    """Yield the waits before stock, hay, game and dogs that the label prints, a blank unread."""
    listed = entries if isinstance(entries, tuple) else ()
    for entry in listed:
        yield SafetyLine(
            f"label.waiting_{entry.before}", WAIT_LABELS[entry.before], None, entry.wait_days
        )
    if entries is None:
        yield _words("waiting_days", "Wait before grazing, hay, game and dogs", None)


def _wind(use: Use) -> Iterator[SafetyLine]:
    if isinstance(use.wind_mph, WindRange):
        yield _number("wind_low_mph", "Wind at least", use.wind_mph.low_mph)
        yield _number("wind_high_mph", "Wind at most", use.wind_mph.high_mph)
    else:
        yield _words("wind_mph", "Wind", use.wind_mph)


def _setbacks(
    part: str, label: str, entries: tuple[Setback, ...] | str | None
) -> Iterator[SafetyLine]:
    if not isinstance(entries, tuple) or not entries:
        yield _words(part, label, entries if isinstance(entries, str) else None)
        return
    for number, entry in enumerate(entries, 1):
        yield SafetyLine(f"label.{part}_{number}", label, entry.words, entry.distance_ft)


def _words(name: str, label: str, text: str | None) -> SafetyLine:
    told = "not on the label; ask if in doubt" if text == NOT_ON_LABEL else text
    return SafetyLine(f"label.{name}", label, told)


def _number(name: str, label: str, value: object) -> SafetyLine:
    if isinstance(value, Given):
        return SafetyLine(f"label.{name}", label, None, value)
    return _words(name, label, value if isinstance(value, str) else None)


def safety_fields(kind: type) -> tuple[str, ...]:
    """Return the names of the fields of a record that no reader may lose."""
    return tuple(name for name, rule in rules_of(kind).items() if rule.safety)
