"""What is asked for: jobs, the ground they lie on, who does them.

In: plantings with their step plans. Out: a request for every job of a season, and what any job
has: safety lines, days, numbers, ground and slope, soil, licenses. Decided: what is ground of a
place, who may do a job. Never: an amount of anything.
"""
