"""The invented demo: a keeper's workbook from a seed (sheet.py), and the year its gear lived through (year.py).

The year is told by telling.py in spring.py, summer.py and autumn.py, its orders in buying.py, its deadouts in dead.py.
"""
