"""Distances that the labels in a tank keep: spraying and mixing, the longest of each counts."""

from generator.inventory.label import Setback
from generator.plan.labels.distances import listed_setbacks, longest_kept
from generator.plan.model.work import Mix


def kept_spraying(mix: Mix) -> tuple[Setback, ...]:
    """Return what the labels of a tank keep the spray away from, each once, the longest."""
    return longest_kept(
        setback for part in mix.parts for setback in listed_setbacks(part.use.setbacks_ft)
    )


def kept_mixing(mix: Mix) -> tuple[Setback, ...]:
    """Return what the labels of a tank keep the mixing away from, each once, the longest."""
    return longest_kept(
        setback for part in mix.parts for setback in listed_setbacks(part.card.mixing_setbacks_ft)
    )
