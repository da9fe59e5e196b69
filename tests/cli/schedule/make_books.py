"""Writes the workbooks beside it (needs openpyxl; by hand, when they are to change)."""

import csv
import pathlib

import openpyxl

HERE = pathlib.Path(__file__).parent


def number(cell):
    try:
        return float(cell)
    except ValueError:
        return cell


book = openpyxl.Workbook()
book.active.title = "Old"
book.active.sheet_state = "hidden"
cables = book.create_sheet("Cables")
cables["A1"] = "Cables of an invented site"
cables.merge_cells("A1:K1")
cables.append([])
for row in csv.reader((HERE / "one_end.csv").open()):
    cables.append([number(cell) for cell in row])
cables["D8"] = "#N/A"
book.create_sheet("Empty")
book.active = 1
book.save(HERE / "cables.xlsx")
whole = (HERE / "cables.xlsx").read_bytes()
(HERE / "cut_short.xlsx").write_bytes(whole[:1500])
(HERE / "old.xls").write_bytes(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(504))
