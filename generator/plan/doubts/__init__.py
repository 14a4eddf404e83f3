"""Entries of the log that cannot be, or hardly.

In: the log, what is at hand, the season. Out: questions with the line that settles each, and
stops where a sum, a wait or a re-entry rests on one. Decided: what is asked. Never: which of
two entries is right.
"""
