#!/usr/bin/env python3
"""Writes a schedule or a gland list for the benchmarks, the same each time (fixed seed).

    make_bench.py ends COUNT PROFILE > schedule.csv   one end a row
    make_bench.py glands COUNT [PROFILE] > glands.csv
    make_bench.py profiles                            their names

All figures are invented. What the profiles differ in is in profiles.py.
"""
import random
import sys

from profiles import (CERTIFIED, FAMILIES, IP_ASKED, IP_STATED, MARKS, PLACES, PROFILES, SILENT,
                      UNHEARD_OF, UNMARKED)

SEED = 7
WIRES = [(15, 0.9), (24, 1.25), (36, 1.6), (46, 2.0), (999, 2.5)]
NOMINAL = [0.9, 1.25, 1.6, 2.0, 2.5, 3.15]
ENDS = ("tag,end,cores,armour,sheath_od_mm,bedding_mm,armour_mm,evidence,od_allow_mm,"
        "bedding_allow_mm,entry,hole,wall_mm,material,protection,zone,gas_group,dust_group,"
        "volume_cm3,ignition_source,ip\n")
GLANDS = ("part,entry_thread,entry_length_mm,outer_min_mm,outer_max_mm,inner_min_mm,inner_max_mm,"
          "bore_mm,armour,armour_min_mm,armour_max_mm,sealing,max_cores,max_bundle_mm,protection,"
          "level,gas_group,dust_group,ip,temp_min_c,temp_max_c,material,washer_mm,locknut_mm,price,stock\n")


def first(table, value):
    return next(what for most, what in table if value <= most)


def cable(rng, bedding=None):
    """Sheath, bedding and wire; the sheath about as thick as cables of that size have it."""
    if bedding is None:
        bedding = rng.uniform(7, 50)
    wire = first(WIRES, bedding + 4)
    thick = (1.1 + 0.028 * (bedding + 2 * wire)) / 0.944 * rng.uniform(0.92, 1.3)
    return bedding + 2 * (wire + thick), bedding, wire


def thread_of(rng, profile, sheath):
    while True:
        thread = first(rng.choice(FAMILIES[profile.threads]), sheath)
        if not (profile.papers and thread == SILENT):
            return thread


# ---- schedules ------------------------------------------------------------------------------


def spoil(rng, end):
    """Makes an end that no gland of the list fits."""
    kind = rng.randrange(5)
    if kind == 0:  # a sheath so thick that no gland seals on both diameters
        end["bedding"] *= rng.uniform(0.3, 0.5)
    elif kind == 1:  # each figure is common, but not this wire in this cable
        other = 3.15 if end["wire"] < 2 else 0.9
        end["sheath"] += 2 * max(0, other - end["wire"])
        end["wire"] = other
    elif kind == 2:
        end["entry"] = UNHEARD_OF
    elif kind == 3:
        end["sheath"] += 80
        end["bedding"] += 80
    else:
        end["armour"] = "tape"


def leave_to_papers(rng, profile, end):
    """Makes an end that is decided by what neither schedule nor gland list says."""
    kind = rng.randrange(3)
    if kind == 0 and profile.ip:
        end["ip"] = "68"  # to what depth, and for how long?
    elif kind == 1 and profile.threads == "twenty":
        end["sheath"], end["bedding"], end["wire"] = cable(rng, rng.uniform(22, 29))
        end["entry"] = SILENT
    else:
        end["place"] = CERTIFIED


def make_end(rng, profile, types):
    sheath, bedding, wire = rng.choice(types) if types else cable(rng)
    end = {"sheath": sheath, "bedding": bedding, "wire": wire, "armour": "wire",
           "entry": thread_of(rng, profile, sheath), "place": PLACES[rng.choice(profile.places)],
           "ip": rng.choice(IP_ASKED) if profile.ip else "54"}
    lot = rng.random()
    if lot < profile.nothing:
        spoil(rng, end)
    elif lot < profile.nothing + profile.papers:
        leave_to_papers(rng, profile, end)
    elif lot < profile.nothing + profile.papers + profile.unarmoured:
        end["armour"] = "none"
    elif lot > 1 - profile.no_entry:
        end["entry"] = ""
    elif lot > 1 - profile.no_entry - profile.to_suit:
        end["entry"] = "to-suit"
    return end


def diameters(rng, profile, end):
    """The columns from sheath_od_mm to bedding_allow_mm."""
    sheath, bedding, wire = end["sheath"], end["bedding"], end["wire"]
    bare = end["armour"] == "none"
    if profile.measured:
        oval = rng.uniform(0, 0.15)
        inner = "," if bare else f"{bedding - oval:.2f}+{bedding + oval:.2f},{wire:g}"
        return f"{sheath - oval:.2f}+{sheath + oval:.2f},{inner},measured,,"
    allow = rng.choice(profile.allowances)
    if bare:
        return f"{sheath:.2f},,,datasheet,{allow},"
    inner = allow / 2 if allow > 1 else allow
    return f"{sheath:.2f},{bedding:.2f},{wire:g},datasheet,{allow},{inner:g}"


