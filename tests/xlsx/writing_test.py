"""Workbooks written by `cutback schedule --xlsx`, then read with openpyxl (MIT) and held against the
CSV files of the same run."""

import csv
import datetime
import re
import subprocess
import unittest

import openpyxl

import support
from support import GLANDS, SOURCE, WORK, run

SITE = SOURCE / "tests/cli/schedule/one_end.csv"
TEXTS = {"state", "not_asked", "tag", "end", "verdict", "part", "barrier", "reason", "description", "group", "nearest", "change",
         "sheath_od_evidence", "bedding_evidence", "armour_evidence", "defaults", "remarks"}


def rows_of(path):
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


def all_of(schedule, name, *args):
    """Runs with every output. @return path of the workbook and the three CSVs by sheet"""
    files = {"Results": WORK / f"{name}.results.csv", "Take-off": WORK / f"{name}.takeoff.csv",
             "Exceptions": WORK / f"{name}.exceptions.csv"}
    path = WORK / f"{name}.xlsx"
    status, out, err = run(schedule, "--output", files["Results"], "--takeoff", files["Take-off"],
                           "--exceptions", files["Exceptions"], "--xlsx", path, *args)
    if status > 1 or out:
        raise AssertionError(err)
    return path, {sheet: rows_of(file) for sheet, file in files.items()}


def calculate(formula, cell):
    """The three kinds of formulas that there are."""
    if match := re.fullmatch(r"=SUM\(I2:I(\d+)\)", formula):
        return sum(cell(f"I{row}") or 0 for row in range(2, int(match[1]) + 1))
    if match := re.fullmatch(r"=MAX\(0,(D\d+)-(F\d+)\)", formula):
        return max(0, cell(match[1]) - (cell(match[2]) or 0))
    if match := re.fullmatch(r"=(G\d+)\*(H\d+)", formula):
        return cell(match[1]) * cell(match[2])
    raise AssertionError("another formula: " + formula)


