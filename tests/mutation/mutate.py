"""Changes one place of the core at a time and looks whether a test fails: one that survives is a rule
that no test holds.

mutate.py WORK [--files PATTERN] [--sample N] [--seed N] [--program NAME ...]

WORK is a checkout of its own with a build in WORK/build (it is written to): for example
  git worktree add ../mutants && cd ../mutants && cmake -S . -B build -G Ninja \\
    -DCMAKE_BUILD_TYPE=Debug -DCUTBACK_PRECOMPILE=ON && cmake --build build --target cutback_unit_tests
Kinds of change: an operator turned round, a statement left out, a constant moved, a condition taken for
true or false. What was tried is remembered in WORK/build/mutants.json by the text of its function, so
that a further run tries only what is new or has changed. At the end the survivors are listed."""

import argparse
import hashlib
import json
import pathlib
import random
import re
import subprocess
import sys
import time

OPERATORS = [("<=", "<"), (">=", ">"), ("==", "!="), ("!=", "=="), ("&&", "||"), ("||", "&&"),
             (" < ", " <= "), (" > ", " >= "), (" + ", " - "), (" - ", " + "), (" * ", " / "),
             (" / ", " * "), ("std::min", "std::max"), ("std::max", "std::min"),
             ("at_least(", "!at_least("), ("at_most(", "!at_most("), ("round_up(", "round_down("),
             ("round_down(", "round_up("), ("return true;", "return false;"),
             ("return false;", "return true;")]
NUMBER = re.compile(r"(?<![\w.])(\d+\.\d+|\d+)(?![\w.])")
CONDITION = re.compile(r"\bif \((?!constexpr)(.+)\) (?=[^\s])")
STATEMENT = re.compile(r"^ +(?!return|const|auto|using|case|break|continue|throw|static|for|while|if|else|"
                       r"}|public|private)[\w:.>*()\[\]-]+(\(.*\)| [-+*/|]?= .*);$")
MOST_SECONDS = 300


def code_only(line):
    """The line with its comment and the insides of its strings as blanks: places stay the same."""
    line = re.sub(r'"(\\.|[^"\\])*"', lambda found: '"' + " " * (len(found[0]) - 2) + '"', line)
    return re.sub(r"//.*", lambda found: " " * len(found[0]), line)


def mutants_of(text):
    """@return (number of the line from 0, what it becomes, kind) of every mutant"""
    found = []
    for number, line in enumerate(text.split("\n")):
        code = code_only(line)
        if code.lstrip().startswith("#") or "static_cast<" in code and ";" not in code:
            continue
        for old, new in OPERATORS:
            at = code.find(old)
            while at >= 0:
                if not (old == "==" and code[at - 1] in "=!<>") and "operator" not in code:
                    found.append((number, line[:at] + new + line[at + len(old):], "operator"))
                at = code.find(old, at + len(old))
        for each in NUMBER.finditer(code):
            value = each[0]
            moved = repr(float(value) + 1.0) if "." in value else str(int(value) + 1)
            found.append((number, line[:each.start()] + moved + line[each.end():], "constant"))
        condition = CONDITION.search(code)
        if condition:
            for word in ("true", "false"):
                found.append((number, line[:condition.start(1)] + word + line[condition.end(1):],
                              "condition"))
        if STATEMENT.match(code):
            found.append((number, re.match(r" *", line)[0] + ";", "statement"))
    return found


def function_around(lines, number):
    """The lines from the last one that begins in the first column to the next: what a result of a
    test depends on first of all."""
    begin = number
    while begin > 0 and not re.match(r"[^\s}/#]", lines[begin]):
        begin -= 1
    end = number
    while end + 1 < len(lines) and not lines[end].startswith("}"):
        end += 1
    return "\n".join(lines[begin:end + 1])


def key_of(path, lines, mutant):
    number, changed, kind = mutant
    text = function_around(lines, number)
    return hashlib.sha256("\n".join((path, text, lines[number], changed, kind)).encode()).hexdigest()[:20]


def try_mutant(work, path, lines, mutant, programs):
    """@return killed, survived, or unbuildable"""
    number, changed, _ = mutant
    file = work / path
    original = "\n".join(lines)
    file.write_text("\n".join(lines[:number] + [changed] + lines[number + 1:]))
    try:
        build = subprocess.run(["cmake", "--build", str(work / "build"), "--target", *programs],
                               capture_output=True, check=False)
        if build.returncode != 0:
            return "unbuildable"
        for program in programs:
            try:
                test = subprocess.run([str(work / "build/tests" / program), "--abort"],
                                      capture_output=True, timeout=MOST_SECONDS, check=False)
            except subprocess.TimeoutExpired:
                return "killed"
            if test.returncode != 0:
                return "killed"
        return "survived"
    finally:
        file.write_text(original)


def main():
    parser = argparse.ArgumentParser(description=__doc__,
                                     formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("work", type=pathlib.Path)
    parser.add_argument("--files", default="src/core/**/*.cpp")
    parser.add_argument("--sample", type=int, default=50)
    parser.add_argument("--seed", type=int, default=20261128)
    parser.add_argument("--program", nargs="+", default=["cutback_unit_tests"])
    parser.add_argument("--list", action="store_true", help="only count what could be tried")
    options = parser.parse_args()
    memory = options.work / "build/mutants.json"
    known = json.loads(memory.read_text()) if memory.exists() else {}
    places = []
    for file in sorted(options.work.glob(options.files)):
        lines = file.read_text().split("\n")
        path = str(file.relative_to(options.work))
        places += [(path, lines, mutant) for mutant in mutants_of("\n".join(lines))]
    random.Random(options.seed).shuffle(places)
    if options.list:
        print(f"{len(places)} mutants")
        return 0
    tried = 0
    for path, lines, mutant in places:
        key = key_of(path, lines, mutant)
        if key in known:
            continue
        if tried == options.sample:
            break
        tried += 1
        begin = time.monotonic()
        result = try_mutant(options.work, path, lines, mutant, options.program)
        known[key] = {"result": result, "place": f"{path}:{mutant[0] + 1}", "kind": mutant[2],
                      "line": mutant[1].strip()}
        memory.write_text(json.dumps(known, indent=1))
        print(f"{result:11} {time.monotonic() - begin:5.0f} s  {path}:{mutant[0] + 1}: "
              f"{mutant[1].strip()}", flush=True)
    counts = {}
    for each in known.values():
        counts[each["result"]] = counts.get(each["result"], 0) + 1
    print(counts)
    for each in known.values():
        if each["result"] == "survived":
            print(f"survived: {each['place']}: {each['line']}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
