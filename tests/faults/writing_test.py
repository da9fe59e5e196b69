"""Every call that writes an output fails in turn, and once for good from then on; and files may be no
longer than so many bytes. Either the program says so with status 3 in one message, and every file is
what it was before, or nothing was lost and every result is whole.

writing_test.py PROGRAM LIBRARY SOURCE [all]: without `all` a call that is made often fails at some
places only."""

import ctypes
import json
import os
import pathlib
import re
import resource
import subprocess
import sys
import tempfile
import unittest

PROGRAM, LIBRARY, SOURCE = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
JOB = SOURCE / "data/demo/site/pump-motor.json"
GLANDS = ["--glands", str(SOURCE / "tests/cli/fit/two_glands.csv")]
FIT = ["--od", "14.9+15.1", "--bedding", "9.9+10.1", "--wire", "0.9", "--entry", "M20"]
OLD = b"what was there before\n"
KINDS = ["write", "fsync", "fchmod", "close", "link", "rename", "open", "fwrite", "fprintf", "fflush",
         "fclose"]
ALL = sys.argv[4:] == ["all"]
PR_CAPBSET_DROP, CAP_DAC_OVERRIDE, NOBODY = 24, 1, 65534  # linux/prctl.h, linux/capability.h
MOST_PLACES = 300 if ALL else 6  # of one kind in one command


def keep_to_modes():
    """Root may write to whatever is read-only: the program that is begun next may not. Another user would
    not do everywhere, for he may not even reach the program."""
    if ctypes.CDLL(None).prctl(PR_CAPBSET_DROP, CAP_DAC_OVERRIDE, 0, 0, 0) != 0:
        os.setgid(NOBODY)
        os.setuid(NOBODY)


def schedule(folder, rows):
    path = folder / "schedule.csv"
    path.write_text("tag,armour,sheath_od_mm,bedding_mm,armour_mm,entry\n" +
                    "".join(f"P-{i},wire,{12 + i % 9},10,0.9,M20\n" for i in range(rows)))
    return str(path)


def register(folder):
    path = folder / "register.csv"
    path.write_text("tag,end,part,sheath_od_mm,armour_mm\nP-1,x,ARM-16-M20,14.9+15.1,0.9\n")
    return str(path)


def commands(folder):
    """@return name, arguments, names of the files that are written"""
    small, long = schedule(folder, 3), str(folder / "long.csv")
    pathlib.Path(schedule(folder, 400)).rename(long)
    small = schedule(folder, 3)
    quiet = GLANDS + ["--quiet"]
    all_kinds = ["--output", "r.csv", "--takeoff", "t.csv", "--exceptions", "e.csv", "--xlsx",
                 "b.xlsx", "--save-columns", "c.csv"]
    return [
        ("fit, stdout", ["fit", *FIT, *quiet], []),
        ("fit --json --output", ["fit", *FIT, *quiet, "--json", "--output", "f.json"], ["f.json"]),
        ("sheet --pdf", ["sheet", str(JOB), *quiet, "--pdf", "--output", "s.pdf"], ["s.pdf"]),
        ("sheet --svg", ["sheet", str(JOB), *quiet, "--svg", "--output", "s.svg"], ["s.svg"]),
        ("cards", ["cards", small, *quiet, "--json", "--output", "k.pdf"], ["k.pdf"]),
        ("schedule, stdout", ["schedule", small, *quiet], []),
        ("schedule, five files", ["schedule", small, *quiet, *all_kinds],
         ["r.csv", "t.csv", "e.csv", "b.xlsx", "c.csv"]),
        ("schedule, a longer workbook", ["schedule", long, *quiet, "--xlsx", "b.xlsx", "--output",
                                         "r.csv"], ["b.xlsx", "r.csv"]),
        ("glands --new", ["glands", "--new", "n.csv"], ["n.csv"]),
        ("glands --convert", ["glands", "--convert", str(SOURCE / "tests/cli/fit/two_glands.csv"), "--quiet",
                              "--output", "v.csv"], ["v.csv"]),
        ("glands --covers --svg", ["glands", "--covers", "--wire", "0.9", "--quiet", "--svg", "--output", "c.svg"],
         ["c.svg"]),
        ("made --output", ["made", register(folder), "--schedule", small, *quiet, "--output", "m.txt"],
         ["m.txt"]),
        ("schedule --made", ["schedule", small, "--made", register(folder), *quiet, "--output", "r.csv"],
         ["r.csv"]),
        ("kit", ["kit", small, *quiet, "--output", "kit.txt", "--save-columns", "c.csv"],
         ["kit.txt", "c.csv"]),
    ]


