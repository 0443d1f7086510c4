"""The belief check: which answers it pays to know better, by planning again with each of them lower and higher.

Takes what a planning came to; gives a section of the report. Empty on purpose: plan/records.py takes the records.
"""
