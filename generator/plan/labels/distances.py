"""Distances that labels keep: which there are, and of which kind of thing nothing is said."""

from collections.abc import Iterable, Iterator

from generator.inventory.label import COUNTED_FROM, KEPT_FROM, LabelCard, Setback
from generator.inventory.stock import Product
from generator.plan.findings.about_labels import LabelNote
from generator.plan.findings.order import finding
from generator.plan.land.kept_kinds import kind_kept_from
from generator.plan.model.finding import Finding, about_item


def listed_setbacks(entries: tuple[Setback, ...] | str | None) -> tuple[Setback, ...]:
    """Return the distances of a card's list, none where it is silent or not filled in."""
    return entries if isinstance(entries, tuple) else ()


def longest_kept(entries: Iterable[Setback]) -> tuple[Setback, ...]:
    """Return each distance once, the longest of those from the same thing."""
    longest: dict[str, Setback] = {}
    for setback in entries:
        # by the words as printed: what two labels call by other words is kept from twice
        known = longest.get(setback.words)
        if known is None or known.distance_ft.value < setback.distance_ft.value:
            longest[setback.words] = setback
    return tuple(longest.values())


def distance_notes(products: tuple[Product, ...]) -> Iterator[Finding]:
    """Yield a note for each product whose card keeps distances from it knows not what kind."""
    for product in products:
        bare = [setback for setback in _setbacks(product.label) if _is_bare(setback)]
        if bare:
            yield finding(
                LabelNote.DISTANCE_WITHOUT_KIND,
                about_item(product.id),
                bare[0].where,
                product=product.name,
                kept="; ".join(dict.fromkeys(setback.keep_from for setback in bare)),
                line=_with_kind(bare[0]),
                kinds=", ".join(KEPT_FROM),
                edges=", ".join(COUNTED_FROM),
            )


def _setbacks(card: LabelCard | None) -> Iterator[Setback]:
    if card is not None:
        lists = (card.mixing_setbacks_ft, *(use.setbacks_ft for use in card.uses))
        yield from (setback for entries in lists for setback in listed_setbacks(entries))


def _is_bare(setback: Setback) -> bool:
    return setback.kind is None or setback.counts_from is None


def _with_kind(setback: Setback) -> str:
    """Return the line as it would be typed with its kind, as far as the words tell it."""
    distance = setback.distance_ft
    typed = f"distance_{distance.typed_unit}: {distance.typed:g}"
    kind = kind_kept_from(setback)
    edge = setback.counts_from or "as_printed"
    keep_from = setback.keep_from
    return f"{{keep_from: {keep_from}, {typed}, kind: {kind}, counts_from: {edge}}}"
