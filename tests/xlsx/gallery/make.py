#!/usr/bin/env python3
"""Writes the sheets of this gallery, each as some program writes it; by hand, when they are to change:

    /usr/bin/python3 make.py

It needs python3-openpyxl, python3-xlsxwriter, python3-pandas, gnumeric (ssconvert) and LibreOffice.
The cables are invented. What each sheet must give stands in ../gallery_test.py.
"""
import datetime
import os
import pathlib
import shutil
import subprocess
import tempfile
import zipfile

import openpyxl
import pandas
import xlsxwriter
from openpyxl.comments import Comment
from openpyxl.styles import Font

HERE = pathlib.Path(__file__).parent
HEAD = ["Cable No", "From", "To", "O/D (mm)", "Bedding (mm)", "Wire (mm)", "Entry", "Zone", "Ex", "Gas", "IP"]
SMALL = [13.9, 9.2, 0.9, "M20"]
LARGE = [20.9, 15.1, 1.25, "M25"]
HAZARDOUS = [1, "e", "IIB", 66]
PLAIN = ["none", "none", None, 54]


def cable(tag, figures=None, area=None, ends=("MCC-1", "Pump")):
    return [tag, *ends, *(figures or SMALL), *(area or PLAIN)]


def openpyxl_book(name, rows, change=None, title="Cables"):
    book = openpyxl.Workbook()
    book.active.title = title
    for row in rows:
        book.active.append(row)
    if change:
        change(book, book.active)
    book.save(HERE / name)


def xlsxwriter_book(name, fill):
    with xlsxwriter.Workbook(HERE / name) as book:
        fill(book)


def converted(name, program, source):
    """`source` as another spreadsheet program writes it."""
    with tempfile.TemporaryDirectory() as folder:
        if program == "gnumeric":
            subprocess.run(["ssconvert", source, HERE / name], check=True, capture_output=True)
        else:
            subprocess.run(["soffice", "--headless", "--convert-to", pathlib.Path(name).suffix[1:], "--outdir",
                            folder, source], check=True, capture_output=True,
                           env=os.environ | {"HOME": folder})
            shutil.copy(pathlib.Path(folder) / (pathlib.Path(source).stem + pathlib.Path(name).suffix), HERE / name)


def text_file(name, text, encoding="utf-8"):
    (HERE / name).write_bytes(text.encode(encoding))


# ---- merged cells -----------------------------------------------------------------------------

def merged_area(_, sheet):
    """Zone, type, gas and IP of six cables stand in one merged cell each."""
    for column in "HIJK":
        sheet.merge_cells(f"{column}2:{column}7")


def merged_rows():
    rows = [HEAD, cable("C-01", area=HAZARDOUS)]
    rows += [cable(f"C-0{i}", area=[None] * 4) for i in range(2, 7)]
    return rows + [cable("C-07")]


openpyxl_book("merged_area.xlsx", merged_rows(), merged_area)


def merged_area_by_xlsxwriter(book):
    sheet = book.add_worksheet("Cables")
    for i, row in enumerate(merged_rows()):
        sheet.write_row(i, 0, row)
    for column, value in enumerate(HAZARDOUS, 7):
        sheet.merge_range(1, column, 6, column, value)


xlsxwriter_book("merged_area_xlsxwriter.xlsx", merged_area_by_xlsxwriter)
converted("merged_area_gnumeric.xlsx", "gnumeric", HERE / "merged_area.xlsx")
converted("merged_area_libreoffice.xlsx", "libreoffice", HERE / "merged_area_xlsxwriter.xlsx")


def merged_block(_, sheet):
    """One block over two columns and three rows: what it says counts in all six cells."""
    sheet.merge_cells("H2:I4")


openpyxl_book("merged_block.xlsx", [
    ["Cable No", "O/D (mm)", "Bedding (mm)", "Wire (mm)", "Entry", "A Ex", "B Ex", "A Zone", "B Zone", "Gas", "IP"],
    ["C-01", *SMALL, "e", "e", 1, None, "IIB", 66],
    ["C-02", *SMALL, "e", "e", None, None, "IIB", 66],
    ["C-03", *SMALL, "e", "e", None, None, "IIB", 66]], merged_block)

# A long merged cell over several pieces of a sheet that is cut for threads.
openpyxl_book("merged_long.xlsx", [HEAD, cable("C-0001", area=HAZARDOUS)]
              + [cable(f"C-{i:04}", area=[None] * 4) for i in range(2, 1201)],
              lambda _, sheet: [sheet.merge_cells(f"{c}2:{c}1201") for c in "HIJK"])


def merged_headings(_, sheet):
    sheet.merge_cells("A1:A2")
    for cells in ("B1:C1", "D1:F1", "G1:H1", "I1:J1", "K1:K2", "L1:L2", "M1:M2"):
        sheet.merge_cells(cells)


openpyxl_book("merged_headings.xlsx", [
    ["Cable No", "Location", None, "Diameters (mm)", None, None, "Entry", None, "Zone", None, "Ex", "IP", "Gas"],
    [None, "From", "To", "O/D", "Bedding", "Wire", "From", "To", "From", "To", None, None, None],
    ["C-01", "MCC-1", "Pump", 13.9, 9.2, 0.9, "M20", "M20", "none", 1, "e", 66, "IIB"],
    ["C-02", "MCC-1", "Pump", 13.9, 9.2, 0.9, "M20", "M20", "none", "none", "none", 54, None]], merged_headings)

