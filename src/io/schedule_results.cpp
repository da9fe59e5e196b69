#include "cutback/io/schedule_results.hpp"

#include <algorithm>

#include "cutback/io/csv.hpp"
#include "cutback/money.hpp"
#include "cutback/number.hpp"
#include "cutback/words.hpp"

namespace cutback::io {
namespace {

std::string count(const std::optional<std::uint64_t>& value) {
  return value ? std::to_string(*value) : std::string();
}

std::string price(const std::optional<double>& value, int decimals) {
  return value ? fixed(*value, decimals) : std::string();
}

std::string money(const std::optional<std::int64_t>& units, int decimals) {
  return units ? money_text(*units, decimals) : std::string();
}

/// Of the quantities of two revisions; empty where there is one.
std::string difference(const schedule::TakeoffLine& line) {
  if (!line.old_quantity) return {};
  return std::to_string(static_cast<std::int64_t>(line.quantity) -
                        static_cast<std::int64_t>(*line.old_quantity));
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
         "defaults,remarks,supplier\n";
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
  if (gland != nullptr && gland->price) {
    append_fixed(out, *gland->price, price_decimals(*gland->price).value_or(k_most_price_decimals));
  }
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
                              std::span<const schedule::OwnValue> defaults,
                              std::string_view supplier) {
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
  add(out, supplier);
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

std::string takeoff_csv(const schedule::Takeoff& takeoff) {
  std::string out =
      "part,description,ends,quantity,not_proven,stock,to_order,unit_price,total,from_stock,"
      "provisional,provisional_total,pack,min_order,currency,supplier,group,"
      "old_quantity,difference\n";
  const int decimals = takeoff.decimals;
  for (const schedule::TakeoffLine& line : takeoff.lines) {
    append_csv_text(out, line.part);
    add(out, line.description);
    add(out, std::to_string(line.ends));
    add(out, std::to_string(line.quantity));
    add(out, std::to_string(line.not_proven));
    add(out, count(line.stock));
    add(out, std::to_string(line.to_order));
    add(out, price(line.unit_price, decimals));
    add(out, money(line.total, decimals));
    add(out, std::to_string(line.from_stock));
    add(out, std::to_string(line.provisional));
    add(out, money(line.provisional_total, decimals));
    add(out, count(line.pack));
    add(out, count(line.min_order));
    add(out, line.unit_price ? takeoff.currency : "");
    add(out, line.supplier);
    add(out, line.group);
    add(out, count(line.old_quantity));
    // A number, which a spreadsheet may have with its sign.
    out += ',' + difference(line);
    out += '\n';
  }
  if (takeoff.total) {
    out += "TOTAL,of the lines with a price,,,,,,," + money(takeoff.total, decimals) + ",,," +
           money(takeoff.provisional_total, decimals) + ",,,";
    append_csv_text(out, takeoff.currency);
    out += ",,,,\n";
  }
  return out;
}

std::string changes_csv(std::span<const schedule::EndChange> changes) {
  std::string out =
      "change,tag,end,line,old_line,what,old_part,part,gland_changed,old_verdict,verdict,source\n";
  for (const schedule::EndChange& change : changes) {
    const schedule::EndRecord& end = change.after != nullptr ? *change.after : *change.before;
    out += to_string(change.kind);
    add(out, end.tag);
    add(out, end.end);
    add(out, change.after != nullptr ? std::to_string(change.after->line) : "");
    add(out, change.before != nullptr ? std::to_string(change.before->line) : "");
    add(out, change.what);
    add(out, change.before != nullptr ? std::string_view(change.before->part) : "");
    add(out, change.after != nullptr ? std::string_view(change.after->part) : "");
    out += change.kind != schedule::EndChange::Kind::changed ? ","
           : change.gland_changed()                          ? ",yes"
                                                             : ",no";
    add(out, change.before != nullptr ? std::string_view(change.before->verdict) : "");
    add(out, change.after != nullptr ? std::string_view(change.after->verdict) : "");
    add(out, end.source);
    out += '\n';
  }
  return out;
}

std::string_view exceptions_csv_head() {
  return "group,line,tag,end,verdict,nearest,reason,change,source\n";
}

std::string reading_notes_csv(std::span<const std::string> notes) {
  std::string out;
  for (const std::string& note : notes) {
    out += "how the schedule was read,,,,,";
    // Without the line breaks of a screen.
    std::string spaced = note;
    std::replace(spaced.begin(), spaced.end(), '\n', ' ');
    std::string line;
    for (const std::string_view word : split_words(spaced)) {
      line += (line.empty() ? "" : " ") + std::string(word);
    }
    add(out, line);
    out += ",,\n";
  }
  return out;
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