def ends(count, profile):
    rng = random.Random(SEED)
    types = [cable(rng) for _ in range(profile.types)]
    write = sys.stdout.write
    write(ENDS)
    for number in range(count):
        end = make_end(rng, profile, types)
        protection, zone, gas, dust = end["place"]
        flameproof = protection == "db"
        tapped = flameproof or end["entry"].startswith("NPT")
        write(f"C{number // 2:07d},{'ab'[number % 2]},{rng.randint(2, 7)},{end['armour']},"
              f"{diameters(rng, profile, end)},{end['entry']},"
              f"{'threaded,25' if tapped else 'clearance,3'},steel,{protection},{zone},{gas},"
              f"{dust},{'1500,no' if flameproof else ','},{end['ip']}\n")


# ---- gland lists ----------------------------------------------------------------------------


class OwnSizes:
    """Every gland has sizes of its own, made round a cable."""

    def __init__(self, rng, profile):
        self.rng = rng
        self.slack = (0.5, 3.5) if profile.clamps == "single" else (1, 5)

    def sizes(self):
        sheath, bedding, wire = cable(self.rng)
        some = [self.rng.uniform(*self.slack) for _ in range(4)]
        return (sheath, round(sheath - some[0], 1), round(sheath + some[1], 1),
                round(max(0, bedding - some[2]), 1), round(bedding + some[3], 1), wire)


class Grids:
    """Makers that have sizes at regular steps, each from a start and with a step of its own."""
    STEPS = [4, 3.5, 3.175, 5, 2.5, 6.35, 3, 4.5, 2.54, 6]

    def __init__(self, rng, profile):
        self.rng = rng
        self.makers = [(self.STEPS[i], 9 + 0.7 * i if i % 3 else 9.525 + 1.5875 * (i // 3),
                        1.4 + 0.15 * i) for i in range(profile.makers)]

    def sizes(self):
        step, start, overlap = self.rng.choice(self.makers)
        low = start + step * self.rng.randrange(int((66 - start) / step))
        high = low + step * overlap + 2
        sheath = (low + high) / 2
        wire = first(WIRES, sheath * 0.85)
        thin = 0.86 * (sheath - 2 * wire - 2.4)
        width = step * overlap + 2.5
        return (sheath, round(low, 3), round(high, 3), round(max(0, thin - width / 2), 2),
                round(thin + width / 2, 2), wire)


def clamp(rng, profile, wire):
    if profile.clamps == "single":
        return f"{wire:g},{wire:g}"
    i = NOMINAL.index(wire)
    return f"{NOMINAL[max(0, i - rng.randrange(2))]:g},{NOMINAL[i + rng.randrange(2)]:g}"


def rear(rng, profile, sizes):
    """The columns from inner_min_mm to armour_max_mm."""
    _, _, _, low, high, wire = sizes
    if rng.random() < profile.unarmoured:
        return ",,,none,,"
    if rng.random() < profile.no_inner:
        return f",,{high:g},wire,{clamp(rng, profile, wire)}"
    bore = f"{high + 0.8:.1f}" if profile.bores else ""
    return f"{low:g},{high:g},{bore},wire,{clamp(rng, profile, wire)}"


def papers(rng, profile, thread, bundle):
    """The columns from sealing to temp_max_c."""
    silent = profile.papers and (thread == SILENT or rng.random() < profile.papers)
    marks = rng.choice(MARKS) if profile.marks and not silent else UNMARKED
    ip = "66 68" if not profile.ip else "" if silent else rng.choice(IP_STATED)
    sealing = "compression,,"
    if "flameproof" in profile.places:
        sealing = rng.choice(["compression,,", f"barrier,8,{bundle:g}", f"either,4,{bundle:g}"])
    return f"{sealing},{','.join(marks)},{ip},-40,100"


def gland_thread(rng, profile, sheath):
    return first(rng.choice(FAMILIES[profile.threads]), sheath)


def glands(count, profile):
    rng = random.Random(SEED)
    maker = Grids(rng, profile) if profile.makers else OwnSizes(rng, profile)
    prices = rng.sample(range(300, 300 + 20 * count), count)  # in cents, no two alike
    write = sys.stdout.write
    write(GLANDS)
    for number, price in enumerate(prices):
        sizes = maker.sizes()
        thread = gland_thread(rng, profile, sizes[0])
        if profile.tied:
            price = 500 + 250 * int(sizes[2] / 5)
        length = 25 if thread.startswith("NPT") or "flameproof" in profile.places else 15
        write(f"G{number:05d},{thread},{length},{sizes[1]:g},{sizes[2]:g},"
              f"{rear(rng, profile, sizes)},{papers(rng, profile, thread, sizes[4])},brass,1.5,4,"
              f"{price / 100:.2f},{rng.randint(0, 99)}\n")


if __name__ == "__main__":
    if sys.argv[1] == "profiles":
        print(*PROFILES)
    elif sys.argv[1] == "ends":
        ends(int(sys.argv[2]), PROFILES[sys.argv[3]])
    else:
        glands(int(sys.argv[2]), PROFILES[sys.argv[3] if len(sys.argv) > 3 else "different"])