openpyxl_book("units_row.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "Entry", "Length"],
    [None, "mm", "mm", "mm", None, "m"],
    ["C-01", *SMALL, 40], ["C-02", *LARGE, 12]])

openpyxl_book("line_breaks.xlsx", [
    ["CABLE\nNo.", "Overall\nDiameter\n[mm]", "Diameter under\u00a0armour (mm)", "Armour Wire\nDia. (mm)", "CABLE ENTRY"],
    ["C-01", *SMALL]])

openpyxl_book("tag_over_two_rows.xlsx", [
    ["Cable No", "end", "O/D (mm)", "Bedding (mm)", "Wire (mm)", "Entry"],
    ["C-01", "motor", *SMALL], [None, "panel", None, None, None, "M20"],
    ["C-02", "motor", *LARGE], [None, "panel", None, None, None, "M20"]],
    lambda _, sheet: [sheet.merge_cells(f"{c}{r}:{c}{r + 1}") for c in "ACDE" for r in (2, 4)])

# ---- rows that are no cables ------------------------------------------------------------------

openpyxl_book("titles_and_sums.xlsx", [
    ["INVENTED SITE"], [], HEAD + ["Length"],
    ["PUMP HOUSE"], cable("C-01") + [40], cable("C-02") + [10], [None] * 11 + [50], [],
    ["TANK FARM 2"], cable("C-03", area=HAZARDOUS) + [20], ["Total"] + [None] * 10 + [70],
    [None, "all lengths are estimates"]])

openpyxl_book("title_merged.xlsx", [HEAD, ["SECTION-1"], cable("C-01"), ["SECTION-2"], cable("C-02")],
              lambda _, sheet: [sheet.merge_cells(f"A{r}:K{r}") for r in (2, 4)])

openpyxl_book("headings_again.xlsx", [HEAD, cable("C-01"), HEAD, cable("C-02")])
openpyxl_book("tag_forgotten.xlsx", [HEAD, cable("C-01"), cable(None), ["C-03"]])


def hidden(_, sheet):
    sheet.row_dimensions[3].hidden = True
    sheet.row_dimensions[4].height = 0


openpyxl_book("hidden_rows.xlsx", [HEAD, cable("C-01"), cable("C-02"), cable("C-03"), cable("C-04")], hidden)


def struck(_, sheet):
    for cell in sheet[3]:
        cell.font = Font(strike=True)
    sheet["A4"].font = Font(strike=True)
    sheet["D5"].font = Font(strike=True)


openpyxl_book("struck_rows.xlsx", [HEAD, *(cable(f"C-0{i}") for i in range(1, 6))], struck)


def struck_by_xlsxwriter(book):
    sheet = book.add_worksheet("Cables")
    out = book.add_format({"font_strikeout": True})
    for i, row in enumerate([HEAD, cable("C-01"), cable("C-02")]):
        sheet.write_row(i, 0, row, out if i == 1 else None)
    row = cable("C-03")
    sheet.write_row(3, 0, row)
    sheet.write_rich_string(3, 6, out, "M20", " M25")


xlsxwriter_book("struck_xlsxwriter.xlsx", struck_by_xlsxwriter)


def filtered(book):
    sheet = book.add_worksheet("Cables")
    for i, row in enumerate([HEAD, cable("C-01", ends=("MCC-1", "Pump")), cable("C-02", ends=("MCC-2", "Pump"))]):
        sheet.write_row(i, 0, row)
    sheet.autofilter(0, 0, 2, 10)
    sheet.filter_column(1, "x == MCC-1")
    sheet.set_row(2, options={"hidden": True})


xlsxwriter_book("filtered.xlsx", filtered)

# ---- sheets ----------------------------------------------------------------------------------


def sheets(book, sheet):
    for title, rows in (("Level 2", [["Rev 3"], HEAD, cable("C-03", area=HAZARDOUS)]), ("Notes", [["All by hand"]]),
                        ("Old", [HEAD, cable("C-99")]), ("Lengths", [["Cable No", "Length (m)"], ["C-01", 40]])):
        other = book.create_sheet(title)
        for row in rows:
            other.append(row)
    book["Old"].sheet_state = "hidden"


openpyxl_book("several_sheets.xlsx", [HEAD, cable("C-01"), cable("C-02")], sheets, "Level 1")


def with_chart(book):
    sheet = book.add_worksheet("Cables")
    for i, row in enumerate([HEAD, cable("C-01")]):
        sheet.write_row(i, 0, row)
    chart = book.add_chart({"type": "column"})
    chart.add_series({"values": "=Cables!$D$2:$D$2"})
    book.add_chartsheet("Chart").set_chart(chart)


xlsxwriter_book("chart_sheet.xlsx", with_chart)

# ---- headings --------------------------------------------------------------------------------

openpyxl_book("ambiguous.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "Entry", "Voltage", "Material", "Level", "Zone"],
    ["C-01", *SMALL, 11000, "Cu", "Ground floor", "Area 3"]])
