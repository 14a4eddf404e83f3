"""Days: which suit, which are taken, which papers they need.

In: jobs with their open dates, past weather, dates of hunting, nesting, burn bans. Out: how
many days to count on, days on which a job must not be done, shooting hours, papers that are
missing. Decided: what of the open dates is left. Never: a promise made of fewer than ten years.
"""
