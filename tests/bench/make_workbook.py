#!/usr/bin/env python3
"""Turns a schedule of make_bench.py (CSV on stdin) into a workbook, with openpyxl:

    make_bench.py ends COUNT different | make_workbook.py FILE.xlsx

Columns that nothing is read from are added until there are 15, as schedules have them.
"""
import csv
import sys

import openpyxl

COLUMNS = 15


def value(text):
    try:
        return float(text)
    except ValueError:
        return text


book = openpyxl.Workbook(write_only=True)
sheet = book.create_sheet("Cables")
for number, row in enumerate(csv.reader(sys.stdin)):
    more = range(COLUMNS - len(row))
    sheet.append([value(cell) for cell in row]
                 + [f"note {i}" if number == 0 else f"tray {number * 7 % 40}" for i in more])
book.save(sys.argv[1])
