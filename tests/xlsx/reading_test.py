"""Workbooks written with openpyxl (MIT), then read by `cutback schedule`.

What a cell gives is looked at in the tag, which may be any text. Serial numbers of days are those of
ECMA-376 part 1, 18.17.4.1; openpyxl writes them from Python's dates."""

import datetime
import struct
import unittest
import zipfile

import openpyxl

import support
from support import WORK, edit_zip, ends, run, share_texts, sub

HEAD = ["tag", "end", "armour", "sheath_od_mm", "bedding_mm", "armour_mm", "entry", "hole", "wall_mm"]
CABLE = ["motor", "wire", "14.9+15.1", "9.9+10.1", 0.9, "M20", "clearance", 2.5]
SHEET = "xl/worksheets/sheet1.xml"


def book_of(rows, name, change=None):
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Cables"
    for row in rows:
        sheet.append(row)
    if change:
        change(book, sheet)
    path = WORK / name
    book.save(path)
    return path


def tags_of(values, name, change=None, args=(), edit=None):
    """What the program makes of cells in the column of the tags."""
    path = book_of([HEAD] + [[value] + CABLE for value in values], name, change)
    if edit:
        edit_zip(path, SHEET, edit)
    return [end.get("tag") for end in ends(path, *args)]


class Cells(unittest.TestCase):
    def test_numbers(self):
        self.assertEqual(
            tags_of([7, 15.000000000000002, 0.1 + 0.2, 1e-7, 123456789012345, -2.5, 1e21],
                    "numbers.xlsx"),
            ["7", "15", "0.3", "1e-07", "123456789012345", "-2.5", "1e+21"])

    def test_numbers_with_a_decimal_comma(self):
        path = book_of([HEAD, [1.5] + CABLE, [1.50000000000000022] + CABLE], "comma.xlsx")
        self.assertEqual([end["tag"] for end in ends(path, "--decimal", ",")], ["1,5", "1,5"])

    def test_numbers_as_they_are_written(self):
        """Held against C's %.15g, as Python has it."""
        texts = ["0", "7", "-7", "0.5", "-0.5", "-0", "0.0", "007", "1.50", "1.", ".5", "-.5", "1e2",
                 "0.0001", "0.00001", "0.00012345678901", "123456789012345", "1234567890123456",
                 "999999999999999.5", "0.123456789012345", "0.1234567890123456", "12345678.9012345",
                 "100", "1E-7", "14.949999999999999"]

        def write(text):
            for i, value in enumerate(texts):
                text = support.re.sub(rf'(<c r="A{i + 2}"[^>]*><v>)[^<]*', rf"\g<1>{value}", text)
            return text
        want = ["%.15g" % (float(text) + 0.0) for text in texts]  # + 0.0 takes the sign off -0
        self.assertEqual(tags_of([1] * len(texts), "written.xlsx", edit=write), want)

    def test_percent(self):
        def style(_, sheet):
            sheet["A2"].number_format = "0%"
            sheet["A3"].number_format = "0.00%"
            sheet["A4"].number_format = '0.0"%"'  # a letter, not the format
        self.assertEqual(tags_of([0.05, 0.075, 0.05], "percent.xlsx", style), ["5%", "7.5%", "0.05"])

    def test_dates(self):
        days = [datetime.date(2026, 11, 25), datetime.datetime(2026, 11, 25, 13, 30),
                datetime.time(13, 30), datetime.date(1900, 1, 1), datetime.date(1900, 3, 1),
                datetime.date(9999, 12, 31)]
        self.assertEqual(tags_of(days, "dates.xlsx"),
                         ["2026-11-25", "2026-11-25T13:30:00", "13:30:00", "1900-01-01",
                          "1900-03-01", "9999-12-31"])

    def test_day_that_never_was(self):
        def style(_, sheet):
            for row in (2, 3, 4):
                sheet.cell(row, 1).number_format = "dd/mm/yyyy"
        self.assertEqual(tags_of([59, 60, 61], "1900.xlsx", style),
                         ["1900-02-28", "1900-02-29", "1900-03-01"])

    def test_dates_from_1904(self):
        def from_1904(book, _):
            book.epoch = openpyxl.utils.datetime.CALENDAR_MAC_1904
        self.assertEqual(tags_of([datetime.date(2026, 11, 25), datetime.date(1904, 1, 2)],
                                 "1904.xlsx", from_1904), ["2026-11-25", "1904-01-02"])

    def test_styles_that_are_no_dates(self):
        def style(_, sheet):
            sheet["A2"].number_format = '0.0" mm dia"'
            sheet["A3"].number_format = "[Red]0.00"
            sheet["A4"].number_format = "[h]:mm"
            sheet["A5"].number_format = r"0\d"
        self.assertEqual(tags_of([15, 16.5, 0.5, 3], "styles.xlsx", style),
                         ["15", "16.5", "12:00:00", "3d"])

    def test_booleans_and_errors(self):
        self.assertEqual(tags_of([True, False, "#N/A"], "kinds.xlsx"), ["TRUE", "FALSE", "#N/A"])

    def test_error_in_a_figure_is_an_exception_of_its_row(self):
        path = book_of([HEAD, ["A"] + CABLE, ["B"] + CABLE], "error.xlsx",
                       lambda _, sheet: sheet.__setitem__("D3", "#N/A"))
        first, second = ends(path)
        self.assertNotEqual(first["verdict"], "unusable")
        self.assertEqual((second["verdict"], second["line"]), ("unusable", 3))
        self.assertIn("#N/A", second["errors"][0])

    def test_unicode(self):
        words = ["Kabel №7 Ω", "电缆", "🔌 1", "a&b<c>\"d\"", "e\u0301", "_x0041_"]
        self.assertEqual(tags_of(words, "unicode.xlsx")[:5], words[:5])

    def test_escapes(self):
        # ECMA-376 part 1, 22.9.2.19: _x0041_ stands for A, _x005F_ for the underscore
        path = book_of([HEAD, ["P1"] + CABLE, ["P2"] + CABLE], "escapes.xlsx")
        share_texts(path)
        self.assertEqual([end["tag"] for end in ends(path)], ["P1", "P2"])
        edit_zip(path, "xl/sharedStrings.xml", sub("P1", "_x0041_1"))
        edit_zip(path, "xl/sharedStrings.xml", sub("P2", "_x005F_x0041_"))
        self.assertEqual([end["tag"] for end in ends(path)], ["A1", "_x0041_"])

    def test_rich_text(self):
        path = book_of([HEAD, ["P-201"] + CABLE], "rich.xlsx")
        share_texts(path)
        edit_zip(path, "xl/sharedStrings.xml",
                 sub("<t>P-201</t>", "<r><t>P-</t></r><r><rPr><b/></rPr><t>2</t></r><r><t>01</t></r>"))
        self.assertEqual(ends(path)[0]["tag"], "P-201")

    def test_phonetic_guides_are_left_out(self):
        path = book_of([HEAD, ["P1"] + CABLE], "phonetic.xlsx")
        share_texts(path)
        edit_zip(path, "xl/sharedStrings.xml",
                 sub("<t>P1</t>", '<t>P1</t><rPh sb="0" eb="1"><t>hidden</t></rPh>'))
        self.assertEqual(ends(path)[0]["tag"], "P1")

    def test_inline_strings(self):
        self.assertEqual(
            tags_of([1], "inline.xlsx", edit=sub(
                r'<c r="A2"[^>]*><v>1</v></c>',
                '<c r="A2" t="inlineStr"><is><r><t>P</t></r><r><t xml:space="preserve"> 1</t></r>'
                '</is></c>')), ["P 1"])

    def test_formulas_give_their_saved_value(self):
        cell = r'<c r="A2"[^>]*><v>1</v></c>'
        for kind, value, want in [("", "<v>15.000000000000002</v>", "15"),
                                  (' t="str"', "<v>P-1</v>", "P-1"),
                                  (' t="b"', "<v>1</v>", "TRUE"),
                                  (' t="e"', "<v>#REF!</v>", "#REF!"),
                                  ("", "", "#not-calculated")]:
            with self.subTest(want):
                by = f'<c r="A2"{kind}><f>B1&amp;"-"</f>{value}</c>'
                self.assertEqual(tags_of([1], "formula.xlsx", edit=sub(cell, lambda _: by)), [want])

    def test_text_that_looks_like_a_formula_stays_text(self):
        def as_text(_, sheet):
            sheet["A2"].data_type = "s"
        self.assertEqual(tags_of(["=1+1"], "looks.xlsx", as_text), ["=1+1"])


