#include "cutback/print/words.hpp"

#include <fmt/format.h>
#include <algorithm>

#include "cutback/entry/joint_check.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::print {
namespace {

std::string estimate_text(const char* name, const std::optional<measure::Estimate>& estimate) {
  if (!estimate) return std::string(name) + " not given";
  return std::string(name) + " " + measure::with_spread(*estimate) + " (" +
         std::string(to_string(estimate->evidence)) + ")";
}

std::string wire_text(const cable::Cable& cable) {
  if (cable.armour == cable::ArmourKind::none) return "unarmoured";
  if (!cable.wire) return std::string(to_string(cable.armour)) + " not given";
  if (cable.wire_nominal) {
    return fmt::format("wire {} mm, nominal {} mm ({})", fixed(cable.wire->value_mm, 2),
                       plain(cable.wire_nominal->nominal_mm), to_string(cable.wire->evidence));
  }
  return estimate_text(std::string(to_string(cable.armour)).c_str(), cable.wire);
}

}  // namespace

std::string clean(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const std::size_t hidden = hidden_length(text.substr(i));
    if (hidden > 0) {
      out += '?';
      i += hidden - 1;
    } else {
      out += (byte < 0x20 || byte == 0x7f) ? ' ' : text[i];
    }
  }
  return out;
}

std::string capitals(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return out;
}

std::string tag_words(const std::string& tag) { return tag.empty() ? "(no tag)" : tag; }

std::string part_words(const sheet::Part& part) {
  return part.name + (part.note.empty() ? "" : ": ") + part.note;
}

std::string cable_words(const cable::Cable& cable) {
  std::string text = estimate_text("sheath", cable.sheath_od);
  if (cable.armour != cable::ArmourKind::none) {
    text += ", " + estimate_text("bedding", cable.bedding);
  }
  return text + ", " + wire_text(cable);
}

namespace {

/// `clearance for M20, 20 to 20.5 mm`.
std::string hole_to_make(const gland::Gland* gland) {
  if (gland == nullptr) return "clearance for the gland's thread";
  const entry::Thread& thread = gland->entry_thread;
  std::string text = "clearance for " + entry::to_text(thread);
  if (thread.kind == entry::ThreadKind::metric) {
    text += ", " + plain(thread.size) + " to " + plain(thread.size + entry::k_clearance_mm) + " mm";
  }
  return text;
}

}  // namespace

std::string entry_words(const entry::Entry& entry, const gland::Gland* gland) {
  if (!entry.thread && !entry.to_suit) return "not given: no thread is compared (--entry M20)";
  std::string text =
      entry.thread ? entry::to_text(*entry.thread) : "hole to be made: " + hole_to_make(gland);
  if (entry.hole)
    text += *entry.hole == entry::Hole::threaded ? ", threaded hole" : ", clearance hole";
  if (entry.wall_mm) text += ", wall " + plain(*entry.wall_mm) + " mm";
  for (const entry::Adaptor& adaptor : entry.adaptors) {
    text +=
        ", adaptor " + entry::to_text(adaptor.a) + " to " + entry::to_text(adaptor.b) + " at hand";
  }
  return text;
}

namespace {

/// An edition that asks less than the strictest rules is a choice of whoever answers for the site.
std::string rules_words(const area::Area& area) {
  if (area.rules == area::RuleSet::strict || area.zone == area::Zone::none) return {};
  return "judged by " + std::string(to_string(area.rules));
}

}  // namespace

