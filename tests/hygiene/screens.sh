#!/bin/sh
# The golden screens in the order of the hands: `fit` answers within 24 lines of 80 columns, and on a
# `sheet` the cuts stand within the first 30 lines. What --why, --all, --sources, --units and --json
# add is not counted.
set -eu
cases=$1
bad=0
count=0
complain() {
  echo "$1"
  bad=1
}
for stdout in "$cases"/fit/*/stdout; do
  args=$(dirname "$stdout")/args
  grep -qE '^--(json|why|all|sources|units|help|help-all)$' "$args" && continue
  count=$((count + 1))
  lines=$(wc -l <"$stdout")
  [ "$lines" -le 24 ] || complain "$stdout: $lines lines"
  wide=$(LC_ALL=C.UTF-8 awk '{ if (length($0) > most) most = length($0) } END { print most + 0 }' "$stdout")
  # A screen in colour has its marks of colour besides.
  grep -q 'always' "$args" || [ "$wide" -le 80 ] || complain "$stdout: $wide columns"
done
for stdout in "$cases"/sheet/*/stdout; do
  line=$(grep -n '^CUTS$' "$stdout" | head -1 | cut -d: -f1)
  [ -n "$line" ] || continue
  count=$((count + 1))
  [ "$line" -le 30 ] || complain "$stdout: the cuts begin on line $line"
done
[ "$count" -ge 20 ] || complain "only $count screens were looked at"
exit $bad
