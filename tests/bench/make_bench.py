#!/usr/bin/env python3
"""Writes a schedule or a gland list for the benchmarks, the same each time (fixed seed).

    make_bench.py ends COUNT different|types > schedule.csv   one end a row
    make_bench.py glands COUNT > glands.csv

All figures are invented. `different`: every end has diameters of its own; `types`: 400 cable types.
"""
import random
import sys

SEED = 7
THREADS = [(13.4, "M16"), (16.6, "M20"), (21.4, "M20"), (27.2, "M25"), (33.6, "M32"),
           (40.6, "M40"), (53.8, "M50"), (66.8, "M63"), (99.0, "M75")]
WIRES = [(15, 0.9), (24, 1.25), (36, 1.6), (46, 2.0), (99, 2.5)]


def first(table, value):
    return next(what for most, what in table if value <= most)


def cable(rng):
    bedding = round(rng.uniform(7, 50), 2)
    wire = first(WIRES, bedding + 4)
    sheath = round(bedding + 2 * (wire + rng.uniform(1.3, 2.4)), 2)
    return sheath, bedding, wire


def ends(count, profile):
    rng = random.Random(SEED)
    types = [cable(rng) for _ in range(400)]
    write = sys.stdout.write
    write("tag,end,sheath_od_mm,bedding_mm,armour_mm,evidence,od_allow_mm,bedding_allow_mm,"
          "entry,hole,wall_mm\n")
    for number in range(count):
        sheath, bedding, wire = rng.choice(types) if profile == "types" else cable(rng)
        thread = first(THREADS, sheath)
        write(f"C{number // 2:07d},{'ab'[number % 2]},{sheath:g},{bedding:g},{wire:g},datasheet,"
              f"0.3,0.3,{thread},clearance,3\n")


def glands(count):
    rng = random.Random(SEED)
    write = sys.stdout.write
    write("part,entry_thread,entry_length_mm,outer_min_mm,outer_max_mm,inner_min_mm,inner_max_mm,"
          "armour,armour_min_mm,armour_max_mm,washer_mm,locknut_mm,price,stock\n")
    for number in range(count):
        sheath, bedding, wire = cable(rng)
        low = round(sheath - rng.uniform(0.5, 3.5), 1)
        high = round(sheath + rng.uniform(0.5, 3.5), 1)
        inner = round(bedding - rng.uniform(0.5, 3), 1)
        write(f"G{number:05d},{first(THREADS, sheath)},15,{low},{high},{inner},"
              f"{round(bedding + rng.uniform(0.5, 3), 1)},wire,{wire:g},{wire:g},1.5,4,"
              f"{round(rng.uniform(3, 200), 2)},{rng.randint(0, 99)}\n")


if __name__ == "__main__":
    if sys.argv[1] == "ends":
        ends(int(sys.argv[2]), sys.argv[3])
    else:
        glands(int(sys.argv[2]))
