#!/bin/sh
# The same files through this program, SQLite and DuckDB, their choices compared, and what reading
# and writing the same bytes costs alone: by hand.
#   peers/run.sh ENDS GLANDS [different|types]
# DuckDB where node finds @duckdb/node-api (npm install @duckdb/node-api in the folder of NODE_PATH).
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../../build/cutback}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python3 "$here/../make_bench.py" ends "$1" "${3:-different}" > "$work/ends.csv"
python3 "$here/../make_bench.py" glands "$2" > "$work/glands.csv"
timed() {
  name=$1
  shift
  /usr/bin/env time -f "$name: %e s, %U s of processor, %M KB" "$@" || [ $? -eq 1 ]
}
timed cutback "$cutback" schedule "$work/ends.csv" --glands "$work/glands.csv" --quiet \
  --output "$work/all.csv"
awk -F, 'NR > 1 { print $1 "," $2 "," ($3 == "fits" ? $4 : "") "," $5 }' "$work/all.csv" \
  > "$work/cutback.csv"
c++ -O2 -std=c++20 -o "$work/read_write" "$here/read_write.cpp"
timed "read and write alone" "$work/read_write" "$work/ends.csv" "$work/all.csv" "$work/copy.csv"
cmp "$work/copy.csv" "$work/all.csv" && echo "read and write: the same bytes"
timed sqlite python3 "$here/sqlite.py" "$work/ends.csv" "$work/glands.csv" "$work/sqlite.csv"
cmp "$work/cutback.csv" "$work/sqlite.csv" && echo "sqlite: the same choices"
if [ -n "${NODE_PATH:-}" ]; then
  # A module is looked for beside the program that asks for it.
  cp "$here"/duckdb_*.mjs "$NODE_PATH/.."
  duckdb() {
    query=$1
    shift
    timed "duckdb ($query $*)" node "$NODE_PATH/../duckdb_$query.mjs" \
      "$work/ends.csv" "$work/glands.csv" "$work/duckdb.csv" "$@"
  }
  for query in limits distinct; do
    duckdb "$query"
    sed 's/""//' "$work/duckdb.csv" | cmp - "$work/cutback.csv" && echo "duckdb: the same choices"
  done
  # What is said of ends that nothing fits is left out.
  duckdb limits rows
  for file in duckdb all; do
    grep ',fits,' "$work/$file.csv" > "$work/$file.rows"
  done
  cmp "$work/duckdb.rows" "$work/all.rows" && echo "duckdb: the same rows"
fi
