// The bare selection by DuckDB: node duckdb_limits.mjs ENDS GLANDS OUT, after npm install
// @duckdb/node-api. Between two limits that any gland has nothing changes, so ends are joined once
// for each group of limits between which they lie; a margin decides only between glands of one price.
// The best of four that were tried for ends that are all different: 2 s for 10^6 ends and 10,000
// glands where joining distinct ends takes 27 s (the same machine, 2 cores).
import { DuckDBInstance } from "@duckdb/node-api";
const [ends, glands, out] = process.argv.slice(2);
const connection = await (await DuckDBInstance.create(":memory:")).connect();
const passes = `g.entry_thread = k.entry AND g.armour_mm = k.armour_mm AND g.bucket = k.a // 10
  AND g.a <= k.a AND g.b >= k.b AND g.c <= k.c AND g.d >= k.d`;
const limits = (table, column) => `CREATE TABLE ${table} AS
  SELECT lim, (row_number() OVER (ORDER BY lim))::INTEGER n FROM (SELECT DISTINCT ${column} lim FROM g);`;
await connection.run(`
CREATE TABLE e AS SELECT tag, "end", entry, armour_mm,
  sheath_od_mm::DOUBLE - od_allow_mm::DOUBLE slo, sheath_od_mm::DOUBLE + od_allow_mm::DOUBLE shi,
  bedding_mm::DOUBLE - bedding_allow_mm::DOUBLE blo,
  bedding_mm::DOUBLE + bedding_allow_mm::DOUBLE bhi
  FROM read_csv('${ends}', header = true, all_varchar = true);
CREATE TABLE g AS SELECT part, entry_thread, outer_min_mm::DOUBLE omin, outer_max_mm::DOUBLE omax,
  inner_min_mm::DOUBLE imin, inner_max_mm::DOUBLE imax, armour_min_mm::DOUBLE amin,
  armour_max_mm::DOUBLE amax, price::DOUBLE price
  FROM read_csv('${glands}', header = true, all_varchar = true);
${limits("o1", "omin")} ${limits("o2", "omax")} ${limits("i1", "imin")} ${limits("i2", "imax")}
CREATE TABLE c AS SELECT e.*, o1.n a, o2.n b, i1.n c, i2.n d FROM e
  ASOF LEFT JOIN o1 ON slo + 1e-6 >= o1.lim ASOF LEFT JOIN o2 ON shi - 1e-6 <= o2.lim
  ASOF LEFT JOIN i1 ON blo + 1e-6 >= i1.lim ASOF LEFT JOIN i2 ON bhi - 1e-6 <= i2.lim;
CREATE TABLE k AS SELECT DISTINCT entry, armour_mm, a, b, c, d FROM c;
CREATE TABLE w AS SELECT DISTINCT armour_mm, armour_mm::DOUBLE wire FROM k;
CREATE TABLE gc AS SELECT g.*, w.armour_mm, o1.n a, o2.n b, i1.n c, i2.n d,
  unnest(range(o1.n // 10, last.n // 10 + 1)) bucket
  FROM g JOIN w ON amin <= wire + 1e-6 AND amax >= wire - 1e-6 JOIN o1 ON o1.lim = omin
  JOIN o2 ON o2.lim = omax JOIN i1 ON i1.lim = imin JOIN i2 ON i2.lim = imax
  ASOF JOIN o1 last ON g.omax >= last.lim;
CREATE TABLE r AS SELECT k.*, count(*) fits, min(price) price FROM k JOIN gc g ON ${passes} GROUP BY ALL;
CREATE TABLE t AS SELECT k.*, g.part, g.omin, g.omax, g.imin, g.imax,
  count(*) OVER (PARTITION BY k.entry, k.armour_mm, k.a, k.b, k.c, k.d) alike
  FROM r k JOIN gc g ON ${passes} AND g.price = k.price;
CREATE TABLE m AS SELECT tag, "end",
  arg_min(part, {m: -least(slo - omin, omax - shi, blo - imin, imax - bhi), n: part}) part
  FROM c JOIN t USING (entry, armour_mm, a, b, c, d) WHERE alike > 1 GROUP BY ALL;
COPY (SELECT c.tag, c."end", coalesce(m.part, t.part), coalesce(r.fits, 0) FROM c
  LEFT JOIN r USING (entry, armour_mm, a, b, c, d)
  LEFT JOIN (SELECT * FROM t WHERE alike = 1) t USING (entry, armour_mm, a, b, c, d)
  LEFT JOIN m ON m.tag = c.tag AND m."end" = c."end" ORDER BY c.tag, c."end")
  TO '${out}' (HEADER false);`);
