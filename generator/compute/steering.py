"""Where a sprayer is steered with parts of it shut: beside the middle of what is open.

A part is what shuts on its own: one nozzle of a boom, or one side of a pattern.
"""

from generator.working import formula, whole_down


def steer_off_ft(part_ft: float) -> float:
    """Distance of the middle of the sprayer from that of what is open, one part more shut, in feet.

    Formula: part_ft / 2
    Valid for: one part more shut at one end than at the other
    Source: the middle moves by half of what is left out (source key arithmetic)

    >>> steer_off_ft(2.5)
    1.25
    """
    return part_ft / 2


def shut_far_count(shut_last_count: float, shut_count: float) -> float:
    """Parts to shut on the last pass at the end toward the far edge.

    Formula: shut_last_count - whole_down(shut_count / 2)
    Valid for: what is shut on the other passes is shut half at each end, and of an odd number the
        one that is over toward the far edge
    Source: what is shut in all less what stays shut at the near end (source key arithmetic)

    >>> shut_far_count(4, 3)
    3.0
    """
    return shut_last_count - whole_down(shut_count / 2)


def last_steer_off_ft(shut_far_count: float, shut_last_count: float, part_ft: float) -> float:
    """Distance of the middle of the sprayer on the last pass from that of what is open, in feet.

    Formula: (2 * shut_far_count - shut_last_count) * part_ft / 2
    Valid for: at least as many parts shut toward the far edge as at the near end
    Source: the middle moves by half of what is left out (source key arithmetic)

    >>> last_steer_off_ft(3, 4, 2)
    2.0
    """
    return (2 * shut_far_count - shut_last_count) * part_ft / 2


STEER_OFF = formula(
    steer_off_ft, "Middle of the sprayer beside that of what is open", read_as="tape"
)
SHUT_FAR = formula(shut_far_count, "Shut toward the far edge on the last pass")
LAST_STEER_OFF = formula(
    last_steer_off_ft,
    "Middle of the sprayer beside that of what is open, on the last pass",
    read_as="tape",
)
