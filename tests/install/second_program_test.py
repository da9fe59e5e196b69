"""The way from `cutback` to `cutback-full`: found beside it or in libexec, of the same build, or not
at all.

second_program_test.py PROGRAM FULL SOURCE"""

import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

PROGRAM, FULL, SOURCE = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
JOB = str(SOURCE / "data/demo/site/pump-motor.json")
SHEET = ["sheet", JOB, "--glands", str(SOURCE / "tests/cli/fit/two_glands.csv"), "--svg", "--quiet"]


class SecondProgram(unittest.TestCase):
    def setUp(self):
        self.room = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.room.name)
        (self.folder / "bin").mkdir()
        (self.folder / "libexec/cutback").mkdir(parents=True)
        self.program = shutil.copy(PROGRAM, self.folder / "bin/cutback")

    def tearDown(self):
        self.room.cleanup()

    def run_with(self, *command, **variables):
        environment = {"PATH": str(self.folder / "path") + ":" + os.environ["PATH"], **variables}
        return subprocess.run(command, capture_output=True, text=True, timeout=30, env=environment,
                              cwd=self.folder, check=False)

    def refused(self, done, words):
        self.assertEqual(done.returncode, 3, done.stdout[:200] + done.stderr)
        self.assertIn(words, done.stderr)
        self.assertEqual(len(done.stderr.splitlines()), 1, done.stderr)
        self.assertEqual(done.stdout, "")

    def test_from_where_it_is_installed(self):
        shutil.copy(FULL, self.folder / "libexec/cutback/cutback-full")
        done = self.run_with(self.program, *SHEET)
        self.assertIn(done.returncode, (0, 1), done.stderr)
        self.assertIn("<svg", done.stdout)

    def test_neither_from_the_current_folder_nor_from_path(self):
        evil = "#!/bin/sh\necho evil\n"
        (self.folder / "path").mkdir()
        for place in ("cutback-full", "path/cutback-full"):
            (self.folder / place).write_text(evil)
            (self.folder / place).chmod(0o755)
        self.refused(self.run_with(self.program, *SHEET), "cannot be started")

    def test_without_proc(self):
        (self.folder / "cutback-full").write_text("#!/bin/sh\necho evil\n")
        (self.folder / "cutback-full").chmod(0o755)
        hidden = ["unshare", "-m", "sh", "-c", "mount -t tmpfs none /proc && exec \"$@\"", "sh"]
        if self.run_with(*hidden, "true").returncode != 0:
            self.skipTest("this user may not hide /proc")
        self.refused(self.run_with(*hidden, self.program, *SHEET), "/proc/self/exe")

    def test_of_another_build(self):
        shutil.copy(FULL, self.folder / "libexec/cutback/cutback-full")
        done = self.run_with(str(self.folder / "libexec/cutback/cutback-full"), *SHEET,
                             CUTBACK_FIRST_BUILD="0.0.0-other")
        self.refused(done, "of two builds")

    def test_a_copy_of_the_first(self):
        shutil.copy(PROGRAM, self.folder / "libexec/cutback/cutback-full")
        self.refused(self.run_with(self.program, *SHEET), "a copy of the one without")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
