"""The invented demo: a keeper's workbook from a seed (sheet.py), and the year its gear lived through (year.py)."""
