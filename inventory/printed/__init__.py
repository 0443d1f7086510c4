"""Sheets of paper as workbooks: cells and print set-up for every workbook that prints, and the purchase order. Pure.

Takes records; gives the bytes of .xlsx files. Sums are formulas; what people typed never is one. Reads no table.
"""

from inventory.printed.file_names import file_name
from inventory.printed.purchase_order import AskedLine, Content, Party, PurchaseOrder, purchase_order

__all__ = ["AskedLine", "Content", "Party", "PurchaseOrder", "file_name", "purchase_order"]
