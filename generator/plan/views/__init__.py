"""The plan seen from further off.

In: a whole plan. Out: years ahead, months, every number by its id, what jobs ask of a day, what
cannot be answered.
Decided: nothing. Never: an amount of a season that is only looked at.
"""
