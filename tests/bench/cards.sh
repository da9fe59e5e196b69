#!/bin/sh
# Times cards of a whole schedule, by hand: sh tests/bench/cards.sh [ENDS]. Not a test.
# Needs build/cutback (sh tests/run.sh). Prints cards per second and the peak memory.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../build/cutback}
ends=${1:-10000}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python3 "$here/make_bench.py" ends "$ends" different >"$work/ends.csv"
python3 "$here/make_bench.py" glands 100 >"$work/glands.csv"
for layout in "a5 1" "a4 2" "a4 4"; do
  paper=${layout% *} each=${layout#* }
  /usr/bin/env time -o "$work/time" -f '%e %M' "$cutback" cards "$work/ends.csv" \
    --glands "$work/glands.csv" --paper "$paper" --per-page "$each" --output "$work/cards.pdf" --quiet ||
    [ $? -eq 1 ]
  grep -v '^Command' "$work/time" | awk -v each="$each" -v ends="$ends" -v size="$(wc -c <"$work/cards.pdf")" \
    '{ printf "%d per page: %d ends in %s s, %.0f per second, %s KB, file of %.1f MB\n", each, ends, $1, ends / $1, $2, size / 1e6 }'
done
