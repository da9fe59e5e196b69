#!/bin/sh
# Times whole runs, files to file. By hand, not a test: tests/bench/run.sh [ENDS] [GLANDS ...]
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../build/cutback}
ends=${1:-10000}
[ $# -gt 0 ] && shift
[ $# -gt 0 ] || set -- 100 1000 10000
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for profile in types different; do
  python3 "$here/make_bench.py" ends "$ends" "$profile" > "$work/$profile.csv"
  for glands in "$@"; do
    python3 "$here/make_bench.py" glands "$glands" > "$work/glands.csv"
    printf '%s ends (%s), %s glands: ' "$ends" "$profile" "$glands"
    /usr/bin/env time -f '%e s, %U s of processor, %M KB' \
      "$cutback" schedule "$work/$profile.csv" --glands "$work/glands.csv" --quiet \
      --output "$work/results.csv" || [ $? -eq 1 ]
    cut -d, -f3 "$work/results.csv" | sort | uniq -c | sort -rn | head -3
  done
done
