#!/bin/sh
# The supervisor's morning: what goes to site on paper. Writes into the folder given (default: a new
# one) the cards of the invented site's jobs, a sheet, a drawing, and cards of one switchroom's
# cables out of the estimator's schedule.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../build/cutback}
out=${1:-$(mktemp -d)}
mkdir -p "$out"
out=$(cd "$out" && pwd)
case $cutback in /*) ;; *) cutback=$PWD/$cutback ;; esac
cd "$here"
site=../../data/demo/site
glands=../../data/demo/glands.csv

# Some of these ends are not proven yet: an answer (exit status 1), not a failure of this script.
make() {
  status=0
  "$cutback" "$@" --glands "$glands" || status=$?
  [ "$status" -le 1 ] || exit "$status"
}

make cards "$site"/*.json --output "$out/cards.pdf"
make cards "$site"/*.json --paper A4 --output "$out/cards_two_a_page.pdf" --quiet
make sheet "$site/pump-motor.json" --pdf --output "$out/sheet_P-201.pdf"
make sheet "$site/pump-motor.json" --svg --output "$out/drawing_P-201.svg"
cd ../estimator
make cards schedule.csv \
  --sort end --paper A4 --output "$out/schedule_cards.pdf"
echo "pages in $out" >&2
