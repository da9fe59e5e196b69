#include "cutback/io/schedule_results.hpp"

#include "cutback/io/csv.hpp"
#include "cutback/number.hpp"

namespace cutback::io {
namespace {

std::string count(const std::optional<std::uint64_t>& value) {
  return value ? std::to_string(*value) : std::string();
}

std::string price(const std::optional<double>& value) {
  return value ? fixed(*value, 2) : std::string();
}

void add(std::string& line, std::string_view field) {
  line += ',';
  append_csv_text(line, field);
}

}  // namespace

std::string_view schedule_csv_head() {
  return "tag,end,verdict,part,fits,price,outer_margin_mm,inner_margin_mm,armour_margin_mm,barrier,"
         "armour_cut_mm,sheath_cut_mm,bedding_cut_mm,reason,state,not_asked,line,source,quantity,"
         "sheath_od_mm,sheath_od_evidence,bedding_mm,bedding_evidence,armour_mm,armour_evidence,"
         "defaults,remarks\n";
}

void append_schedule_csv_tail(std::string& out, const schedule::Decision& decision) {
  const auto number = [&](const std::optional<double>& value, int decimals) {
    out += ',';
    if (value) append_plain(out, *value, decimals);
  };
  const gland::Gland* const gland = decision.gland;
  out += ',';
  out += schedule::verdict_word(decision);
  add(out, gland != nullptr ? std::string_view(gland->part) : std::string_view());
  out += ',';
  append_plain(out, static_cast<double>(decision.fits), 0);
  out += ',';
  if (gland != nullptr && gland->price) append_fixed(out, *gland->price, 2);
  number(decision.outer_margin_mm, 3);
  number(decision.inner_margin_mm, 3);
  number(decision.armour_margin_mm, 3);
  out += ',';
  if (decision.barrier) out += *decision.barrier ? "yes" : "no";
  number(decision.armour_cut_mm, 1);
  number(decision.sheath_cut_mm, 1);
  number(decision.bedding_cut_mm, 1);
  add(out, decision.reason);
  out += ',';
  out += to_string(decision.state);
  out += ',';
  out += decision.not_asked;
}

void append_schedule_csv_more(std::string& out, const schedule::Decision& decision,
                              std::span<const schedule::OwnValue> defaults) {
  for (const auto* figure : {&decision.sheath_od, &decision.bedding, &decision.armour}) {
    out += ',';
    if (*figure) append_plain(out, (*figure)->mm, 3);
    out += ',';
    if (*figure) out += to_string((*figure)->evidence);
  }
  add(out, schedule::defaults_text(defaults, decision.defaults));
  std::string remarks;
  for (const std::string& remark : decision.remarks) {
    remarks += (remarks.empty() ? "" : "; ") + remark;
  }
  add(out, remarks);
}

void append_schedule_csv(std::string& out, const schedule::EndName& name,
                         const schedule::Decision& decision, std::string_view tail,
                         std::string_view more) {
  append_csv_text(out, name.tag);
  add(out, name.end);
  if (decision.usable()) {
    out += tail;
  } else {
    out += ",unusable,,,,,,,,,,,";
    append_csv_field(out, std::string(name.row_word) + " " + std::to_string(name.line) + ": " +
                              schedule::unusable_text(decision));
    out += ",none,";
  }
  out += ',';
  append_plain(out, static_cast<double>(name.line), 0);
  add(out, name.source);
  out += ',';
  append_plain(out, static_cast<double>(name.quantity), 0);
  out += more;
  out += '\n';
}

std::string takeoff_csv(std::span<const schedule::TakeoffLine> lines) {
  std::string out = "part,description,ends,quantity,not_proven,stock,to_order,unit_price,total\n";
  std::optional<double> sum;
  for (const schedule::TakeoffLine& line : lines) {
    append_csv_text(out, line.part);
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

std::string_view exceptions_csv_head() {
  return "group,line,tag,end,verdict,nearest,reason,change,source\n";
}

void append_exception_csv(std::string& out, const schedule::Exception& exception) {
  append_csv_field(out, exception.group);
  add(out, std::to_string(exception.line));
  for (const std::string* field :
       {&exception.tag, &exception.end, &exception.verdict, &exception.nearest, &exception.reason,
        &exception.change, &exception.source}) {
    add(out, *field);
  }
  out += '\n';
}

}  // namespace cutback::io