class Rows(unittest.TestCase):
    def test_title_rows_empty_rows_and_skipped_cells(self):
        book = openpyxl.Workbook()
        sheet = book.active
        sheet["A1"] = "Cable schedule of an invented site"
        sheet.merge_cells("A1:I2")
        for column, value in enumerate(HEAD):
            sheet.cell(5, column + 3, value)  # from column C on
        sheet.cell(5, 20, "remark")
        for row, tag in ((6, "A"), (9, "B"), (40, "C")):
            for column, value in enumerate([tag] + CABLE):
                if HEAD[column] != "end":
                    sheet.cell(row, column + 3, value)
        sheet.row_dimensions[9].hidden = True
        sheet.cell(12, 4).value = "   "
        path = WORK / "rows.xlsx"
        book.save(path)
        self.assertEqual([(end["tag"], end["line"], end["end"]) for end in ends(path)],
                         [("A", 6, ""), ("C", 40, "")])  # row 9 is hidden
        self.assertEqual(len(ends(path, "--header-row", "5")), 2)

    def test_same_answers_as_csv(self):
        site = support.SOURCE / "tests/cli/schedule/one_end.csv"
        rows = [line.split(",") for line in site.read_text().splitlines()]
        path = book_of([[number(cell) for cell in row] for row in rows], "same.xlsx")
        status, out, _ = run(path)
        self.assertEqual((status, out.replace(",Cables,", ",,")), run(site)[:2])
        self.assertIn("ARM-16-M20", out)
        with path.open("rb") as file:  # an ordinary file as standard input
            done = support.subprocess.run(
                [support.PROGRAM, "schedule", "--quiet", "--glands", str(support.GLANDS), "-"],
                stdin=file, capture_output=True, env=support.ENVIRONMENT, check=False)
        self.assertEqual(done.stdout.decode(), out)

    def test_sheets(self):
        def change(book, sheet):
            sheet.sheet_state = "hidden"
            other = book.create_sheet("Zweites Blatt")
            for row in [HEAD, ["Z"] + CABLE]:
                other.append(row)
            book.active = 1
        path = book_of([HEAD, ["A"] + CABLE], "sheets.xlsx", change)
        self.assertEqual(ends(path)[0]["tag"], "Z")
        self.assertEqual(ends(path, "--sheet", "Cables")[0]["tag"], "A")
        status, out, err = run(path, "--sheet", "cabels")
        self.assertEqual((status, out), (2, ""))
        self.assertIn("Cables, Zweites Blatt", err)

    def test_other_prefixes_and_the_strict_form(self):
        path = book_of([HEAD, ["A"] + CABLE], "prefix.xlsx")
        old = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"

        def prefixed(text):
            text = text.replace(f'xmlns="{old}"', f'xmlns:x="{old}"')
            return support.re.sub(r"<(/?)(?=[a-zA-Z])", r"<\1x:", text)
        edit_zip(path, SHEET, prefixed)
        self.assertEqual(ends(path)[0]["tag"], "A")

        path = book_of([HEAD, ["A"] + CABLE], "strict.xlsx")
        share_texts(path)
        for part in (SHEET, "xl/workbook.xml", "xl/sharedStrings.xml", "xl/styles.xml"):
            edit_zip(path, part, lambda text: text.replace(
                old, "http://purl.oclc.org/ooxml/spreadsheetml/main").replace(
                "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
                "http://purl.oclc.org/ooxml/officeDocument/relationships"))
        for part in ("_rels/.rels", "xl/_rels/workbook.xml.rels"):
            edit_zip(path, part, lambda text: text.replace(
                "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
                "http://purl.oclc.org/ooxml/officeDocument/relationships"))
        self.assertEqual(ends(path)[0]["tag"], "A")

    def test_namespaces_declared_again(self):
        """W3C, Namespaces in XML 1.0, 6: a declaration holds for its element and what is in it."""
        path = book_of([HEAD, ["A"] + CABLE], "again.xlsx")
        own = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
        edit_zip(path, SHEET, sub(
            "</row></sheetData>",
            f'<c r="J2" xmlns="urn:a"><v>1</v><c xmlns="{own}"/></c>'
            f'<a:c xmlns:a="urn:a" r="K2"/><a:c xmlns:a="{own}" r="L2"><a:v>2</a:v></a:c></row>'
            '<row xmlns="urn:a" r="3"><c r="A3"><v>3</v></c></row>'
            f'<row r="4"><c r="A4"><v>4</v></c></row><b:row xmlns:b="{own}" r="5"><b:c r="A5">'
            '<b:v>5</b:v></b:c></b:row></sheetData>'))
        self.assertEqual([(end["tag"], end["line"]) for end in ends(path)],
                         [("A", 2), ("4", 4), ("5", 5)])

    def test_many_rows(self):
        path = book_of([HEAD] + [[f"P-{i}"] + CABLE for i in range(5000)], "many.xlsx")
        self.assertEqual([end["tag"] for end in ends(path)], [f"P-{i}" for i in range(5000)])


