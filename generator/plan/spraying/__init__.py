"""What goes into a sprayer, and how it goes over the ground.

In: cleared products, catch tests, the width of a place, what the tank held. Out: loads, doses
at marks, passes side by side, distances to keep. Decided: what a tank is filled to, how often
ground is laid, whether a trace in the tank harms. Never: an amount of a job on which a stop
stands.
"""