std::string place_words(const area::Area& area) {
  std::string asked;
  const auto add = [&](const std::string& words) { asked += (asked.empty() ? "" : ", ") + words; };
  if (area.zone == area::Zone::none) add("plain room (zone none)");
  const auto add_word = [&](const char* before, const auto& value) {
    if (value) add(before + std::string(to_string(*value)));
  };
  if (area.protection != area::Protection::none) add_word("enclosure ", area.protection);
  if (area.zone != area::Zone::none) add_word("zone ", area.zone);
  add_word("level ", area.level);
  add_word("", area.gas_group);
  add_word("", area.dust_group);
  const std::string ip = area::to_text(area.ip);
  if (!ip.empty()) add(ip == "00" ? "no IP asked" : "IP" + ip);
  if (area.volume_cm3) add(plain(*area.volume_cm3, 0) + " cm3");
  if (area.ambient_min_degc && area.ambient_max_degc) {
    add(plain(*area.ambient_min_degc) + " to " + plain(*area.ambient_max_degc) + " C");
  }
  if (const std::string rules = rules_words(area); !rules.empty() && !asked.empty()) {
    return rules + ": " + asked;
  }
  return asked;
}

std::string plate_words(const area::Area& area) {
  std::string text;
  const auto add = [&](const std::string& words) { text += (text.empty() ? "" : ", ") + words; };
  if (area.zone && *area.zone != area::Zone::none)
    add("zone " + std::string(to_string(*area.zone)));
  std::string mark;
  if (area.protection && *area.protection != area::Protection::none) {
    mark = "Ex " + std::string(to_string(*area.protection));
  }
  for (const std::string& group :
       {area.gas_group ? std::string(to_string(*area.gas_group)) : std::string(),
        area.dust_group ? std::string(to_string(*area.dust_group)) : std::string()}) {
    if (!group.empty()) mark += (mark.empty() ? "" : " ") + group;
  }
  if (!mark.empty()) add(mark);
  if (!area.ip.empty()) add("IP" + area::to_text(area.ip));
  if (std::string rules = rules_words(area); !rules.empty() && !text.empty()) add(rules);
  return text;
}

bool lacks_marks(const sheet::Sheet& sheet) {
  if (!sheet.plan) return false;
  const strip::Marks& marks = sheet.plan->marks;
  if (sheet.job->cable.armour == cable::ArmourKind::none) return !marks.sheath_cut_mm;
  return !marks.armour_cut_mm || !marks.sheath_cut_mm || !marks.bedding_cut_mm;
}

std::vector<Help> help_words(const sheet::Sheet& sheet) {
  if (sheet.not_ready.empty()) return {};
  if (!sheet.fits_instead.empty()) return {{"Instead", sheet.fits_instead + " fits"}};
  if (sheet.fit && sheet.fit->verdict == Verdict::fits) return {};
  std::vector<Help> list;
  const bool measure = !sheet.advice.measure_says.empty();
  if (measure) list.push_back({"Measure", sheet.advice.measure_says});
  const bool order = !sheet.advice.order_says.empty();
  if (order && (!sheet.plan || !measure)) list.push_back({"Order", sheet.advice.order_says});
  return list;
}

std::string gate_words(const fit::Gate& gate, int decimals) {
  if (gate.low_mm && gate.high_mm) {
    return fixed(*gate.low_mm, decimals) + " to " + fixed(*gate.high_mm, decimals) + " mm";
  }
  if (gate.high_mm) return "at most " + fixed(*gate.high_mm, decimals) + " mm";
  if (gate.low_mm) return "at least " + fixed(*gate.low_mm, decimals) + " mm";
  return "any";
}

std::optional<double> depths_from_mm(const sheet::Sheet& sheet) {
  if (!sheet.depths_from_mm || sheet.gates.wire.empty()) return std::nullopt;
  const auto& least_mm = sheet.gates.wire.front().least_between_mm;
  if (least_mm && *sheet.depths_from_mm <= *least_mm) return std::nullopt;
  return sheet.depths_from_mm;
}

std::string_view piece_words(cable::ArmourKind armour) {
  switch (armour) {
    case cable::ArmourKind::braid:
      return "wire of braid";
    case cable::ArmourKind::tape:
      return "tape thickness";
    case cable::ArmourKind::strip:
      return "strip thickness";
    case cable::ArmourKind::wire:
    case cable::ArmourKind::none:
      break;
  }
  return "one wire";
}

