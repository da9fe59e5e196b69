"""The bare selection by SQLite: sqlite.py ENDS GLANDS OUT.

Between two limits that any gland has nothing changes, so ends are joined once for each group of
limits between which they lie (joining all different ends takes ten times as long). A margin decides
only between glands of one price.
"""
import csv
import operator
import sqlite3
import sys

ends, glands, out = sys.argv[1:]
db = sqlite3.connect(":memory:")
db.executescript("""
CREATE TABLE e(tag, "end", sheath REAL, bedding REAL, wire REAL, oa REAL, ba REAL, entry);
CREATE TABLE g(part, thread, omin REAL, omax REAL, imin REAL, imax REAL, amin REAL, amax REAL,
               price REAL);""")
COLUMNS = {
    "e": "tag end sheath_od_mm bedding_mm armour_mm od_allow_mm bedding_allow_mm entry",
    "g": "part entry_thread outer_min_mm outer_max_mm inner_min_mm inner_max_mm armour_min_mm"
         " armour_max_mm price"}
for table, path in (("e", ends), ("g", glands)):
    with open(path, newline="") as file:
        rows = csv.reader(file)
        head = next(rows)
        take = operator.itemgetter(*map(head.index, COLUMNS[table].split()))
        marks = ",".join("?" * len(COLUMNS[table].split()))
        db.executemany(f"INSERT INTO {table} VALUES ({marks})", map(take, rows))
for table, column in (("o1", "omin"), ("o2", "omax"), ("i1", "imin"), ("i2", "imax")):
    db.executescript(f"""
CREATE TABLE {table}(lim REAL PRIMARY KEY, n INTEGER) WITHOUT ROWID;
INSERT INTO {table} SELECT lim, row_number() OVER (ORDER BY lim)
  FROM (SELECT DISTINCT {column} AS lim FROM g);""")
PASSES = """g.thread = k.entry AND g.wire = k.wire AND g.bucket = k.a / 10
  AND g.a <= k.a AND g.b >= k.b AND g.c <= k.c AND g.d >= k.d"""
db.executescript(f"""
CREATE TABLE c AS SELECT rowid AS row, entry, wire,
  (SELECT max(lim) FROM o1 WHERE lim <= sheath - oa + 1e-6) AS a,
  (SELECT min(lim) FROM o2 WHERE lim >= sheath + oa - 1e-6) AS b,
  (SELECT max(lim) FROM i1 WHERE lim <= bedding - ba + 1e-6) AS c,
  (SELECT min(lim) FROM i2 WHERE lim >= bedding + ba - 1e-6) AS d FROM e;
CREATE TABLE k AS SELECT row_number() OVER () AS id, entry, wire, la, lb, lc, ld,
  o1.n AS a, o2.n AS b, i1.n AS c, i2.n AS d
  FROM (SELECT DISTINCT entry, wire, a AS la, b AS lb, c AS lc, d AS ld FROM c)
  LEFT JOIN o1 ON o1.lim = la LEFT JOIN o2 ON o2.lim = lb
  LEFT JOIN i1 ON i1.lim = lc LEFT JOIN i2 ON i2.lim = ld;
CREATE INDEX of_end ON k(entry, wire, la, lb, lc, ld, id);
CREATE TABLE gc(thread, wire, bucket, price, part, a, b, c, d, omin, omax, imin, imax);
CREATE TABLE numbered AS
  SELECT g.*, w.wire, o1.n AS a, o2.n AS b, i1.n AS c, i2.n AS d,
    (SELECT max(n) FROM o1 WHERE lim <= omax) / 10 AS last
  FROM g JOIN (SELECT DISTINCT wire FROM e) w ON amin <= w.wire + 1e-6 AND amax >= w.wire - 1e-6
  JOIN o1 ON o1.lim = omin JOIN o2 ON o2.lim = omax JOIN i1 ON i1.lim = imin JOIN i2 ON i2.lim = imax;
CREATE TABLE buckets(i INTEGER PRIMARY KEY);
WITH RECURSIVE some(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM some WHERE i < 1000)
INSERT INTO buckets SELECT i FROM some;
INSERT INTO gc SELECT thread, wire, i, price, part, a, b, c, d, omin, omax, imin, imax
  FROM numbered JOIN buckets ON i BETWEEN a / 10 AND last;
CREATE INDEX near ON gc(thread, wire, bucket, price, a, b, c, d, part, omin, omax, imin, imax);
CREATE TABLE r AS SELECT k.*, count(*) AS fits, min(price) AS price
  FROM k JOIN gc g ON {PASSES} GROUP BY k.id;
CREATE TABLE t AS SELECT k.id, k.fits, g.part, g.omin, g.omax, g.imin, g.imax,
  count(*) OVER (PARTITION BY k.id) AS alike
  FROM r k JOIN gc g ON {PASSES} AND g.price = k.price;
CREATE INDEX chosen ON t(id);
CREATE TABLE f AS SELECT c.row, k.id FROM c JOIN k ON c.entry = k.entry AND c.wire = k.wire
  AND c.a IS k.la AND c.b IS k.lb AND c.c IS k.lc AND c.d IS k.ld;""")
with open(out, "w", newline="") as file:
    csv.writer(file, lineterminator="\n").writerows(db.execute("""
SELECT tag, "end", part FROM (
  SELECT e.rowid AS row, tag, "end", coalesce(part, '') AS part,
    row_number() OVER (PARTITION BY e.rowid ORDER BY
      -min(sheath - oa - omin, omax - sheath - oa, bedding - ba - imin, imax - bedding - ba), part)
      AS place
    FROM f JOIN e ON e.rowid = f.row JOIN t ON t.id = f.id WHERE alike > 1
  UNION ALL SELECT e.rowid, tag, "end", coalesce(part, ''), 1
    FROM f JOIN e ON e.rowid = f.row LEFT JOIN t ON t.id = f.id WHERE alike IS NULL OR alike = 1)
  WHERE place = 1 ORDER BY row"""))