class Workbook(unittest.TestCase):
    def check(self, path, tables):
        values = openpyxl.load_workbook(path, data_only=True)
        self.assertEqual(values.sheetnames, ["Results", "Take-off", "Exceptions", "Notes"])
        for name, rows in tables.items():
            sheet = values[name]
            self.assertEqual(sheet.max_row, len(rows))
            for i, row in enumerate(rows):
                for j, want in enumerate(row):
                    self.check_cell(sheet.cell(i + 1, j + 1), want, i == 0 or rows[0][j] in TEXTS)
            self.assertEqual(sheet.freeze_panes, "A2")
            self.assertTrue(sheet.auto_filter.ref.startswith("A1:"))

    def check_cell(self, cell, want, is_text):
        with self.subTest(cell=cell.coordinate, sheet=cell.parent.title):
            if want == "":
                self.assertIsNone(cell.value)
            elif is_text:
                self.assertEqual((cell.data_type, cell.value), ("s", want))
            else:
                self.assertEqual(cell.data_type, "n")
                decimals = len(want.partition(".")[2])
                self.assertAlmostEqual(cell.value, float(want), delta=0.5001 * 10**-decimals)

    def test_same_as_csv(self):
        path, tables = all_of(SITE, "one_end", "--spare", "5%")
        self.assertGreater(len(tables["Take-off"]), 3)
        self.assertGreater(len(tables["Exceptions"]), 3)
        self.check(path, tables)

    def test_formulas(self):
        path, _ = all_of(SITE, "formulas", "--spare", "100%", "--prefer", "margin")
        live = openpyxl.load_workbook(path)["Take-off"]
        saved = openpyxl.load_workbook(path, data_only=True)["Take-off"]
        count = 0
        for row in live.iter_rows():
            for cell in row:
                if cell.data_type != "f":
                    continue
                count += 1
                self.assertAlmostEqual(calculate(cell.value, lambda at: saved[at].value),
                                       saved[cell.coordinate].value, places=9)
        self.assertGreater(count, 4)
        self.assertEqual(live.cell(live.max_row, 1).value, "TOTAL")

    def test_example(self):
        folder = WORK / "example"
        folder.mkdir()
        subprocess.run(["sh", SOURCE / "examples/estimator/run.sh", folder], check=False,
                       capture_output=True, env=support.ENVIRONMENT | {"CUTBACK": support.PROGRAM})
        self.check(folder / "schedule.xlsx",
                   {sheet: rows_of(folder / f"{file}.csv")
                    for sheet, file in (("Results", "results"), ("Take-off", "takeoff"),
                                        ("Exceptions", "exceptions"))})

    def test_texts_stay_texts(self):
        tags = ["=1+1", "00123", "1e5", "+4", "@a", "TRUE", "_x0041_", "a\tb", "电缆 Ω", "<&>\"'", "2026-11-25"]
        rows = [line.split(",") for line in SITE.read_text().splitlines()]
        schedule = WORK / "tags.csv"
        with schedule.open("w", encoding="utf-8", newline="") as file:
            writer = csv.writer(file)
            writer.writerow(rows[0])
            for tag in tags:
                writer.writerow([tag] + rows[1][1:])
        path, tables = all_of(schedule, "tags")
        sheet = openpyxl.load_workbook(path)["Results"]
        for i, tag in enumerate(tags):
            cell = sheet.cell(i + 2, 1)
            # openpyxl does not undo the escape of an underscore (ECMA-376 part 1, 22.9.2.19)
            self.assertEqual(cell.value.replace("_x005F_", "_"), tag)
            self.assertEqual(cell.number_format, "@")
            if not tag.startswith("="):  # which openpyxl calls a formula even where the file does not
                self.assertEqual(cell.data_type, "s")
        with support.zipfile.ZipFile(path) as archive:
            self.assertNotIn(b"<f>", archive.read("xl/worksheets/sheet1.xml"))
        # our own reader gives back what was written
        status, out, _ = run(path, "--json", "--sheet", "Results", "--column", "end=end",
                             "--column", "sheath_od_mm=price", "--header-row", "1")
        self.assertLess(status, 2)
        self.assertEqual([support.json.loads(line)["tag"] for line in out.splitlines()], tags)
        self.assertEqual(len(tables["Results"]), len(tags) + 1)

    def test_verdicts_are_told_by_weight(self):
        path, _ = all_of(SITE, "weight")
        looks = {"fits": (False, False), "no-fit": (True, False), "unusable": (True, False)}
        for row in openpyxl.load_workbook(path)["Results"].iter_rows(min_row=2):
            font = row[2].font
            self.assertEqual((bool(font.b), bool(font.i)), looks.get(row[2].value, (False, True)))

    def test_same_bytes(self):
        first, _ = all_of(SITE, "first", "--threads", "1")
        second, _ = all_of(SITE, "second", "--threads", "2")
        self.assertEqual(first.read_bytes(), second.read_bytes())

    def test_date_of_creation(self):
        """The environment's SOURCE_DATE_EPOCH (reproducible-builds.org, its specification), else
        one that is always the same."""
        whole = {}
        for given, want in ((None, 946684800), ("1700000000", 1700000000), ("1", 1),
                            ("0", 1), ("253402300799", 253402300799)):
            path = WORK / f"date{given}.xlsx"
            status, _, err = run(SITE, "--output", "/dev/null", "--xlsx", path,
                                 env={"SOURCE_DATE_EPOCH": given} if given else {})
            self.assertEqual(status, 1, err)
            created = openpyxl.load_workbook(path).properties.created
            self.assertEqual(created.replace(tzinfo=datetime.timezone.utc).timestamp(), want)
            with support.zipfile.ZipFile(path) as archive:
                whole[want] = [archive.read(name) for name in archive.namelist()
                               if name != "docProps/core.xml"]
        self.assertTrue(all(parts == whole[1] for parts in whole.values()))

    def test_date_of_creation_that_is_none(self):
        for given in ("yesterday", "-5", "1.5", " 5", "253402300800", "99999999999999999999"):
            path = WORK / "no_date.xlsx"
            status, out, err = run(SITE, "--xlsx", path, env={"SOURCE_DATE_EPOCH": given})
            self.assertEqual((status, out), (2, ""))
            self.assertIn("SOURCE_DATE_EPOCH in the environment", err)
            self.assertFalse(path.exists())
        status, _, _ = run(SITE, env={"SOURCE_DATE_EPOCH": "yesterday"})  # no workbook, no date
        self.assertEqual(status, 1)

    def test_with_json_the_workbook_is_the_same(self):
        first, _ = all_of(SITE, "plain")
        path = WORK / "json.xlsx"
        status, out, _ = run(SITE, "--json", "--xlsx", path)
        self.assertEqual(status, 1)
        self.assertEqual(len(out.splitlines()), 5)
        self.assertEqual(path.read_bytes(), first.read_bytes())

    def test_notes(self):
        path, _ = all_of(SITE, "notes")
        book = openpyxl.load_workbook(path)
        text = "\n".join(row[0] or "" for row in book["Notes"].iter_rows(values_only=True))
        for word in ("cutback", "one_end.csv", "two_glands.csv", "certificates", "local code", "competent"):
            self.assertIn(word, text)
        self.assertIn("Notes", book["Results"].oddFooter.left.text)
        self.assertNotIn("Taken for blanks", text)

    def test_defaults_are_named(self):
        path, _ = all_of(SITE, "defaults", "--default", "ip=54", "--default", "gas_group=IIB")
        book = openpyxl.load_workbook(path)
        lines = [row[0] or "" for row in book["Notes"].iter_rows(values_only=True)]
        self.assertEqual(sum(line.startswith("Taken for blanks ip=54 in ") for line in lines), 1)
        heads, *rows = book["Results"].iter_rows(values_only=True)
        self.assertTrue(any("ip=54" in (row[heads.index("defaults")] or "") for row in rows))

    def test_nothing_is_left_where_it_cannot_be_written(self):
        status, out, err = run(SITE, "--xlsx", WORK / "no such folder" / "a.xlsx")
        self.assertEqual((status, out), (3, ""))
        self.assertIn("cannot be written", err)

    def test_nothing_is_left_of_a_run_that_fails(self):
        schedule = WORK / "open_quote.csv"
        schedule.write_text(SITE.read_text() + '"open\n')
        before = set(WORK.iterdir())
        path = WORK / "kept.xlsx"
        status, _, _ = run(schedule, "--output", "/dev/null", "--xlsx", path)
        self.assertEqual(status, 2)
        self.assertEqual(set(WORK.iterdir()), before)


if __name__ == "__main__":
    assert GLANDS.exists()
    support.main()
