"""What stands on the ground, how tall, and what keeps it standing.

In: plantings, curves of their growth, heights and counts of the log. Out: heights by day,
stretches that hide and that do not, verdicts, water, burning, sod. Decided: when a measured
height counts, what hides somebody. Never: what is sown or sprayed.
"""
