// The selection by DuckDB for the profiles `different` and `types`: node duckdb_limits.mjs ENDS GLANDS OUT [rows], after npm install
// @duckdb/node-api. Bare (tag, end, part), or with `rows` every column of the results
// of an end that something fits.
// Between two limits that any gland has nothing changes, so figures are compared with limits once
// for each different figure, and ends are joined once for each group of limits between which they
// lie; a margin decides only between glands of one price. The best of six that were tried for ends
// that are all different.
import { DuckDBInstance } from "@duckdb/node-api";
const [ends, glands, out, rows] = process.argv.slice(2);
const connection = await (await DuckDBInstance.create(":memory:")).connect();

const limits = (table, column) => `CREATE TABLE ${table} AS
  SELECT lim, (row_number() OVER (ORDER BY lim))::INTEGER n FROM (SELECT DISTINCT ${column} lim FROM g);`;
// One diameter: its interval and where that lies among the limits, for glands that hold it (low, high)
// and for those that only touch it (tlow, thigh).
const figures = (table, value, allowance, lows, highs, name) => `CREATE TABLE ${table} AS
  SELECT v.*, l.n ${name}_low, h.n ${name}_high, tl.n ${name}_tlow, th.n ${name}_thigh FROM (
    SELECT ${value}, ${allowance}, ${value}::DOUBLE - ${allowance}::DOUBLE ${name}_lo,
      ${value}::DOUBLE + ${allowance}::DOUBLE ${name}_hi
    FROM (SELECT DISTINCT ${value}, ${allowance} FROM e)) v
  ASOF LEFT JOIN ${lows} l ON ${name}_lo + 1e-6 >= l.lim
  ASOF LEFT JOIN ${highs} h ON ${name}_hi - 1e-6 <= h.lim
  ASOF LEFT JOIN ${lows} tl ON ${name}_hi + 1e-6 >= tl.lim
  ASOF LEFT JOIN ${highs} th ON ${name}_lo - 1e-6 <= th.lim;`;
// Groups of ends; glands by bucket of the limits of the outer seal, so that the join has one more key.
const groups = (table, t) => `CREATE TABLE ${table} AS SELECT DISTINCT entry, armour_mm,
  o_${t}low a, o_${t}high b, i_${t}low c, i_${t}high d FROM c;`;
const bucketed = (table, last) => `CREATE TABLE ${table} AS SELECT g.*, w.armour_mm, wire,
  o1.n a, o2.n b, i1.n c, i2.n d, unnest(range(o1.n // 10, last.n // 10 + 1)) bucket
  FROM g JOIN w ON amin <= wire + 1e-6 AND amax >= wire - 1e-6 JOIN o1 ON o1.lim = omin
  JOIN o2 ON o2.lim = omax JOIN i1 ON i1.lim = imin JOIN i2 ON i2.lim = imax
  ASOF JOIN o1 last ON ${last} >= last.lim;`;
const passes = `g.entry_thread = k.entry AND g.armour_mm = k.armour_mm AND g.bucket = k.a // 10
  AND g.a <= k.a AND g.b >= k.b AND g.c <= k.c AND g.d >= k.d`;
const margin = (gland, name, min, max) =>
  `least(${name}_lo - ${gland}.${min}, ${gland}.${max} - ${name}_hi)`;
const figure = (value) => `format('{:g}', round(${value}, 3) + 0.0)`;

