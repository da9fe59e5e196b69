#!/bin/sh
# Installs what is missing, builds, and runs the main job on the invented example site.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/src/cmake/setup.sh"

# shellcheck disable=SC2086
install_missing $build_packages
build_program OFF cutback
cutback="$root/build/cutback"

# A gland that does not fit is an answer (exit status 1), not a failure of this script.
show() {
  printf '\n$ cutback %s\n' "$*"
  status=0
  "$cutback" "$@" || status=$?
  [ "$status" -le 1 ] || exit "$status"
}

cd "$root"
say "at the van: which gland of the stock fits this cable?"
show fit --od 14.9+15.1 --bedding 9.9+10.1 --wire 0.9 --entry M20 --hole clearance \
  --wall 2.5 --glands examples/van/stock.csv
say "will the rest of the drum suit the same seal?"
show readings examples/van/drum.csv --step 0.02 --low 11.4 --high 16.6
say "the termination sheets of the invented site"
for job in data/demo/site/*.json; do show sheet "$job"; done
say "on paper for site: strip-length cards, a sheet and a drawing, into build/floor"
CUTBACK="$cutback" sh examples/floor/run.sh "$root/build/floor"
say "a whole cable schedule: examples/estimator"
status=0
CUTBACK="$cutback" sh examples/estimator/run.sh || status=$?
[ "$status" -le 1 ] || exit "$status"
say "done; the program is build/cutback, and build/cutback --help tells the rest"
