#!/bin/sh
# The supervisor's morning: what goes to site on paper. Writes into the folder given (default: a new
# one) the cards of the invented site's jobs, a sheet, a drawing, and cards of one switchroom's
# cables out of the estimator's schedule.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cutback=${CUTBACK:-$here/../../build/cutback}
out=${1:-$(mktemp -d)}
mkdir -p "$out"
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
make cards "$site"/*.json --paper A4 --per-page 2 --output "$out/cards_two_a_page.pdf" --quiet
make sheet "$site/pump-motor.json" --pdf --output "$out/sheet_P-201.pdf"
make sheet "$site/pump-motor.json" --svg --output "$out/drawing_P-201.svg"
make cards ../estimator/schedule.csv --column tag="Cable No" --column from=From --column to=To \
  --column cores=Cores --column csa_mm2="Size (mm2)" --column sheath_od_mm="O/D (mm)" \
  --column bedding_mm="Bedding (mm)" --column armour_mm="Wire (mm)" --column evidence=Evidence \
  --column od_allow_mm="OD +/- (mm)" --column bedding_allow_mm="Bedding +/- (mm)" \
  --column length_m="Length (m)" --column insulation=Insulation \
  --column from_entry="A Entry" --column from_hole="A Hole" --column from_wall_mm="A Wall (mm)" \
  --column from_material="A Box" --column from_protection="A Ex" --column from_zone="A Zone" \
  --column from_gas_group="A Gas" --column from_ip="A IP" --column from_reach_mm="A Reach (mm)" \
  --column to_entry="B Entry" --column to_hole="B Hole" --column to_wall_mm="B Wall (mm)" \
  --column to_material="B Box" --column to_protection="B Ex" --column to_zone="B Zone" \
  --column to_gas_group="B Gas" --column to_ip="B IP" --column to_reach_mm="B Reach (mm)" \
  --sort end --paper A4 --per-page 2 --output "$out/schedule_cards.pdf"
echo "pages in $out" >&2
