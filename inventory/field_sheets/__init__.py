"""What stands on the sheets that are printed for the field: a store to count, a load to haul, a hive to take apart.

Each module takes rows of the books and gives plain records for a template. Nothing here books, and no price is told.
"""
