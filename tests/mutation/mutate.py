"""Changes one place of the core at a time and looks whether a test fails: one that survives is a rule
that no test holds.

mutate.py WORK [--rooms NAME ...] [--sample N] [--seed N]

WORK is a checkout of its own with a build in WORK/build (its sources are written to, and put back):
  git worktree add ../mutants && cd ../mutants && cmake -S . -B build -G Ninja \\
    -DCMAKE_BUILD_TYPE=Dev -DCUTBACK_TOGETHER=ON
It needs python3-clang-14. Kinds of change: an operator turned round, a call left out, a constant
moved, a condition taken for true or false. All of the sample is compiled in at once, each behind a
number; CUTBACK_MUTANT chooses one when a test program starts, so that a mutant costs a run of the tests
that reach it and no build. The unit tests come first, then the published ones, then the properties:
each only for what is left. Golden screens are never asked. What was found is remembered in
WORK/build/mutants.json by the text of its function; a further run tries only what is new, has changed,
or survived. A mutant that changes nothing anybody can see stands in equivalent.json with the reason: it
is tried like any other, and counted by itself where it survives."""

import argparse
import concurrent.futures
import hashlib
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

import clang.cindex
from clang.cindex import CursorKind

clang.cindex.Config.set_library_file("/usr/lib/llvm-14/lib/libclang.so.1")
ROOMS = ["fit", "strip", "area", "entry", "earth", "measure", "cable", "job"]
PROGRAMS = ["cutback_unit_tests", "cutback_published_tests", "cutback_property_tests"]
OPERATORS = {"<": "less", "<=": "less_equal", ">": "greater", ">=": "greater_equal", "==": "equal",
             "!=": "not_equal", "+": "plus", "-": "minus", "*": "times", "/": "over"}
BECOMES = {"<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==", "+": "-", "-": "+",
           "*": "/", "/": "*", "&&": "||", "||": "&&"}
ARITHMETIC = {"INT", "UINT", "LONG", "ULONG", "DOUBLE", "FLOAT", "LONGLONG", "ULONGLONG", "CHAR_S",
              "UCHAR", "BOOL", "SHORT", "USHORT"}
TWINS = {"min": "max", "max": "min", "round_up": "round_down", "round_down": "round_up"}
NEGATED = {"at_least", "at_most", "inside"}
ON = "cutback_mutants::on({})"
KINDS = b"1"  # raised when other places are found in the same text


