"""What both tests of workbooks use: run as TEST.py PROGRAM SOURCE WORK."""

import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import unittest
import zipfile

PROGRAM, SOURCE, WORK = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
GLANDS = SOURCE / "tests/cli/fit/two_glands.csv"
ENVIRONMENT = {"LC_ALL": "C.UTF-8", "TZ": "UTC", "PATH": os.environ["PATH"]}


def run(*args, stdin=None, env=None):
    """Exit status, stdout and stderr of `cutback schedule`."""
    done = subprocess.run(
        [PROGRAM, "schedule", "--quiet", "--glands", str(GLANDS), *map(str, args)],
        input=stdin, capture_output=True, env=ENVIRONMENT | (env or {}), check=False)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def ends(*args):
    """The lines of --json."""
    status, out, err = run(*args, "--json")
    if status > 1:
        raise AssertionError(err)
    return [line for line in map(json.loads, out.splitlines()) if "notes" not in line]


def edit_zip(path, part, change):
    """Replaces a part of an archive by what `change` makes of it; None takes it out."""
    with zipfile.ZipFile(path) as old:
        parts = {item.filename: old.read(item) for item in old.infolist()}
    parts[part] = change(parts[part].decode()) if part in parts else change("")
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for name, content in parts.items():
            if content is not None:
                new.writestr(name, content)


def share_texts(path):
    """Moves the inline texts of the first sheet to the part of shared ones: this openpyxl (3.0)
    writes inline texts alone."""
    items = []

    def move(match):
        items.append(match[2])
        return f'<c{match[1]} t="s"><v>{len(items) - 1}</v></c>'
    edit_zip(path, "xl/worksheets/sheet1.xml",
             sub(r'<c([^>]*) t="inlineStr"><is>(.*?)</is></c>', move))
    space = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
    edit_zip(path, "xl/sharedStrings.xml",
             lambda _: f'<sst xmlns="{space}">' + "".join(f"<si>{item}</si>" for item in items) + "</sst>")
    kind = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/sharedStrings"
    edit_zip(path, "xl/_rels/workbook.xml.rels", lambda text: text if kind in text else text.replace(
        "</Relationships>",
        f'<Relationship Id="rId99" Type="{kind}" Target="sharedStrings.xml"/></Relationships>'))


def sub(pattern, by):
    """For edit_zip: one replacement that must take place."""
    def change(text):
        text, count = re.subn(pattern, by, text)
        if count == 0:
            raise AssertionError("nothing to replace: " + pattern)
        return text
    return change


def main():
    shutil.rmtree(WORK, ignore_errors=True)
    WORK.mkdir(parents=True)
    unittest.main(argv=[sys.argv[0]], verbosity=1)
