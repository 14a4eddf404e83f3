"""What the log says on the plan's day.

In: entries of the log and jobs that were asked for. Out: the entries in force, the state of
every job, what is on hand, what an entry tells of a spraying. Decided: which entries count,
what is done, missed, waiting or open. Never: what follows for another job.
"""
