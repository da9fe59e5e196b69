// The bare selection by DuckDB: node duckdb_distinct.mjs ENDS GLANDS OUT, after npm install
// @duckdb/node-api. Equal ends are joined once; the join compares entry thread and ranges. The best
// that was found for few cable types; duckdb_limits.mjs is the best for ends that are all different.
import { DuckDBInstance } from "@duckdb/node-api";
const [ends, glands, out] = process.argv.slice(2);
const connection = await (await DuckDBInstance.create(":memory:")).connect();
await connection.run(`
CREATE TABLE e AS SELECT * FROM read_csv('${ends}', header = true, all_varchar = true);
CREATE TABLE g AS SELECT part, entry_thread, outer_min_mm::DOUBLE omin, outer_max_mm::DOUBLE omax,
  inner_min_mm::DOUBLE imin, inner_max_mm::DOUBLE imax, armour_min_mm::DOUBLE amin,
  armour_max_mm::DOUBLE amax, price::DOUBLE price
  FROM read_csv('${glands}', header = true, all_varchar = true);
CREATE TABLE d AS SELECT DISTINCT sheath_od_mm, bedding_mm, armour_mm, entry,
  sheath_od_mm::DOUBLE - od_allow_mm::DOUBLE slo, sheath_od_mm::DOUBLE + od_allow_mm::DOUBLE shi,
  bedding_mm::DOUBLE - bedding_allow_mm::DOUBLE blo,
  bedding_mm::DOUBLE + bedding_allow_mm::DOUBLE bhi, armour_mm::DOUBLE wire FROM e;
CREATE TABLE chosen AS SELECT sheath_od_mm, bedding_mm, armour_mm, entry, count(*) fits,
  arg_min(part, {p: price, m: -least(slo - omin, omax - shi, blo - imin, imax - bhi), n: part}) part
  FROM d JOIN g ON g.entry_thread = d.entry AND g.amin <= d.wire + 1e-6 AND g.amax >= d.wire - 1e-6
   AND g.omin <= d.slo + 1e-6 AND g.omax >= d.shi - 1e-6
   AND g.imin <= d.blo + 1e-6 AND g.imax >= d.bhi - 1e-6
  GROUP BY ALL;
COPY (SELECT e.tag, e."end", c.part, coalesce(c.fits, 0) fits FROM e LEFT JOIN chosen c
  USING (sheath_od_mm, bedding_mm, armour_mm, entry) ORDER BY e.tag, e."end")
  TO '${out}' (HEADER false);`);
