"""The gallery: sheets as several programs write them, and what each must give.

Who wrote which stands in gallery/make.py. Nothing here may be silently wrong: a row is answered, or
it is named. EX glands are dearer than PLAIN ones, so that a place that was lost shows in the part.
"""

import json
import subprocess
import unittest

import support

GALLERY = support.SOURCE / "tests/xlsx/gallery"


def answers(*names, args=()):
    """Exit status, "line tag end part-or-verdict" of each end, and stderr on one line."""
    done = subprocess.run(
        [support.PROGRAM, "schedule", *names, "--glands", "glands.csv", "--json", *args], cwd=GALLERY,
        capture_output=True, env=support.ENVIRONMENT, check=False)
    lines = [json.loads(line) for line in done.stdout.decode().splitlines()]
    return done.returncode, lines, " ".join(done.stderr.decode().split())


def short(line):
    return " ".join(str(part) for part in (
        line["line"], line["tag"], line["end"],
        line["part"] if line["verdict"] == "fits" else line["verdict"]) if part != "")


def both(line, tag, part, other=None):
    return [f"{line} {tag} from {part}", f"{line} {tag} to {other or part}"]


AREA = [end for i in range(1, 7) for end in both(i + 1, f"C-0{i}", "EX-20")] + both(8, "C-07", "PLAIN-20")
PLAIN_PAIR = both(2, "C-01", "PLAIN-20")

