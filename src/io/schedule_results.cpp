#include "cutback/io/schedule_results.hpp"

#include "cutback/io/csv.hpp"
#include "cutback/number.hpp"

namespace cutback::io {
namespace {

std::string number(const std::optional<double>& value, int decimals) {
  return value ? plain(*value, decimals) : std::string();
}

std::string count(const std::optional<std::uint64_t>& value) {
  return value ? std::to_string(*value) : std::string();
}

std::string price(const std::optional<double>& value) {
  return value ? fixed(*value, 2) : std::string();
}

void add(std::string& line, std::string_view field) {
  line += ',';
  line += csv_field(field);
}

}  // namespace

std::string_view schedule_csv_head() {
  return "tag,end,verdict,part,fits,price,outer_margin_mm,inner_margin_mm,armour_margin_mm,barrier,"
         "armour_cut_mm,sheath_cut_mm,bedding_cut_mm,reason\n";
}

std::string schedule_csv_tail(const schedule::Decision& decision) {
  std::string line;
  add(line, to_string(decision.verdict));
  add(line, decision.gland != nullptr ? decision.gland->part : "");
  add(line, std::to_string(decision.fits));
  add(line, price(decision.gland != nullptr ? decision.gland->price : std::nullopt));
  for (const auto& margin :
       {decision.outer_margin_mm, decision.inner_margin_mm, decision.armour_margin_mm}) {
    add(line, number(margin, 3));
  }
  add(line, decision.barrier ? (*decision.barrier ? "yes" : "no") : "");
  for (const auto& cut :
       {decision.armour_cut_mm, decision.sheath_cut_mm, decision.bedding_cut_mm}) {
    add(line, number(cut, 1));
  }
  add(line, decision.reason);
  line += '\n';
  return line;
}

void append_schedule_csv(std::string& out, const schedule::EndName& name,
                         const schedule::Decision& decision, std::string_view tail) {
  out += csv_field(name.tag);
  add(out, name.end);
  if (decision.usable()) {
    out += tail;
    return;
  }
  out += ",unusable,,,,,,,,,,,";
  out += csv_field("line " + std::to_string(name.line) + ": " + schedule::unusable_text(decision));
  out += '\n';
}

std::string takeoff_csv(std::span<const schedule::TakeoffLine> lines) {
  std::string out = "part,description,ends,quantity,not_proven,stock,to_order,unit_price,total\n";
  std::optional<double> sum;
  for (const schedule::TakeoffLine& line : lines) {
    out += csv_field(line.part);
    add(out, line.description);
    add(out, std::to_string(line.ends));
    add(out, std::to_string(line.quantity));
    add(out, std::to_string(line.not_proven));
    add(out, count(line.stock));
    add(out, std::to_string(line.to_order));
    add(out, price(line.unit_price));
    add(out, price(line.total));
    out += '\n';
    if (line.total) sum = sum.value_or(0.0) + *line.total;
  }
  if (sum) out += "TOTAL,of the lines with a price,,,,,,," + price(sum) + "\n";
  return out;
}

std::string exceptions_csv(std::span<const schedule::Exception* const> exceptions) {
  std::string out = "group,line,tag,end,verdict,nearest,reason,change\n";
  for (const schedule::Exception* exception : exceptions) {
    out += csv_field(exception->group);
    add(out, std::to_string(exception->line));
    for (const std::string& field : {exception->tag, exception->end, exception->verdict,
                                     exception->nearest, exception->reason, exception->change}) {
      add(out, field);
    }
    out += '\n';
  }
  return out;
}

}  // namespace cutback::io