class Case:
    """One command in a folder of its own."""

    def __init__(self, folder, arguments, files):
        self.folder, self.arguments, self.files = folder, arguments, files
        # A list that is begun takes no other file's name.
        self.before = {} if "--new" in arguments else {name: OLD for name in files}
        folder.mkdir()
        self.reset()
        self.counts = {}
        counts = folder.parent / "counts"
        self.status, self.out, err = self.run(FAIL_COUNT=str(counts))
        assert self.status in (0, 1), err
        for line in counts.read_text().splitlines():
            kind, number = line.split()
            self.counts[kind] = int(number)
        counts.unlink()
        self.whole = self.contents()
        assert sorted(self.whole) == sorted(files), self.whole.keys()
        assert all(content not in (OLD, b"") for content in self.whole.values())

    def reset(self):
        for path in self.folder.iterdir():
            path.unlink()
        for name, content in self.before.items():
            (self.folder / name).write_bytes(content)

    def contents(self):
        return {path.name: path.read_bytes() for path in self.folder.iterdir()}

    def run(self, longest=None, may_all=True, **variables):
        def limit():
            if longest is not None:
                resource.setrlimit(resource.RLIMIT_FSIZE, (longest, longest))
            if not may_all and os.geteuid() == 0:
                keep_to_modes()
        environment = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "TZ": "UTC", **variables}
        if variables:
            environment["LD_PRELOAD"] = LIBRARY
        with tempfile.TemporaryFile() as out:
            done = subprocess.run([PROGRAM, *self.arguments], cwd=self.folder, stdout=out,
                                  stdin=subprocess.DEVNULL, stderr=subprocess.PIPE, timeout=60,
                                  env=environment, preexec_fn=limit, check=False)
            out.seek(0)
            return done.returncode, out.read(), done.stderr.decode()


def places(count):
    """Which calls of so many are failed: all, or as many at the beginning, between and at the end."""
    third = MOST_PLACES // 3
    if count <= MOST_PLACES:
        return list(range(1, count + 1))
    step = (count - 2 * third) // third
    middle = range(third + 1, count - third + 1, max(1, step))
    return [*range(1, third + 1), *middle, *range(count - third + 1, count + 1)]


class Writing(unittest.TestCase):
    def setUp(self):
        self.injected = self.refused = 0
        self.room = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.room.name)
        self.cases = [(name, Case(self.folder / f"case{i}", arguments, files))
                      for i, (name, arguments, files) in enumerate(commands(self.folder))]

    def tearDown(self):
        self.room.cleanup()
        print(f"{self.id().split('.')[-1]}: {self.injected} faults, {self.refused} refused, the "
              "rest did no harm")

    def check(self, case, result, for_good):
        status, out, err = result
        self.injected += 1
        contents = case.contents()
        if status == case.status:
            self.assertEqual(contents, case.whole)
            self.assertEqual(out, case.out)
            return
        self.refused += 1
        self.assertEqual(status, 3, err)
        if "--json" in case.arguments:
            codes = [fault["code"] for fault in json.loads(err)["errors"]]
        else:
            codes = re.findall(r"error\[(.*?)\]", err)
            self.assertEqual(len(err.splitlines()), 1, err)  # nor does a library say anything
        self.assertEqual(codes, ["cannot-write"], err)
        if for_good and "is new all the same" in err:  # nothing could be undone, and it says so
            for name in case.files:
                self.assertIn(contents.pop(name), (OLD, case.whole[name]))
            for name in contents:
                self.assertIn(name, err)
                self.assertEqual(contents[name], OLD)
            return
        # A list that is begun is kept as soon as it is whole, whatever becomes of what is said of it.
        if "--new" in case.arguments and contents:
            self.assertEqual(contents, case.whole)
            return
        self.assertEqual(contents, case.before)

    def test_every_call_fails(self):
        for name, case in self.cases:
            for kind in KINDS:
                chosen = places(case.counts[kind])
                for place in chosen:
                    for more in ("", "1") if ALL or place in chosen[:2] else ("",):
                        with self.subTest(command=name, kind=kind, place=place, more=more):
                            case.reset()
                            result = case.run(FAIL_CALL=kind, FAIL_AT=str(place), FAIL_MORE=more)
                            self.check(case, result, bool(more))

    def test_a_full_device(self):
        for arguments in (["--help"], ["--version"], [], ["fit", "--help"], ["fit", *FIT, *GLANDS],
                          ["rules", "--json"], ["sheet", str(JOB), *GLANDS, "--svg"]):
            with self.subTest(arguments=arguments), open("/dev/full", "wb") as full:
                done = subprocess.run([PROGRAM, *arguments], stdout=full, stderr=subprocess.PIPE,
                                      check=False, timeout=60)
                self.assertEqual(done.returncode, 3, done.stderr)
                self.assertIn(b"stdout", done.stderr)

    def test_what_may_not_be_written(self):
        for name, case in self.cases:
            if not case.files:
                continue
            # The folder of a file that is made next to the target, and the target itself.
            for folder_mode, file_mode in ((0o555, 0o644), (0o777, 0o444)):
                if file_mode == 0o444 and not case.before:
                    continue
                with self.subTest(command=name, folder=oct(folder_mode), file=oct(file_mode)):
                    case.reset()
                    self.folder.chmod(0o755)
                    for file in case.folder.iterdir():
                        file.chmod(file_mode)
                    case.folder.chmod(folder_mode)
                    result = case.run(may_all=False)
                    case.folder.chmod(0o755)
                    self.assertEqual(result[0], 3, result[2])
                    self.check(case, result, False)

    def test_files_may_not_be_long(self):
        for name, case in self.cases:
            longest = max([len(case.out), *map(len, case.whole.values())])
            pieces = 40 if ALL else 5
            for size in sorted({0, 4096, *range(0, longest, longest // pieces), longest - 1, longest}):
                with self.subTest(command=name, size=size):
                    case.reset()
                    self.check(case, case.run(longest=size), False)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
