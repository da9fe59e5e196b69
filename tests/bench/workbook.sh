#!/bin/sh
# Times reading a workbook, as CSV of the same rows beside it. By hand, not a test:
# tests/bench/workbook.sh [ENDS] [RUNS]. Needs python3-openpyxl. Prints medians.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../build/cutback}
ends=${1:-100000}
runs=${2:-7}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python3 "$here/make_bench.py" glands 100 > "$work/glands.csv"
python3 "$here/make_bench.py" ends "$ends" different > "$work/ends.csv"
/usr/bin/python3 "$here/make_workbook.py" "$work/ends.xlsx" < "$work/ends.csv"
for kind in csv xlsx; do
  for _ in $(seq "$runs"); do
    /usr/bin/env time -q -f '%e %U %S' "$cutback" schedule "$work/ends.$kind" \
      --glands "$work/glands.csv" --quiet --output "$work/results" 2>&1 || [ $? -eq 1 ]
  done > "$work/times"
  wall=$(cut -d' ' -f1 "$work/times" | sort -n | sed -n "$(((runs + 1) / 2))p")
  busy=$(awk '{ print $2 + $3 }' "$work/times" | sort -n | sed -n "$(((runs + 1) / 2))p")
  printf '%s ends (%s): %s s, %s s of processor\n' "$ends" "$kind" "$wall" "$busy"
done
