#!/bin/sh
# Times whole runs of the program, by hand: sh tests/bench/fit.sh [RUNS]. Not a test.
# Needs build/cutback (sh tests/run.sh). Prints the median wall time of each command in ms.
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
runs=${1:-21}

median() {
  name=$1
  shift
  i=0
  while [ "$i" -lt "$runs" ]; do
    start=$(date +%s%N)
    "$root/build/cutback" "$@" >/dev/null 2>&1 || true
    echo $((($(date +%s%N) - start) / 1000))
    i=$((i + 1))
  done | sort -n | awk -v name="$name" '{ t[NR] = $1 } END {
    printf "%-34s %8.2f ms\n", name, t[int((NR + 1) / 2)] / 1000 }'
}

readings=$(mktemp)
trap 'rm -f "$readings"' EXIT
awk 'BEGIN { srand(1); print "drum,place,value_mm"
  for (d = 1; d <= 20; d++) for (p = 1; p <= 50; p++) for (r = 0; r < 2; r++)
    printf "D%d,%d,%.2f\n", d, p, 15 + d / 50 + int(rand() * 20) / 50 }' >"$readings"

median "fit, demonstration list" fit --od 14.9+15.1 --bedding 9.9+10.1 --wire 0.9 --entry M20
median "sheet, pump motor" sheet "$root/data/demo/site/pump-motor.json"
median "cable, 61 cores" cable --cores 61 --csa 2.5
median "readings, 2000 on 20 drums" readings "$readings" --low 11 --high 16 --step 0.02
