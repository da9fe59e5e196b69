#!/bin/sh
# Times whole runs of every profile, files to file. By hand, not a test:
#   tests/bench/run.sh [ENDS] [GLANDS] [PROFILE ...]
# RUNS=5 sh tests/bench/run.sh: medians of five runs. Needs build/cutback, or the program in CUTBACK.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../build/cutback}
runs=${RUNS:-3}
ends=${1:-100000}
glands=${2:-1000}
[ $# -gt 2 ] && shift 2 || set -- $(python3 "$here/make_bench.py" profiles)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

median() { cut -d' ' -f"$1" "$work/times" | sort -n | sed -n "$(((runs + 1) / 2))p"; }

printf '%s ends, %s glands, medians of %s runs\n' "$ends" "$glands" "$runs"
printf '%-12s %9s %11s %9s  %s\n' profile 'wall s' 'processor s' 'peak MB' verdicts
for profile in "$@"; do
  python3 "$here/make_bench.py" ends "$ends" "$profile" > "$work/ends.csv"
  python3 "$here/make_bench.py" glands "$glands" "$profile" > "$work/glands.csv"
  for _ in $(seq "$runs"); do
    /usr/bin/env time -q -a -o "$work/all" -f '%e %U %S %M' "$cutback" schedule "$work/ends.csv" \
      --glands "$work/glands.csv" --quiet --output "$work/results.csv" || [ $? -eq 1 ]
  done
  awk '{ print $1, $2 + $3, $4 / 1024 }' "$work/all" > "$work/times"
  rm "$work/all"
  verdicts=$(sed 1d "$work/results.csv" | cut -d, -f3 | sort | uniq -c | sort -rn |
    awk '{ printf "%s%s %s", n++ ? ", " : "", $1, $2 }')
  printf '%-12s %9.2f %11.2f %9.0f  %s\n' "$profile" "$(median 1)" "$(median 2)" "$(median 3)" \
    "$verdicts"
done
