"""Jobs done together: one mix or one fill for several places.

In: planned jobs with their days and amounts. Out: runs in the order of the owner's places, with
what each place takes and what is left at its gate. Decided: which jobs share a tank or a hopper,
and why another does not. Never: a job with a stop, without an answer it waits for, or on ground
that is not measured.
"""