await connection.run(`
CREATE TABLE e AS SELECT tag, "end", entry, armour_mm, sheath_od_mm, od_allow_mm, bedding_mm,
  bedding_allow_mm FROM read_csv('${ends}', header = true, all_varchar = true);
CREATE TABLE g AS SELECT part, entry_thread, outer_min_mm::DOUBLE omin, outer_max_mm::DOUBLE omax,
  inner_min_mm::DOUBLE imin, inner_max_mm::DOUBLE imax, armour_min_mm::DOUBLE amin,
  armour_max_mm::DOUBLE amax, price::DOUBLE price,
  row_number() OVER (ORDER BY price::DOUBLE, part) place
  FROM read_csv('${glands}', header = true, all_varchar = true);
${limits("o1", "omin")} ${limits("o2", "omax")} ${limits("i1", "imin")} ${limits("i2", "imax")}
${figures("o", "sheath_od_mm", "od_allow_mm", "o1", "o2", "o")}
${figures("i", "bedding_mm", "bedding_allow_mm", "i1", "i2", "i")}
CREATE TABLE c AS SELECT e.rowid n, * FROM e JOIN o USING (sheath_od_mm, od_allow_mm)
  JOIN i USING (bedding_mm, bedding_allow_mm);
CREATE TABLE w AS SELECT DISTINCT armour_mm, armour_mm::DOUBLE wire FROM e;
${groups("k", "")} ${bucketed("gc", "g.omax")}
CREATE TABLE r AS SELECT k.*, count(*) fits, min(price) price FROM k JOIN gc g ON ${passes} GROUP BY ALL;
CREATE TABLE t AS SELECT k.*, g, count(*) OVER (PARTITION BY k.entry, k.armour_mm, k.a, k.b, k.c, k.d) alike
  FROM r k JOIN gc g ON ${passes} AND g.price = k.price;
CREATE TABLE m AS SELECT n, arg_min(g, {m: -least(${margin("g", "o", "omin", "omax")},
    ${margin("g", "i", "imin", "imax")}), n: g.part}) g
  FROM c JOIN t ON t.entry = c.entry AND t.armour_mm = c.armour_mm AND a = o_low AND b = o_high
    AND c = i_low AND d = i_high WHERE alike > 1 GROUP BY ALL;
CREATE TABLE x AS SELECT c.n, tag, "end", coalesce(fits, 0) fits, coalesce(m.g, t.g) g,
    ${rows ? "o_lo, o_hi, i_lo, i_hi, c.entry, c.armour_mm, o_tlow, o_thigh, i_tlow, i_thigh" : "0"}
  FROM c LEFT JOIN (SELECT DISTINCT ON (entry, armour_mm, a, b, c, d) * FROM t) t
    ON t.entry = c.entry AND t.armour_mm = c.armour_mm AND a = o_low AND b = o_high
    AND t.c = i_low AND d = i_high
  LEFT JOIN m ON m.n = c.n;`);
if (!rows) {
  await connection.run(`COPY (SELECT tag, "end", g.part FROM x ORDER BY n)
    TO '${out}' (HEADER false);`);
} else {
  // The first gland that an interval touches: where it is cheaper than the chosen one, the choice
  // wavers between the two. (An interval of 0.6 mm may begin beyond a range that it touches.)
  await connection.run(`
${groups("u", "t")} ${bucketed("gt", "g.omax + 0.6 + 1e-6")}
CREATE TABLE v AS SELECT k.*, min(place) place FROM u k JOIN gt g ON ${passes} GROUP BY ALL;
COPY (SELECT tag, "end", CASE WHEN fits > 0 THEN 'fits' ELSE 'no-fit' END verdict, x.g.part, fits,
    printf('%.2f', x.g.price) price, ${figure(margin("x.g", "o", "omin", "omax"))} outer_margin_mm,
    ${figure(margin("x.g", "i", "imin", "imax"))} inner_margin_mm,
    ${figure("least(x.g.wire - x.g.amin, x.g.amax - x.g.wire)")} armour_margin_mm, 'no' barrier,
    NULL armour_cut_mm, NULL sheath_cut_mm, NULL bedding_cut_mm,
    CASE fits WHEN 1 THEN 'the only one that fits'
      ELSE 'first by price of ' || fits || ' that fit' END ||
    CASE WHEN f.price < x.g.price THEN '; measure before ordering: ' || f.part || ' or ' || x.g.part
      ELSE '; measure before cutting' END reason
  FROM x LEFT JOIN v ON v.entry = x.entry AND v.armour_mm = x.armour_mm AND v.a = o_tlow
    AND v.b = o_thigh AND v.c = i_tlow AND v.d = i_thigh
  LEFT JOIN g f ON f.place = v.place ORDER BY n) TO '${out}' (HEADER true);`);
}
