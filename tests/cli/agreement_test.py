"""The same end put to fit, sheet, schedule and cards has one answer: 500 ends at random, with entries,
places and faults. Run as agreement_test.py PROGRAM SOURCE WORK; another SEED in the environment makes
other ends."""

import collections
import csv
import json
import os
import pathlib
import random
import subprocess
import sys
import unittest

PROGRAM, SOURCE, WORK = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
ENVIRONMENT = {"LC_ALL": "C.UTF-8", "TZ": "UTC", "PATH": os.environ["PATH"]}
GLANDS = SOURCE / "data/demo/glands.csv"
SEED = int(os.environ.get("SEED", "20261128"))
ENDS = 500

# column: option, the value that mostly passes, others
FIELDS = {
    "sheath_od_mm": ("--od", ["14.9+15.1", "15.0+15.1", "21.9+22.1"], ["15", "16.5+16.7", "60+60.2"]),
    "bedding_mm": ("--bedding", ["9.9+10.1", "10.0+10.1", "16.0+16.2"], ["10", "11.9+12.1"]),
    "armour_mm": ("--wire", ["0.9", "0.9", "1.25"], ["1.6", "0.8", "1.05"]),
    "armour": ("--armour", ["wire"], ["braid", "tape", "none"]),
    "evidence": ("--evidence", ["measured"], ["datasheet"]),
    "cores": ("--cores", ["3", "4"], ["1", "19"]),
    "csa_mm2": ("--csa", ["4", "2.5"], ["35"]),
    "insulation": ("--insulation", ["xlpe"], ["pvc"]),
    "entry": ("--entry", ["M20", "M20", "M25"], ["M32", "NPT 1/2", "to-suit"]),
    "hole": ("--hole", ["clearance"], ["threaded"]),
    "wall_mm": ("--wall", ["2.5"], ["8", "14"]),
    "washer_mm": ("--washer", ["1.5"], ["0"]),
    "locknut_mm": ("--locknut", ["4"], ["0"]),
    "material": ("--material", ["steel"], ["polymer", "aluminium", "stainless-steel"]),
    "tag_mm": ("--tag", ["1.5"], ["0"]),
}
TAILS = {
    "reach_mm": ("--reach", ["180"], ["90"]),
    "strip_mm": ("--strip", ["10"], ["12"]),
    "slack_mm": ("--slack", ["40"], ["20"]),
}
PLACE = {
    "protection": ("--protection", ["eb", "db"], ["nR", "tb", "i"]),
    "zone": ("--zone", ["1", "2"], ["0", "21", "none"]),
    "gas_group": ("--gas-group", ["IIB"], ["IIC"]),
    "ip": ("--ip", ["66"], ["54", "68"]),
    "ambient_min_c": ("--ambient-min", ["-20"], ["-50"]),
    "ambient_max_c": ("--ambient-max", ["40"], ["90"]),
    "volume_cm3": ("--volume", ["1500"], ["3000"]),
    "ignition_source": ("--ignition-source", ["no"], ["yes"]),
}
FAULT = {
    "current_ka": ("--fault-ka", ["1.2"], ["9"]),
    "time_s": ("--time", ["0.2"], ["3"]),
}


def ends_with(chance, fields, count):
    ends = []
    for _ in range(count):
        end = {}
        for column, (_, usual, other) in fields.items():
            roll = chance.random()
            # A figure alone is a book's in a file and a caliper's on the command line: say which.
            if roll < 0.86 or column in ("sheath_od_mm", "evidence"):
                end[column] = chance.choice(usual)
            elif roll < 0.93:
                end[column] = chance.choice(other)
        ends.append(end)
    return ends


def options_of(end, fields):
    return [f"{fields[column][0]}={value}" for column, value in end.items() if column in fields]


def run(*args):
    done = subprocess.run([PROGRAM, *map(str, args), "--glands", str(GLANDS), "--quiet"],
                          capture_output=True, env=ENVIRONMENT, check=False)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def verdicts(checks):
    return {check["check"]: check["verdict"] for check in checks}


