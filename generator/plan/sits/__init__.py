"""Sits: who hunts where, when, and what of the ground nobody else may be on then.

In: sits, stands with their arcs of fire, walks, places, hunting dates with their hours. Out: sits
that are not over, hours in which others keep away, stops on two sits that come together. Decided:
whether something lies in the arc of an occupied stand. Never: that a day is good to hunt.
"""
