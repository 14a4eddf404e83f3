"""What follows from what was done.

In: sprayings and counts, planned and logged. Out: records, days to stay out, waits before
anything is sown, grazed or hunted, what counts of a planting say, what later entries hold up.
Decided: the longest wait, keep or start over. Never: a wait taken for none because nobody typed
it.
"""
