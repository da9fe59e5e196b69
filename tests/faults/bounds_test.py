"""What anybody may send is bounded: it is refused with one message, in little time and memory.

bounds_test.py PROGRAM SOURCE"""

import json
import os
import pathlib
import resource
import subprocess
import sys
import tempfile
import threading
import time
import unittest
import zipfile

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
GLANDS = ["--glands", str(SOURCE / "tests/cli/fit/two_glands.csv")]
FIT = ["fit", "--od", "14.9+15.1", "--bedding", "9.9+10.1", "--wire", "0.9", "--entry", "M20"]
HEAD = "tag,armour,sheath_od_mm,bedding_mm,armour_mm,entry\n"
MOST_BYTES = 3 << 30  # of memory
MOST_SECONDS = 60


class Bounds(unittest.TestCase):
    def setUp(self):
        self.room = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.room.name)

    def tearDown(self):
        self.room.cleanup()

    def run_with(self, *arguments, most=MOST_BYTES):
        def limit():
            resource.setrlimit(resource.RLIMIT_AS, (most, most))
        environment = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8"}
        return subprocess.run([PROGRAM, *arguments, "--quiet"], capture_output=True, text=True,
                              timeout=MOST_SECONDS, env=environment, preexec_fn=limit, check=False)

    def refused(self, done, *words, status=2):
        self.assertEqual(done.returncode, status, done.stderr[:2000] + done.stdout[:200])
        for word in words:
            self.assertIn(word, done.stderr)
        return done.stderr.splitlines()

    def test_files_without_an_end(self):
        for arguments in (["sheet", "/dev/zero", *GLANDS], ["readings", "/dev/zero"],
                          [*FIT, "--glands", "/dev/zero"], ["glands", "/dev/zero"]):
            with self.subTest(arguments=arguments):
                self.refused(self.run_with(*arguments), "at most", "bytes")

    def test_too_little_memory(self):
        for options in ([], ["--json"]):
            done = self.run_with(*FIT, "--glands", "/dev/zero", *options, most=200 << 20)
            self.refused(done, "out-of-memory", status=3)
            if options:
                self.assertEqual(json.loads(done.stderr)["errors"][0]["code"], "out-of-memory")

    def test_schedules_without_an_end(self):
        done = self.run_with("schedule", "/dev/zero", *GLANDS)
        self.refused(done)

    def test_a_row_without_an_end(self):
        path = self.folder / "long.csv"
        path.write_text(HEAD + "x" * (40 << 20))
        self.refused(self.run_with("schedule", str(path), *GLANDS), "long.csv", "row holds more text")

    def job(self, cores):
        path = self.folder / "job.json"
        path.write_text(json.dumps({"cable": {"sheath_od_mm": "15.3+15.1"},
                                    "tails": {"cores": cores}}))
        return self.run_with("sheet", str(path), *GLANDS)

    def test_cores_of_a_job(self):
        lines = self.refused(self.job([{"core": "L1", "reach_mm": 100}] * 2000),
                             "2000 cores", "at most 61 cores")
        self.assertEqual(len(lines), 1)
        lines = self.refused(self.job([{"core": "L1", "reach_mm": 100}] * 61), "two cores have one name")
        self.assertEqual(len(lines), 60)  # one for each core, not for each pair

    def test_faults_of_a_file(self):
        path = self.folder / "glands.csv"
        path.write_text("part,entry_thread,outer_min_mm,outer_max_mm,armour\n" +
                        "".join(f"P{i},M20,x,16,none\n" for i in range(10000)))
        lines = self.refused(self.run_with("glands", str(path)), "and 9950 more faults of this file")
        self.assertEqual(len(lines), 51)
        path.write_text("drum,place,value_mm\n" + "".join(f"D,{i},x\n" for i in range(10000)))
        lines = self.refused(self.run_with("readings", str(path)), "and 9950 more faults of this file")
        self.assertEqual(len(lines), 51)

    def book(self, sheet, strings=None):
        path = self.folder / "book.xlsx"
        main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
        office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
        package = "http://schemas.openxmlformats.org/package/2006/relationships"
        relations = f'<Relationship Id="r1" Type="{office}/worksheet" Target="s.xml"/>'
        if strings is not None:
            relations += f'<Relationship Id="r2" Type="{office}/sharedStrings" Target="t.xml"/>'
        with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as book:
            book.writestr("_rels/.rels", f'<Relationships xmlns="{package}"><Relationship Id="r1" '
                          f'Type="{office}/officeDocument" Target="xl/w.xml"/></Relationships>')
            book.writestr("xl/w.xml", f'<workbook xmlns="{main}" xmlns:r="{office}"><sheets>'
                          '<sheet name="S" sheetId="1" r:id="r1"/></sheets></workbook>')
            book.writestr("xl/_rels/w.xml.rels",
                          f'<Relationships xmlns="{package}">{relations}</Relationships>')
            book.writestr("xl/s.xml", f'<worksheet xmlns="{main}"><sheetData>{sheet}</sheetData>'
                          '</worksheet>')
            if strings is not None:
                book.writestr("xl/t.xml", f'<sst xmlns="{main}">{strings}</sst>')
        return self.run_with("schedule", str(path), *GLANDS)

    def test_a_text_of_a_workbook(self):
        long = "x" * (1 << 20)
        row = '<row r="1"><c r="A1" t="{}">{}</c></row>'
        forms = [
            (row.format("s", "<v>0</v>"), f"<si><t>{long}</t></si>"),
            (row.format("s", "<v>0</v>"), f"<si>{'<r><t>' + 'x' * 1024 + '</t></r>'}</si>".replace(
                "<r><t>" + "x" * 1024 + "</t></r>", ("<r><t>" + "x" * 1024 + "</t></r>") * 1024)),
            (row.format("inlineStr", f"<is><t>{long}</t></is>"), None),
            (row.format("str", f"<f>A2</f><v>{long}</v>"), None),
        ]
        for sheet, strings in forms:
            with self.subTest(sheet=sheet[:60]):
                self.refused(self.book(sheet, strings), "a cell holds more text than a cell can")

    def test_deep_xml(self):
        deep = "<a>" * 5000 + "</a>" * 5000
        self.refused(self.book(deep), "nested too deep")

    def test_a_file_that_changes(self):
        path = self.folder / "cables.csv"
        whole = HEAD + "".join(f"P-{i},wire,15,10,0.9,M20\n" for i in range(60000))
        end = time.monotonic() + 6
        seen = set()
        while time.monotonic() < end:
            path.write_text(whole)
            cut = threading.Timer(0.002 * (len(seen) + 1), lambda: os.truncate(path, 100))
            cut.start()
            done = subprocess.run([PROGRAM, "schedule", str(path), *GLANDS, "--quiet", "--output",
                                   str(self.folder / "r.csv")], capture_output=True, text=True,
                                  timeout=MOST_SECONDS, check=False)
            cut.join()
            seen.add(done.returncode)
            # No signal ends it: it has read all, or says that the file changed, or what is left
            # is no whole row.
            self.assertIn(done.returncode, (0, 1, 2, 3), done.stderr)
            if done.returncode == 3:
                self.assertIn("changed while it was read", done.stderr)
                self.assertIn("cables.csv", done.stderr)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
