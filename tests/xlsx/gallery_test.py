"""The gallery: sheets as several programs write them, and what each must give.

Who wrote which stands in gallery/make.py. Nothing here may be silently wrong: a row is answered, or
it is named. EX glands are dearer than PLAIN ones, so that a place that was lost shows in the part.
"""

import json
import subprocess
import unittest

import openpyxl

import support

GALLERY = support.SOURCE / "tests/xlsx/gallery"


def answers(*names, args=()):
    """Exit status, "line tag end part-or-verdict" of each end, and stderr on one line."""
    done = subprocess.run(
        [support.PROGRAM, "schedule", *names, "--glands", "glands.csv", "--json", *args], cwd=GALLERY,
        capture_output=True, env=support.ENVIRONMENT, check=False)
    lines = [line for line in map(json.loads, done.stdout.decode().splitlines()) if "notes" not in line]
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
                            ('1 row of headings or units (row 3 "Cable No")', "gas_group = Gas")),
    "tag_forgotten.xlsx": ((), PLAIN_PAIR + ["3 from unusable", "3 to unusable"] + both(4, "C-03", "not-known"), ()),
    "hidden_rows.xlsx": ((), PLAIN_PAIR + both(4, "C-03", "PLAIN-20") + both(5, "C-04", "PLAIN-20"),
                         ('1 hidden (row 3 "C-02")',)),
    "filtered.xlsx": ((), PLAIN_PAIR, ('1 hidden (row 3 "C-02")',)),
    "struck_rows.xlsx": ((), PLAIN_PAIR + both(5, "C-04", "unusable") + both(6, "C-05", "PLAIN-20"),
                         ('2 struck through (row 3 "C-02", row 4 "C-03")',)),
    "struck_xlsxwriter.xlsx": ((), both(3, "C-02", "PLAIN-20") + both(4, "C-03", "unusable"),
                               ('1 struck through (row 2 "C-01")',)),
    "struck_in_struck_cells.xlsx": ((), PLAIN_PAIR + both(3, "#struck-through-in-part", "unusable"),
                                    ('1 struck through (row 4 "C-03")',)),
    "block_with_zone.xlsx": ((), both(3, "C-01", "not-known"),
                             ('the heading "To - Zone 1" may tell a hazardous place',)),
    "second_lists.xlsx": ((), PLAIN_PAIR + ["2 C-01 not-known", "2 G-1 A PLAIN-20"],
                          ("sheet Cables lists whole cables, and the rows here may be of them again",)),
    "several_sheets.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20") + both(3, "C-03", "EX-20"),
                            ("not read: sheet Old: it is hidden", "not read: sheet Notes: there is no row of headings",
                             "not read: sheet Lengths: nothing tells the sheath diameter")),
    "chart_sheet.xlsx": ((), PLAIN_PAIR, ("not read: sheet Chart: it holds no cells",)),
    "ambiguous.xlsx": ((), ["2 C-01 PLAIN-20"],
                       ('system_voltage = Voltage', '"Material" is not read', '"Level" is not read',
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
    "bare_entries.xlsx": ((), ["2 C-01 PLAIN-20", "3 C-02 PLAIN-20"], ('"20" for M20',)),
    "number_formats.xlsx": ((), ["2 0012 PLAIN-20", "3 P-101 PLAIN-20", "4 #REF! unusable"], ()),
    # An estimate never passes a gland, and what no layer rule covers is not estimated.
    "cable_size.xlsx": ((), ["2 C-01 marginal-inside", "3 C-02 unusable", "4 C-03 not-known", "5 C-04 not-known",
                             "6 C-05 PLAIN-20"], ("cable_size = Cores x Size",)),
    "deleted_rows.xlsx": ((), PLAIN_PAIR + both(6, "C-05", "PLAIN-20") + both(7, "C-06", "PLAIN-20")
                          + both(8, "C-07", "PLAIN-20"),
                          ('5 deleted or not used (row 3 "C-02: Deleted", row 4 "C-03: Superseded by C-01", '
                           'row 5 "C-04 (VOID)", row 9 "SPARE", row 10 "C-08: NOT USED")',
                           '2 may be deleted, supplied by others or need another gland (row 6 "C-05: Hold", row 8 "C-07: deleted rev B, reinstated rev C")')),
    "quantities.xlsx": ((), None, ()),
    "title_with_zone.xlsx": ((), both(3, "C-01", "not-known") + both(5, "C-02", "not-known"),
                             ('row 4 "ZONE 1 AREA" may tell a hazardous place',)),
    "title_above_with_zone.xlsx": ((), both(3, "C-01", "not-known"), ('row 1 "CABLES OF HAZARDOUS AREA 3"',)),
    "title_not_hazardous.xlsx": ((), both(4, "C-01", "PLAIN-20"), ()),
    "equipment_with_zone.xlsx": ((), both(2, "C-01", "not-known") + both(3, "C-02", "not-known"),
                                 ('row 3 "JB-4 (Zone 2)"',)),
    "late_remark.csv": ((), [e for i in range(1, 401) for e in both(i + 1, f"C-{i:04}", "not-known")],
                        ('line 401 "to be Ex d"',)),
    **{f"two_ends_{i}.xlsx": ((), PLAIN_PAIR, ("from = ", "to = ")) for i in range(1, 12)},
    "ends_unknown_below.xlsx": ((), both(3, "C-01", "PLAIN-20"), ("from = From / Cell", '"From / Drawer" is no column')),
    "headings_three_rows.xlsx": ((), both(4, "C-01", "PLAIN-20"), ()),
    "units_and_numbers.xlsx": ((), both(4, "C-01", "PLAIN-20"), ('2 rows of headings or units (row 2 "-", row 3 "1")',)),
    "words_of_the_trade.xlsx": (
        ("--word", "Our yard=none"),
        ["2 C-01 PLAIN-20", "3 C-02 EX-20", "4 C-03 EX-20", "5 C-04 no-fit", "6 C-05 unusable", "7 C-06 PLAIN-20"],
        ('"Our yard" for none (--word)', '"Zone 1 IIB T4" for zone 1, gas_group IIB', '"20mm" for M20')),
    "voltages.xlsx": ((), ["2 C-01 not-known", "3 C-02 marginal-inside", "4 C-03 not-known"], ()),
    "voltage_alone.xlsx": ((), ["2 C-01 not-known", "3 C-02 marginal-inside"], ("system_voltage = Cable Voltage Rating",)),
    "merged_quantity.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20") + both(4, "C-03", "PLAIN-20"),
                             ('1 of an unknown number of cables (row 3 "C-02: the quantity is "?"',)),
    # Of a type that nothing explains no layer is estimated; of one that names its layers they are.
    "type_not_explained.xlsx": ((), ["2 C-01 marginal-inside", "3 C-02 not-known", "4 C-03 not-known"], ()),
    "diameter_alone.xlsx": ((), ["2 C-01 not-known"], ('"Ø (mm)" is not read',)),
    # What stands beside the cells is named, and a hazardous place in it is asked about.
    "comments.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20"),
                      ('comment on D2 "check size!", comment on A3 "deleted rev C"', 'comment on A1 "headings agreed"')),
    "comments_gnumeric.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20"), ('comment on A3 "deleted rev C"',)),
    "comments_libreoffice.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20"), ('comment on A3 "deleted rev C"',)),
    "comments_answered.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20"), ('comment on D2 "which is it?"',)),
    "text_box.xlsx": ((), both(2, "C-01", "not-known"), ('text box "ALL CABLES IN ZONE 1: Ex e glands"',
                                                         "may tell a hazardous place")),
    "page_header.xlsx": ((), both(2, "C-01", "not-known"), ('page header or footer "CABLES OF THE HAZARDOUS AREA"',)),
    "cover_with_zone.xlsx": ((), both(2, "C-01", "not-known"), ('sheet Cover: row 2 "The whole site is classified',)),
    "hidden_column.xlsx": ((), PLAIN_PAIR, ("columns that the sheet hides are read: D (sheath_od_mm)",)),
    # In the manner of others.
    "supply_of_voltage.xlsx": ((), ["2 C-01 PLAIN-20"], ('"Supply" is not read',)),
    "revision_block.xlsx": ((), both(7, "C-01", "PLAIN-20") + both(8, "C-02", "PLAIN-20"),
                            ('4 titles (row 10 "NOTES", row 11 "1.", row 12 "2)", row 13 "Prepared by")',)),
    "dates.xlsx": ((), both(2, "2026-02-01", "PLAIN-20") + both(3, "C-02", "unusable") + both(4, "C-03", "unusable"),
                   ('1 with a date for a tag (row 2 "2026-02-01")',)),
    "ditto.xlsx": ((), both(2, "C-01", "EX-20") + [e for i in (2, 3, 4) for e in both(i + 1, f"C-0{i}", "unusable")], ()),
    # 16.9 with 0.3 reaches over 17.
    "tolerances.xlsx": ((), ["2 C-01 PLAIN-20", "3 C-02 marginal-inside"] + [f"{i + 1} C-0{i} unusable" for i in range(3, 8)],
                        ()),
    "formulas_not_calculated.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "unusable") + both(4, "C-03", "unusable")
                                     + both(5, "#not-calculated", "unusable"), ()),
    "ends_with_places.xlsx": ((), both(3, "C-01", "PLAIN-20", "not-known"), ("to_zone = TO / Area Class",)),
    "gland_of_one_end.csv": ((), both(3, "C-01", "not-known", "PLAIN-20"), ("to_entry = Gland at To End / Entry",)),
    "gland_of_some_end.csv": ((), both(3, "C-01", "not-known"),
                              ('"Motor End / Entry" is not read: it is of one end, and nothing says which',)),
    "entries_of_ends.xlsx": ((), both(3, "C-01", "not-known", "no-fit"),
                             ("from_entry = Gland Entry - From / Size", "to_wall_mm = Gland Entry - To / Wall (mm)")),
    "area_numbers.xlsx": ((), both(2, "C-01", "not-known") + both(3, "C-02", "not-known"),
                          ('"Area" is not read: it may be zone, but "1" stands in it',)),
    "area_numbers_plant.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20"), ('"Area" is not read',)),
    "ex_yes_no.xlsx": ((), both(2, "C-01", "not-known") + both(3, "C-02", "not-known"), ("may tell a hazardous place",)),
    "zone_in_a_code.xlsx": ((), both(2, "C-01", "not-known"), ("may tell a hazardous place",)),
    "equipment_ex.xlsx": ((), both(2, "C-01", "not-known"), ('row 2 "Ex d motor P-1" may tell a hazardous place',)),
    "a_row_for_each_core.xlsx": ((), PLAIN_PAIR + both(3, "C-01", "PLAIN-20"),
                                 ("the tag C-01 stands on row 2 and on row 3; both are answered, the second counts as provisional",)),
    "voltages_in_words.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20") + both(4, "C-03", "PLAIN-20"),
                               ('"415V 3PH" for the voltage of a system up to 1 kV',)),
    "strokes.csv": ((), PLAIN_PAIR, ("strokes (|) stand between the cells",)),
    "title_in_first_column.csv": ((), both(3, "C-01", "not-known"), ('line 1 "Hazardous area" may tell',)),
    "remarks_of_supply.xlsx": ((), [e for i in range(2, 8) for e in both(i + 1, f"C-0{i}", "PLAIN-20")],
                               ('1 deleted or not used (row 2 "C-01: DO NOT USE")',
                                '5 may be deleted, supplied by others or need another gland (row 3 "C-02: Glands by others"')),
    "table.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20"), ('1 without a tag (row 4 "Total")',)),
    "collapsed.xlsx": ((), both(6, "C-03", "PLAIN-20"), ('2 hidden (row 3 "C-01", row 4 "C-02")',)),
    "side_by_side.xlsx": ((), both(2, "C-01", "not-known") + both(3, "C-02", "not-known"),
                          ('"O/D (mm)" is not read: it may be sheath_od_mm, and so may "O/D" (column J)',)),
    "goes_on_without_headings.xlsx": ((), PLAIN_PAIR, ("not read: sheet Sheet 2 of 2: there is no row of headings",)),
    "zone_below_the_first.xlsx": ((), both(2, "C-01", "EX-20") + both(3, "C-02", "not-known"), ()),
    "note_with_zone.xlsx": ((), both(2, "C-01", "not-known"), ('row 5 "Cables in Zone 1 to have Ex d glands" may tell',)),
    "formats_of_values.xlsx": ((), both(2, "C-01", "EX-20") + both(3, "C-02", "unusable"), ()),
    # A title and the cells below it that say otherwise; an area that asks, and one that is answered.
    "title_over_plain_zones.xlsx": ((), both(3, "C-01", "PLAIN-20") + both(4, "C-02", "PLAIN-20"),
                                    ('"ZONE 1" tells a hazardous place, and its rows tell a plain one',)),
    "section_over_plain_zones.xlsx": ((), PLAIN_PAIR + both(5, "C-02", "PLAIN-20") + both(6, "C-03", "EX-20")
                                      + both(8, "C-04", "PLAIN-20"), ('row 3 "ZONE 1 AREA"',)),
    "area_that_asks.xlsx": ((), both(3, "C-01", "not-known"), ('row 1 "Petrol pump forecourt" may tell',)),
    "area_that_is_answered.xlsx": ((), PLAIN_PAIR, ()),
    "no_break_space.csv": ((), both(2, "C-01", "not-known"), ("may tell a hazardous place",)),
    "sums_of_diameters.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20") + both(5, "C-03", "PLAIN-20"),
                               ('2 without a tag (row 4 "SUBTOTAL", row 6 "Grand Total")',)),
    "tag_of_a_run.xlsx": ((), [end for i, tag in enumerate(("C8", "C9", "C10-12", "C13", "C14"))
                               for end in both(i + 2, tag, "PLAIN-20")],
                          ('1 of an unknown number of cables (row 4 "C10-12: the tag may name several cables',)),
    # With the construction known the bedding is held against it; of 11 kV it is not.
    "size_with_voltage.xlsx": ((), both(2, "C-01", "marginal-inside") + both(3, "C-02", "PLAIN-25"),
                               ('"11kv" for a voltage of which nothing is estimated',)),
    "ambient_in_one_column.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "no-fit") + both(4, "C-03", "no-fit")
                                   + both(5, "C-04", "PLAIN-20"),
                                   ("ambient_c = Ambient", '"120" for ambient_max_c 120')),
    "title_block.xlsx": ((), both(4, "C-01", "not-known"), ('row 2 "Zone: 1" may tell',)),
    "titles_that_take_away.xlsx": ((), PLAIN_PAIR + both(4, "C-02", "PLAIN-20") + both(6, "C-03", "PLAIN-20")
                                   + both(8, "C-04", "PLAIN-20"), ("under a title that takes cables away (4)",)),
    "ends_in_blocks.xlsx": ((), both(2, "C-01", "PLAIN-20", "no-fit"), ("from_entry = Entry", "to_entry = Entry")),
    "greatest_diameter.xlsx": ((), PLAIN_PAIR + both(3, "C-02", "PLAIN-20"),
                               ("column H, OD Max, may ask more of a gland", "a column that is not read may ask more (2)")),
    "not_required_elsewhere.xlsx": ((), PLAIN_PAIR, ('need another gland (row 2 "C-01: Not required")',)),
    "notes_sheet_of_a_text_box.xlsx": ((), both(2, "C-01", "not-known"), ('text box "ALL CABLES IN ZONE 1"',)),
    "equipment_of_another_sheet.xlsx": ((), both(2, "C-01", "not-known"), ('sheet Motors: row 2 "EExd"',)),
    "guarded_texts.csv": ((), both(2, "0012", "PLAIN-20"), ()),
    "quantity_headings.xlsx": ((), ["2 C-01 PLAIN-20"], ('"No." is not read', '"Sets" is not read', "quantity = Cables")),
}