std::vector<GateLine> gate_lines(const sheet::Sheet& sheet) {
  const fit::Gates& gates = sheet.gates;
  std::vector<GateLine> lines;
  const auto apart = [](const std::optional<double>& most_mm) {
    return most_mm ? "its two readings at most " + fixed(*most_mm, 1) + " mm apart" : std::string();
  };
  lines.push_back({"sheath", gate_words(gates.sheath, 1), apart(gates.sheath_apart_mm)});
  if (sheet.job->cable.armour == cable::ArmourKind::none) return lines;
  lines.push_back({"bedding", gate_words(gates.bedding, 1), apart(gates.bedding_apart_mm)});
  for (std::size_t i = 0; i < gates.wire.size(); ++i) {
    const fit::WireGate& wire = gates.wire[i];
    GateLine line{i == 0 ? std::string(piece_words(sheet.job->cable.armour)) : std::string(),
                  gate_words(wire.gate, 2),
                  {}};
    if (wire.least_between_mm) {
      line.also = "then sheath less bedding at least " + fixed(*wire.least_between_mm, 1) +
                  (wire.most_between_mm ? ", at most " + fixed(*wire.most_between_mm, 1) : "") +
                  " mm";
    }
    if (const auto from = depths_from_mm(sheet); from && i == 0) {
      line.also += "; under " + plain(*from, 2) + " cut by eye, not to these depths";
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

std::string metals_words(const fit::GlandFit& fit) {
  constexpr std::string_view k_caution = "caution: ";
  const fit::Check* const metals = fit.find(fit::CheckName::metals);
  if (metals == nullptr || metals->verdict != Verdict::fits) return {};
  if (!metals->says.starts_with(k_caution)) return {};
  const std::string says = metals->says.substr(k_caution.size());
  return says.substr(0, says.find(',')) + ": see the sheet";
}

std::string missing_words(const std::vector<fit::Lack>& lacks) {
  std::string text;
  for (auto lack = lacks.begin(); lack != lacks.end(); ++lack) {
    const bool again = std::any_of(lacks.begin(), lack, [&](const fit::Lack& before) {
      return before.key == lack->key && !before.key.empty();
    });
    // "sheath measured, it may be outside" says that the sheath is missing.
    const bool said = std::any_of(lacks.begin(), lacks.end(), [&](const fit::Lack& other) {
      return other.fact.starts_with(lack->fact + " ");
    });
    if (again || said) continue;
    text += text.empty() ? "" : "; ";
    constexpr std::string_view k_by_book = " measured, it may be outside";
    if (lack->key == "ip") {
      text += "which IP the box needs, such as IP54";
    } else if (lack->key == "washer_mm") {
      text += "which sealing washer, if any";
    } else if (lack->fact.ends_with(k_by_book)) {
      text += lack->fact.substr(0, lack->fact.size() - k_by_book.size()) +
              ", which by the book may not suit the gland";
    } else {
      text += lack->fact.substr(0, lack->fact.find(" ("));
    }
  }
  return text;
}

std::string_view state_words(sheet::State state) {
  switch (state) {
    case sheet::State::cut:
      return "CUT";
    case sheet::State::measure:
      return "MEASURE FIRST";
    case sheet::State::not_yet:
      return "NOT YET";
    case sheet::State::none:
      return "NONE";
  }
  return "";
}

std::string stop_words(const sheet::Sheet& sheet) {
  switch (sheet.state) {
    case sheet::State::cut:
      return {};
    case sheet::State::measure:
      return "measure first";
    case sheet::State::not_yet:
      return "not yet: do not cut";
    case sheet::State::none:
      break;
  }
  return sheet.fits_instead.empty() ? "no gland fits: do not cut"
                                    : "this gland does not fit: do not cut";
}

}  // namespace cutback::print
