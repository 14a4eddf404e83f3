"""Machines on ground: acres in an hour, hours, fuel, days of rent."""

from generator.working import formula, whole_up

# A foot of width at one mile an hour covers 5,280 of an acre's 43,560 square feet in an hour.
MPH_FT_PER_AC_PER_HOUR = 8.25


def work_rate_ac_per_hour(speed_mph: float, width_ft: float, efficiency_fraction: float) -> float:
    """Ground that a machine covers in an hour, turns and stops counted in.

    Formula: speed_mph * width_ft * efficiency_fraction / 8.25
    Valid for: efficiency_fraction in (0, 1]
    Source: field capacity of farm machines, Iowa State University (source key iowa_pm696)

    >>> round(work_rate_ac_per_hour(4, 5, 0.8), 2)
    1.94
    """
    return speed_mph * width_ft * efficiency_fraction / MPH_FT_PER_AC_PER_HOUR


def work_hours(area_ac: float, work_rate_ac_per_hour: float) -> float:
    """Hours on the ground, without the way there and back.

    Formula: area_ac / work_rate_ac_per_hour
    Valid for: work_rate_ac_per_hour above 0
    Source: what acres in an hour means (source key arithmetic)

    >>> work_hours(3, 1.5)
    2.0
    """
    return area_ac / work_rate_ac_per_hour


def fuel_gal(work_hours: float, fuel_gal_per_hour: float) -> float:
    """Fuel that a machine burns on a job, in gallons.

    Formula: work_hours * fuel_gal_per_hour
    Valid for: the same load for all of the job
    Source: what gallons in an hour means (source key arithmetic)

    >>> fuel_gal(2, 1.5)
    3.0
    """
    return work_hours * fuel_gal_per_hour


def fuel_usd(fuel_gal: float, fuel_usd_per_gal: float) -> float:
    """Cost of fuel, in dollars.

    Formula: fuel_gal * fuel_usd_per_gal
    Valid for: the price of a gallon on the day it was noted
    Source: gallons times price (source key arithmetic)

    >>> fuel_usd(3, 3.5)
    10.5
    """
    return fuel_gal * fuel_usd_per_gal


def rent_days(work_hours: float, work_day_hours: float) -> float:
    """Whole days that a rented machine is needed, for all jobs it is rented for together.

    Formula: whole_up(work_hours / work_day_hours)
    Valid for: jobs done one after the other, work_day_hours above 0
    Source: whole days that hold the hours (source key arithmetic)

    >>> rent_days(9.5, 8)
    2.0
    """
    return whole_up(work_hours / work_day_hours)


def rent_usd(rent_days: float, rent_usd_per_day: float) -> float:
    """Rent, in dollars.

    Formula: rent_days * rent_usd_per_day
    Valid for: a rent that is charged by the whole day
    Source: days times price (source key arithmetic)

    >>> rent_usd(2, 180)
    360.0
    """
    return float(rent_days * rent_usd_per_day)


WORK_RATE = formula(work_rate_ac_per_hour, "Ground covered in an hour")
HOURS = formula(work_hours, "Hours on the ground")
FUEL = formula(fuel_gal, "Fuel")
FUEL_COST = formula(fuel_usd, "Cost of fuel")
RENT_DAYS = formula(rent_days, "Days of rent")
RENT_COST = formula(rent_usd, "Rent")
