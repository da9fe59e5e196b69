#!/bin/sh
# The same files through this program, SQLite and DuckDB, their choices compared, and what reading
# and writing the same bytes costs alone: by hand.
#   peers/run.sh ENDS GLANDS [PROFILE ...]
# DuckDB where node finds @duckdb/node-api (npm install @duckdb/node-api in the folder of NODE_PATH).
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../../build/cutback}
ends=$1
glands=$2
[ $# -gt 2 ] && shift 2 || set -- different types mixed half
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

timed() {
  name=$1
  shift
  /usr/bin/env time -q -f "  $name: %e s, %U s + %S s of processor, %M KB" "$@" || [ $? -eq 1 ]
}

# same FILE: whether it has the choices of the program.
same() {
  if sed 's/""//' "$1" | cmp -s - "$work/choices.csv"; then
    echo "    the same choices"
  else
    echo "    OTHER choices: $(sed 's/""//' "$1" | diff - "$work/choices.csv" | grep -c '^<')"
  fi
}

duckdb() {  # QUERY ARGUMENT...
  query=$1
  shift
  # A module is looked for beside the program that asks for it.
  cp "$here/$query.mjs" "$NODE_PATH/.."
  timed "$query $*" node "$NODE_PATH/../$query.mjs" "$work/ends.csv" "$work/glands.csv" \
    "$work/duckdb.csv" "$@"
}

# All the columns of the results, of an end that something fits.
compare_rows() {
  for file in duckdb all; do
    grep ',fits,' "$work/$file.csv" > "$work/$file.rows"
  done
  cmp -s "$work/duckdb.rows" "$work/all.rows" && echo "    the same rows" || echo "    OTHER rows"
}

c++ -O2 -std=c++20 -o "$work/read_write" "$here/read_write.cpp"
for profile in "$@"; do
  echo "$profile, $ends ends, $glands glands"
  python3 "$here/../make_bench.py" ends "$ends" "$profile" > "$work/ends.csv"
  python3 "$here/../make_bench.py" glands "$glands" "$profile" > "$work/glands.csv"
  timed cutback "$cutback" schedule "$work/ends.csv" --glands "$work/glands.csv" --quiet \
    --output "$work/all.csv"
  # Of an end that nothing fits the program names what comes nearest; the queries name none.
  awk -F, 'NR > 1 { print $1 "," $2 "," ($3 == "fits" ? $4 : "") }' "$work/all.csv" \
    > "$work/choices.csv"
  timed "read and write alone" "$work/read_write" "$work/ends.csv" "$work/all.csv" "$work/copy.csv"
  cmp "$work/copy.csv" "$work/all.csv" && echo "    the same bytes"
  easy=$(case $profile in different | types) echo yes ;; esac)
  if [ -n "$easy" ]; then
    timed sqlite python3 "$here/sqlite.py" "$work/ends.csv" "$work/glands.csv" "$work/sqlite.csv"
    same "$work/sqlite.csv"
  fi
  [ -n "${NODE_PATH:-}" ] || continue
  for how in plain tuned; do
    duckdb duckdb "$how"
    same "$work/duckdb.csv"
  done
  if [ -n "$easy" ]; then
    duckdb duckdb_limits
    same "$work/duckdb.csv"
    duckdb duckdb_limits rows
    compare_rows
  fi
done
