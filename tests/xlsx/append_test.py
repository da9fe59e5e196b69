"""`cutback schedule --append`: a copy of a workbook with the results as columns behind its own, and
everything else as it was. The workbooks are made by openpyxl (MIT), XlsxWriter (BSD-2) and pandas
(BSD-3), and looked at with openpyxl."""

import csv
import io
import json
import unittest
import zipfile

import openpyxl
import pandas
import xlsxwriter
from openpyxl.chart import BarChart, Reference
from openpyxl.comments import Comment
from openpyxl.styles import Font, PatternFill

import support
from support import SOURCE, WORK, run

HEADS = ["Cable No", "From", "To", "O/D (mm)", "Bedding (mm)", "Wire (mm)", "A Entry", "B Entry",
         "Hole", "Wall (mm)"]
ROWS = [["P-201", "MCC", "Pump <1> & co", "14.9+15.1", "9.9+10.1", 0.9, "M20", "M20", "clearance", 2.5],
        ["P-202", "MCC", "Pump 2", 15.0, 10.0, 0.9, "M20", "M25", "clearance", 2.5],
        ["00203", "MCC", "Pump 3", "x", None, None, "M20", "M20", "clearance", 2.5]]


def parts_of(path):
    with zipfile.ZipFile(path) as archive:
        return [(item.filename, archive.read(item)) for item in archive.infolist()]


def by_openpyxl(path):
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "LV cables"
    sheet.append(["Cable schedule, revision C"])
    sheet.merge_cells("A1:L1")
    sheet.append(HEADS)
    for cell in sheet[2]:
        cell.font = Font(bold=True)
        cell.fill = PatternFill("solid", fgColor="FFDD00")
    sheet.append(ROWS[0])
    sheet.append(["PUMP HOUSE"])
    sheet.append(ROWS[1])
    sheet.append([])
    sheet.append(ROWS[2])
    sheet["L3"] = "=D5*2"
    sheet["A3"].comment = Comment("as built", "site")
    sheet.auto_filter.ref = "A2:J7"
    sheet.freeze_panes = "B3"
    other = book.create_sheet("Figures")
    for i in range(5):
        other.append([i, i * i])
    chart = BarChart()
    chart.add_data(Reference(other, min_col=2, min_row=1, max_row=5))
    other.add_chart(chart, "D2")
    book.save(path)
    return "LV cables", 2, [3, 5, 7], 12


def by_xlsxwriter(path):
    book = xlsxwriter.Workbook(path)
    sheet = book.add_worksheet("Cables")
    look = book.add_format({"bold": True, "border": 1})
    sheet.write_row(0, 0, HEADS, look)
    for i, row in enumerate(ROWS):
        sheet.write_row(i + 1, 0, row)
    sheet.set_row(2, 30)
    sheet.conditional_format("D2:D4", {"type": "data_bar"})
    sheet.data_validation("I2:I9", {"validate": "list", "source": ["clearance", "threaded"]})
    sheet.add_table("A1:J4", {"columns": [{"header": head} for head in HEADS]})
    book.close()
    return "Cables", 1, [2, 3, 4], 10


def by_pandas(path):
    pandas.DataFrame(ROWS, columns=HEADS).to_excel(path, sheet_name="Sheet1", index=False,
                                                   engine="openpyxl")
    return "Sheet1", 1, [2, 3, 4], 10


