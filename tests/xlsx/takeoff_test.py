"""The take-off against sums made by another program: parts, packs, spares, least orders, stock and
groups at once, in decimal arithmetic, in the CSV and in the workbook."""

import csv
import math
import random
import subprocess
import unittest
from decimal import Decimal

import openpyxl

import support

HEAD = ("part,range,entry_thread,entry_length_mm,outer_min_mm,outer_max_mm,inner_min_mm,inner_max_mm,bore_mm,armour,"
        "armour_min_mm,armour_max_mm,exposed_armour_mm,ip,temp_min_c,temp_max_c,material,washer_mm,locknut_mm,price,stock")
SIZES = (16, 20, 25, 32, 40)


def gland(size, price, stock):
    """Takes every cable here; which one an end gets is the thread of its entry."""
    return (f"G-{size},invented,M{size},15,11,17,7,13,13.5,wire,0.8,1.25,13,54 66,-40,100,brass,1.5,4,{price},{stock}")


def order_of(needed, stock, pack, least):
    if needed <= stock:
        return 0
    return math.ceil(max(needed - stock, least) / pack) * pack


def with_spare(ends, percent):
    return ends + math.ceil(Decimal(ends) * Decimal(percent) / 100)


class Takeoff(unittest.TestCase):
    maxDiff = None

    def test_sums(self):
        chance = random.Random(20261128)
        for run in range(12):
            with self.subTest(run):
                self.one(chance, run)

    def one(self, chance, run):
        sizes = chance.sample(SIZES, chance.randint(2, 5))
        places = chance.choice((1, 2, 4))
        prices = {size: Decimal(chance.randint(1, 20000)).scaleb(-places) for size in sizes}
        stocks = {size: chance.choice((None, 0, 3, 40)) for size in sizes}
        packs = {size: chance.choice((None, 1, 7, 10)) for size in sizes}
        leasts = {size: chance.choice((None, 2, 25, 60)) for size in sizes}
        nuts = {size: Decimal(chance.randint(1, 500)).scaleb(-3) for size in sizes if chance.random() < 0.7}
        spare = chance.choice(("0", "5", "7.5", "33"))
        folder = support.WORK / str(run)
        folder.mkdir()
        (folder / "glands.csv").write_text("\n".join([HEAD] + [
            gland(size, prices[size], "" if stocks[size] is None else stocks[size]) for size in sizes]) + "\n")
        sold = ["name,thread,part,price,stock,pack,min_order"]
        sold += [f"G-{size},,,,,{packs[size] or ''},{leasts[size] or ''}" for size in sizes if packs[size] or leasts[size]]
        sold += [f"locknut,M{size},LN{size},{price},,5,12" for size, price in nuts.items()]
        (folder / "sold.csv").write_text("\n".join(sold) + "\n")
        rows = ["tag,from,to,sheath_od_mm,bedding_mm,armour_mm,entry,hole,wall_mm,ip,zone,quantity,area_name"]
        counts = {}  # group, size: ends that are sure, and that are not
        for i in range(chance.randint(5, 25)):
            size, group = chance.choice(sizes), chance.choice("NS")
            quantity = chance.choice((1, 2, 9, "TBC"))
            rows.append(f"C-{i},a,b,14,9,0.9,M{size},clearance,2,54,none,{quantity},{group}")
            count = counts.setdefault((group, size), [0, 0])
            count[quantity == "TBC"] += 2 * (1 if quantity == "TBC" else quantity)
        (folder / "cables.csv").write_text("\n".join(rows) + "\n")
        by = chance.random() < 0.5
        if not by:
            whole = {}
            for (_, size), count in counts.items():
                before = whole.setdefault(("", size), [0, 0])
                before[0] += count[0]
                before[1] += count[1]
            counts = whole
        done = subprocess.run(
            [support.PROGRAM, "schedule", "cables.csv", "--glands", "glands.csv", "--accessories", "sold.csv", "--takeoff",
             "takeoff.csv", "--xlsx", "all.xlsx", "--output", "results.csv", "--spare", spare + "%", "--quiet",
             *(("--by", "area_name") if by else ())], cwd=folder, env=support.ENVIRONMENT, capture_output=True, check=False)
        self.assertLess(done.returncode, 2, done.stderr.decode())
        with (folder / "takeoff.csv").open() as file:
            lines = list(csv.DictReader(file))
        total = lines.pop()
        self.assertEqual(total["part"], "TOTAL")
        want = {}
        for kind, price_of, pack_of, least_of, stock_of in (
                ("G-{}", prices.get, packs.get, leasts.get, stocks.get),
                ("locknut", nuts.get, lambda size: 5 if size in nuts else None, lambda size: 12 if size in nuts else None,
                 lambda size: None)):
            for size in sizes:
                sure_left = all_left = stock_of(size) or 0
                for group in ("", "N", "S"):
                    if (group, size) not in counts:
                        continue
                    sure, open_ = counts[group, size]
                    need, need_all = with_spare(sure, spare), with_spare(sure + open_, spare)
                    pack, least = pack_of(size) or 1, least_of(size) or 0
                    order = order_of(need, sure_left, pack, least)
                    more = order_of(need_all, all_left, pack, least) - order
                    price = price_of(size)
                    key = kind.format(size), f"M{size}" if kind == "locknut" else "", group
                    want[key] = (sure, need, open_, order, more, None if price is None else price * order,
                                 None if price is None else price * more)
                    sure_left -= min(need, sure_left)
                    all_left -= min(need_all, all_left)
        got = {}
        for line in lines:
            if line["part"] != "locknut" and not line["part"].startswith("G-"):
                continue
            thread = line["description"].split(",")[0] if line["part"] == "locknut" else ""
            got[line["part"], thread, line["group"]] = (
                *(int(line[name]) for name in ("ends", "quantity", "not_proven", "to_order", "provisional")),
                *(Decimal(line[name]) if line[name] else None for name in ("total", "provisional_total")))
        self.assertEqual(got, want)
        for name, place in (("total", 5), ("provisional_total", 6)):
            rows_sum = sum(Decimal(line[name]) for line in lines if line[name])
            self.assertEqual(Decimal(total[name]), rows_sum)
            self.assertEqual(rows_sum, sum(value[place] for value in want.values() if value[place] is not None))
        self.workbook(folder / "all.xlsx", lines, total)

    def workbook(self, path, lines, total):
        """The values saved with the formulas are those of the CSV; the formulas are those of the rows."""
        sheet = openpyxl.load_workbook(path, data_only=True)["Take-off"]
        rows = list(sheet.iter_rows(min_row=2, values_only=True))
        self.assertEqual(len(rows), len(lines) + 1)
        for row, line in zip(rows, lines):
            self.assertEqual((row[0], row[6], row[10]), (line["part"], int(line["to_order"]), int(line["provisional"])))
            for place, name in ((8, "total"), (11, "provisional_total")):
                if line[name]:
                    self.assertEqual(Decimal(repr(row[place])), Decimal(line[name]))
        self.assertEqual(Decimal(repr(rows[-1][8])), Decimal(total["total"]))
        self.assertEqual(Decimal(repr(rows[-1][11])), Decimal(total["provisional_total"]))
        formulas = openpyxl.load_workbook(path)["Take-off"]
        last = len(rows)
        self.assertEqual(formulas.cell(last + 1, 9).value, f"=SUBTOTAL(109,I2:I{last})")


if __name__ == "__main__":
    support.main()
