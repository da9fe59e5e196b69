"""Texts that do harm where they are obeyed: none of them reaches a terminal, a page or a spreadsheet as
anything but a text, wherever it was put in.

texts_test.py PROGRAM SOURCE"""

import csv
import io
import json
import os
import pathlib
import pty
import re
import shutil
import subprocess
import sys
import tempfile
import unittest
import zipfile
import xml.etree.ElementTree as xml

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])

# What a terminal, a viewer or a spreadsheet would obey, each between two letters where that does not
# take its harm away.
HARMFUL = {
    "escape": "A\x1b[31mB",
    "bell": "A\x07B",
    "backspace": "A\x08B",
    "delete": "A\x7fB",
    "C1 control sequence": "A\u009b31mB",
    "C1 operating system command": "A\u009d0;title\u009cB",
    "next line": "A\u0085B",
    "right to left override": "A\u202eB",
    "isolate": "A\u2066B\u2069",
    "Arabic letter mark": "A\u061cB",
    "zero width space": "A\u200bB",
    "zero width joiner": "A\u200dB",
    "word joiner": "A\u2060B",
    "byte order mark": "A\ufeffB",
    "soft hyphen": "A\u00adB",
    "line separator": "A\u2028B",
    "paragraph separator": "A\u2029B",
    "tags": "A\U000e0041\U000e0042\U000e007fB",
    "line feed": "A\nB",
    "carriage return": "A\rB",
    "tab": "A\tB",
    "formula": "=1+1",
    "formula after a mark": "'=1+1",
    "command": "=cmd|' /C calc'!A0",
    "plus": "+1+1",
    "minus": "-1+1",
    "at": "@SUM(1)",
    "tab before a formula": "\t=1+1",
    "markup": "<b>&amp;</b>",
    "long": "A" * (1 << 20),
}
# Not to be seen: control characters but tab and line feed, what has no width, what turns the writing, tags.
HIDDEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f"
                    "\ufeff\ufff9-\ufffb\U000e0000-\U000e0fff]")
LONGEST_LINE = 1000
csv.field_size_limit(1 << 22)


def quoted(text):
    return '"' + text.replace('"', '""') + '"'


def with_each(test):
    """Runs a test once with each text, and on after a failure."""
    def run(self):
        for name, text in HARMFUL.items():
            with self.subTest(text=name):
                test(self, name, text)
    return run


