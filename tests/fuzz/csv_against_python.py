"""Our CSV reader against Python's: where both take a text, they read the same rows.

csv_against_python.py PROGRAM [COUNT [SEED]]"""

import csv
import io
import json
import random
import subprocess
import sys

PIECES = ["", "a", "7.5", "NPT 1/2", ",", ",", '"', '"', '""', '","', " ", "é", "中", "\n", "\n",
          "\r\n", "\r", "'", ";", "\t", "="]


def text_of(rng):
    return "".join(rng.choice(PIECES) for _ in range(rng.randint(0, 24)))


def by_python(text):
    """@return the rows, or None where it is not CSV. A blank line is no row."""
    try:
        return [row for row in csv.reader(io.StringIO(text, newline=""), strict=True) if row]
    except csv.Error:
        return None


def main():
    program, count, seed = sys.argv[1], int((sys.argv[2:3] or ["20000"])[0]), int((sys.argv[3:4] or ["4180"])[0])
    rng = random.Random(seed)
    texts = [text_of(rng) for _ in range(count)]
    given = b"".join(b"%d\n%s" % (len(text.encode()), text.encode()) for text in texts)
    answers = subprocess.run([program], input=given, capture_output=True, check=True).stdout.decode().splitlines()
    assert len(answers) == count, (len(answers), count)
    taken = refused_by_one = 0
    for text, answer in zip(texts, answers):
        ours = None if answer == "refused" else json.loads(answer)
        theirs = by_python(text)
        if ours is None or theirs is None:
            refused_by_one += (ours is None) != (theirs is None)
            continue
        taken += 1
        if ours != theirs:
            print(f"{text!r}\n ours   {ours}\n theirs {theirs}")
            return 1
    print(f"{taken} of {count} texts taken by both and read alike; {refused_by_one} refused by one alone")
    return 0 if taken > count // 10 else 1


if __name__ == "__main__":
    sys.exit(main())