openpyxl_book("zone_in_words.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "Entry", "Zone", "Ex", "Gas Group", "IP Rating"],
    ["C-01", *SMALL, "Zone 1", "e", "IIB", 66], ["C-02", *SMALL, "1", "e", "IIB", 66]])
openpyxl_book("two_zones.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "Entry", "Zone", "Hazardous Area"],
    ["C-01", *SMALL, 1, 2]])
openpyxl_book("inches.xlsx", [
    ["Cable No", "O/D (in)", "Bedding (inch)", "Wire (mm)", "Entry"],
    ["C-01", 0.547, 0.362, 0.9, "M20"]])
openpyxl_book("wrong_unit.xlsx", [
    ["Cable No", "O/D (cm)", "Bedding (mm)", "Wire (mm)", "Entry"], ["C-01", 1.39, 9.2, 0.9, "M20"]])
openpyxl_book("letters.xlsx", [
    ["Ref", "a", "b", "c", "d"], ["C-01", *SMALL]])
pandas.DataFrame([cable("C-01"), cable("C-02", area=HAZARDOUS)], columns=HEAD).to_excel(
    HERE / "pandas.xlsx", sheet_name="Cables", engine="openpyxl")
pandas.DataFrame([cable("C-01"), cable("C-02", area=HAZARDOUS)], columns=HEAD).set_index(
    ["Cable No", "From"]).to_excel(HERE / "pandas_index.xlsx", sheet_name="Cables", engine="xlsxwriter")

# ---- text files as exported ------------------------------------------------------------------

LINES = [",".join("" if cell is None else str(cell) for cell in row)
         for row in (HEAD, cable("C-01"), cable("C-02", area=HAZARDOUS, ends=("MCC-1", "Kühler ½")))]
text_file("semicolons.csv", "\n".join(line.replace(",", ";").replace(".", ",") for line in LINES) + "\n")
text_file("semicolons_points.csv", "\n".join(line.replace(",", ";") for line in LINES) + "\n")
text_file("sep_line.csv", "sep=;\r\n" + "\r\n".join(line.replace(",", ";") for line in LINES) + "\r\n")
text_file("tabs.txt", "\r\n".join(line.replace(",", "\t") for line in LINES) + "\r\n")
text_file("utf_16.txt", "\ufeff" + "\r\n".join(line.replace(",", "\t") for line in LINES) + "\r\n", "utf-16-le")
text_file("utf_16_big.csv", "\r\n".join(LINES) + "\r\n", "utf-16-be")
text_file("windows_1252.csv", "\r\n".join(LINES) + "\r\n", "cp1252")
text_file("commas_in_semicolons.csv", "\n".join(line.replace(",", ";").replace(".", ",") for line in LINES[:2]) + "\n")
text_file("stray_quote.csv", "\n".join(LINES[:2]) + '\nC-03,MCC-1,Pump 3" line,13.9,9.2,0.9,M20\n')
text_file("empty.csv", "")
text_file("mixed.csv", "tag,sheath_od_mm\nKühler,15\nK")
with (HERE / "mixed.csv").open("ab") as file:
    file.write(b"\xfcbel,15\n")
pandas.DataFrame([cable("C-01"), cable("C-02", area=HAZARDOUS)], columns=HEAD).to_csv(
    HERE / "pandas_semicolons.csv", sep=";", index=False)
converted("gnumeric.csv", "gnumeric", HERE / "pandas.xlsx")
converted("libreoffice.csv", "libreoffice", HERE / "merged_headings.xlsx")

# ---- what is no workbook of today ------------------------------------------------------------

text_file("web_page.xls", "<html xmlns:x='a'><body><table><tr><td>Cable No</td></tr></table></body></html>")
converted("old.xls", "gnumeric", HERE / "pandas.xlsx")
converted("old_libreoffice.xls", "libreoffice", HERE / "pandas.xlsx")
converted("open_document.ods", "libreoffice", HERE / "pandas.xlsx")
text_file("xml_2003.xml", '<?xml version="1.0"?><Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet"/>')
(HERE / "locked.xlsx").write_bytes(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(504) + bytes(512)
                                   + "EncryptedPackage".encode("utf-16-le"))  # by hand: a directory's name alone


def backslashes(source, name):
    """The same parts under names with backslashes, as some writers name them."""
    with zipfile.ZipFile(HERE / source) as old, zipfile.ZipFile(HERE / name, "w", zipfile.ZIP_DEFLATED) as new:
        for item in old.infolist():
            new.writestr(zipfile.ZipInfo(item.filename.replace("/", "\\")), old.read(item))


backslashes("pandas.xlsx", "backslashes.xlsx")

# ---- cells -----------------------------------------------------------------------------------

openpyxl_book("units_in_cells.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "Entry (mm)", "Length"],
    ["C-01", "13.9 mm", "Ø9.2", "0.9mm", 20, "1,234.50"],
    ["C-02", "0.547in", "9.2", "0.9 mm", "20mm", "40 m"],
    ["C-03", "TBC", "N/A", "-", "M20", "?"]])
