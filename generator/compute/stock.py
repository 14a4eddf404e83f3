"""Things kept: what is on hand now, what is still needed, what is left over.

All amounts of one call are in one unit, and so is the result: pounds, fluid ounces, ounces by
weight or a count. The formulas stand in pounds; a plan takes them into the unit of the thing.
"""

from generator.working import formula, total


def counted_and_bought(counted: float, bought: list[float]) -> float:
    """What was counted, and what was bought after the count.

    Formula: counted + total(bought)
    Valid for: everything bought after the count, nothing bought before it
    Source: addition (source key arithmetic)

    >>> counted_and_bought(12, [128.0, 128.0])
    268.0
    """
    return counted + total(bought)


def left_after_use(had: float, used: list[float]) -> float:
    """What is left of what was there; below 0 where more was used than was there.

    Formula: had - total(used)
    Valid for: everything used after the count, nothing used before it
    Source: subtraction (source key arithmetic)

    >>> left_after_use(12, [5.0, 2.5])
    4.5
    """
    return had - total(used)


def there(on_hand: float) -> float:
    """What is there to plan with: nothing where count and log say less than nothing.

    Formula: max(0, on_hand)
    Valid for: any amount
    Source: nobody has less than nothing (source key arithmetic)

    >>> there(-100)
    0
    """
    return max(0, on_hand)


def still_needed(planned: float, used: list[float]) -> float:
    """What a job still needs after what was used on it so far.

    Formula: max(0, planned - total(used))
    Valid for: everything used on the job, before the count and after it
    Source: subtraction (source key arithmetic)

    >>> still_needed(32.0, [20.0])
    12.0
    """
    return max(0, planned - total(used))


def left_over(on_hand: float, packages_count: float, package_size: float, needed: float) -> float:
    """What is left once everything is bought and done.

    Formula: on_hand + packages_count * package_size - needed
    Valid for: packages that cover the need
    Source: addition and subtraction (source key arithmetic)

    >>> left_over(12, 1, 128, 33)
    107
    """
    return on_hand + packages_count * package_size - needed


def short_of(needed: float, on_hand: float, packages_count: float, package_size: float) -> float:
    """What is short once the packages are bought, where no more are bought for so little.

    Formula: needed - max(0, on_hand) - packages_count * package_size
    Valid for: packages that leave less than one short
    Source: subtraction (source key arithmetic)

    >>> short_of(10.25, 0, 1, 10)
    0.25
    """
    return needed - max(0, on_hand) - packages_count * package_size


def short_by(needed: float, on_hand: float) -> float:
    """What is still to be had of a thing that is sold loose, to the weight.

    Formula: max(0, needed - on_hand)
    Valid for: on_hand not below 0
    Source: subtraction (source key arithmetic)

    >>> short_by(4700, 500)
    4200
    """
    return max(0, needed - on_hand)


def left_of_loose(on_hand: float, bought: float, needed: float) -> float:
    """What is left once a thing sold loose is bought to the weight and everything is done.

    Formula: on_hand + bought - needed
    Valid for: bought that covers the need
    Source: addition and subtraction (source key arithmetic)

    >>> left_of_loose(500, 0, 300)
    200
    """
    return on_hand + bought - needed


HAD = formula(counted_and_bought, "Counted and bought since", unit="lb")
ON_HAND = formula(left_after_use, "On hand now", unit="lb")
THERE = formula(there, "On hand to plan with", unit="lb")
STILL = formula(still_needed, "Still needed for the job", unit="lb")
LEFT_OVER = formula(left_over, "Left over after the season", unit="lb")
SHORT_OF = formula(short_of, "Short, and nothing bought for it", unit="lb")
SHORT_BY = formula(short_by, "To buy, sold loose", unit="lb")
LEFT_OF_LOOSE = formula(left_of_loose, "Left over after the season", unit="lb")
LEFT_UNBOUGHT = formula(left_after_use, "Left over after the season", unit="lb")
