"""Manual pages and completions: whatever --help names stands in them.

manual_test.py PROGRAM FOLDER"""

import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unittest

PROGRAM, FOLDER = sys.argv[1], pathlib.Path(sys.argv[2]).resolve()


def help_of(*command):
    return subprocess.run([PROGRAM, *command, "--help-all" if command else "--help"], capture_output=True, text=True,
                          check=True).stdout


def options_in(text):
    return set(re.findall(r"^  (--[a-z0-9-]+)", text, re.M))


COMMANDS = re.findall(r"^  ([a-z]+) ", help_of().split("Commands:")[1], re.M)


def complete(*words, folder=FOLDER):
    """What bash offers for the last of the words."""
    script = (f'source "{FOLDER}/cutback.bash"; compopt() {{ :; }}; COMP_WORDS=("$@"); '
              'COMP_CWORD=$(($# - 1)); _cutback; printf "%s\\n" "${COMPREPLY[@]}"')
    done = subprocess.run(["bash", "-c", script, "bash", "cutback", *words], capture_output=True,
                          text=True, check=True, cwd=folder)
    assert not done.stderr, done.stderr
    return done.stdout.split("\n")[:-1]


class Manual(unittest.TestCase):
    def test_every_option(self):
        self.assertGreater(len(COMMANDS), 9)
        fish, zsh = (FOLDER / "cutback.fish").read_text(), (FOLDER / "_cutback").read_text()
        for command in COMMANDS:
            page = (FOLDER / f"cutback-{command}.1").read_text().replace("\\-", "-")
            for option in options_in(help_of(command)):
                with self.subTest(command=command, option=option):
                    self.assertIn(f"\\fB{option}\\fR", page)
                    self.assertRegex(fish, f"from {command}' -l {option[2:]} ")
                    self.assertIn(option + "[", zsh)
                    self.assertIn(option, complete(command, option))

    def test_pages_are_roff(self):
        if not shutil.which("groff"):
            self.skipTest("no groff")
        for page in FOLDER.glob("*.1"):
            done = subprocess.run(["groff", "-man", "-Tutf8", "-ww", str(page)], capture_output=True,
                                  text=True, check=True)
            self.assertEqual(done.stderr, "", page)

    def test_values(self):
        self.assertEqual(complete("fi"), ["fit"])
        self.assertEqual(complete("fit", "--armour", ""), ["wire", "braid", "tape", "strip", "none"])
        self.assertEqual(complete("fit", "--colour", "a"), ["auto", "always"])
        self.assertEqual(complete("fit", "--rules", "iec-60079-14", ":", "2013"), ["2013"])
        self.assertIn("--wall", complete("fit", "--wa"))

    def test_kinds_of_files(self):
        with tempfile.TemporaryDirectory() as room:
            for name in ("a.csv", "b.json", "c.xlsx", "d e.csv"):
                (pathlib.Path(room) / name).touch()
            self.assertEqual(sorted(complete("fit", "--glands", "", folder=room)), ["a.csv", "d e.csv"])
            self.assertEqual(sorted(complete("schedule", "", folder=room)), ["a.csv", "c.xlsx", "d e.csv"])
            self.assertEqual(complete("sheet", "", folder=room), ["b.json"])

    def test_syntax(self):
        for shell, name in (("bash", "cutback.bash"), ("zsh", "_cutback"), ("fish", "cutback.fish")):
            if shutil.which(shell):
                subprocess.run([shell, "-n", str(FOLDER / name)], check=True)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
