# Sourced in this folder: puts into "$@" what tells the headings of schedule.csv.
set -- --column tag="Cable No" --column from=From --column to=To --column cores=Cores \
  --column csa_mm2="Size (mm2)" --column sheath_od_mm="O/D (mm)" \
  --column bedding_mm="Bedding (mm)" --column armour_mm="Wire (mm)" \
  --column evidence=Evidence --column od_allow_mm="OD +/- (mm)" \
  --column bedding_allow_mm="Bedding +/- (mm)" \
  --column length_m="Length (m)" --column insulation=Insulation \
  --column from_entry="A Entry" --column from_hole="A Hole" --column from_wall_mm="A Wall (mm)" \
  --column from_material="A Box" --column from_protection="A Ex" --column from_zone="A Zone" \
  --column from_gas_group="A Gas" --column from_ip="A IP" --column from_reach_mm="A Reach (mm)" \
  --column to_entry="B Entry" --column to_hole="B Hole" --column to_wall_mm="B Wall (mm)" \
  --column to_material="B Box" --column to_protection="B Ex" --column to_zone="B Zone" \
  --column to_gas_group="B Gas" --column to_ip="B IP" --column to_reach_mm="B Reach (mm)"
