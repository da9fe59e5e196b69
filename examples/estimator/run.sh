#!/bin/sh
# The estimator's evening: glands for both ends of every cable of an invented site, a take-off and
# the ends that need a person; the same again from a short stock; and the parts to carry. Writes
# results.csv, takeoff.csv, exceptions.csv, all three as sheets of schedule.xlsx, stock_takeoff.csv,
# stock_exceptions.csv and kit.txt into the folder given (default: a new one), and what they come to
# to stderr.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../build/cutback}
out=${1:-$(mktemp -d)}
cd "$here"

status=0
"$cutback" schedule schedule.csv --glands ../../data/demo/glands.csv --output "$out/results.csv" \
  --takeoff "$out/takeoff.csv" --spare 5% \
  --exceptions "$out/exceptions.csv" --xlsx "$out/schedule.xlsx" || status=$?
[ "$status" -le 1 ] || exit "$status"

# The same from what is on the shelf after a busy month: half of the list's stock, its last
# column. Of the exceptions only those for want of stock are kept; the others are as above.
awk -F, -v OFS=, 'NR > 1 { $NF = int($NF / 2) } 1' ../../data/demo/glands.csv >"$out/shelf.csv"
"$cutback" schedule schedule.csv --glands "$out/shelf.csv" --use-stock --output /dev/null \
  --takeoff "$out/stock_takeoff.csv" --exceptions "$out/stock_all.csv" || [ $? -eq 1 ]
grep -E '^(group|stock),' "$out/stock_all.csv" >"$out/stock_exceptions.csv"
rm "$out/stock_all.csv"

# Which parts a van must carry for this site.
"$cutback" kit schedule.csv --glands ../../data/demo/glands.csv --output "$out/kit.txt" || [ $? -eq 1 ]

echo "results in $out" >&2
exit "$status"
