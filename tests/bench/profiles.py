"""What the schedules and gland lists of the benchmarks differ in. All figures are invented."""
from dataclasses import dataclass

# Largest sheath that an entry takes. The small ones pass every bedding that goes with it.
METRIC = [(13.4, "M16"), (21.4, "M20"), (27.2, "M25"), (33.6, "M32"), (40.6, "M40"),
          (53.8, "M50"), (66.8, "M63"), (150, "M75")]
NPT = [(20, "NPT 1/2"), (26, "NPT 3/4"), (32, "NPT 1"), (39, "NPT 1 1/4"), (46, "NPT 1 1/2"),
       (58, "NPT 2"), (150, "NPT 2 1/2")]
PG = [(18, "PG 13.5"), (28, "PG 21"), (38, "PG 29"), (48, "PG 36"), (150, "PG 48")]
FAMILIES = {"one": ([(150, "M63")],),
            "few": (METRIC,),
            "twenty": (METRIC, METRIC, METRIC, NPT, PG)}

# Nobody's list says anything of protection or IP for this thread where a profile has `papers`.
SILENT = "PG 29"
# No list has this one.
UNHEARD_OF = "M12"

# protection, level, gas_group, dust_group of a gland
MARKS = [("db eb tb", "Gb Db", "IIC", "IIIC"), ("db eb nR tb", "Gb Db", "IIC", "IIIC"),
         ("eb tb", "Gb Db", "IIC", "IIIC"), ("eb", "Gb", "IIC", ""), ("db", "Gb", "IIC", ""),
         ("tb", "Db", "", "IIIC"), ("ec nR tc", "Gc Dc", "IIC", "IIIC"),
         ("db tb", "Gb Db", "IIB", "IIIB")]
UNMARKED = ("", "", "", "")
IP_ASKED = ["54", "55", "56", "65", "66", "67"]
IP_STATED = ["66 68", "66 67 68", "66 67", "66", "65", "54"]

# protection, zone, gas_group, dust_group of an enclosure
PLACES = {"plain": ("", "none", "", ""), "zone 1": ("eb", "1", "IIB", ""),
          "zone 21": ("tb", "21", "", "IIIB"), "zone 2": ("ec", "2", "IIC", ""),
          "zone 22": ("tc", "22", "", "IIIB"), "flameproof": ("db", "1", "IIB", "")}
# Which gland it may have is said by the certificate of such an enclosure alone.
CERTIFIED = ("mb", "1", "IIB", "")


@dataclass(frozen=True)
class Profile:
    about: str
    threads: str = "few"            # of FAMILIES
    clamps: str = "single"          # a single nominal size, or a range of them
    marks: bool = False             # glands have one of the sets of MARKS
    ip: bool = False                # ends ask for one of IP_ASKED, glands state one of IP_STATED
    places: tuple = ("plain",)      # of PLACES, alike in number
    unarmoured: float = 0.0         # share of the ends, and of the glands
    nothing: float = 0.0            # share of the ends that nothing fits
    papers: float = 0.0             # share of the ends that only papers can decide, and of the
                                    # glands of which the list does not state marks and IP
    allowances: tuple = (0.3,)      # of sheath and bedding [mm], alike in number
    measured: bool = False          # two crossed readings instead
    types: int = 0                  # cable types; 0: every end has diameters of its own
    makers: int = 0                 # regular grids of sizes; 0: every gland has sizes of its own
    tied: bool = False              # prices by size, alike for many glands
    no_inner: float = 0.0           # share of the armoured glands without an inner seal
    bores: bool = False
    to_suit: float = 0.0            # share of the entries that are made for the gland
    no_entry: float = 0.0           # share of the ends whose entry is not given


PROFILES = {
    "different": Profile("easy: plain place, single clamp sizes"),
    "types": Profile("as `different`, of 400 cable types", types=400),
    "mixed": Profile("everything asked at once", "twenty", "range", marks=True, ip=True,
                     places=("plain", "zone 1", "zone 21"), unarmoured=0.15, nothing=0.01,
                     papers=0.12, allowances=(0,)),
    "half": Profile("half of the ends fit nothing", "few", "range", nothing=0.5, bores=True,
                    unarmoured=0.05),
    "one-maker": Profile("one thread, a regular grid, tied prices, wide allowances", "one",
                         "range", allowances=(2,), makers=1, tied=True, bores=True),
    "ten-makers": Profile("ten offset grids, some in inches; bores, no inner seals, tied prices",
                          "twenty", "range", ip=True, unarmoured=0.3, nothing=0.01,
                          allowances=(0, 0.3, 2), makers=10, tied=True, no_inner=0.1,
                          bores=True),
    "zones": Profile("six kinds of place, flameproof among them", "few", "range", marks=True,
                     ip=True, places=tuple(PLACES), unarmoured=0.05, papers=0.12,
                     allowances=(0, 0.3), makers=10),
    "entries": Profile("a third of the entries to suit, some not given; measured", "twenty",
                       "range", measured=True, nothing=0.01, makers=10, to_suit=0.33,
                       no_entry=0.05),
}
