"""Which lines and branches of the sources the tests reach.

coverage.py BUILD [--missed FOLDER ...]: BUILD is a folder of cmake with -DCUTBACK_COVERAGE=ON (clang)
in which the tests were run. Prints a figure for each folder; with --missed the lines and branches of
these folders that no test reaches (`src/core`, `src/io/csv.cpp`). A branch is one way of one condition
as it is written."""

import argparse
import collections
import json
import pathlib
import subprocess
import sys

HERE = pathlib.Path(__file__).resolve().parents[2]
PROGRAMS = ["tests/cutback_unit_tests", "tests/cutback_published_tests", "tests/cutback_property_tests",
            "src/cli/cutback", "src/cli/cutback-full"]


def read(build):
    """@return file -> (line -> count, (line, column) -> [true, false])"""
    profile = build / "coverage.profdata"
    subprocess.run(["llvm-profdata-14", "merge", "-sparse", "-o", str(profile),
                    *map(str, sorted((build / "profiles").glob("*.profraw")))], check=True)
    programs = [build / name for name in PROGRAMS if (build / name).exists()]
    objects = [word for program in programs[1:] for word in ("-object", str(program))]
    common = ["-instr-profile=" + str(profile), str(programs[0]), *objects,
              "-ignore-filename-regex=^/usr/|/tests/|/build"]
    files = collections.defaultdict(lambda: (collections.Counter(), collections.defaultdict(lambda: [0, 0])))
    lines = subprocess.run(["llvm-cov-14", "export", "-format=lcov", *common], check=True,
                           capture_output=True, text=True).stdout
    for line in lines.splitlines():
        kind, _, rest = line.partition(":")
        if kind == "SF":
            name = rest
        elif kind == "DA":
            number, count = rest.split(",")[:2]
            files[name][0][int(number)] += int(count)
    text = subprocess.run(["llvm-cov-14", "export", "-format=text", *common], check=True,
                          capture_output=True, text=True).stdout
    for one in json.loads(text)["data"][0]["files"]:
        for line, column, _, _, yes, no, *_ in one["branches"]:
            counts = files[one["filename"]][1][line, column]
            counts[0] += yes
            counts[1] += no
    return {str(pathlib.Path(name).relative_to(HERE)): counts for name, counts in files.items()
            if pathlib.Path(name).is_relative_to(HERE)}


def folder_of(path):
    parts = path.split("/")
    return "/".join(parts[:3] if parts[1] == "core" else parts[:2])


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build", type=pathlib.Path)
    parser.add_argument("--missed", nargs="+", default=[])
    options = parser.parse_args()
    files = read(options.build.resolve())
    totals = collections.defaultdict(lambda: [0, 0, 0, 0])
    for path, (lines, branches) in files.items():
        ways = [count for both in branches.values() for count in both]
        for folder in {folder_of(path), "/".join(path.split("/")[:2])}:
            for i, value in enumerate((sum(map(bool, lines.values())), len(lines), sum(map(bool, ways)), len(ways))):
                totals[folder][i] += value
    for folder, (reached, lines, taken, ways) in sorted(totals.items()):
        print(f"{folder:24} lines {100 * reached / max(1, lines):6.2f} % of {lines:6}   "
              f"branches {100 * taken / max(1, ways):6.2f} % of {ways:6}")
    for path, (lines, branches) in sorted(files.items()):
        if not any(path.startswith(folder) for folder in options.missed):
            continue
        source = (HERE / path).read_text().split("\n")
        missed = {number: ["not reached"] for number, count in lines.items() if not count}
        for (line, column), (yes, no) in sorted(branches.items()):
            if lines[line] and not (yes and no):
                missed.setdefault(line, []).append(f"never {'true' if not yes else 'false'}: " + source[line - 1][column - 1:][:40])
        for line, words in sorted(missed.items()):
            print(f"{path}:{line}: {source[line - 1].strip()[:90]}  [{'; '.join(words)}]")
    return 0


if __name__ == "__main__":
    sys.exit(main())
