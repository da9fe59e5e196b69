#!/usr/bin/env python3
"""Fits the four constants of the cable diameter model to printed rows.

Run by hand:  python3 tests/published/fit_cable_model.py
It prints the constants of data/standards/cable_model.json and the errors that stand in
data/cable_model.md. Nothing in the build calls it.

Rows: hd604_rows.csv, CENELEC HD 604 S1/A1 (the tables named in each row); those marked fit=yes are
fitted, the others are held out. Conductor resistances: IEC 60228 Table 2 (500 mm2 and above from
memory). Assembly coefficients: IEC 60502-1 Table A.2.

The model
  area      A  = 17.241 x 1.02 / R20              what the conductor must hold to have its resistance
  stranded  d  = m sqrt(4 A / (n pi))             n wires, m across (3, 5, 7, 9)
  core      Dc = d + 2 ti (1 + over)              insulation is made thicker than its nominal
  laid up   Df = k Dc + slack
  shaped    Df = 2 R, R the circle of equal sectors with ti (1 + over) on every face whose
            conductor profiles hold A / fill
"""
import csv
import math
import os

R20 = {1.5: 12.1, 2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83, 16: 1.15, 25: 0.727, 35: 0.524, 50: 0.387,
       70: 0.268, 95: 0.193, 120: 0.153, 150: 0.124, 185: 0.0991, 240: 0.0754, 300: 0.0601,
       400: 0.0470, 500: 0.0366, 630: 0.0283, 800: 0.0221, 1000: 0.0176}
K = {1: 1.0, 2: 2.0, 3: 2.16, 4: 2.42}
SPECIFIC = 17.241 * 1.02  # ohm mm2/km: annealed copper (IEC 60028), 2 % for the lay of the wires


def area(csa):
    return SPECIFIC / R20[csa]


def stranded(csa):
    n, m = (7, 3) if csa <= 35 else (19, 5) if csa <= 95 else (37, 7) if csa <= 240 else (61, 9)
    return m * math.sqrt(4 * area(csa) / (n * math.pi))


def sector_area(outer, n, ti):
    """Area inside one of n sectors of a circle of radius `outer`, ti inside every face."""
    r, half = outer - ti, math.pi / n
    if r <= ti / math.sin(half):
        return 0.0
    return r * r * (half - math.asin(ti / r)) - ti * math.sqrt(r * r - ti * ti) + ti * ti / math.tan(half)


def sector_circle(profile, n, ti):
    low, high = ti, 300.0
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if sector_area(middle, n, ti) < profile else (low, middle)
    return low


def read_rows():
    path = os.path.join(os.path.dirname(os.path.abspath(__file__)), "hd604_rows.csv")
    rows = []
    for row in csv.DictReader(open(path)):
        if not row["approximate_od_mm"]:
            continue
        number = {k: float(row[k]) for k in ("csa_mm2", "insulation_mm", "bedding_mm", "armour_wire_mm",
                                            "oversheath_mm", "approximate_od_mm")}
        laid_up = number["approximate_od_mm"] - 2 * (
            number["bedding_mm"] + number["armour_wire_mm"] + number["oversheath_mm"])
        rows.append(dict(cores=int(row["cores"]), csa=number["csa_mm2"], form=row["conductor"],
                         ti=number["insulation_mm"], laid_up=laid_up, fit=row["fit"] == "yes",
                         od=number["approximate_od_mm"], table=row["table"]))
    return rows


def fit_round(rows):
    """Least squares of laid_up - k (d + 2 ti) = over (k 2 ti) + slack."""
    xs = [K[r["cores"]] * 2 * r["ti"] for r in rows]
    ys = [r["laid_up"] - K[r["cores"]] * (stranded(r["csa"]) + 2 * r["ti"]) for r in rows]
    n, sx, sy = len(rows), sum(xs), sum(ys)
    over = (n * sum(x * y for x, y in zip(xs, ys)) - sx * sy) / (n * sum(x * x for x in xs) - sx * sx)
    return over, (sy - over * sx) / n


def fit_fill(rows, over):
    """The fill ratio with the least sum of squares, by golden-section search."""
    def loss(fill):
        return sum((r["laid_up"] - predict(r, over, 0.0, {r["cores"]: fill})) ** 2 for r in rows)
    low, high, g = 0.4, 1.0, (math.sqrt(5) - 1) / 2
    while high - low > 1e-6:
        a, b = high - g * (high - low), low + g * (high - low)
        low, high = (low, b) if loss(a) < loss(b) else (a, high)
    return (low + high) / 2


def predict(row, over, slack, fill):
    if row["form"] == "shaped":
        n = row["cores"]
        profile = area(row["csa"]) / fill[min(n, 3)]
        return 2 * sector_circle(profile, n, row["ti"] * (1 + over))
    rod = math.sqrt(4 * row["csa"] / math.pi)
    if row["form"] == "solid" and row["csa"] <= 300:
        return rod + 2 * row["ti"]  # one solid rod: nothing to add
    d = rod if row["form"] == "solid" else stranded(row["csa"])
    return K[row["cores"]] * (d + 2 * row["ti"] * (1 + over)) + slack


def fit_all(rows):
    over, slack = fit_round([r for r in rows if r["form"] == "circular"])
    fill = {n: fit_fill([r for r in rows if r["form"] == "shaped" and r["cores"] == n], over) for n in (2, 3)}
    return over, slack, fill


def summary(name, errors):
    rms = math.sqrt(sum(e * e for e in errors) / len(errors))
    print(f"{name:34s} {len(errors):3d} rows  mean {sum(errors) / len(errors):+.2f}  rms {rms:.2f}  "
          f"worst {max(errors, key=abs):+.2f} mm")


def main():
    rows = read_rows()
    fitted = [r for r in rows if r["fit"]]
    over, slack, fill = fit_all(fitted)
    print(f"insulation over {over:.4f}   slack {slack:.3f} mm   fill 2 cores {fill[2]:.4f}   3 and more {fill[3]:.4f}")
    over, slack, fill = round(over, 3), round(slack, 2), {n: round(f, 3) for n, f in fill.items()}
    print(f"as used: {over} {slack} {fill[2]} {fill[3]}\n\nprinted less model:")
    for form in ("circular", "shaped"):
        mine = [r for r in fitted if r["form"] == form]
        summary(f"fitted, {form}", [r["laid_up"] - predict(r, over, slack, fill) for r in mine])
        summary(f"leave one out, {form}",
                [r["laid_up"] - predict(r, *fit_all([s for s in fitted if s is not r])) for r in mine])
    for name, test in (("held out, Table 6A", lambda r: r["table"] == "Table 6A"),
                       ("held out, one solid rod", lambda r: r["form"] == "solid" and r["csa"] <= 300),
                       ("held out, four solid sectors", lambda r: r["form"] == "solid" and r["csa"] > 300)):
        summary(name, [r["laid_up"] - predict(r, over, slack, fill) for r in rows if not r["fit"] and test(r)])


if __name__ == "__main__":
    main()