class Texts(unittest.TestCase):
    def setUp(self):
        self.room = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.room.name)

    def tearDown(self):
        self.room.cleanup()

    def run_with(self, *arguments):
        environment = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "TZ": "UTC"}
        done = subprocess.run([PROGRAM, *arguments], capture_output=True, timeout=60, env=environment,
                              cwd=self.folder, check=False)
        self.assertIn(done.returncode, (0, 1, 2, 3), done.stderr[-1000:])
        return done.returncode, done.stdout, done.stderr.decode()

    def harmless(self, text, what):
        found = HIDDEN.search(text)
        self.assertIsNone(found, f"{what}: {text[max(0, found.start() - 60):found.end() + 20]!r}"
                          if found else "")
        longest = max(map(len, text.split("\n")))
        self.assertLess(longest, LONGEST_LINE, what)

    def glands(self, part="P20", range_="R", description="D"):
        path = self.folder / "glands.csv"
        path.write_text(
            "part,range,description,entry_thread,entry_length_mm,outer_min_mm,outer_max_mm,"
            "inner_min_mm,inner_max_mm,armour,armour_min_mm,armour_max_mm,exposed_armour_mm,"
            "armour_stop_mm,price\n" +
            ",".join(map(quoted, (part, range_, description))) +
            ",M20,15,11,16,8,12,wire,0.8,1.4,10,5,11.5\n", encoding="utf-8", newline="")
        return str(path)

    def job(self, text, key):
        job = {"job": "J", "tag": "T", "end": "E",
               "cable": {"cores": 2, "csa_mm2": 4, "sheath_od_mm": "15.1+15.0",
                         "bedding_mm": "10.1+10.0", "armour_mm": "0.9"},
               "entry": {"entry": "M20", "hole": "clearance", "wall_mm": 2.5},
               "tails": {"cores": [{"core": "U", "reach_mm": 100}, {"core": "V", "reach_mm": 90}]}}
        if key == "core":
            job["tails"]["cores"][0]["core"] = text
        else:
            job[key] = text
        path = self.folder / "job.json"
        path.write_text(json.dumps(job), encoding="utf-8")
        return str(path)

    @with_each
    def test_screens_of_a_job(self, name, text):
        for key in ("job", "tag", "end", "core"):
            job = self.job(text, key)
            for options in ([], ["--json"]):
                status, out, err = self.run_with("sheet", job, "--glands", self.glands(), *options)
                self.harmless(err, f"stderr, {key} {options}")
                if options and name == "long":
                    continue  # a result is whole
                self.harmless(out.decode(), f"stdout, {key} {options}")
                if options and status < 2 and key in ("job", "tag", "end"):
                    self.assertEqual(json.loads(out)[key], text.strip())  # its ends are trimmed

    @with_each
    def test_screens_of_a_gland_list(self, name, text):
        for place in ("part", "range_", "description"):
            glands = self.glands(**{place: text})
            for command in (["fit", "--od", "15.1+15.0", "--bedding", "10.1+10.0", "--wire", "0.9",
                             "--entry", "M20", "--glands", glands], ["glands", glands],
                            ["glands", glands, "--part",  # no argument is a MiB long
                             text.strip() if place == "part" and name != "long" else "P20"],
                            ["glands", glands, "--covers", "--wire", "0.9"],
                            ["glands", glands, "--covers", "--wire", "0.9", "--svg"]):
                for options in ([], ["--json"]):
                    _, out, err = self.run_with(*command, *options)
                    self.harmless(err, f"stderr, {place} {command[0]}")
                    if options and name == "long":
                        continue
                    self.harmless(out.decode(), f"stdout, {place} {command[0]} {options}")

    @with_each
    def test_words_of_the_command_line(self, name, text):
        if name == "long":
            text = text[:100000]  # what a system lets through
        for arguments in (["fit", "--od", text], ["fit", "--od", "15", "--cable-tag", text],
                          [text], ["fit", text], ["rules", text], ["sheet", text],
                          ["fit", "--od", "15", "--glands", text],
                          ["schedule", text], ["fit", "--od", "15", "--data", text]):
            for options in ([], ["--json"]):
                _, out, err = self.run_with(*arguments, *options)
                self.harmless(err, f"stderr of {arguments[:2]} {options}"[:200])
                if not options:
                    self.harmless(out.decode(), "stdout"[:200])

    def schedule(self, tag="T", end="E", heading="note"):
        path = self.folder / "cables.csv"
        rows = [["tag", "from", "armour", "sheath_od_mm", "bedding_mm", "armour_mm", "from_entry",
                 heading], [tag, end, "wire", "15.1+15.0", "10.1+10.0", "0.9", "M20", "n"],
                ["other", "x", "wire", "bad", "10", "0.9", "M20", "n"]]
        path.write_text("".join(",".join(map(quoted, row)) + "\n" for row in rows), encoding="utf-8",
                        newline="")
        return str(path)

    @with_each
    def test_results_of_a_schedule(self, name, text):
        for place in ("tag", "end", "heading"):
            table = self.schedule(**{place: text})
            files = ["--output", "r.csv", "--takeoff", "t.csv", "--exceptions", "e.csv", "--xlsx",
                     "b.xlsx"]
            status, _, err = self.run_with("schedule", table, "--glands", self.glands(), *files)
            self.harmless(err, f"stderr, {place}")
            if status > 1:
                continue
            for file in ("r.csv", "t.csv", "e.csv"):
                content = (self.folder / file).read_bytes().decode()
                for row in csv.reader(io.StringIO(content, newline="")):
                    for cell in row:
                        if re.fullmatch(r"-?[0-9.]+", cell):
                            continue
                        self.assertNotRegex(cell, r"\A[=+\-@\t\r]", f"{file}, {place}")
            self.check_book(self.folder / "b.xlsx")
            # Its own reader takes the marks off again: the same rows, in the same order.
            status, _, err = self.run_with("cards", table, "--glands", self.glands(), "--results",
                                           "r.csv", "--output", "k.pdf", "--quiet")
            self.assertLess(status, 2, err[:500])

    def check_book(self, path):
        main = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
        with zipfile.ZipFile(path) as book:
            for name in book.namelist():
                tree = xml.fromstring(book.read(name))
                for formula in tree.iter(main + "f"):
                    self.assertRegex(formula.text, r"\A(SUM|SUBTOTAL|MAX|MIN|IF|[A-Z]\d+[*+-][A-Z]\d+)", name)

    def register(self, **cells):
        columns = ["tag", "end", "made_at", "by", "part", "batch", "sheath_od_mm", "bedding_mm", "armour_mm",
                   "drum", "torque_nm", "armour_ohm", "insulation_mohm", "test_v", "remark"]
        row = dict({"tag": "T", "end": "from", "made_at": "2026-03-31", "by": "JB", "part": "P20",
                    "sheath_od_mm": "17.1+17.2", "drum": "D"}, **cells)
        path = self.folder / "made.csv"
        path.write_text(",".join(columns) + "\n" + ",".join(quoted(row.get(c, "")) for c in columns) + "\n",
                        encoding="utf-8", newline="")
        return str(path)

    @with_each
    def test_a_register(self, name, text):
        table = self.schedule()
        for key in ("tag", "end", "by", "part", "drum"):
            made = self.register(**{key: text})
            for options in ([], ["--json"]):
                for command in (["made", made, "--schedule", table, "--glands", self.glands()],
                                ["readings", made]):
                    _, out, err = self.run_with(*command, *options)
                    self.harmless(err, f"stderr, {key} {command[0]}")
                    if options and name == "long":
                        continue
                    self.harmless(out.decode(), f"stdout, {key} {command[0]} {options}")
            if name == "long" or key not in ("by", "part"):
                continue  # a table of results is whole
            status, out, err = self.run_with("schedule", table, "--glands", self.glands(), "--made", made)
            self.harmless(err, f"stderr, {key}")
            for row in csv.reader(io.StringIO(out.decode(), newline="")):
                for cell in row:
                    if not re.fullmatch(r"-?[0-9.]+", cell):
                        self.assertNotRegex(cell, r"\A[=+\-@\t\r]", key)
            status, _, err = self.run_with("cards", table, "--glands", self.glands(), "--made", made,
                                           "--output", "m.pdf")
            self.harmless(err, f"stderr, cards {key}")
            self.assertLess(status, 2, err[:500])

    @with_each
    def test_a_terminal(self, name, text):
        if name == "long":
            return  # a table of results is whole, also on a terminal
        for place in ("tag", "end"):
            own, other = pty.openpty()
            subprocess.run([PROGRAM, "schedule", self.schedule(**{place: text}), "--glands",
                            self.glands(), "--quiet"], stdout=other, stderr=subprocess.DEVNULL,
                           check=False, timeout=60)
            os.close(other)
            shown = b""
            try:
                while piece := os.read(own, 65536):
                    shown += piece
            except OSError:
                pass
            os.close(own)
            self.harmless(shown.decode().replace("\r\n", "\n"), f"terminal, {place}")

    @with_each
    def test_pages(self, name, text):
        for key in ("tag", "core"):
            job = self.job(text, key)
            status, out, err = self.run_with("sheet", job, "--glands", self.glands(), "--svg")
            self.harmless(err, f"stderr, {key}")
            if status < 2:
                xml.fromstring(out)
                self.assertIsNone(HIDDEN.search(out.decode()))
            status, out, err = self.run_with("sheet", job, "--glands", self.glands(), "--pdf")
            self.harmless(err, f"stderr, {key}")
            if status < 2 and shutil.which("pdftotext"):
                seen = subprocess.run(["pdftotext", "-", "-"], input=out, capture_output=True,
                                      check=True).stdout.decode().replace("\f", "\n")
                found = HIDDEN.search(seen)
                self.assertIsNone(found, key)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
