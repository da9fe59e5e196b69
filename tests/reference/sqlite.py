"""The answers of `cutback schedule` against those of a database engine (SQLite, through Python's
module sqlite3) on generated schedules: for every end the gland, how many fit and the margins.

    sqlite.py CUTBACK MAKE_BENCH ENDS GLANDS
"""
import csv
import os
import sqlite3
import subprocess
import sys
import tempfile

# A gland fits when both intervals lie within its ranges (limits closed, to a millionth of a
# millimetre) and the wire's nominal size within its clamp; cheapest first, then the larger margin.
CHOICE = """
WITH fitting AS (
  SELECT e.rowid AS place, g.part,
         min(e.sheath_od_mm - e.od_allow_mm - g.outer_min_mm,
             g.outer_max_mm - e.sheath_od_mm - e.od_allow_mm) AS outer_margin,
         min(e.bedding_mm - e.bedding_allow_mm - g.inner_min_mm,
             g.inner_max_mm - e.bedding_mm - e.bedding_allow_mm) AS inner_margin,
         g.price
  FROM ends e JOIN glands g ON g.entry_thread = e.entry
  WHERE g.armour_min_mm <= e.armour_mm + 1e-6 AND g.armour_max_mm >= e.armour_mm - 1e-6)
SELECT place, part, outer_margin, inner_margin, fits FROM (
  SELECT *, count(*) OVER (PARTITION BY place) AS fits,
         row_number() OVER (PARTITION BY place ORDER BY price,
                            min(outer_margin, inner_margin) DESC, part) AS rank
  FROM fitting WHERE outer_margin >= -1e-6 AND inner_margin >= -1e-6)
WHERE rank = 1
"""


def load(database, table, path):
    """A table with the columns of the file, figures as numbers."""
    with open(path, newline="") as file:
        names, *rows = csv.reader(file)
    figures = ("_mm", "price", "stock")
    columns = ", ".join(f'"{name}"' + (" REAL" if name.endswith(figures) else "")
                        for name in names)
    database.execute(f"CREATE TABLE {table}({columns})")
    marks = ",".join("?" * len(names))
    database.executemany(f"INSERT INTO {table} VALUES ({marks})", rows)


def main():
    cutback, make_bench, ends, glands = sys.argv[1:]
    with tempfile.TemporaryDirectory() as work:
        path = {name: os.path.join(work, name + ".csv") for name in ("glands", "ends", "results")}

        def make(name, *arguments):
            with open(path[name], "w") as file:
                subprocess.run([sys.executable, make_bench, *arguments], stdout=file, check=True)

        make("glands", "glands", glands)
        for profile in ("different", "types"):
            make("ends", "ends", ends, profile)
            database = sqlite3.connect(":memory:")
            load(database, "ends", path["ends"])
            load(database, "glands", path["glands"])
            wanted = {row[0]: row[1:] for row in database.execute(CHOICE)}
            status = subprocess.run([cutback, "schedule", path["ends"], "--glands", path["glands"],
                                     "--quiet", "--output", path["results"]]).returncode
            assert status in (0, 1), status
            with open(path["results"], newline="") as file:
                results = list(csv.DictReader(file))
            assert len(results) == int(ends), len(results)
            chosen = 0
            for place, result in enumerate(results, start=1):
                want = wanted.get(place)
                if want is None:
                    assert result["verdict"] != "fits", result
                    continue
                chosen += 1
                part, outer, inner, fits = want
                assert (result["part"], int(result["fits"])) == (part, fits), (result, want)
                assert abs(float(result["outer_margin_mm"]) - outer) < 6e-4, (result, want)
                assert abs(float(result["inner_margin_mm"]) - inner) < 6e-4, (result, want)
            assert int(ends) // 2 < chosen < int(ends), chosen  # both kinds of ends are there
            print(f"{profile}: {ends} ends, {glands} glands: {chosen} with a gland, all alike "
                  f"(SQLite {sqlite3.sqlite_version})")


if __name__ == "__main__":
    main()
