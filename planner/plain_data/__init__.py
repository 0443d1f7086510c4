"""All of the books as plain files, and back into an empty installation.

Takes the tables of the three packages as they stand; gives CSV files with a dictionary and a manifest, or rows put
back as they were. Knows no trade rule: what is written is held against the proof of the books.
"""