class Source:
    """A file of the core with the places in it that can be changed."""

    def __init__(self, work, path):
        self.path, self.file = path, work / path
        self.bytes = self.file.read_bytes()
        self.places = []  # (begin, end, kind, parts, words)
        # To parse it takes long: what was found is kept by the text of the file.
        self.kept = work / "build/places" / hashlib.sha256(KINDS + self.bytes).hexdigest()
        self.is_read = self.kept.exists()
        if self.is_read:
            self.places = json.loads(self.kept.read_text())

    def keep(self):
        self.unique()
        self.kept.parent.mkdir(exist_ok=True)
        self.kept.write_text(json.dumps(self.places))
        self.is_read = True

    def text(self, begin, end):
        return self.bytes[begin:end].decode()

    def span(self, cursor):
        return cursor.extent.start.offset, cursor.extent.end.offset

    def add(self, cursor, kind, words, parts=()):
        begin, end = self.span(cursor)
        self.places.append({"begin": begin, "end": end, "kind": kind, "words": words, "parts": parts,
                            "line": cursor.extent.start.line})

    def walk(self, cursor, parent):
        kind = cursor.kind
        begin, end = self.span(cursor)
        # How much is reserved nobody sees.
        if kind == CursorKind.CALL_EXPR and cursor.spelling == "reserve":
            return
        # What the compiler evaluates cannot be chosen when a program starts.
        if kind in (CursorKind.VAR_DECL, CursorKind.FUNCTION_DECL, CursorKind.CXX_METHOD,
                    CursorKind.CONSTRUCTOR) and "constexpr" in self.text(begin, end).split("{")[0]:
            return
        if kind in (CursorKind.STATIC_ASSERT, CursorKind.ENUM_DECL, CursorKind.STRUCT_DECL,
                    CursorKind.CASE_STMT) and kind != CursorKind.CASE_STMT and kind != CursorKind.STRUCT_DECL:
            return
        children = list(cursor.get_children())
        if kind == CursorKind.CASE_STMT:
            children = children[1:]
        if end > begin:
            self.find(cursor, kind, children, parent)
        for child in children:
            self.walk(child, cursor)

    def find(self, cursor, kind, children, parent):
        begin, end = self.span(cursor)
        text = self.text(begin, end)
        if kind == CursorKind.BINARY_OPERATOR and len(children) == 2:
            self.operator(cursor, *children)
        elif kind == CursorKind.CALL_EXPR and cursor.spelling in ("operator==", "operator!=") and len(children) >= 2:
            self.operator(cursor, children[0], children[-1])
        elif kind in (CursorKind.INTEGER_LITERAL, CursorKind.FLOATING_LITERAL):
            number = re.fullmatch(r"(\d[\d']*(?:\.\d+)?)([uUlL]*)", text)
            if number:
                digits = number[1].replace("'", "")
                moved = str(float(digits) + 1.0) if "." in digits else str(int(digits) + 1)
                self.add(cursor, "constant", f"{text} is {moved}",
                         ())
                self.places[-1]["moved"] = moved + number[2]
        elif kind == CursorKind.CXX_BOOL_LITERAL_EXPR and text in ("true", "false"):
            self.add(cursor, "negated", f"{text} turned round")
        elif kind == CursorKind.CALL_EXPR and cursor.spelling in NEGATED and "(" in text:
            self.add(cursor, "negated", f"{text} turned round")
        elif kind == CursorKind.CALL_EXPR and cursor.spelling in TWINS and re.match(r"(std::)?\w+\(", text):
            self.add(cursor, "twin", f"{cursor.spelling} is {TWINS[cursor.spelling]}")
        if kind == CursorKind.IF_STMT and children and children[0].kind.is_expression() and children[0].extent.end.offset:
            first = children[0]
            if not re.match(r"if (constexpr )?\([^()]*;", text):
                for word in ("true", "false"):
                    self.add(first, "condition_" + word, f"condition is {word}")
        if kind == CursorKind.CONDITIONAL_OPERATOR and children:
            for word in ("true", "false"):
                self.add(children[0], "condition_" + word, f"condition is {word}")
        is_statement = parent is not None and parent.kind in (CursorKind.COMPOUND_STMT,) or (
            parent is not None and parent.kind in (CursorKind.IF_STMT, CursorKind.CXX_FOR_RANGE_STMT, CursorKind.FOR_STMT)
            and self.bytes[end:end + 1] == b";")
        if is_statement and self.bytes[end:end + 1] == b";" and (
                kind in (CursorKind.CALL_EXPR, CursorKind.COMPOUND_ASSIGNMENT_OPERATOR, CursorKind.UNEXPOSED_EXPR)
                or kind == CursorKind.BINARY_OPERATOR and re.search(r"[^=!<>]=[^=]", text)):
            self.add(cursor, "statement", "left out")

    def operator(self, cursor, left, right):
        begin, end = self.span(cursor)
        (left_begin, left_end), (right_begin, right_end) = self.span(left), self.span(right)
        if left_begin != begin or right_end != end or not left_end or left_end > right_begin:
            return
        between = self.text(left_end, right_begin).strip()
        if between not in BECOMES:
            return
        if between in "+-*/" and not (left.type.get_canonical().kind.name in ARITHMETIC
                                      and right.type.get_canonical().kind.name in ARITHMETIC):
            return
        self.add(cursor, "logic" if between in ("&&", "||") else "operator",
                 f"{between} is {BECOMES[between]}", ((left_begin, left_end), (right_begin, right_end)))
        self.places[-1]["operator"] = between

    def unique(self):
        seen, kept = set(), []
        for place in self.places:
            name = (place["begin"], place["end"], place["kind"])
            if name not in seen:
                seen.add(name)
                kept.append(place)
        self.places = kept

    def function_around(self, line):
        """The lines from the last one that begins in the first column to the next: what a result of
        a test depends on first of all."""
        lines = self.bytes.decode().split("\n")
        begin = end = line - 1
        while begin > 0 and not re.match(r"[^\s}/#]", lines[begin]):
            begin -= 1
        while end + 1 < len(lines) and not lines[end].startswith("}"):
            end += 1
        return "\n".join(lines[begin:end + 1])

    def change(self, place):
        """What equivalent.json names it by."""
        line = self.bytes.decode().split("\n")[place["line"] - 1].strip()
        text = re.sub(r"\s+", " ", self.text(place["begin"], place["end"]))
        return {"file": self.path, "line": line, "change": f"{text[:90]}: {place['words']}"}

    def key(self, place):
        around = self.function_around(place["line"])
        words = (self.path, around, self.text(place["begin"], place["end"]), place["kind"], place["words"],
                 str(place["begin"] - self.bytes.decode().find(around)))
        return hashlib.sha256("\n".join(words).encode()).hexdigest()[:20]

    def render(self, chosen, begin, end, inside=None):
        """The text from begin to end with the chosen places in it changed; `inside`: not this span."""
        out, at = "", begin
        spans = sorted({(p["begin"], p["end"]) for p in chosen
                        if begin <= p["begin"] and p["end"] <= end and (p["begin"], p["end"]) != inside},
                       key=lambda span: (span[0], -span[1]))
        for span in spans:
            if span[0] < at:
                continue
            out += self.text(at, span[0]) + self.place(chosen, span)
            at = span[1]
        return out + self.text(at, end)

    def place(self, chosen, span):
        here = [p for p in chosen if (p["begin"], p["end"]) == span]
        body = None
        for p in here:
            if p["kind"] in ("operator", "logic"):
                left, right = (self.render(chosen, *part) for part in p["parts"])
                on = ON.format(p["number"])
                if p["kind"] == "operator":
                    body = f"cutback_mutants::{OPERATORS[p['operator']]}({p['number']}, {left}, {right})"
                else:  # De Morgan: each side is evaluated once, and only if it is asked
                    body = (f"(((static_cast<bool>({left}) != {on}) {p['operator']} "
                            f"(static_cast<bool>({right}) != {on})) != {on})")
        if body is None:
            body = self.render(chosen, *span, inside=span)
        for p in here:
            on = ON.format(p["number"])
            if p["kind"] == "constant":
                body = f"({on} ? {p['moved']} : {body})"
            elif p["kind"] == "negated":
                body = f"({on} != ({body}))"
            elif p["kind"] == "twin":
                other = re.sub(r"\w+\(", lambda name: TWINS[name[0][:-1]] + "(", body, count=1)
                body = f"({on} ? {other} : {body})"
        for p in here:
            on = ON.format(p["number"])
            if p["kind"].startswith("condition"):
                body = f"({on} ? {p['kind'][10:]} : static_cast<bool>({body}))"
            elif p["kind"] == "statement":
                body = f"({on} ? void() : void({body}))"
        return body