# What each tag counts for, and what of it is provisional.
COUNTS = {"C-01": (4, 0), "C-02": (6, 0), "C-03": (0, 2), "C-04": (4, 0), "P-8 to P-12": (10, 0),
          "P-20..P-22": (6, 0), "P-30 to P-32": (0, 2), "P-8/9/10": (6, 0), "P-40/41": (0, 2)}

# name: what the one error says
REFUSED = {
    "two_zones.xlsx": 'two headings may be one column: it may be zone, and so may \\"Hazardous Area\\" (column G)',
    "letters.xlsx": "there is no row of headings",
    "other_order_below.xlsx": 'headings again, in another order or of other columns',
    "richer_table_below.xlsx": 'headings stand in two places, with cables between them',
    "stray_quote.csv": "a quote inside a field that does not start with one, field 3",
    "mixed.csv": "bytes that are not UTF-8, in a file that is UTF-8 up to there",
    "empty.csv": "the file is empty",
    "web_page.xls": "a web page (HTML), whatever its name says",
    "old.xls": "an old workbook (.xls)",
    "old_libreoffice.xls": "an old workbook (.xls)",
    "open_document.ods": "an OpenDocument file, not a workbook (.xlsx)",
    "xml_2003.xml": "a workbook in the XML of 2003",
    "locked.xlsx": "a workbook that is locked with a password",
    "two_tables_side_by_side.xlsx": "two tables stand side by side",
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
                exceptions = any(line["verdict"] != "fits" or "counted as one" in line["reason"]
                                 or "may be one of them again" in line["reason"]
                                 or "its tag stands on" in line["reason"]
                                 or "speaks of a hazardous one" in line["reason"]
                                 or "it stands under" in line["reason"]
                                 or "and is not read" in line["reason"] for line in lines)
                self.assertEqual(status, 1 if exceptions else 0)
                for words in says:
                    self.assertIn(words, err)

    def test_titles_over_plain_zones(self):
        """Which ends a title speaks against: those of rows that are told plain at every end."""
        for name, want in (("title_over_plain_zones.xlsx", {"C-01", "C-02"}), ("section_over_plain_zones.xlsx", {"C-02"})):
            _, lines, _ = answers(name)
            self.assertEqual({line["tag"] for line in lines if "speaks of a hazardous one" in line["reason"]}, want)

    def test_refused(self):
        for name, words in REFUSED.items():
            with self.subTest(name):
                status, lines, err = answers(name)
                self.assertEqual((status, lines), (2, []))
                self.assertIn(words, err)

    def test_what_needs_an_option(self):
        """Which sheets are read right only with an option, and which: the README of the gallery says it."""
        needed = {name: args for name, (args, _, _) in CASES.items() if args}
        lines = [f"| `{name}` | `{' '.join(args)}` |" for name, args in sorted(needed.items())]
        text = (GALLERY / "README.md").read_text()
        self.assertIn(f"Of {len(CASES)} sheets that have an answer {len(needed)} need an option", text)
        self.assertEqual([line for line in text.splitlines() if line.startswith("| `")], lines)

    def test_every_sheet_has_an_answer(self):
        known = set(CASES) | set(REFUSED)
        there = {path.name for path in GALLERY.iterdir()} - {
            "README.md", "make.py", "glands.csv", "defaults.csv", "defaults_crlf.csv", "defaults.xlsx"}
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

    def test_a_place_in_a_pipe(self):
        """A pipe cannot be read twice: where a title comes too late, nothing is answered as plain."""
        rows = ["tag,from,to,sheath_od_mm,bedding_mm,armour_mm,entry", "ZONE 1 AREA", "C-01,MCC-1,Pump,13.9,9.2,0.9,M20"]
        done = subprocess.run([support.PROGRAM, "schedule", "/dev/stdin", "--glands", "glands.csv"], cwd=GALLERY,
                              input="\n".join(rows).encode(), capture_output=True, env=support.ENVIRONMENT, check=False)
        self.assertEqual(done.returncode, 2)
        self.assertIn("a text may tell a hazardous place", " ".join(done.stderr.decode().split()))
        self.assertNotIn("PLAIN-20", done.stdout.decode())

    def test_what_is_said_stands_in_the_results(self):
        """With --quiet too: on the last line of --json and in the notes of the workbook."""
        for args in ((), ("--quiet",)):
            done = subprocess.run([support.PROGRAM, "schedule", "deleted_rows.xlsx", "--glands", "glands.csv", "--json",
                                   "--xlsx", str(support.WORK / "notes.xlsx"), *args], cwd=GALLERY,
                                  capture_output=True, env=support.ENVIRONMENT, check=False)
            notes = json.loads(done.stdout.decode().splitlines()[-1])["notes"]
            self.assertTrue(any("5 deleted or not used" in note for note in notes), notes)
            book = openpyxl.load_workbook(support.WORK / "notes.xlsx")
            cells = [str(cell.value) for sheet in book for row in sheet.iter_rows() for cell in row if cell.value]
            self.assertTrue(any("5 deleted or not used" in cell for cell in cells))

    def test_defaults_are_counted_alike(self):
        """Whatever ends the lines, and in a workbook; a cell that says the same is none."""
        for name in ("defaults.csv", "defaults_crlf.csv", "defaults.xlsx"):
            done = subprocess.run([support.PROGRAM, "schedule", name, "--glands", "glands.csv", "--default", "ip=54"],
                                  cwd=GALLERY, capture_output=True, env=support.ENVIRONMENT, check=False)
            self.assertIn("ip=54 in 2 cells", " ".join(done.stderr.decode().split()), name)

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
