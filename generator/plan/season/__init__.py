"""Season markers and the open dates that rest on them.

In: days that were typed, and the days of weather stations. Out: for every marker an early, a
typical and a late day and where they are from; for every step its first and last day on the
careful side. Decided: which source of a marker is trusted before which. Never: what is done on
those days.
"""