openpyxl_book("bare_entries.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "entry"], ["C-01", *SMALL], ["C-02", 13.9, 9.2, 0.9, 20]])


def formats(_, sheet):
    sheet["A2"].number_format = "0000"
    sheet["A3"].number_format = '"P-"0'
    sheet["B2"].number_format = '0.0" mm"'


openpyxl_book("number_formats.xlsx", [["Cable No", "O/D", "Bedding", "Wire", "Entry"],
                                      [12, *SMALL], [101, *SMALL], ["#REF!", *SMALL]], formats)
openpyxl_book("cable_size.xlsx", [
    ["Cable No", "Cores x Size", "O/D", "Bedding", "Wire", "Entry", "Voltage"],
    ["C-01", "3C x 2.5mm2 XLPE/SWA/PVC", None, None, None, "M20", "600/1000V"],
    ["C-02", "3x25/16", *SMALL, "0.6/1 kV"],
    ["C-03", "2x2x1.5", None, None, None, "M20", "300/500 V"],
    ["C-04", "3C x 2.5mm2", None, None, None, "M20", "6.35/11 kV"],
    ["C-05", "3c+e 2.5", *SMALL, "0.6/1"]])

# ---- rows that are no cables any more, and rows of several ------------------------------------

STATUS = HEAD + ["Qty", "Rev", "Status", "Remarks"]


def listed(tag, quantity=None, status=None, remark=None, ends=("MCC-1", "Pump")):
    return cable(tag, ends=ends) + [quantity, "B", status, remark]


openpyxl_book("deleted_rows.xlsx", [
    STATUS, listed("C-01"), listed("C-02", status="Deleted"), listed("C-03", remark="Superseded by C-01"),
    listed("C-04 (VOID)"), listed("C-05", status="Hold"), listed("C-06", remark="2 spare cores"),
    listed("C-07", remark="deleted rev B, reinstated rev C"), listed("SPARE"),
    listed("C-08", ends=("MCC-1", "NOT USED"))])
openpyxl_book("quantities.xlsx", [
    STATUS, listed("C-01", "2 off"), listed("C-02", "x3"), listed("C-03", "TBC"), listed("C-04", 2),
    listed("P-8 to P-12"), listed("P-20..P-22", 3), listed("P-30 to P-32", 1), listed("P-8/9/10"),
    listed("P-40/41"), listed("C-05", "2 per phase")])
openpyxl_book("quantity_headings.xlsx", [
    ["Sl No", "Cable No", "O/D", "Bedding", "Wire", "Entry", "No.", "Sets", "Cables in parallel"],
    [1, "C-01", *SMALL, 7, 8, 2]])

# ---- places, ends and headings as others name them --------------------------------------------

SEVEN = HEAD[:7]


def short(tag, ends=("MCC-1", "Pump")):
    return [tag, *ends, *SMALL]


openpyxl_book("title_with_zone.xlsx", [SEVEN, ["PUMP HOUSE"], short("C-01"), ["ZONE 1 AREA"], short("C-02")])
openpyxl_book("title_above_with_zone.xlsx", [["CABLES OF HAZARDOUS AREA 3"], SEVEN, short("C-01")])
openpyxl_book("title_not_hazardous.xlsx", [["NON HAZARDOUS AREAS"], SEVEN, ["SAFE AREA"], short("C-01")])
openpyxl_book("equipment_with_zone.xlsx", [SEVEN, short("C-01"), short("C-02", ("MCC-1", "JB-4 (Zone 2)"))])
text_file("late_remark.csv", "\n".join(
    ["Cable No,From,To,O/D,Bedding,Wire,Entry,Remarks"]
    + [f"C-{i:04},MCC-1,Pump,13.9,9.2,0.9,M20," + ("to be Ex d" if i == 400 else "") for i in range(1, 401)]) + "\n")
for number, ends in enumerate((("From Equip.", "To Equip."), ("Start", "Finish"), ("Near End", "Far End"),
                               ("End A", "End B"), ("Source Equipment", "Destination Equipment")), 1):
    openpyxl_book(f"two_ends_{number}.xlsx", [["Cable No", *ends, *SEVEN[3:]], short("C-01")])
openpyxl_book("ends_unknown_below.xlsx", [
    ["Cable No", "From", None, "To", None, "O/D", "Bedding", "Wire", "Entry"],
    [None, "Cell", "Drawer", "Cell", "Drawer"], ["C-01", "MCC-1", "1F", "Pump", "2", *SMALL]],
    lambda _, sheet: [sheet.merge_cells(c) for c in ("A1:A2", "B1:C1", "D1:E1", "F1:F2", "G1:G2", "H1:H2", "I1:I2")])
openpyxl_book("headings_three_rows.xlsx", [
    ["CABLE", None, None, "DIAMETERS", None, None, "TERMINATION"],
    ["No", "ROUTE", None, "Sheath", "Armour", None, "Entry"],
    [None, "From", "To", "O/D", "Bedding", "Wire", None],
    short("C-01")], lambda _, sheet: [sheet.merge_cells(c) for c in
                                      ("A1:C1", "D1:F1", "B2:C2", "E2:F2", "A2:A3", "G2:G3")])
openpyxl_book("units_and_numbers.xlsx", [
    SEVEN[:3] + ["O/D", "Bedding", "Wire", "Entry", "Length"], ["-", "-", "-", "in", "in", "mm", "-", "m"],
    list(range(1, 9)), ["C-01", "MCC-1", "Pump", 0.547, 0.362, 0.9, "M20", 40]])
openpyxl_book("other_order_below.xlsx", [
    SEVEN, short("C-01"), [SEVEN[i] for i in (0, 2, 1, 4, 3, 5, 6)],
    ["C-02", "Pump", "MCC-1", 9.2, 13.9, 0.9, "M20"]])
openpyxl_book("richer_table_below.xlsx", [
    ["Cable No", "From", "O/D", "Entry"], ["C-01", "MCC-1", 13.9, "M20"], ["C-02", "MCC-1", 13.9, "M20"],
    HEAD, cable("C-03")])
openpyxl_book("words_of_the_trade.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "Armour", "Entry", "Zone", "Ex", "Gas Group", "IP", "Cores"],
    ["C-01", *SMALL[:3], "SWA", "1 x M20", "Safe area", "None", "-", 54, 3],
    ["C-02", *SMALL[:3], "SWA", "20mm", "Zone 1 IIB T4", "Ex eb", None, "IP66", 3],
    ["C-03", *SMALL[:3], "AWA", "M20x1.5", "1", "Ex eb IIC T6 Gb", None, 66, 3],
    ["C-04", *SMALL[:3], "STA", "M20", "Non-haz", "None", "None", 54, 3],
    ["C-05", *SMALL[:3], "Foo", "M20", "Unclassified", "None", None, 54, 3],
    ["C-06", *SMALL[:3], "SWA", "M20", "Our yard", "None", None, 54, 3]])
