"""The longest spans that any label card of the folder asks for: what bounds a doubt."""

from collections.abc import Iterable, Iterator

from generator.inventory.label import Use
from generator.inventory.stock import Product
from generator.working import Given


def longest_wait_days(products: Iterable[Product]) -> Given | None:
    """Return the most days that any card asks for before a sowing, None where none asks for any."""
    return longest_of(days for use in _uses(products) for days in _waits(use))


def longest_reentry_hours(products: Iterable[Product]) -> Given | None:
    """Return the most hours for which any card keeps people out, None where none gives hours."""
    # words for other uses, such as until dry, have no hours that could be compared
    entries = [product.label.reentry for product in products if product.label is not None]
    hours = (entry.agricultural_hours for entry in entries if entry is not None)
    return longest_of(span for span in hours if isinstance(span, Given))


def longest_waiting_days(products: Iterable[Product]) -> Given | None:
    """Return the most days that any card asks for before grazing, hay, game or dogs."""
    return longest_of(
        wait.wait_days
        for use in _uses(products)
        if isinstance(use.waiting_days, tuple)
        for wait in use.waiting_days
    )


def bound_of_a_sowing(products: tuple[Product, ...]) -> Given | None:
    """Return the days after which a wait that is not known stops no sowing any more.

    It is the most that any card asks for. Without days for another crop on any card nothing here
    tells how long such waits are, and there is no bound: None.
    """
    listed = any(isinstance(use.plant_back_days, tuple) and use.plant_back_days
                 for use in _uses(products))  # fmt: skip
    return longest_wait_days(products) if listed else None


def _uses(products: Iterable[Product]) -> Iterator[Use]:
    for product in products:
        if product.label is not None:
            yield from product.label.uses


def _waits(use: Use) -> Iterator[Given]:
    if isinstance(use.seeding_interval_days, Given):
        yield use.seeding_interval_days
    if isinstance(use.plant_back_days, tuple):
        yield from (wait.wait_days for wait in use.plant_back_days)


def longest_of(spans: Iterable[Given]) -> Given | None:
    """Return the longest of some spans, None where there are none."""
    return max(spans, key=lambda span: span.value, default=None)
