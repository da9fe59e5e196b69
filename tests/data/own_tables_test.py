"""Tables of published values from a folder: every result says so, and names those that differ.

own_tables_test.py PROGRAM SOURCE"""

import hashlib
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
STANDARDS = SOURCE / "data/standards"
GLANDS = ["--glands", str(SOURCE / "tests/cli/fit/two_glands.csv")]
FIT = ["--od", "14.9+15.1", "--bedding", "9.9+10.1", "--wire", "0.9", "--entry", "M20"]
JOB = str(SOURCE / "data/demo/site/pump-motor.json")
COMMANDS = [["fit", *FIT, *GLANDS], ["sheet", JOB, *GLANDS], ["rules"], ["rules", "bend_radius"],
            ["cable", "--cores", "3", "--csa", "4"], ["glands", GLANDS[1]],
            ["earth", "--cores", "3", "--csa", "4", "--insulation", "xlpe"]]
NAMED = "THE USER'S OWN TABLES in place of the built-in ones"


class OwnTables(unittest.TestCase):
    def setUp(self):
        self.room = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.room.name) / "tables"
        shutil.copytree(STANDARDS, self.folder)
        (self.folder / "data.sha256").unlink()

    def tearDown(self):
        self.room.cleanup()

    def change(self, name, old, new):
        path = self.folder / name
        text = path.read_text()
        self.assertIn(old, text)
        path.write_text(text.replace(old, new, 1))
        return hashlib.sha256(path.read_bytes()).hexdigest()

    def run_with(self, arguments, **variables):
        environment = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", **variables}
        if not variables:
            arguments = [*arguments, "--data", str(self.folder)]
        return subprocess.run([PROGRAM, *arguments, "--quiet"], capture_output=True, text=True,
                              timeout=60, env=environment, check=False)

    def test_every_result_names_what_differs(self):
        sum_of = self.change("bend_radius.json", "1.5, 16, 6", "1.5, 16, 7")
        for arguments in COMMANDS:
            with self.subTest(arguments=arguments):
                done = self.run_with(arguments)
                self.assertIn(done.returncode, (0, 1), done.stderr)
                flat = " ".join(done.stdout.split())
                self.assertIn(NAMED, flat)
                self.assertTrue(flat.endswith("bend_radius"), flat[-200:])
                self.assertIn(str(self.folder), flat)
                done = self.run_with([*arguments, "--json"])
                own = json.loads(done.stdout)["own_tables"]
                self.assertEqual(own, {"folder": str(self.folder), "differ": [
                    {"table": "bend_radius", "status": "users-own", "checksum": sum_of}]})

    def test_the_environment_says_so_too(self):
        self.change("bend_radius.json", "1.5, 16, 6", "1.5, 16, 7")
        done = self.run_with(COMMANDS[0], CUTBACK_DATA=str(self.folder))
        self.assertIn(NAMED, " ".join(done.stdout.split()))

    def test_schedule_and_pages(self):
        self.change("bend_radius.json", "1.5, 16, 6", "1.5, 16, 7")
        table = pathlib.Path(self.room.name) / "cables.csv"
        table.write_text("tag,armour,sheath_od_mm,bedding_mm,armour_mm\n=1+1,wire,15,10,0.9\n")
        done = self.run_with(["schedule", str(table), *GLANDS])
        self.assertIn(NAMED, done.stderr)  # a table of results has no place for it
        done = self.run_with(["schedule", str(table), *GLANDS, "--json"])
        lines = done.stdout.splitlines()
        self.assertTrue(lines)
        for line in lines:
            self.assertEqual(json.loads(line)["own_tables"]["differ"][0]["table"], "bend_radius")

    def test_the_same_tables_are_no_others(self):
        done = self.run_with(COMMANDS[0])
        self.assertNotIn(NAMED, done.stdout)
        self.assertIn("the same as the built-in ones", " ".join(done.stdout.split()))
        self.assertEqual(json.loads(self.run_with([*COMMANDS[0], "--json"]).stdout)["own_tables"],
                         {"folder": str(self.folder), "differ": []})

    def test_no_status_is_checked_any_more(self):
        self.change("armour_wire_bands.json", '"notes": "', '"notes": "Changed. ')
        table = json.loads(self.run_with(["rules", "armour_wire_bands", "--json"]).stdout)
        self.assertEqual(table["status"], "users-own")
        self.change("npt_threads.json", '"notes": "', '"notes": "Changed. ')
        table = json.loads(self.run_with(["rules", "npt_threads", "--json"]).stdout)
        column = table["columns"].index("status")
        self.assertNotIn("checked", {row[column] for row in table["rows"]})

    def refused(self, *words):
        done = self.run_with(COMMANDS[0])
        self.assertEqual(done.returncode, 2, done.stdout)
        for word in words:
            self.assertIn(word, done.stderr)

    def test_a_folder_must_be_whole(self):
        (self.folder / "bend_radius.json").unlink()
        self.refused("lacks tables", "without bend_radius")
        for path in self.folder.iterdir():
            path.unlink()
        self.refused("holds no table")

    def test_two_files_with_one_table(self):
        shutil.copy(self.folder / "bend_radius.json", self.folder / "bend_radius_2.json")
        self.refused("two files hold one table")

    def test_cells_of_another_kind(self):
        self.change("bend_radius.json", "1.5, 16, 6", "1.5, 16, \"six\"")
        self.refused("bend_radius.json", "text stands where the built-in table has none",
                     "row 1, column factor")

    def test_a_result_among_the_tables(self):
        done = self.run_with([*COMMANDS[0], "--json", "--output", str(self.folder / "r.json")])
        self.assertEqual(done.returncode, 2)
        self.assertIn("among the tables", done.stderr)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
