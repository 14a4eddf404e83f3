"""What a plan is made of.

In: records of the property folder, numbers with their working. Out: immutable records of jobs,
places, things to buy, findings, and the plan that holds them. Decided: nothing but what words
for days mean. Never: a rule, a sum, a finding.
"""
