#!/bin/sh
# Times sharing out stock and choosing a kit. By hand, not a test: tests/bench/stock.sh [ENDS] [GLANDS]
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../build/cutback}
ends=${1:-100000}
glands=${2:-1000}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python3 "$here/make_bench.py" glands "$glands" > "$work/glands.csv"

# timed WHAT ARGUMENT...
timed() {
  printf '%s ends, %s glands, %s: ' "$ends" "$glands" "$1"
  shift
  /usr/bin/env time -q -f '%e s, %U s of processor, %M KB' "$cutback" "$@" || [ $? -eq 1 ]
}

for profile in types different; do
  python3 "$here/make_bench.py" ends "$ends" "$profile" > "$work/$profile.csv"
  timed "$profile" schedule "$work/$profile.csv" --glands "$work/glands.csv" --quiet \
    --output "$work/results.csv"
  timed "$profile, use of stock" schedule "$work/$profile.csv" --glands "$work/glands.csv" --quiet \
    --use-stock --output "$work/results.csv"
  cut -d, -f3 "$work/results.csv" | sort | uniq -c | sort -rn | head -4
  timed "$profile, kit" kit "$work/$profile.csv" --glands "$work/glands.csv" --output "$work/kit.txt"
  sed -n '/^PROOF/,/^$/p' "$work/kit.txt"
done