openpyxl_book("voltages.xlsx", [
    ["Cable No", "Cores", "Cable Size (mm2)", "Cable Voltage Rating", "Entry"],
    ["C-01", 3, 2.5, "11kV", "M20"], ["C-02", 3, 2.5, "0.6/1 kV", "M20"], ["C-03", 3, 2.5, "6.6/11 kV", "M20"]])
openpyxl_book("voltage_alone.xlsx", [
    ["Cable No", "Cores", "Cable Size (mm2)", "Cable Voltage Rating", "Entry"], ["C-01", 3, 2.5, "11kV", "M20"],
    ["C-02", 3, 2.5, "415V", "M20"]])
IP = [SEVEN + ["IP"], short("C-01") + [54], short("C-02") + [None], short("C-03") + [None]]
openpyxl_book("defaults.xlsx", IP)
for name, end in (("defaults.csv", "\n"), ("defaults_crlf.csv", "\r\n")):
    text_file(name, end.join(",".join("" if cell is None else str(cell) for cell in row) for row in IP) + end)
openpyxl_book("merged_quantity.xlsx", [HEAD + ["Qty"], cable("C-01") + [2], cable("C-02"), cable("C-03") + [3]],
              lambda _, sheet: sheet.merge_cells("L2:L3"))
openpyxl_book("type_not_explained.xlsx", [
    ["Cable No", "Cable Type", "Cores", "CSA", "Entry"], ["C-01", "XLPE/SWA/PVC", 3, 2.5, "M20"],
    ["C-02", "XLPE/PVC", 3, 2.5, "M20"], ["C-03", "MICC", 3, 2.5, "M20"]])
openpyxl_book("diameter_alone.xlsx", [["Cable No", "Ø (mm)", "Bedding", "Entry"], ["C-01", 13.9, 9.2, "M20"]])

# ---- what stands beside the cells --------------------------------------------------------------


def comments(_, sheet):
    for cell, text in (("D2", "check size!"), ("A3", "deleted rev C"), ("A1", "headings agreed")):
        sheet[cell].comment = Comment(text, "estimator")


openpyxl_book("comments.xlsx", [SEVEN, short("C-01"), short("C-02")], comments)
converted("comments_gnumeric.xlsx", "gnumeric", HERE / "comments.xlsx")
converted("comments_libreoffice.xlsx", "libreoffice", HERE / "comments.xlsx")


def answered_comment(source, name):
    """A comment that can be answered stands in a part of its own, and in the old part for old programs."""
    space = "http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"
    kind = "http://schemas.microsoft.com/office/2017/10/relationships/threadedComment"
    part = "xl/threadedComments/threadedComment1.xml"
    with zipfile.ZipFile(HERE / source) as old, zipfile.ZipFile(HERE / name, "w", zipfile.ZIP_DEFLATED) as new:
        for item in old.infolist():
            data = old.read(item)
            if item.filename == "xl/worksheets/_rels/sheet1.xml.rels":
                data = data.replace(b"</Relationships>", f'<Relationship Id="rId9" Type="{kind}" Target="../'
                                    f'{part[3:]}"/></Relationships>'.encode())
            new.writestr(item, data)
        new.writestr(part, f'<ThreadedComments xmlns="{space}"><threadedComment ref="D2" id="{{1}}"><text>which is '
                     'it?</text></threadedComment></ThreadedComments>')


answered_comment("comments.xlsx", "comments_answered.xlsx")


def text_box(book):
    sheet = book.add_worksheet("Cables")
    for i, row in enumerate([SEVEN, short("C-01")]):
        sheet.write_row(i, 0, row)
    sheet.insert_textbox(4, 1, "ALL CABLES IN ZONE 1:\nEx e glands")