class Pieces(unittest.TestCase):
    """A long sheet is cut into pieces that several threads read. What it holds must not show how."""
    COUNT = 3000  # rows of some 300 bytes; a piece has 64 KiB

    def setUp(self):
        self.path = book_of([HEAD] + [[f"P{i}"] + CABLE for i in range(2, self.COUNT)], "pieces.xlsx")

    def check(self, want=None):
        want = want or [(f"P{i}", i) for i in range(2, self.COUNT)]
        for threads in ("1", "3"):
            with self.subTest(threads=threads):
                self.assertEqual([(end["tag"], end["line"])
                                  for end in ends(self.path, "--threads", threads)], want)

    def test_plain(self):
        self.check()

    def test_prefix(self):
        space = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
        edit_zip(self.path, SHEET, lambda text: support.re.sub(
            r"<(/?)(?=[a-zA-Z])", r"<\1x:", text.replace(f'xmlns="{space}"', f'xmlns:x="{space}"')))
        self.check()

    def test_utf_16(self):
        with zipfile.ZipFile(self.path) as old:
            parts = {name: old.read(name) for name in old.namelist()}
        parts[SHEET] = parts[SHEET].decode().encode("utf-16")
        with zipfile.ZipFile(self.path, "w", zipfile.ZIP_DEFLATED) as new:
            for name, content in parts.items():
                new.writestr(name, content)
        self.check()

    def test_what_looks_like_rows_in_comment_and_cdata(self):
        rows = "".join(f'</row><row r="{i}">' for i in range(5000))
        edit_zip(self.path, SHEET, sub('<row r="1000"', f'<!-- {rows} --><row r="1000"'))
        self.check()
        edit_zip(self.path, SHEET, sub("P2000", f"P2000<![CDATA[{rows[:30000]}]]>"))
        want = [(f"P{i}", i) for i in range(2, self.COUNT)]
        want[2000 - 2] = ("P2000" + rows[:30000], 2000)
        self.check(want)

    def test_rows_without_numbers(self):
        edit_zip(self.path, SHEET, lambda text: support.re.sub(
            r'<row r="([0-9]+)"', lambda row: "<row" if 500 < int(row[1]) < 2500 else row[0],
            support.re.sub(r' r="[A-Z]+[0-9]+"', "", text)))
        self.check()

    def test_numbers_that_do_not_follow(self):
        edit_zip(self.path, SHEET, lambda text: support.re.sub(
            r'<row r="([0-9]+)"', lambda row: f'<row r="{int(row[1]) % 1500 + 1}"', text))
        for threads in ("1", "3"):
            status, out, err = run(self.path, "--threads", threads)
            self.assertEqual((status, out), (2, ""))
            self.assertIn("a row number that does not follow: 1", err)
            self.assertIn("row 1501", err)

    def test_damage_far_down(self):
        for by, words in (("<row", "no well-formed XML"), ("</row></row>", "no well-formed XML"),
                          ("</row></sheetData><sheetData>", "do not end where they should")):
            with self.subTest(by):
                self.setUp()
                edit_zip(self.path, SHEET, sub('</row>(?=<row r="2200")', by))
                for threads in ("1", "3"):
                    status, out, err = run(self.path, "--output", WORK / "x", "--threads", threads)
                    self.assertEqual((status, out, err.count("cutback: ")), (2, "", 1))
                    self.assertIn(words, err)

    def test_blank_rows_alone(self):
        edit_zip(self.path, SHEET, lambda text: support.re.sub("<c .*?</c>", "<c/>", text))
        status, out, err = run(self.path)
        self.assertEqual((status, out), (2, ""))
        self.assertIn("the sheet is empty", err)

    def test_texts_that_are_named_again_and_again(self):
        share_texts(self.path)
        edit_zip(self.path, "xl/sharedStrings.xml", sub("P2<", "P" * 60000 + "<"))
        cell = '<c t="s"><v>%d</v></c>' % len(HEAD)
        edit_zip(self.path, SHEET, sub(
            "</row>(?=<row)", lambda _: cell * 200 + "</row>"))
        status, out, err = run(self.path)
        self.assertEqual((status, out), (2, ""))
        self.assertIn("more text than any cable needs", err)


