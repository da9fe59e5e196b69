#include "core/schedule/own_fields.hpp"

#include <array>

namespace cutback::schedule {

std::span<const job::Field> own_fields() {
  using job::FieldKind;
  using Into = job::Feeds::Into;
  static constexpr std::array k_fields{
      job::Field{"cable",
                 "cable_size",
                 "",
                 FieldKind::text,
                 &job::JobInput::job,
                 0,
                 0,
                 "cores and size such as 4C x 16mm2, 3x25+16 or 12G1.5",
                 "Cores, size and layers in one cell",
                 {Into::rest, fit::Reads::all()}},
      job::Field{"cable",
                 "system_voltage",
                 "",
                 FieldKind::text,
                 &job::JobInput::job,
                 0,
                 0,
                 "a voltage such as 415 V or 11 kV",
                 "Voltage of the system; above 1 kV nothing is estimated from the construction",
                 {Into::rest, fit::Reads::all()}},
      job::Field{"cable",
                 "type",
                 "",
                 FieldKind::text,
                 &job::JobInput::job,
                 0,
                 0,
                 "a name in the file of --types",
                 "Type of the cable, which says what the row leaves blank",
                 {Into::rest, fit::Reads::all()}},
      job::Field{"",
                 "quantity",
                 "",
                 FieldKind::whole,
                 &job::JobInput::cores,
                 1,
                 10000,
                 "runs",
                 "How many cables the row stands for (default 1)",
                 {Into::nothing}},
      job::Field{"",
                 "area_name",
                 "",
                 FieldKind::text,
                 &job::JobInput::job,
                 0,
                 0,
                 "text",
                 "Where the cable belongs; --by area_name groups the take-off",
                 {Into::nothing}},
      job::Field{"",
                 "drawing",
                 "",
                 FieldKind::text,
                 &job::JobInput::job,
                 0,
                 0,
                 "text",
                 "Its drawing; --by drawing groups the take-off",
                 {Into::nothing}},
  };
  return k_fields;
}

}  // namespace cutback::schedule