xlsxwriter_book("text_box.xlsx", text_box)
openpyxl_book("page_header.xlsx", [SEVEN, short("C-01")], lambda _, sheet: setattr(
    sheet.oddHeader.center, "text", "CABLES OF THE HAZARDOUS AREA"))


def cover(book, _):
    sheet = book.create_sheet("Cover", 0)
    for row in (["INVENTED SITE"], ["The whole site is classified Zone 2 IIB T3"]):
        sheet.append(row)


openpyxl_book("cover_with_zone.xlsx", [SEVEN, short("C-01")], cover)
openpyxl_book("hidden_column.xlsx", [SEVEN, short("C-01")],
              lambda _, sheet: setattr(sheet.column_dimensions["D"], "hidden", True))

# ---- sheets in the manner of others -------------------------------------------------------------

for number, ends in enumerate((("Supply", "Load Point"), ("Sending", "Receiving"), ("Upstream", "Downstream"),
                               ("Fed From", "Feeding"), ("FROM (Panel)", "TO (Motor)"), ("Equipment 1", "Equipment 2")), 6):
    openpyxl_book(f"two_ends_{number}.xlsx", [["Cable No", *ends, *SEVEN[3:]], short("C-01")])
openpyxl_book("supply_of_voltage.xlsx", [["Cable No", "Supply", *SEVEN[3:]], ["C-01", "415V 3PH", *SMALL]])
openpyxl_book("revision_block.xlsx", [
    ["INVENTED WORKS LTD", None, None, "Document", "X-100"], ["Rev", "Date", "By", "Description"],
    ["A", "01/02/2026", "XY", "First issue"], ["B", "03/02/2026", "XY", "Cable C-02 added"], [],
    SEVEN + ["Length"], short("C-01") + [40], short("C-02") + [20], [], ["NOTES"],
    ["1.", "All lengths are approximate"], ["2)", "Depth of burial 600 mm"], ["Prepared by", "XY", "Checked by"]])


def dates(_, sheet):
    for cell in ("A2", "D3", "G4"):
        sheet[cell].number_format = "d-mmm"


DAY = datetime.datetime(2026, 2, 1)
openpyxl_book("dates.xlsx", [SEVEN, short(DAY), short("C-02")[:3] + [DAY, 9.2, 0.9, "M20"],
                             short("C-03")[:6] + [DAY]], dates)
openpyxl_book("ditto.xlsx", [HEAD, cable("C-01", area=HAZARDOUS), cable("C-02", area=['"'] * 4),
                             cable("C-03", area=["-do-"] * 4), cable("C-04", area=["Ditto"] * 4)])
openpyxl_book("tolerances.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "Entry"], ["C-01", "13.9±0.3", "9.2 +/- 0.2", 0.9, "M20"],
    ["C-02", "16.9±0.3", 9.2, 0.9, "M20"], ["C-03", "~13.9", 9.2, 0.9, "M20"], ["C-04", "13.5/14.3", 9.2, 0.9, "M20"],
    ["C-05", "13.5-14.3", 9.2, 0.9, "M20"], ["C-06", "<14", 9.2, 0.9, "M20"], ["C-07", "13,9", 9.2, 0.9, "M20"]])
openpyxl_book("formulas_not_calculated.xlsx", [
    SEVEN + ["Zone", "IP"], short("C-01") + ["none", 54], short("C-02")[:3] + ["=13+0.9", *SMALL[1:], "none", 54],
    short("C-03") + ["=1*1", 54], ['="C-"&4', "MCC-1", "Pump", *SMALL, "none", 54]])
openpyxl_book("ends_with_places.xlsx", [
    ["Cable No", "FROM", None, None, "TO", None, None, *SEVEN[3:], "IP"],
    [None, "Equipment", "Location", "Area Class", "Equipment", "Location", "Area Class"],
    ["C-01", "MCC-1", "Substation", "Safe", "P-1", "Field", "Zone 1", *SMALL, 66]],
    lambda _, sheet: [sheet.merge_cells(c) for c in ("A1:A2", "B1:D1", "E1:G1", "H1:H2", "I1:I2", "J1:J2", "K1:K2", "L1:L2")])
text_file("gland_of_one_end.csv", "\n".join([
    "Cable No,From,To,OD,Bedding,Wire,Gland at To End,,", ",,,,,,Entry,Hole Type,Wall (mm)",
    "C-01,MCC-1,Pump,13.9,9.2,0.9,M20,clearance,2"]) + "\n")
text_file("gland_of_some_end.csv", "\n".join([
    "Cable No,From,To,OD,Bedding,Wire,Motor End,,", ",,,,,,Entry,Hole Type,Wall (mm)",
    "C-01,MCC-1,Pump,13.9,9.2,0.9,M20,clearance,2"]) + "\n")
openpyxl_book("entries_of_ends.xlsx", [
    ["Cable No", "From", "To", "O/D", "Bedding", "Wire", "Gland Entry - From", None, None, "Gland Entry - To"],
    [None] * 6 + ["Size", "Type", "Wall (mm)"] * 2, ["C-01", "MCC-1", "Pump", *SMALL, "A", 2, "M25", "B", 3]],
    lambda _, sheet: [sheet.merge_cells(c) for c in ("A1:A2", "B1:B2", "C1:C2", "D1:D2", "E1:E2", "F1:F2", "G1:I1", "J1:L1")])