# name: (options, ends, what stderr says)
CASES = {
    "merged_area.xlsx": ((), AREA, ()),
    "merged_area_xlsxwriter.xlsx": ((), AREA, ()),
    "merged_area_gnumeric.xlsx": ((), AREA, ()),
    "merged_area_libreoffice.xlsx": ((), AREA, ()),
    "merged_block.xlsx": ((), [e for i in (1, 2, 3) for e in both(i + 1, f"C-0{i}", "EX-20")], ()),
    "merged_long.xlsx": ((), [e for i in range(1, 1201) for e in both(i + 1, f"C-{i:04}", "EX-20")], ()),
    "merged_headings.xlsx": ((), both(3, "C-01", "PLAIN-20", "EX-20") + both(4, "C-02", "PLAIN-20"),
                             ("to_zone = Zone / To", "sheath_od_mm = Diameters (mm) / O/D")),
    "units_row.xlsx": ((), ["3 C-01 PLAIN-20", "4 C-02 PLAIN-25"], ("armour_mm = Wire / mm",)),
    "line_breaks.xlsx": ((), ["2 C-01 PLAIN-20"], ("bedding_mm = Diameter under armour (mm)",)),
    "tag_over_two_rows.xlsx": ((), ["2 C-01 motor PLAIN-20", "3 C-01 panel PLAIN-20", "4 C-02 motor PLAIN-25",
                                    "5 C-02 panel no-fit"], ()),
    "titles_and_sums.xlsx": ((), both(5, "C-01", "PLAIN-20") + both(6, "C-02", "PLAIN-20") + both(10, "C-03", "EX-20"),
                             ('3 titles (row 4 "PUMP HOUSE", row 9 "TANK FARM 2", row 12 "all lengths are estimates")',
                              '2 without a tag (row 7 "50", row 11 "Total")')),
    "title_merged.xlsx": ((), both(3, "C-01", "PLAIN-20") + both(5, "C-02", "PLAIN-20"),
                          ('2 titles (row 2 "SECTION-1", row 4 "SECTION-2")', "gas_group = Gas")),
    "headings_again.xlsx": ((), PLAIN_PAIR + both(4, "C-02", "PLAIN-20"),
                            ('1 row of headings again (row 3 "Cable No")', "gas_group = Gas")),
    "tag_forgotten.xlsx": ((), PLAIN_PAIR + ["3 from unusable", "3 to unusable"] + both(4, "C-03", "not-known"), ()),
    "hidden_rows.xlsx": ((), PLAIN_PAIR + both(4, "C-03", "PLAIN-20") + both(5, "C-04", "PLAIN-20"),
                         ('1 hidden (row 3 "C-02")',)),
    "filtered.xlsx": ((), PLAIN_PAIR, ('1 hidden (row 3 "C-02")',)),
    "struck_rows.xlsx": ((), PLAIN_PAIR + both(5, "C-04", "unusable") + both(6, "C-05", "PLAIN-20"),
                         ('2 struck through (row 3 "C-02", row 4 "C-03")',)),
    "struck_xlsxwriter.xlsx": ((), both(3, "C-02", "PLAIN-20") + both(4, "C-03", "unusable"),
                               ('1 struck through (row 2 "C-01")',)),
    "several_sheets.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20") + both(3, "C-03", "EX-20"),
                            ("not read: sheet Old: it is hidden", "not read: sheet Notes: there is no row of headings",
                             "not read: sheet Lengths: nothing tells the sheath diameter")),
    "chart_sheet.xlsx": ((), PLAIN_PAIR, ("not read: sheet Chart: it holds no cells",)),
    "ambiguous.xlsx": ((), ["2 C-01 PLAIN-20"],
                       ('"Voltage" is not read', '"Material" is not read', '"Level" is not read',
                        '"Zone" is not read: it may be zone, but "Area 3" stands in it')),
    "zone_in_words.xlsx": ((), ["2 C-01 EX-20", "3 C-02 EX-20"], ("zone = Zone",)),
    "two_zones.xlsx": (("--ignore", "Hazardous Area", "--column", "protection=G"), None, ()),
    "inches.xlsx": ((), ["2 C-01 PLAIN-20"], ()),
    "wrong_unit.xlsx": (("--ignore", "B"), ["2 C-01 marginal-inside"], ()),
    "letters.xlsx": (("--header-row", "1", "--column", "tag=A", "--column", "sheath_od_mm=B", "--column",
                      "bedding_mm=C", "--column", "armour_mm=D", "--column", "entry=E"), ["2 C-01 PLAIN-20"], ()),
    "pandas.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ()),
    "pandas_index.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ()),
    "backslashes.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ()),
    # Text files. The decimal mark is never guessed at.
    "semicolons.csv": (("--decimal", ","), PLAIN_PAIR + both(3, "C-02", "EX-20"),
                       ("semicolons.csv: semicolons stand between the cells",)),
    "semicolons_points.csv": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ("semicolons stand between the cells",)),
    "commas_in_semicolons.csv": ((), both(2, "C-01", "unusable"), ("semicolons stand between the cells",)),
    "sep_line.csv": ((), both(3, "C-01", "PLAIN-20") + both(4, "C-02", "EX-20"), ("semicolons",)),
    "tabs.txt": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ("tabs stand between the cells",)),
    "utf_16.txt": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ("the text is UTF-16", "tabs stand between")),
    "utf_16_big.csv": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ("the text is UTF-16",)),
    "windows_1252.csv": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ("the text is Windows-1252",)),
    "pandas_semicolons.csv": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ("semicolons",)),
    "gnumeric.csv": ((), PLAIN_PAIR + both(3, "C-02", "EX-20"), ()),
    "libreoffice.csv": ((), both(3, "C-01", "PLAIN-20", "EX-20") + both(4, "C-02", "PLAIN-20"),
                        ("to_zone = Zone / To", "bedding_mm = Diameters (mm) / Bedding")),
    # Cells.
    "units_in_cells.xlsx": ((), ["2 C-01 PLAIN-20", "3 C-02 PLAIN-20", "4 C-03 not-known"], ()),
    "bare_entries.xlsx": ((), ["2 C-01 PLAIN-20", "3 C-02 not-known"], ()),
    "number_formats.xlsx": ((), ["2 0012 PLAIN-20", "3 P-101 PLAIN-20", "4 #REF! unusable"], ()),
    # An estimate never passes a gland, and what no layer rule covers is not estimated.
    "cable_size.xlsx": ((), ["2 C-01 marginal-inside", "3 C-02 unusable", "4 C-03 not-known", "5 C-04 not-known",
                             "6 C-05 PLAIN-20"], ("cable_size = Cores x Size",)),
    "deleted_rows.xlsx": ((), PLAIN_PAIR + both(6, "C-05", "PLAIN-20") + both(7, "C-06", "PLAIN-20")
                          + both(8, "C-07", "PLAIN-20"),
                          ('5 deleted or not used (row 3 "C-02: Deleted", row 4 "C-03: Superseded by C-01", '
                           'row 5 "C-04 (VOID)", row 9 "SPARE", row 10 "C-08: NOT USED")',
                           '2 may be deleted (row 6 "C-05: Hold", row 8 "C-07: deleted rev B, reinstated rev C")')),
    "quantities.xlsx": ((), None, ()),
    "quantity_headings.xlsx": ((), ["2 C-01 PLAIN-20"], ('"No." is not read', '"Sets" is not read', "quantity = Cables")),
}