class Append(unittest.TestCase):
    def check(self, make):
        source, target = WORK / f"{make.__name__}.xlsx", WORK / f"{make.__name__}.out.xlsx"
        sheet, heading, lines, width = make(source)
        status, wide, err = run(source, "--append", target, "--wide")
        self.assertEqual(status, 1, err)
        heads, *rows = csv.reader(io.StringIO(wide))
        old, new = parts_of(source), parts_of(target)
        self.assertEqual([name for name, _ in new], [name for name, _ in old])
        changed = [name for (name, before), (_, after) in zip(old, new) if before != after]
        self.assertEqual(changed, ["xl/worksheets/sheet1.xml"])
        before, after = openpyxl.load_workbook(source), openpyxl.load_workbook(target)
        self.assertEqual(after.sheetnames, before.sheetnames)
        was, now = before[sheet], after[sheet]
        self.assertEqual(str(now.merged_cells), str(was.merged_cells))
        self.assertEqual(now.freeze_panes, was.freeze_panes)
        self.assertEqual(now.auto_filter.ref, was.auto_filter.ref)
        for row in was.iter_rows():
            for cell in row:
                same = now[cell.coordinate]
                self.assertEqual((same.value, same.style_id, same.data_type),
                                 (cell.value, cell.style_id, cell.data_type))
        first = heads.index("from_verdict")
        added = ["cutback " + head for head in heads[first:]]
        self.assertEqual([now.cell(heading, width + 1 + i).value for i in range(len(added))], added)
        for line, row in zip(lines, rows):
            self.assertEqual(row[heads.index("line")], str(line))
            for i, want in enumerate(row[first:]):
                got = now.cell(line, width + 1 + i)
                if want == "":
                    self.assertIsNone(got.value)
                elif got.data_type == "n":
                    self.assertEqual(got.value, float(want))
                else:
                    self.assertEqual(got.value, want.removeprefix("'"))
        others = set(range(1, now.max_row + 1)) - set(lines) - {heading}
        for line in others:
            self.assertTrue(all(now.cell(line, width + 1 + i).value is None for i in range(len(added))))
        self.assertEqual(now.max_column, width + len(added))
        # The copy is a schedule as well: the columns that were added change nothing, but that cells
        # beyond the headings have headings now.
        for copy, own in zip(support.ends(target), support.ends(source), strict=True):
            self.assertEqual(copy["tag"], own["tag"])
            if own["verdict"] != "unusable":
                self.assertEqual(copy["verdict"], own["verdict"])

    def test_openpyxl(self):
        self.check(by_openpyxl)

    def test_xlsxwriter(self):
        self.check(by_xlsxwriter)

    def test_pandas(self):
        self.check(by_pandas)

    def test_gallery(self):
        """Sheets as several programs write them: nothing is lost, and the copy can be read."""
        gallery = SOURCE / "tests/xlsx/gallery"
        done = 0
        for source in sorted(gallery.glob("*.xlsx")):
            target = WORK / f"gallery_{source.name}"
            status, _, err = run(source, "--append", target, "--output", "/dev/null")
            if status > 1:
                self.assertFalse(target.exists(), err)
                continue
            old, new = dict(parts_of(source)), dict(parts_of(target))
            self.assertEqual(set(old), set(new))
            for name, content in old.items():
                if "worksheets/sheet" not in name.replace("\\", "/").lower():
                    self.assertEqual(new[name], content)
            again, _, err = run(target, "--output", "/dev/null")
            self.assertLess(again, 2, err)
            done += 1
        self.assertGreater(done, 25)

    def test_over_its_input(self):
        source = WORK / "over.xlsx"
        by_xlsxwriter(source)
        before = source.read_bytes()
        status, _, err = run(source, "--append", source, "--output", "/dev/null")
        self.assertEqual(status, 2, err)
        self.assertIn("would replace a file that is read", err)
        self.assertEqual(source.read_bytes(), before)

    def test_renewed(self):
        """A copy that is appended to again has its columns renewed in place, and its reader one line
        about them."""
        for make in (by_openpyxl, by_xlsxwriter, by_pandas):
            with self.subTest(make.__name__):
                source, one, two = (WORK / f"renewed_{make.__name__}_{i}.xlsx" for i in range(3))
                sheet, heading, lines, width = make(source)
                run(source, "--append", one, "--output", "/dev/null")
                book = openpyxl.load_workbook(one)
                cells = book[sheet]
                first = width + 1
                self.assertEqual(cells.cell(heading, first).value, "cutback from_verdict")
                verdict = cells.cell(lines[1], first).value
                # A person looked at it, changed a cable, and put a column of their own behind.
                cells.cell(lines[1], first).fill = PatternFill("solid", fgColor="FF0000")
                for line in lines:
                    for column in range(1, width + 1):
                        if cells.cell(heading, column).value == "O/D (mm)":
                            cells.cell(line, column).value = "14.9+15.1"
                mine = cells.max_column + 1
                cells.cell(heading, mine).value = "Checked by"
                cells.cell(lines[0], mine).value = "JB"
                # A row that is no cable any more has no result any more.
                cells.cell(heading + 20, 2).value = "see above"
                cells.cell(heading + 20, first).value = "left behind"
                book.save(one)
                status, out, err = run(one, "--append", two, "--json")
                self.assertLess(status, 2, err)
                notes = [json.loads(line)["notes"] for line in out.splitlines() if '"notes"' in line]
                said = " ".join(sum(notes, []))
                self.assertIn(f"{mine - first} columns of an earlier result are not read", said)
                self.assertNotIn("cutback from_", said)
                after = openpyxl.load_workbook(two)[sheet]
                self.assertEqual(after.max_column, mine)
                self.assertEqual(after.cell(lines[0], mine).value, "JB")
                heads = [after.cell(heading, column).value for column in range(first, mine)]
                self.assertEqual(heads, [cells.cell(heading, column).value for column in range(first, mine)])
                self.assertNotEqual(after.cell(lines[1], first).value, verdict)
                self.assertEqual(after.cell(lines[1], first).fill.fgColor.rgb, "00FF0000")
                self.assertIsNone(after.cell(heading + 20, first).value)

    def test_refused(self):
        status, _, err = run(SOURCE / "tests/cli/schedule/one_end.csv", "--append", WORK / "no.xlsx")
        self.assertEqual(status, 2)
        self.assertIn("one .xlsx file", err)
        self.assertFalse((WORK / "no.xlsx").exists())


if __name__ == "__main__":
    support.main()
