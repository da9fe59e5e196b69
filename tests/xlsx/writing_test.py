"""Workbooks written by `cutback schedule --xlsx`, then read with openpyxl (MIT) and held against the
CSV files of the same run."""

import csv
import datetime
import re
import subprocess
import unittest
from decimal import Decimal

import openpyxl

import support
from support import GLANDS, SOURCE, WORK, run

SITE = SOURCE / "tests/cli/schedule/one_end.csv"
TEXTS = {"state", "not_asked", "tag", "end", "verdict", "part", "barrier", "reason", "description", "group", "nearest", "change",
         "sheath_od_evidence", "bedding_evidence", "armour_evidence", "defaults", "remarks",
         "supplier", "currency", "group"}


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
    """The kinds of formulas that there are."""
    if match := re.fullmatch(r"=SUBTOTAL\(109,([IL])2:\1(\d+)\)", formula):
        return sum(cell(f"{match[1]}{row}") or 0 for row in range(2, int(match[2]) + 1))
    if match := re.fullmatch(r"=(D\d+)-(R\d+)", formula):
        return cell(match[1]) - cell(match[2])
    if match := re.fullmatch(r"=MIN\((D\d+),(F\d+)\)", formula):
        return min(cell(match[1]), cell(match[2]) or 0)
    if match := re.fullmatch(r"=IF\((D\d+)-(F\d+)<=0,0,CEILING\(MAX\(\1-\2,(N\d+)\),MAX\(1,(M\d+)\)\)\)", formula):
        needed = cell(match[1]) - (cell(match[2]) or 0)
        pack = max(1, cell(match[4]) or 0)
        return 0 if needed <= 0 else -(-max(needed, cell(match[3]) or 0) // pack) * pack
    if match := re.fullmatch(r"=MAX\(0,(D\d+)-(F\d+)\)", formula):
        return max(0, cell(match[1]) - (cell(match[2]) or 0))
    if match := re.fullmatch(r"=([GK]\d+)\*(H\d+)", formula):
        return cell(match[1]) * cell(match[2])
    raise AssertionError("another formula: " + formula)


class Workbook(unittest.TestCase):
    def check(self, path, tables):
        values = openpyxl.load_workbook(path, data_only=True)
        self.assertEqual(values.sheetnames, ["Overview", "Results", "Take-off", "Exceptions", "Notes"])
        for name, rows in tables.items():
            sheet = values[name]
            # How the schedule was read has a sheet of its own here, and stands last in the CSV.
            if name == "Exceptions":
                rows = [row for row in rows if row[0] != "how the schedule was read"]
            self.assertEqual(sheet.max_row, len(rows))
            heads = [cell.value for cell in sheet[1]]
            self.assertEqual(len(heads), len(rows[0]))
            self.assertEqual(len(set(heads)), len(heads))
            self.assertFalse(any("_" in head or not head[0].isupper() for head in heads))  # words
            for i, row in enumerate(rows[1:]):
                for j, want in enumerate(row):
                    self.check_cell(sheet.cell(i + 2, j + 1), want, rows[0][j] in TEXTS)
            self.assertEqual(sheet.freeze_panes, "A2" if name == "Exceptions" else "B2")
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

    def test_money_with_packs(self):
        """Three decimals, packs and accessories: the total is that of its rows, to the last digit."""
        prices = WORK / "accessories.csv"
        prices.write_text("name,thread,price,stock,pack,min_order\nlocknut,,0.125,,50,\n"
                          "washer,M20,0.075,3,,10\nARM-16-M20,,,,4,\n", encoding="utf-8")
        path, tables = all_of(SITE, "packs", "--accessories", prices, "--currency", "KWD")
        self.check(path, tables)
        heads, *rows = tables["Take-off"]
        lines = [dict(zip(heads, row)) for row in rows]
        total = lines.pop()
        for column in ("total", "provisional_total"):
            self.assertEqual(Decimal(total[column]), sum(Decimal(line[column] or 0) for line in lines))
        self.assertTrue(all(len(line["total"].partition(".")[2]) == 3 for line in lines if line["total"]))
        self.assertEqual({line["currency"] for line in lines if line["unit_price"]}, {"KWD"})
        live = openpyxl.load_workbook(path)["Take-off"]
        saved = openpyxl.load_workbook(path, data_only=True)["Take-off"]
        for row in live.iter_rows():
            for cell in row:
                if cell.data_type == "f":
                    self.assertAlmostEqual(calculate(cell.value, lambda at: saved[at].value),
                                           saved[cell.coordinate].value, places=9)
        self.assertEqual(live["H2"].number_format, "#,##0.000")

    def test_overview(self):
        path, tables = all_of(SITE, "overview", "--spare", "5%", "--currency", "EUR")
        saved = openpyxl.load_workbook(path, data_only=True)["Overview"]
        live = openpyxl.load_workbook(path)["Overview"]
        lines = {row[0]: row[1:] for row in saved.iter_rows(values_only=True) if row[0]}
        heads, *rows = tables["Results"]
        verdicts = [row[heads.index("verdict")] for row in rows]
        self.assertEqual(lines["A gland fits"][0], verdicts.count("fits"))
        self.assertEqual(lines["No gland of the list fits"][0], verdicts.count("no-fit"))
        heads, *rows = tables["Take-off"]
        total = dict(zip(heads, rows[-1]))
        # The list prices glands alone: what else is ordered is no part of the sum, and is counted.
        unpriced = sum(int(row[heads.index("to_order")]) for row in rows[:-1] if not row[heads.index("total")])
        label = f"All that is to be ordered, but for {unpriced} pieces without a price"
        self.assertAlmostEqual(lines[label][2], float(total["total"]))
        self.assertIn("total (EUR)", lines["To order"])
        formula = next(row[3].value for row in live.iter_rows() if row[0].value == label)
        self.assertEqual(formula, f"=SUM('Take-off'!I2:I{len(rows)})")
        self.assertEqual(len(live._charts), 3)
        fits = [row for row in tables["Results"][1:] if row[2] == "fits"]
        bins = [value[0] for name, value in lines.items() if " mm" in name and name[0] in "0123456789o"]
        self.assertEqual(sum(bins), len(fits))

    def test_revisions(self):
        folder = SOURCE / "tests/cli/schedule"
        changes = WORK / "changes.csv"
        path, tables = all_of(folder / "revision_b.csv", "revised", "--against",
                              folder / "revision_a.csv", "--changes", changes)
        book = openpyxl.load_workbook(path, data_only=True)
        rows = [[str(cell or "") for cell in row] for row in book["Changes"].iter_rows(values_only=True)]
        self.assertEqual(rows[1:], rows_of(changes)[1:])
        self.assertIn("added", {row[0] for row in rows})
        heads, *lines = tables["Take-off"]
        for line in lines[:-1]:
            line = dict(zip(heads, line))
            self.assertEqual(int(line["quantity"]) - int(line["old_quantity"]), int(line["difference"]))

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
            self.assertNotIn(b"<f>", archive.read("xl/worksheets/sheet2.xml"))
        # our own reader gives back what was written
        status, out, _ = run(path, "--json", "--sheet", "Results", "--column", "end=End",
                             "--column", "sheath_od_mm=Price", "--header-row", "1")
        self.assertLess(status, 2)
        self.assertEqual([line["tag"] for line in map(support.json.loads, out.splitlines()) if "notes" not in line],
                         tags)
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
        ends = [line for line in map(support.json.loads, out.splitlines()) if "notes" not in line]
        self.assertEqual(len(ends), 5)
        self.assertEqual(path.read_bytes(), first.read_bytes())

    def test_notes(self):
        path, _ = all_of(SITE, "notes")
        book = openpyxl.load_workbook(path)
        text = "\n".join(row[0] or "" for row in book["Notes"].iter_rows(values_only=True))
        for word in ("cutback", "one_end.csv", "two_glands.csv", "certificates", "local code", "competent"):
            self.assertIn(word, text)
        self.assertIn("Notes", book["Results"].oddFooter.left.text)
        self.assertNotIn("Taken for blanks", text)

    def test_notes_of_the_run(self):
        path, _ = all_of(SITE, "run_notes", "--revision", "C1", "--spare", "5%", "--currency", "EUR")
        lines = [row[0] or "" for row in openpyxl.load_workbook(path)["Notes"].iter_rows(values_only=True)]
        self.assertIn("Revision: C1.", lines)
        self.assertIn("Options: prefer price, spare 5%, currency EUR.", lines)
        self.assertTrue(any(line.startswith("Counts: 5 rows, 5 ends; fits 1, marginal-inside 1") for line in lines))
        self.assertFalse(any(line.startswith("Made at") for line in lines))

    def test_defaults_are_named(self):
        path, _ = all_of(SITE, "defaults", "--default", "ip=54", "--default", "gas_group=IIB")
        book = openpyxl.load_workbook(path)
        lines = [row[0] or "" for row in book["Notes"].iter_rows(values_only=True)]
        self.assertEqual(sum(line.startswith("Taken for blanks ip=54 in ") for line in lines), 1)
        heads, *rows = book["Results"].iter_rows(values_only=True)
        self.assertTrue(any("ip=54" in (row[heads.index("Taken for blanks")] or "") for row in rows))

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
