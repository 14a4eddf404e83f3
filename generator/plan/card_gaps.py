"""What label cards still leave out: all of a card at once, before any job asks for it."""

from generator.inventory.fields import rules_of
from generator.inventory.label import LabelCard, Use
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.clearance import missing_on_card, missing_on_use
from generator.plan.findings import finding
from generator.plan.model import Finding
from generator.plan.notes import Note


def card_gaps(inventory: Inventory) -> list[Finding]:
    """Return a note for each product whose card leaves something out, with all of it."""
    return [
        finding(
            Note.CARD_NOT_FILLED_IN,
            one.id,
            one.label.where if one.label is not None else one.where,
            product=one.name,
            missing="; ".join(missing),
        )
        for one in inventory.products
        if (missing := _missing(one))
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
