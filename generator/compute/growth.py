"""Height of a planting: how it grows in a season, what cutting and winter leave of it."""

from generator.units import IN_PER_FT
from generator.working import formula


def grown_fraction(
    before_fraction: float, after_fraction: float, past_days: float, between_days: float
) -> float:
    """Part of a season's growth that is there on a day between two days of the list.

    Formula: before_fraction + (after_fraction - before_fraction) * past_days / between_days
    Valid for: past_days from 0 to between_days, between_days above 0
    Source: a straight line between two days (source key arithmetic)

    >>> grown_fraction(0.5, 1, 31, 62)
    0.75
    """
    return before_fraction + (after_fraction - before_fraction) * past_days / between_days


def growing_in(full_in: float, grown_fraction: float, pull_fraction: float) -> float:
    """Height of this year's growth on a day, in inches.

    Formula: full_in * grown_fraction * pull_fraction
    Valid for: grown_fraction from 0 to 1; pull_fraction above 0, 1 where nothing was measured
    Source: the part of the full height that has grown (source key arithmetic)

    >>> growing_in(60, 0.5, 1.2)
    36.0
    """
    return full_in * grown_fraction * pull_fraction


def regrown_in(
    cut_in: float,
    at_cut_in: float,
    full_in: float,
    grown_fraction: float,
    before_fraction: float,
    pull_fraction: float,
) -> float:
    """Height on a day after a cut, in inches: what was left, and what has grown since.

    Formula: min(cut_in, at_cut_in) + full_in * (grown_fraction - before_fraction) * pull_fraction
    Valid for: grown_fraction at least before_fraction, on the day of the cut
    Source: growth goes on as it would have (source key common_practice)

    >>> regrown_in(8, 10, 40, 1, 0.25, 1)
    38.0
    """
    left_in = min(cut_in, at_cut_in)
    return left_in + full_in * (grown_fraction - before_fraction) * pull_fraction


def wintered_in(height_in: float, winter_share_fraction: float) -> float:
    """Height that stands through winter, in inches.

    Formula: height_in * winter_share_fraction
    Valid for: winter_share_fraction from 0 to 1
    Source: wind, ice and snow lay a part down (source key common_practice)

    >>> wintered_in(80, 0.6)
    48.0
    """
    return height_in * winter_share_fraction


def cut_in_winter_in(cut_in: float, height_in: float) -> float:
    """Height that is left after a cut while nothing grows, in inches.

    Formula: min(cut_in, height_in)
    Valid for: a cut between fall and green-up; 0 where it was burned
    Source: a cut leaves no more than stood (source key arithmetic)

    >>> cut_in_winter_in(8, 61.2)
    8
    """
    return min(cut_in, height_in)


def pull_fraction(measured_in: float, expected_in: float) -> float:
    """How far a measured height is from the typical one of its day.

    Formula: measured_in / expected_in
    Valid for: expected_in above 0
    Source: a stand that is behind stays behind for the season (source key common_practice)

    >>> pull_fraction(30, 40)
    0.75
    """
    return measured_in / expected_in


def held_in(height_in: float, measured_in: float, full_in: float) -> float:
    """Height that was pulled up, held to the taller of what was measured and a full height.

    Formula: min(height_in, max(measured_in, full_in))
    Valid for: heights at least 0
    Source: a tall stand early in summer may only be early (source key common_practice)

    >>> held_in(80, 45, 36)
    45
    """
    return min(height_in, max(measured_in, full_in))


def later_pull_fraction(pull_fraction: float) -> float:
    """How far a stand is still from the typical one in the seasons after it was measured.

    Formula: (1 + pull_fraction) / 2
    Valid for: pull_fraction above 0
    Source: half of a lead or a lag is kept from one season to the next (source key common_practice)

    >>> later_pull_fraction(0.5)
    0.75
    """
    return (1 + pull_fraction) / 2


def standing_ft(height_in: float) -> float:
    """Height that stands, in feet.

    Formula: height_in / 12
    Valid for: heights at least 0
    Source: twelve inches to the foot (source key arithmetic)

    >>> standing_ft(42)
    3.5
    """
    return height_in / IN_PER_FT


GROWN = formula(grown_fraction, "Part of the season's growth")
GROWING = formula(growing_in, "Height of the growth")
REGROWN = formula(regrown_in, "Height after the cut")
WINTERED = formula(wintered_in, "Height through winter")
CUT_IN_WINTER = formula(cut_in_winter_in, "Height after the cut")
PULL = formula(pull_fraction, "Measured against typical")
HELD = formula(held_in, "Height, held to what was measured")
LATER_PULL = formula(later_pull_fraction, "Measured against typical, seasons later")
STANDING = formula(standing_ft, "Height that stands", read_as="tape")