openpyxl_book("area_numbers.xlsx", [SEVEN + ["Area"], short("C-01") + [1], short("C-02") + [2]])
openpyxl_book("area_numbers_plant.xlsx", [SEVEN + ["Area"], short("C-01") + [1], short("C-02") + [300]])
openpyxl_book("ex_yes_no.xlsx", [SEVEN + ["Ex"], short("C-01") + ["Yes"], short("C-02") + ["No"]])
openpyxl_book("zone_in_a_code.xlsx", [SEVEN + ["Zone"], short("C-01") + ["II"]])
openpyxl_book("equipment_ex.xlsx", [SEVEN, short("C-01", ("MCC-1", "Ex d motor P-1"))])
openpyxl_book("a_row_for_each_core.xlsx", [SEVEN + ["Core No"], short("C-01") + [1], short("C-01") + [2]])
openpyxl_book("voltages_in_words.xlsx", [
    SEVEN + ["Voltage"], short("C-01") + ["0.6/1kV"], short("C-02") + ["415V 3PH"], short("C-03") + ["LV"]])
text_file("strokes.csv", "\n".join("|".join(map(str, row)) for row in (SEVEN, short("C-01"))) + "\n")
text_file("title_in_first_column.csv", "Hazardous area,,,,,,\n" + ",".join(SEVEN) + "\n"
          + ",".join(map(str, short("C-01"))) + "\n")
openpyxl_book("remarks_of_supply.xlsx", [
    SEVEN + ["Remarks"], short("C-01") + ["DO NOT USE"], short("C-02") + ["Glands by others"],
    short("C-03") + ["Free-issue by client"], short("C-04") + ["Replaced by C-09"], short("C-05") + ["Void under floor"],
    short("C-06") + ["Gland supplied with motor"], short("C-07") + ["paint blue"]])


def table(book):
    sheet = book.add_worksheet("Cables")
    sheet.add_table(0, 0, 3, 7, {"columns": [{"header": each} for each in SEVEN] + [
        {"header": "Length", "total_function": "sum"}], "total_row": True, "data": [short("C-01") + [40], short("C-02") + [20]]})
    sheet.write_formula(3, 7, "=SUBTOTAL(109,H2:H3)", None, 60)
    sheet.write(3, 0, "Total")


xlsxwriter_book("table.xlsx", table)


def collapsed(_, sheet):
    for row in (3, 4):
        sheet.row_dimensions[row].hidden = True
        sheet.row_dimensions[row].outlineLevel = 1


openpyxl_book("collapsed.xlsx", [SEVEN, ["AREA 100"], short("C-01"), short("C-02"), ["AREA 200"], short("C-03")], collapsed)
openpyxl_book("side_by_side.xlsx", [SEVEN + [None, "Type", "O/D"], short("C-01") + [None, "T1", 25],
                                    short("C-02") + [None, "T2", 30]])


def second_sheet(book, _):
    sheet = book.create_sheet("Sheet 2 of 2")
    for row in (short("C-03"), short("C-04")):
        sheet.append(row)


openpyxl_book("goes_on_without_headings.xlsx", [SEVEN, short("C-01")], second_sheet, "Sheet 1 of 2")
openpyxl_book("zone_below_the_first.xlsx", [HEAD, cable("C-01", area=HAZARDOUS), cable("C-02", area=[None] * 4)])
openpyxl_book("note_with_zone.xlsx", [SEVEN, short("C-01"), [], ["Notes:"], ["1", "Cables in Zone 1 to have Ex d glands"]])


def zone_formats(_, sheet):
    sheet["H2"].number_format = '"Zone "0'
    sheet["D3"].number_format = "0.0%"


openpyxl_book("formats_of_values.xlsx", [HEAD, cable("C-01", area=[1, "e", "IIB", 66]),
                                         cable("C-02", figures=[0.139, 9.2, 0.9, "M20"])], zone_formats)

# ---- places told in two ways, and areas that ask ------------------------------------------------

openpyxl_book("title_over_plain_zones.xlsx", [["ZONE 1"], HEAD, cable("C-01"), cable("C-02")])
openpyxl_book("section_over_plain_zones.xlsx", [
    HEAD, cable("C-01"), ["ZONE 1 AREA"], ["Process pumps"], cable("C-02"), cable("C-03", area=HAZARDOUS),
    ["SWITCHROOM"], cable("C-04")])
openpyxl_book("area_that_asks.xlsx", [["Petrol pump forecourt"], SEVEN, short("C-01")])
openpyxl_book("area_that_is_answered.xlsx", [HEAD, cable("C-01", ends=("MCC-1", "Battery room"))])
text_file("no_break_space.csv", "Cable No,From,To,O/D,Bedding,Wire,Entry\n"
          "C-01,MCC-1,P-101 Zone\u00a01,13.9,9.2,0.9,M20\n")