class Agreement(unittest.TestCase):
    def agree(self, asked, name, seed):
        chance = random.Random(seed)
        fields = asked | TAILS
        ends = ends_with(chance, fields, ENDS // 4)
        path = WORK / f"{name}.csv"
        with path.open("w", newline="") as file:
            writer = csv.writer(file)
            writer.writerow(["tag", "end", *fields])
            for i, end in enumerate(ends):
                writer.writerow([f"T-{i}", "x", *(end.get(column, "") for column in fields)])
        status, out, err = run("schedule", path, "--json")
        self.assertLess(status, 2, err)
        rows = [json.loads(line) for line in out.splitlines()]
        self.assertEqual(len(rows), len(ends))
        states = collections.Counter()
        same_questions = 0
        # What some rows of a list tell is asked of all.
        also = ["--asked", "fault"] if any(key in end for key in FAULT for end in ends) else []
        for i, (end, row) in enumerate(zip(ends, rows)):
            with self.subTest(end=end, seed=seed, row=i):
                fit_status, fit_out, fit_err = run("fit", *options_of(end, asked), "--json")
                sheet_status, sheet_out, sheet_err = run(
                    "sheet", *options_of(end, fields), *also, "--json")
                if row["verdict"] == "unusable":
                    self.assertEqual((fit_status, sheet_status), (2, 2))
                    states["unusable"] += 1
                    continue
                self.assertLess(fit_status, 2, fit_err)
                self.assertLess(sheet_status, 2, sheet_err)
                fit, sheet = json.loads(fit_out), json.loads(sheet_out)
                self.assertEqual(fit_status == 0, fit["state"] in ("fits", "order"))
                self.assertEqual(sheet_status == 0, sheet["state"] == "cut")
                self.assertEqual(sheet["ready"], sheet["state"] == "cut")
                states[sheet["state"]] += 1
                # What both ask of the same gland they answer alike.
                glands = {gland["part"]: gland for gland in fit["glands"]}
                if sheet["gland"]:
                    of_fit = verdicts(glands[sheet["gland"]["part"]]["checks"])
                    of_sheet = verdicts(sheet["checks"])
                    for check, verdict in of_fit.items():
                        # The path to earth is another question for a single core alone.
                        if check == "earth" and "earth" in fit["not_asked"]:
                            continue
                        self.assertEqual(of_sheet[check], verdict, check)
                if sheet["state"] == "cut":
                    self.assertEqual(fit["state"], "fits")
                    self.assertEqual(row["verdict"], "fits")
                if row["not_asked"].split() == fit["not_asked"]:
                    same_questions += 1
                    self.assertEqual(row["state"], fit["state"])
                    self.assertEqual(row["verdict"], fit["glands"][0]["verdict"])
                    if row["part"] and row["verdict"] == "fits":
                        self.assertEqual(row["part"], fit["best"])
                if row["not_asked"].split() == sheet["not_asked"] and row["verdict"] == "fits":
                    self.assertEqual(row["part"], sheet["gland"]["part"])
        self.assertGreater(same_questions, ENDS // 40)
        self.cards_agree(path, ends, states)
        return states

    def cards_agree(self, path, ends, states):
        pdf = path.with_suffix(".pdf")
        status, out, err = run("cards", path, "--output", pdf, "--json")
        self.assertLess(status, 2, err)
        counts = json.loads(out)
        self.assertEqual(counts["ends"], len(ends))
        self.assertEqual(counts["cut"], states["cut"])
        self.assertEqual(counts["unusable"], states["unusable"])
        self.assertEqual(status == 0, states["cut"] == len(ends))

    def test_plain(self):
        self.of_many_kinds(self.agree(FIELDS, "plain", SEED))

    def test_with_faults(self):
        self.of_many_kinds(self.agree({**FIELDS, **FAULT}, "faults", SEED + 1))

    def test_with_places(self):
        self.of_many_kinds(self.agree({**FIELDS, **PLACE}, "places", SEED + 2))

    def test_with_all(self):
        self.of_many_kinds(self.agree({**FIELDS, **PLACE, **FAULT}, "all", SEED + 3))

    def of_many_kinds(self, states):
        self.assertGreaterEqual(len(states), 4, states)


if __name__ == "__main__":
    WORK.mkdir(parents=True, exist_ok=True)
    unittest.main(argv=sys.argv[:1], verbosity=1)
