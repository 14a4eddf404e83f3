"""Fertilizer and lime.

In: what a soil test asks for, what is at hand. Out: doses, pounds and what stays unmet.
Decided: the order in which nutrients are met. Never: a need that no lab has printed.
"""