with xlsxwriter.Workbook(HERE / "sums_of_diameters.xlsx") as book:
    sheet = book.add_worksheet("Cables")
    for number, row in enumerate([SEVEN, short("C-01"), short("C-02"), ["SUBTOTAL", "", ""], short("C-03"),
                                  ["Grand Total", "", ""]]):
        sheet.write_row(number, 0, row)
    sheet.write_formula("D4", "=SUM(D2:D3)", None, 27.8)
    sheet.write_formula("D6", "=SUM(D2:D5)", None, 69.5)
openpyxl_book("tag_of_a_run.xlsx", [SEVEN] + [short(tag) for tag in ("C8", "C9", "C10-12", "C13", "C14")])
pandas.DataFrame([["C-01", "MCC-1", "Pump", "4C 16 600/1000V", 20.9, 15.1, 1.25, "M25"],
                  ["C-02", "MCC-1", "Pump", "3C x 95 11kV", 20.9, 15.1, 1.25, "M25"]],
                 columns=["Cable No", "From", "To", "Cable Size", "O/D", "Bedding", "Wire", "Entry"]
                 ).to_excel(HERE / "size_with_voltage.xlsx", index=False)
openpyxl_book("ambient_in_one_column.xlsx", [
    SEVEN + ["Ambient (\u00b0C)"], short("C-01") + ["-20/+40"], short("C-02") + ["-20/+120"],
    short("C-03") + ["120"], short("C-04")])
openpyxl_book("two_tables_side_by_side.xlsx", [SEVEN + [None] + SEVEN, short("C-01") + [None] + short("C-11")])


# ---- what is said beside the cables -------------------------------------------------------------

openpyxl_book("title_block.xlsx", [["Project", "P-7"], ["Zone:", 1], SEVEN, short("C-01")])
openpyxl_book("titles_that_take_away.xlsx", [
    SEVEN, short("C-01"), ["DELETED CABLES"], short("C-02"), ["PUMP HOUSE"], short("C-03"),
    ["GLANDS BY VENDOR"], short("C-04")])
openpyxl_book("ends_in_blocks.xlsx", [
    ["Cable No", "O/D", "Bedding", "Wire", "From", "Entry", "To", "Entry"],
    ["C-01", *SMALL[:3], "MCC-1", "M20", "Pump", "M25"]])
openpyxl_book("greatest_diameter.xlsx", [SEVEN + ["OD Max"], short("C-01") + [14.9], short("C-02") + [18.5]])
openpyxl_book("not_required_elsewhere.xlsx", [SEVEN + ["Shroud"], short("C-01") + ["Not required"]])
with xlsxwriter.Workbook(HERE / "notes_sheet_of_a_text_box.xlsx") as book:
    sheet = book.add_worksheet("Cables")
    sheet.write_row(0, 0, SEVEN)
    sheet.write_row(1, 0, short("C-01"))
    book.add_worksheet("Notes").insert_textbox(1, 1, "ALL CABLES IN ZONE 1")
openpyxl_book("equipment_of_another_sheet.xlsx", [SEVEN, short("C-01")], lambda book, _: [
    book.create_sheet("Motors"), [book["Motors"].append(row) for row in (["Motor", "Enclosure"], ["Pump", "EExd"])]])
text_file("guarded_texts.csv", 'Cable No,From,To,O/D,Bedding,Wire,Entry\n'
          '"=""0012""",MCC-1,Pump,"=""13.9""",9.2,0.9,M20\n')


# ---- what stands beside, over or under what is read ----------------------------------------------


def blocks_of_ends(_, sheet):
    sheet.merge_cells("F1:G1")
    sheet.merge_cells("H1:I1")


openpyxl_book("block_with_zone.xlsx", [
    ["Cable No", "O/D (mm)", "Bedding (mm)", "Wire (mm)", None, "From - Safe area", None, "To - Zone 1", None],
    [None] * 5 + ["Entry", "Hole", "Entry", "Hole"],
    ["C-01", *SMALL[:3], None, "M20", "clearance", "M20", "clearance"]], blocks_of_ends)


def second_lists(book, _):
    for title, rows in (("Drums", [["Cable No", "Drum", "O/D (mm)", "Length (m)"], ["C-01", "D1", 13.9, 100]]),
                        ("Glands", [["Tag", "Cable No", "End", "Entry", "O/D (mm)", "Bedding (mm)", "Wire (mm)"],
                                    ["G-1", "C-01", "A", "M20", *SMALL[:3]]])):
        sheet = book.create_sheet(title)
        for row in rows:
            sheet.append(row)


openpyxl_book("second_lists.xlsx", [SEVEN, short("C-01")], second_lists)


def struck_in_struck_cells(book):
    """As LibreOffice saves a text that is struck in part: the cell's own font is struck too."""
    sheet = book.add_worksheet("Cables")
    out = book.add_format({"font_strikeout": True})
    plain = book.add_format({"bold": True})
    for i, row in enumerate([SEVEN, short("C-01"), short("C-02"), short("C-03")]):
        sheet.write_row(i, 0, row)
    sheet.write_rich_string(2, 0, out, "C-02A ", plain, "C-02", out)
    sheet.write_rich_string(3, 0, out, "C-0", out, "3", out)


xlsxwriter_book("struck_in_struck_cells.xlsx", struck_in_struck_cells)
