"""Whether a label lets a job be done: the uses that match, and what is missing or against it.

A job is cleared only if exactly one reading of the card matches its kind, species, land, place,
timing and method, says yes, and holds the job's rate between its low and high. Anything left out,
unsure or in disagreement is not cleared.
"""

from collections.abc import Iterator
from dataclasses import fields

from generator.dataclass import dataclass
from generator.inventory.fields import Record, rules_of
from generator.inventory.label import Covers, LabelCard, Use
from generator.inventory.stock import Product
from generator.plan.findings.about_labels import LabelNote, LabelStop
from generator.plan.findings.order import finding
from generator.plan.findings.words import Stop
from generator.plan.model.finding import Finding, about_item
from generator.reference.library import species
from generator.working import Given


@dataclass(frozen=True, slots=True)
class Asked:
    """What a spray job asks of a label."""

    kind: str
    species: tuple[str, ...]
    place_id: str
    land: str | None  # contract, not_contract, or None where the owner has not said
    timing: str
    method: str


def missing_on_card(card: LabelCard) -> tuple[str, ...]:
    """Return the entries of the card's head that were left out, as the owner would type them."""
    left_out = [name for name in _left_out(card) if name != "uses"]
    if card.reentry is not None:
        left_out += [f"reentry.{name}" for name in _left_out(card.reentry)]
    if not card.uses:
        left_out.append("uses")
    return tuple(left_out)


def missing_on_use(use: Use) -> tuple[str, ...]:
    """Return the entries of a use that were left out."""
    left_out = list(_left_out(use))
    if use.covers is not None:
        left_out += [f"covers.{name}" for name in _left_out(use.covers)]
    return tuple(left_out)


def _left_out(entry: LabelCard | Use | Covers | object) -> Iterator[str]:
    for name in rules_of(type(entry)):
        if getattr(entry, name) in (None, ()):
            yield name


def matching_uses(card: LabelCard, asked: Asked) -> tuple[Use, ...]:
    """Return the uses whose site, time and method are the job's."""
    return tuple(use for use in card.uses if _matches(use, asked))


def _matches(use: Use, asked: Asked) -> bool:
    covers = use.covers
    # what the site words cover is the owner's reading: unsaid, it covers nothing
    if covers is None:
        return False
    return (
        _kinds(asked) <= set(covers.kinds)
        and all(_in(species_id, covers.species) for species_id in asked.species)
        # left out on both sides they are equal too, and that is no agreement
        and (covers.land == "any" or covers.land == asked.land is not None)
        and _in(asked.place_id, covers.places)
        and use.timing == asked.timing
        and use.method == asked.method
    )


def nearly_matching(card: LabelCard | None, asked: Asked) -> tuple[Use, ...]:
    """Return the uses that match in all that is typed, and would but for what is left out."""
    uses = card.uses if card is not None else ()
    return tuple(use for use in uses if not _matches(use, asked) and _may_match(use, asked))


def gaps_in_matching(use: Use) -> tuple[str, ...]:
    """Return what is left out of what a use is matched by, as the owner would type it."""
    by = ("covers", "timing", "method")
    return tuple(gap for gap in missing_on_use(use) if gap.partition(".")[0] in by)


def _may_match(use: Use, asked: Asked) -> bool:
    covers = use.covers
    # what is left out may be anything here: such a use is named to the owner, and clears nothing
    return (
        use.timing in (None, asked.timing)
        and use.method in (None, asked.method)
        and (covers is None or _may_cover(covers, asked))
    )


def _may_cover(covers: Covers, asked: Asked) -> bool:
    return (
        (not covers.kinds or _kinds(asked) <= set(covers.kinds))
        and (
            not covers.species
            or all(_in(species_id, covers.species) for species_id in asked.species)
        )
        and (asked.land is None or covers.land in (None, "any", asked.land))
        and (not covers.places or _in(asked.place_id, covers.places))
    )


def _kinds(asked: Asked) -> set[str]:
    """Return the kind of the step plan and of every species: a legume in grass is no grass."""
    return {asked.kind, *(species()[species_id].kind for species_id in asked.species)}


def _in(word: str, words: tuple[str, ...]) -> bool:
    return "any" in words or word in words


def cleared_use(card: LabelCard, asked: Asked) -> Use | Stop:
    """Return the one use a job may rest on, or the stop that says why there is none."""
    uses = matching_uses(card, asked)
    if not uses:
        return LabelStop.NO_USE
    answers = {use.allowed for use in uses}
    # an answer left out falls here too: only a typed yes or no is one
    if answers - {"yes", "no"}:
        return LabelStop.USE_UNSURE
    if answers == {"no"}:
        return LabelStop.USE_SAYS_NO
    # a yes beside a no ends here: which of the uses the job is of, nobody has said
    if not _agree(uses):
        return LabelStop.USES_DISAGREE
    return uses[0]


def _agree(uses: tuple[Use, ...]) -> bool:
    """Whether uses differ in nothing but where they stand and what they are called."""
    return len({_comparable(use) for use in uses}) == 1


def _comparable(use: Use) -> tuple[object, ...]:
    # both cover the job, so what else each covers makes no difference to it
    apart = {"where", "field_marks", "site_words", "page", "covers"}
    return tuple(
        _placeless(getattr(use, field.name)) for field in fields(use) if field.name not in apart
    )


def _placeless(value: object) -> object:
    """Return a value without where it was typed, so that two uses can be compared."""
    if isinstance(value, tuple):
        return tuple(_placeless(part) for part in value)
    if isinstance(value, Given):
        # not as typed: quarts and the same in ounces agree
        return (value.value, value.unit)
    if isinstance(value, Record):
        return tuple(_placeless(getattr(value, name)) for name in rules_of(type(value)))
    return value


def card_gaps(products: tuple[Product, ...]) -> list[Finding]:
    """Return a note for each product whose card leaves something out, with all of it."""
    return [
        finding(
            LabelNote.CARD_NOT_FILLED_IN,
            about_item(product.id),
            product.label.where if product.label is not None else product.where,
            thing=product.name,
            product=product.name,
            missing="; ".join(missing),
        )
        for product in products
        if (missing := _missing(product))
    ]


def _missing(product: Product) -> list[str]:
    card = product.label
    if card is None:
        every = ", ".join(name for name in rules_of(LabelCard) if name != "uses")
        return [f"label: with {every}", f"under uses: for each use {', '.join(rules_of(Use))}"]
    head = missing_on_card(card)
    uses = [(use.site_words, missing_on_use(use)) for use in card.uses]
    told = [", ".join(head)] if head else []
    return told + [f'of the use "{site}" {", ".join(gaps)}' for site, gaps in uses if gaps]
