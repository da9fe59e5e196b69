#!/usr/bin/env python3
"""Writes the invented schedule of this example: 300 cables of a site that does not exist.

The seed is fixed, so that the file is the same each time:
    python3 make_schedule.py > schedule.csv
Diameters are round figures for the demonstration; they are no maker's.
"""
import csv
import random
import sys

SEED = 20261125
# cores, size mm2, sheath, bedding, wire (invented, to the shape of a wire-armoured cable)
TYPES = [
    (2, 1.5, 12.3, 7.6, 0.9), (3, 1.5, 12.6, 7.9, 0.9), (4, 1.5, 13.4, 8.6, 0.9),
    (7, 1.5, 15.2, 10.3, 0.9), (12, 1.5, 19.2, 13.2, 1.25), (3, 2.5, 13.9, 9.2, 0.9),
    (4, 2.5, 14.7, 9.9, 0.9), (7, 2.5, 17.0, 11.9, 0.9), (3, 4, 15.2, 10.4, 0.9),
    (4, 4, 16.3, 11.4, 0.9), (4, 6, 18.6, 12.9, 1.25), (4, 10, 20.9, 15.1, 1.25),
    (4, 16, 24.4, 18.4, 1.25), (4, 25, 28.7, 21.5, 1.6), (4, 35, 31.5, 24.2, 1.6),
    (4, 50, 33.1, 25.6, 1.6), (4, 70, 38.4, 29.6, 2.0), (4, 95, 42.8, 33.8, 2.0),
    (4, 120, 48.2, 37.7, 2.5), (4, 185, 57.0, 46.0, 2.5), (4, 240, 62.7, 51.1, 2.5),
]
AREAS = [
    # name, protection, zone, gas group, ip, material, entry hole
    ("pump house", "e", "1", "IIB", "66", "steel", "clearance"),
    ("tank farm", "e", "2", "IIA", "66", "stainless-steel", "clearance"),
    ("compressor", "d", "1", "IIB", "66", "aluminium", "threaded"),
    ("workshop", "none", "none", "", "54", "steel", "clearance"),
]
SIZES = [(13.4, "M20"), (16.6, "M20"), (21.4, "M20"), (27.2, "M25"), (33.6, "M32"), (40.6, "M40"),
         (53.8, "M50"), (66.8, "M63"), (99, "M75")]


def entry_for(sheath, rng):
    """The entry that the sheath asks for; now and then one size up, as on real drawings."""
    index = next(i for i, (most, _) in enumerate(SIZES) if sheath <= most)
    if rng.random() < 0.06:
        index = min(index + 3, len(SIZES) - 1)
    return SIZES[index][1]


def measured(value, rng, spread):
    """Two readings at right angles, to the caliper's step of 0.05 mm."""
    a, b = (round((value + rng.uniform(-spread, spread)) * 20) / 20 for _ in range(2))
    return f"{a:g}+{b:g}"


def main():
    rng = random.Random(SEED)
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["INVENTED DEMONSTRATION SITE: cable schedule, issue 3"])
    out.writerow([])
    ends = ["Entry", "Hole", "Wall (mm)", "Box", "Ex", "Zone", "Gas", "IP", "Reach (mm)"]
    out.writerow(["Cable No", "From", "To", "Cores", "Size (mm2)", "O/D (mm)", "Bedding (mm)",
                  "Wire (mm)", "Evidence", "OD +/- (mm)", "Bedding +/- (mm)", "Length (m)",
                  "Insulation", "Remark"]
                 + ["A " + end for end in ends] + ["B " + end for end in ends])
    for number in range(1, 301):
        cores, size, sheath, bedding, wire = rng.choice(TYPES[:16] if number % 4 else TYPES)
        site = rng.choice(AREAS)
        row_measured = rng.random() < 0.35
        row = [f"C-{number:04d}", f"MCC-{rng.randint(1, 6)}", f"{site[0]} {rng.randint(1, 40)}",
               cores, f"{size:g}"]
        if row_measured:
            row += [measured(sheath, rng, 0.2), measured(bedding, rng, 0.15), f"{wire:g}",
                    "measured", "", ""]
        else:
            row += [f"{sheath:g}", f"{bedding:g}", f"{wire:g}", "", "0.8", "0.6"]
        row += [rng.randint(8, 260), "xlpe", ""]
        entry = entry_for(sheath, rng)
        row += [entry, "clearance", 2, "steel", "none", "none", "", "54", rng.randrange(200, 900, 50)]
        row += [entry_for(sheath, rng), site[6], 12 if site[6] == "threaded" else 3, site[5],
                site[1], site[2], site[3], site[4], rng.randrange(120, 320, 20)]
        spoil(number, row)
        out.writerow(row)


def spoil(number, row):
    """Some rows as they come in a real file."""
    if number == 41:
        row[5] = "15.2 mm"
    if number == 87:
        row[5] = "18-20"
    if number == 133:
        row[6] = ""
        row[13] = "bedding to be measured"
    if number == 170:
        row[0] = "C-0169"
    if number == 205:
        row[5] = "=F204+0.5"
    if number == 222:
        row[6] = "31"
    if number == 260:
        row[14] = "M21x"
    if number == 288:
        row[0] = ""


main()