# What each tag counts for, and what of it is provisional.
COUNTS = {"C-01": (4, 0), "C-02": (6, 0), "C-03": (0, 2), "C-04": (4, 0), "P-8 to P-12": (10, 0),
          "P-20..P-22": (6, 0), "P-30 to P-32": (0, 2), "P-8/9/10": (6, 0), "P-40/41": (0, 2)}

# name: what the one error says
REFUSED = {
    "two_zones.xlsx": 'two headings may be one column: it may be zone, and so may \\"Hazardous Area\\" (column G)',
    "letters.xlsx": "there is no row of headings",
    "stray_quote.csv": "a quote inside a field that does not start with one, field 3",
    "mixed.csv": "bytes that are not UTF-8, in a file that is UTF-8 up to there",
    "empty.csv": "the file is empty",
    "web_page.xls": "a web page (HTML), whatever its name says",
    "old.xls": "an old workbook (.xls)",
    "old_libreoffice.xls": "an old workbook (.xls)",
    "open_document.ods": "an OpenDocument file, not a workbook (.xlsx)",
    "xml_2003.xml": "a workbook in the XML of 2003",
    "locked.xlsx": "a workbook that is locked with a password",
}


class Gallery(unittest.TestCase):
    maxDiff = None

    def test_answers(self):
        for name, (args, want, says) in CASES.items():
            if want is None:
                continue
            with self.subTest(name):
                status, lines, err = answers(name, args=args)
                self.assertEqual([short(line) for line in lines], want, err)
                exceptions = any(line["verdict"] != "fits" for line in lines)
                self.assertEqual(status, 1 if exceptions else 0)
                for words in says:
                    self.assertIn(words, err)

    def test_refused(self):
        for name, words in REFUSED.items():
            with self.subTest(name):
                status, lines, err = answers(name)
                self.assertEqual((status, lines), (2, []))
                self.assertIn(words, err)

    def test_every_sheet_has_an_answer(self):
        known = set(CASES) | set(REFUSED)
        there = {path.name for path in GALLERY.iterdir()} - {"make.py", "glands.csv"}
        self.assertEqual(there, known)

    def test_counts(self):
        status, lines, err = answers("quantities.xlsx")
        self.assertEqual(status, 1)
        self.assertEqual([short(line) for line in lines if line["verdict"] != "fits"],
                         both(11, "C-05", "unusable"))
        for said in ('2 with a tag that names several cables (row 6 "P-8 to P-12: 5", row 9 "P-8/9/10: 3")',
                     'row 4 "C-03: the quantity is "TBC"',
                     'row 8 "P-30 to P-32: the tag names 3 cables, and the quantity is 1"',
                     'row 10 "P-40/41: the tag may name several cables'):
            self.assertIn(said, err)
        counts = {}
        for line in lines:
            if line["verdict"] != "fits":
                continue
            sure, provisional = counts.get(line["tag"], (0, 0))
            unclear = "counted as one" in line["reason"] or "the tag names" in line["reason"]
            counts[line["tag"]] = (sure + (0 if unclear else line["quantity"]), provisional + unclear)
        self.assertEqual(counts, COUNTS)
        takeoff = support.WORK / "quantities.csv"
        answers("quantities.xlsx", args=("--takeoff", str(takeoff)))
        line = takeoff.read_text().splitlines()[1].split(",")
        self.assertEqual(line[:5], ["PLAIN-20", "", str(sum(sure for sure, _ in COUNTS.values())),
                                    str(sum(sure for sure, _ in COUNTS.values())),
                                    str(sum(open_ for _, open_ in COUNTS.values()))])

    def test_sources(self):
        _, lines, _ = answers("several_sheets.xlsx", "hidden_rows.xlsx")
        self.assertEqual([line["source"] for line in lines[::2]],
                         ["several_sheets.xlsx, sheet Level 1"] * 2 + ["several_sheets.xlsx, sheet Level 2"]
                         + ["hidden_rows.xlsx, sheet Cables"] * 3)
        _, lines, err = answers("several_sheets.xlsx", args=("--sheet", "Old", "--sheet", "Level 2"))
        self.assertEqual([line["tag"] for line in lines], ["C-03", "C-03", "C-99", "C-99"])
        self.assertIn("not read: sheet Level 1: another is asked for", err)


if __name__ == "__main__":
    support.main()
