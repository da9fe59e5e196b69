// The choice alone (tag, end, part) by DuckDB: node duckdb.mjs ENDS GLANDS OUT plain|tuned, after npm
// install @duckdb/node-api. The rules are those that decide in the profiles of ../profiles.py: thread,
// kind of armour, nominal wire in the clamp, sheath and bedding with their allowances in seals and
// bore, IP, marks, level and groups. First by price, then by margin, then by part.
// plain: one join of ends and glands. tuned: see there.
import { DuckDBInstance } from "@duckdb/node-api";
const [ends, glands, out, how] = process.argv.slice(2);
const connection = await (await DuckDBInstance.create(":memory:")).connect();

const has = (column, ...marks) =>
  `list_has_any(string_split(g.${column}, ' '), [${marks.map((mark) => `'${mark}'`)}])`;
// Which marks serve a place (IEC 60079-14, as the program has it), and the least IP there. Nothing is
// here for an enclosure that only its certificate decides, so that no gland passes there.
const places = `CASE
  WHEN k.zone IS NULL OR k.zone = 'none' THEN true
  WHEN k.protection = 'eb' AND k.zone = '1' THEN ${has("protection", "d", "db", "e", "eb")}
    AND ${has("level", "Ga", "Gb")} AND g.gas_group IN ('IIB', 'IIC') AND serves(54, g.ip)
  WHEN k.protection = 'tb' AND k.zone = '21' THEN ${has("protection", "t", "ta", "tb")}
    AND ${has("level", "Da", "Db")} AND g.dust_group IN ('IIIB', 'IIIC') AND serves(60, g.ip)
  ELSE false END`;
// Everything but diameters.
const suits = `g.entry_thread = k.entry AND g.armour = k.armour
  AND (k.armour = 'none' OR (g.amin <= k.wire + 1e-6 AND g.amax >= k.wire - 1e-6))
  AND (k.ip IS NULL OR serves(k.ip, g.ip)) AND ${places}`;
// How far an interval of diameters is inside, where the end has both and the gland limits them.
const margin = `least(slo - omin, omax - shi, blo - imin, imax - bhi, bore - bhi)`;
const holds = `slo >= omin - 1e-6 AND shi <= omax + 1e-6
  AND (blo IS NULL OR imin IS NULL OR (blo >= imin - 1e-6 AND bhi <= imax + 1e-6))
  AND (blo IS NULL OR bore IS NULL OR bhi <= bore + 1e-6)`;
const first = `arg_min(part, {p: price, m: -${margin}, n: part})`;

await connection.run(`
CREATE MACRO serves(asked, ip) AS ip IS NOT NULL
  AND list_max(list_transform(string_split(ip, ' '), lambda c: c::INTEGER // 10)) >= asked // 10
  AND list_bool_or(list_transform(string_split(ip, ' '), lambda c: CASE
    WHEN asked % 10 = 0 THEN true WHEN asked % 10 <= 6 THEN c::INTEGER % 10 BETWEEN asked % 10 AND 6
    WHEN asked % 10 = 7 THEN c::INTEGER % 10 BETWEEN 7 AND 8 ELSE false END));
CREATE TABLE e AS SELECT tag, "end", entry, armour, armour_mm::DOUBLE wire, protection, zone, ip::INTEGER ip,
  sheath_od_mm::DOUBLE - od_allow_mm::DOUBLE slo, sheath_od_mm::DOUBLE + od_allow_mm::DOUBLE shi,
  bedding_mm::DOUBLE - bedding_allow_mm::DOUBLE blo, bedding_mm::DOUBLE + bedding_allow_mm::DOUBLE bhi
  FROM read_csv('${ends}', header = true, all_varchar = true);
CREATE TABLE g AS SELECT part, entry_thread, armour, protection, level, gas_group, dust_group, ip,
  outer_min_mm::DOUBLE omin, outer_max_mm::DOUBLE omax, inner_min_mm::DOUBLE imin,
  inner_max_mm::DOUBLE imax, bore_mm::DOUBLE bore, armour_min_mm::DOUBLE amin,
  armour_max_mm::DOUBLE amax, price::DOUBLE price
  FROM read_csv('${glands}', header = true, all_varchar = true);`);

if (how === "plain") {
  await connection.run(`
CREATE TABLE chosen AS SELECT k.rowid n, ${first} part FROM e k JOIN g ON ${suits} AND ${holds} GROUP BY n;
COPY (SELECT tag, "end", part FROM e LEFT JOIN chosen ON n = e.rowid ORDER BY e.rowid)
  TO '${out}' (HEADER false);`);
} else {
  // Ends that ask the same but for their diameters are one class, and glands are sorted out for each
  // class once. Ends of a class whose intervals begin within the same square of sheath and bedding are
  // joined with the glands that reach into that square alone; of these, none counts that is dearer
  // than one that holds the whole square. Equal rows are decided once.
  const side = 0.5;
  await connection.run(`
CREATE TABLE k AS SELECT row_number() OVER () kind, * FROM (SELECT DISTINCT entry, armour, wire, protection,
  zone, ip FROM e);
CREATE TABLE cg AS SELECT kind, g.part, price, omin, omax, imin, imax, bore FROM k JOIN g ON ${suits};
CREATE TABLE f AS SELECT e.rowid n, kind, slo, shi, blo, bhi, (slo / ${side})::INTEGER s,
  coalesce((blo / ${side})::INTEGER, -1) b FROM e JOIN k USING (entry, armour) WHERE
  k.wire IS NOT DISTINCT FROM e.wire AND k.protection IS NOT DISTINCT FROM e.protection AND
  k.zone IS NOT DISTINCT FROM e.zone AND k.ip IS NOT DISTINCT FROM e.ip;
CREATE TABLE d AS SELECT kind, s, b, slo, shi, blo, bhi, row_number() OVER () id
  FROM (SELECT DISTINCT kind, s, b, slo, shi, blo, bhi FROM f);
CREATE TABLE q AS SELECT kind, s, b, min(slo) s1, max(slo) s2, min(shi) s3, max(shi) s4, min(blo) b1,
  max(blo) b2, min(bhi) b3, max(bhi) b4 FROM d GROUP BY kind, s, b;
CREATE TABLE r AS SELECT kind, s, b, part, price, omin, omax, imin, imax, bore,
  min(CASE WHEN s1 >= omin AND s4 <= omax AND coalesce(b1 >= imin AND b4 <= imax, true)
    AND coalesce(b4 <= bore, true) THEN price END) OVER (PARTITION BY kind, s, b) whole
  FROM q JOIN cg USING (kind) WHERE s2 >= omin - 1e-6 AND s3 <= omax + 1e-6
  AND (b1 IS NULL OR imin IS NULL OR (b2 >= imin - 1e-6 AND b3 <= imax + 1e-6))
  AND (b1 IS NULL OR bore IS NULL OR b3 <= bore + 1e-6) QUALIFY whole IS NULL OR price <= whole;
CREATE TABLE chosen AS SELECT id, ${first} part FROM d JOIN r USING (kind, s, b) WHERE ${holds} GROUP BY id;
COPY (SELECT tag, "end", part FROM e LEFT JOIN (SELECT n, part FROM f JOIN d ON d.kind = f.kind
    AND d.slo = f.slo AND d.shi = f.shi AND d.blo IS NOT DISTINCT FROM f.blo
    AND d.bhi IS NOT DISTINCT FROM f.bhi JOIN chosen USING (id)) c ON n = e.rowid ORDER BY e.rowid)
  TO '${out}' (HEADER false);`);
}