def number(cell):
    try:
        return float(cell)
    except ValueError:
        return cell


class Bad(unittest.TestCase):
    """Each one error, exit status 2, nothing on stdout."""

    def refuse(self, path, *words, args=(), stdin=None):
        status, out, err = run(path, *args, stdin=stdin)
        self.assertEqual((status, out), (2, ""), err)
        self.assertEqual(err.count("cutback: "), 1, err)
        for word in words:
            self.assertIn(word, err)

    def good(self, name):
        return book_of([HEAD, ["A"] + CABLE], name)

    def test_cut_short(self):
        whole = self.good("short.xlsx").read_bytes()
        path = WORK / "cut.xlsx"
        for size in (4, 30, len(whole) // 2, len(whole) - 30):
            path.write_bytes(whole[:size])
            self.refuse(path, "damaged")

    def test_every_byte_that_is_wrong_is_found_or_harmless(self):
        whole = bytearray(self.good("flipped.xlsx").read_bytes())
        path = WORK / "flip.xlsx"
        for at in range(0, len(whole), 61):
            bad = bytearray(whole)
            bad[at] ^= 0xFF
            path.write_bytes(bad)
            self.assertIn(run(path)[0], (0, 1, 2))  # no crash, no hang

    def test_empty_sheet(self):
        self.refuse(book_of([], "empty.xlsx"), "the sheet is empty", "Cables")

    def test_headings_alone(self):
        self.refuse(book_of([HEAD], "headings.xlsx"), "no cable below the headings")

    def test_no_sheet_is_a_schedule(self):
        """The first of them and the names of the others."""
        def notes(book, sheet):
            book.create_sheet("Notes").append(["checked by nobody"])
        path = book_of([["part", "thread"], ["X", "M20"]], "no_schedule.xlsx", notes)
        self.refuse(path, "no row of headings", "sheet Cables", "its sheets are Cables, Notes")

    def test_bomb(self):
        path = self.good("bomb.xlsx")
        edit_zip(path, SHEET, lambda text: text.replace("</sheetData>", " " * 10**8 + "</sheetData>"))
        self.refuse(path, "unpacks to far more")

    def test_entities(self):
        path = self.good("entities.xlsx")
        edit_zip(path, SHEET, lambda text: '<!DOCTYPE a [<!ENTITY b "c">]>' + text)
        self.refuse(path, "declares a document type")

    def test_prefix_without_a_declaration(self):
        path = self.good("prefix_bad.xlsx")
        edit_zip(path, SHEET, sub("</sheetData>", '<a:row xmlns:a="urn:a"/><a:row/></sheetData>'))
        self.refuse(path, "uses the prefix a without a declaration")

    def test_too_many_namespaces(self):
        path = self.good("namespaces.xlsx")
        declared = "".join(f' xmlns:a{i}="urn:a"' for i in range(1001))
        edit_zip(path, SHEET, sub("</sheetData>", f"<row{declared}/></sheetData>"))
        self.refuse(path, "declares too many namespaces")

    def test_too_many_columns(self):
        path = self.good("columns.xlsx")
        edit_zip(path, SHEET, sub("</row>", '<c r="XFE2"><v>1</v></c></row>'))
        self.refuse(path, "16,384")

    def test_too_many_rows(self):
        path = self.good("rows_too_many.xlsx")
        edit_zip(path, SHEET, sub("</sheetData>", '<row r="1048577"><c><v>1</v></c></row></sheetData>'))
        self.refuse(path, "more rows than a sheet has", "row 1048577")

    def test_no_such_shared_string(self):
        path = self.good("shared.xlsx")
        share_texts(path)
        edit_zip(path, SHEET, sub('<c r="A2" t="s"><v>[0-9]+</v>', '<c r="A2" t="s"><v>9999</v>'))
        self.refuse(path, "names a text that is not there", "row 2")

    def test_not_a_workbook(self):
        path = WORK / "other.zip"
        with zipfile.ZipFile(path, "w") as archive:
            archive.writestr("a.txt", "a")
        self.refuse(path, "no workbook")
        with zipfile.ZipFile(path, "w") as archive:
            archive.writestr("content.xml", "a")
        self.refuse(path, "OpenDocument")

    def test_locked_part(self):
        whole = bytearray(self.good("locked.xlsx").read_bytes())
        at = 0
        while (at := whole.find(b"PK\x01\x02", at)) >= 0:
            flags = struct.unpack_from("<H", whole, at + 8)[0]
            struct.pack_into("<H", whole, at + 8, flags | 1)  # PKWARE APPNOTE 4.4.4
            at += 4
        path = WORK / "locked2.xlsx"
        path.write_bytes(whole)
        self.refuse(path, "locked with a password")

    def test_pipe(self):
        self.refuse("-", "cannot be read from a pipe", stdin=self.good("pipe.xlsx").read_bytes())


if __name__ == "__main__":
    support.main()