def arguments_of(work):
    """What clang needs to read a file of the core."""
    return ["-std=c++20", f"-I{work}/src", f"-I{work}/include", "-DFMT_HEADER_ONLY=1",
            "-DJSON_USE_IMPLICIT_CONVERSIONS=0", "-DJSON_DIAGNOSTICS=1", '-DCUTBACK_VERSION="0"', "-w"]


def read_all(work, sources):
    """Finds the places of all sources, by the files that compile several of them at a time: the headers
    are read once for each of those."""
    wanted = {str(source.file): source for source in sources if not source.is_read}
    for batch in [*sorted((work / "build/src/together/core").glob("*.cpp")), *map(pathlib.Path, list(wanted))]:
        here = [source for name, source in wanted.items()
                if not source.is_read and (f'"{name}"' in batch.read_text() or name == str(batch))]
        if not here:
            continue
        unit = clang.cindex.Index.create().parse(str(batch), args=arguments_of(work))
        bad = [str(each) for each in unit.diagnostics if each.severity >= 3]
        if bad:
            raise SystemExit(f"{batch}: {bad[0]}")
        for cursor in unit.cursor.get_children():
            source = wanted.get(cursor.location.file.name) if cursor.location.file else None
            if source in here:
                source.walk(cursor, None)
        for source in here:
            source.keep()


