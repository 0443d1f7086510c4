"""Deadouts: a hive of dead bees taken apart, what a suspicion of foulbrood reaches, what is held back and why.

Pure: freezing.py, fates.py, tracing.py, figures.py. Questions: holds.py, reach.py, waiting.py, season.py.
Acts, each one transaction: work.py, release.py, care.py.
"""
