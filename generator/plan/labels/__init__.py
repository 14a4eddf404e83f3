"""What label cards let be done.

In: a spraying that is asked for and the card of its product, as it was typed. Out: the one use
it rests on, its rate in every basis, or stops. Decided: clearance, rates against limits at one
time and in a year, what may count with them, what a product does to what grows. Never: a number
of a label that no card holds; what is not known to be otherwise counts.
"""