class Run:
    def __init__(self, work, build, programs):
        self.work, self.build, self.programs = work, build, programs
        self.reaching = {}  # program -> number -> [(seconds, test)]
        self.seconds = {}

    def write(self, sources):
        """The sources with all mutants in them; @return what stood there"""
        before = {}
        for source in sources:
            chosen = [p for p in source.places if p.get("number")]
            if not chosen:
                continue
            file = self.work / source.path
            before[file] = source.bytes
            body = source.render(chosen, 0, len(source.bytes))
            file.write_text(f'#pragma GCC system_header\n#include "{HERE}/mutants.hpp"\n'
                            f'#line 1 "{source.path}"\n' + body)
        return before

    def compile(self, sources):
        """Leaves out what cannot be compiled, a line at a time. @return how many"""
        left_out = 0
        for _ in range(8):
            before = self.write(sources)
            done = subprocess.run([*self.build, *self.programs, "--", "-k", "0"], cwd=self.work, capture_output=True,
                                  text=True, check=False)
            wrong = set(re.findall(r"^(?:[\w./]*/)?(src/core/[\w/.]+):(\d+):\d*:? +(?:fatal )?error", done.stdout + done.stderr, re.M))
            put_back(before)
            if not wrong:
                if done.returncode != 0:
                    raise SystemExit((done.stdout + done.stderr)[-3000:])
                return left_out
            for source in sources:
                for p in source.places:
                    if p.get("number") and any(source.path == path and int(line) == p["line"] for path, line in wrong):
                        p["number"] = 0
                        left_out += 1
        raise SystemExit(f"does not compile: {sorted(wrong)[:5]}")

    def look(self, program, at_once):
        """Which mutants each test reaches, and how long it takes without one. What is worked out once
        and kept counts for the first test of a share that asks for it."""
        listed = subprocess.run([str(self.work / "build/tests" / program), "--list-test-names-only"],
                                capture_output=True, text=True, check=False).stdout
        tests = list(filter(None, listed.splitlines()))

        def look_at(share):
            with tempfile.NamedTemporaryFile("r") as out:
                if self.start(program, share, 0, 3600, CUTBACK_REACHED=out.name) != 0:
                    raise SystemExit(f"{program} fails without a mutant")
                return out.read().splitlines()

        self.reaching[program] = {}
        with concurrent.futures.ThreadPoolExecutor(at_once) as pool:
            lines = [line for lines in pool.map(look_at, (tests[i::at_once] for i in range(at_once))) for line in lines]
        for line in lines:
            reached, test = line.split("\t")
            seconds, *numbers = reached.split(" ")
            self.seconds[program] = self.seconds.get(program, 0.0) + float(seconds)
            for number in numbers:
                self.reaching[program].setdefault(int(number), []).append((float(seconds), test))

    def start(self, program, tests, number, most_seconds, **variables):
        environment = {**os.environ, "CUTBACK_MUTANT": str(number), "RC_PARAMS": "noshrink=1 seed=20261125", **variables}
        with tempfile.NamedTemporaryFile("w", suffix=".txt") as names:
            # A comma ends a name, as it would on the command line.
            names.writelines(re.sub(r'([\\,\[])', r"\\\1", test) + "\n" for test in tests)
            names.flush()
            chosen = ["-f", names.name] if tests else []
            try:
                return subprocess.run([str(self.work / "build/tests" / program), "--abort", *chosen],
                                      stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=most_seconds,
                                      env=environment, cwd=self.work, check=False).returncode
            except subprocess.TimeoutExpired:
                return 1  # without an end is found as well

    def put(self, number, program):
        """@return whether the program finds it"""
        tests = sorted(self.reaching[program].get(number, []))
        # The quick ones first: most are found by the first that is asked.
        for part in filter(None, (tests[:6], tests[6:])):
            most = 20 + 10 * sum(seconds for seconds, _ in part)
            if self.start(program, [test for _, test in part], number, most) != 0:
                return True
        return False


