"""The bare selection by SQLite: sqlite.py ENDS GLANDS OUT. Equal ends are joined once."""
import csv
import sqlite3
import sys

ends, glands, out = sys.argv[1:]
db = sqlite3.connect(":memory:")
db.executescript("""
CREATE TABLE e(tag, "end", sheath REAL, bedding REAL, wire REAL, evidence, oa REAL, ba REAL, entry,
               hole, wall);
CREATE TABLE g(part, thread, length, omin REAL, omax REAL, imin REAL, imax REAL, armour, amin REAL,
               amax REAL, washer, locknut, price REAL, stock);""")
for table, path in (("e", ends), ("g", glands)):
    with open(path, newline="") as file:
        rows = csv.reader(file)
        marks = ",".join("?" * len(next(rows)))
        db.executemany(f"INSERT INTO {table} VALUES ({marks})", rows)
db.executescript("""
CREATE INDEX cheapest ON g(thread, amin, price, part, omin, omax, imin, imax, amax);
CREATE TABLE d AS SELECT DISTINCT sheath, bedding, wire, oa, ba, entry FROM e;
CREATE TABLE c AS SELECT d.sheath, d.bedding, d.wire, d.entry, count(*) AS fits,
  min(printf('%012.2f %012.6f %s', g.price, 100000 - min(sheath - oa - omin, omax - sheath - oa,
      bedding - ba - imin, imax - bedding - ba), g.part)) AS first
  FROM d JOIN g ON g.thread = d.entry AND g.amin = d.wire AND g.amax = d.wire
   AND omin <= sheath - oa + 1e-6 AND omax >= sheath + oa - 1e-6
   AND imin <= bedding - ba + 1e-6 AND imax >= bedding + ba - 1e-6
  GROUP BY d.sheath, d.bedding, d.wire, d.entry;
CREATE INDEX found ON c(sheath, bedding, wire, entry);""")
with open(out, "w", newline="") as file:
    csv.writer(file, lineterminator="\n").writerows(
        (tag, end, first.split()[2] if first else "", fits or 0) for tag, end, first, fits in db.execute(
            'SELECT e.tag, e."end", c.first, c.fits FROM e LEFT JOIN c USING'
            " (sheath, bedding, wire, entry) ORDER BY e.rowid"))
