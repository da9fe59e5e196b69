#!/usr/bin/env python3
"""Writes csv_vectors.json: random tables in the dialects of RFC 4180, as Python's csv module writes
and reads them. Run it in this folder; the same file comes out each time."""
import csv
import io
import json
import random

PIECES = ["", "a", "7.5", "M20", "NPT 1/2", ",", ",,", '"', '""', " ", "é", "Ω", "中", "\u00a0",
          "\n", "\r\n", "\r", "'", ";", "\t", "=", "|", "wire", "x y"]


def cell(rng, pieces):
    return "".join(rng.choice(pieces) for _ in range(rng.choice([0, 1, 1, 1, 2, 3, 6])))


def table(rng, pieces):
    width = rng.randint(1, 6)
    rows = [[cell(rng, pieces) for _ in range(rng.randint(1, width) if rng.random() < 0.2 else width)]
            for _ in range(rng.randint(1, 6))]
    return rows


def main():
    rng = random.Random(4180)
    vectors = []
    for quoting in (csv.QUOTE_MINIMAL, csv.QUOTE_ALL, csv.QUOTE_NONNUMERIC):
        for end in ("\n", "\r\n"):
            # Without quotes Python leaves a lone CR bare when lines end in LF; RFC 4180 does not.
            bare_cr = quoting == csv.QUOTE_MINIMAL and end == "\n"
            pieces = [p for p in PIECES if not (bare_cr and "\r" in p)]
            for _ in range(60):
                out = io.StringIO(newline="")
                csv.writer(out, quoting=quoting, lineterminator=end).writerows(table(rng, pieces))
                text = out.getvalue()
                if rng.random() < 0.2:
                    text = text[:-len(end)]
                rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
                vectors.append({"text": text, "rows": rows})
    with open("csv_vectors.json", "w", encoding="utf-8", newline="\n") as file:
        file.write("[\n" + ",\n".join(json.dumps(v, ensure_ascii=True) for v in vectors) + "\n]\n")


if __name__ == "__main__":
    main()