def put_back(before):
    for file, content in before.items():
        file.write_bytes(content)


HERE = pathlib.Path(__file__).resolve().parent


def main():
    parser = argparse.ArgumentParser(description=__doc__,
                                     formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("work", type=pathlib.Path)
    parser.add_argument("--rooms", nargs="+", default=ROOMS)
    parser.add_argument("--sample", type=int, default=600)
    parser.add_argument("--seed", type=int, default=20261128)
    parser.add_argument("--programs", nargs="+", default=PROGRAMS, choices=PROGRAMS)
    parser.add_argument("--at-once", type=int, default=2)
    parser.add_argument("--build", nargs="+", default=["cmake", "--build", "build", "--target"])
    parser.add_argument("--list", action="store_true", help="only count what could be tried")
    options = parser.parse_args()
    work = options.work.resolve()
    memory = work / "build/mutants.json"
    known = json.loads(memory.read_text()) if memory.exists() else {}
    equivalent = json.loads((HERE / "equivalent.json").read_text())

    paths = [str(file.relative_to(work)) for room in options.rooms
             for file in sorted((work / "src/core" / room).glob("*.cpp"))]
    sources = [Source(work, path) for path in paths]
    read_all(work, sources)
    places = [(source, place) for source in sources for place in source.places]
    # By their text, so that a change elsewhere leaves the sample as it is.
    places.sort(key=lambda each: hashlib.sha256(f"{options.seed} {each[0].key(each[1])}".encode()).digest())
    print(f"{len(places)} mutants in {len(sources)} files", flush=True)
    if options.list:
        return 0
    for number, (source, place) in enumerate(places[:options.sample], 1):
        place["number"] = number
    run = Run(work, options.build, options.programs)
    left_out = run.compile(sources)
    print(f"compiled; {left_out} cannot be", flush=True)
    for program in options.programs:
        run.look(program, options.at_once)
        print(f"{program}: {run.seconds.get(program, 0):.0f} s, reaches {len(run.reaching[program])}", flush=True)

    def try_one(each):
        source, place = each
        key = source.key(place)
        found = known.get(key, {}).get("found")
        if not found:
            found = next((each for each in options.programs if run.put(place["number"], each)), None)
        change = source.change(place)
        return key, {"found": found, "place": f"{source.path}:{place['line']}", "kind": place["kind"], **change,
                     "equivalent": any(change.items() <= each.items() for each in equivalent),
                     "reached": any(place["number"] in run.reaching[p] for p in options.programs)}

    tried = {}
    chosen = [(source, place) for source, place in places[:options.sample] if place.get("number")]
    with concurrent.futures.ThreadPoolExecutor(options.at_once) as pool:
        for key, result in pool.map(try_one, chosen):
            tried[key] = known[key] = result
            memory.write_text(json.dumps(known, indent=1))
            if not result["found"]:
                how = "equivalent" if result["equivalent"] else "survived" if result["reached"] else "not reached"
                print(f"{how}: {result['place']}: {result['change']}", flush=True)
    found = [each for each in tried.values() if each["found"]]
    for program in options.programs:
        print(f"killed by {program}: {sum(each['found'] == program for each in found)}")
    alike = sum(each["equivalent"] and not each["found"] for each in tried.values())
    counted = len(tried) - alike
    print(f"{len(tried)} tried, {alike} equivalent; of {counted} others {len(found)} killed: "
          f"{100 * len(found) / max(1, counted):.1f} %")
    return 0


if __name__ == "__main__":
    sys.exit(main())
