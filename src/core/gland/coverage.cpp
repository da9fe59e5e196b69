#include "cutback/gland/coverage.hpp"

#include <algorithm>
#include <array>
#include <tuple>

#include "cutback/compare.hpp"

namespace cutback::gland {
namespace {

using cable::ArmourKind;

bool takes_compression(const Gland& gland) { return sealing_of(gland) != Sealing::barrier; }
bool takes_barrier(const Gland& gland) { return sealing_of(gland) != Sealing::compression; }
bool armoured(const Gland& gland) { return gland.armour != ArmourKind::none; }
bool any(const Gland&) { return true; }

Span outer(const Gland& gland) {
  return {gland.outer.low_mm.value_or(0.0), gland.outer.high_mm.value_or(0.0)};
}

/// The union of the outer seals; ranges that touch become one.
std::vector<Span> covered(const std::vector<const Gland*>& glands) {
  std::vector<Span> spans;
  for (const Gland* gland : glands) spans.push_back(outer(*gland));
  std::sort(spans.begin(), spans.end(),
            [](const Span& a, const Span& b) { return a.low_mm < b.low_mm; });
  std::vector<Span> merged;
  for (const Span& span : spans) {
    if (!merged.empty() && at_most(span.low_mm, merged.back().high_mm)) {
      merged.back().high_mm = std::max(merged.back().high_mm, span.high_mm);
    } else {
      merged.push_back(span);
    }
  }
  return merged;
}

std::vector<Span> between(const std::vector<Span>& spans) {
  std::vector<Span> gaps;
  for (std::size_t i = 1; i < spans.size(); ++i) {
    gaps.push_back({spans[i - 1].high_mm, spans[i].low_mm});
  }
  return gaps;
}

std::vector<Group> groups_of(std::span<const Gland> glands) {
  std::vector<Group> groups;
  for (const ArmourKind armour : {ArmourKind::wire, ArmourKind::braid, ArmourKind::tape,
                                  ArmourKind::strip, ArmourKind::none}) {
    for (const Sealing sealing : {Sealing::compression, Sealing::barrier}) {
      Group group{.armour = armour, .sealing = sealing, .glands = {}, .covered = {}, .gaps = {}};
      for (const Gland& gland : glands) {
        const bool seals =
            sealing == Sealing::barrier ? takes_barrier(gland) : takes_compression(gland);
        if (gland.armour == armour && seals) group.glands.push_back(&gland);
      }
      if (group.glands.empty()) continue;
      std::sort(group.glands.begin(), group.glands.end(), [](const Gland* a, const Gland* b) {
        return std::tuple(outer(*a).low_mm, outer(*a).high_mm, std::string_view(a->part)) <
               std::tuple(outer(*b).low_mm, outer(*b).high_mm, std::string_view(b->part));
      });
      group.covered = covered(group.glands);
      group.gaps = between(group.covered);
      groups.push_back(std::move(group));
    }
  }
  return groups;
}

std::vector<EntryGroup> entries_of(std::span<const Gland> glands) {
  std::vector<const Gland*> sorted;
  for (const Gland& gland : glands) sorted.push_back(&gland);
  std::stable_sort(sorted.begin(), sorted.end(), [](const Gland* a, const Gland* b) {
    const entry::Thread& s = a->entry_thread;
    const entry::Thread& t = b->entry_thread;
    return std::tuple(s.kind, s.size, s.pitch_mm) < std::tuple(t.kind, t.size, t.pitch_mm);
  });
  std::vector<EntryGroup> entries;
  for (auto first = sorted.begin(); first != sorted.end();) {
    const entry::Thread thread = (*first)->entry_thread;
    const auto last = std::find_if(
        first, sorted.end(), [&](const Gland* gland) { return !(gland->entry_thread == thread); });
    const std::vector<const Gland*> same(first, last);
    entries.push_back({.thread = thread, .glands = same.size(), .covered = covered(same)});
    first = last;
  }
  return entries;
}

struct Question {
  std::string_view column;
  bool (*applies)(const Gland&);
  bool (*stated)(const Gland&);
};

/// Columns whose absence leaves a check or a cut without a figure.
constexpr std::array<Question, 16> k_questions{{
    {"entry_length_mm", any, [](const Gland& g) { return g.entry_length_mm.has_value(); }},
    {"bore_mm", armoured, [](const Gland& g) { return g.bore_mm.has_value(); }},
    {"exposed_armour_mm", armoured, [](const Gland& g) { return g.exposed_armour_mm.has_value(); }},
    {"armour_stop_mm", armoured, [](const Gland& g) { return g.armour_stop_mm.has_value(); }},
    {"bedding_end_mm", takes_barrier, [](const Gland& g) { return g.bedding_end_mm.has_value(); }},
    {"max_cores", takes_barrier, [](const Gland& g) { return g.max_cores.has_value(); }},
    {"max_bundle_mm", takes_barrier, [](const Gland& g) { return g.max_bundle_mm.has_value(); }},
    {"protection", any, [](const Gland& g) { return !g.protection.empty(); }},
    {"level", any, [](const Gland& g) { return !g.level.empty(); }},
    {"gas_group", any, [](const Gland& g) { return g.gas_group.has_value(); }},
    {"ip", any, [](const Gland& g) { return !g.ip.empty(); }},
    {"temp_min_c", any, [](const Gland& g) { return g.temp_min_degc.has_value(); }},
    {"temp_max_c", any, [](const Gland& g) { return g.temp_max_degc.has_value(); }},
    {"fault_ka", armoured, [](const Gland& g) { return g.fault_ka.has_value(); }},
    {"price", any, [](const Gland& g) { return g.price.has_value(); }},
    {"stock", any, [](const Gland& g) { return g.stock.has_value(); }},
}};

std::vector<NotStated> not_stated_of(std::span<const Gland> glands) {
  std::vector<NotStated> result;
  for (const Question& question : k_questions) {
    NotStated count{.column = question.column, .blank = 0, .applies = 0};
    for (const Gland& gland : glands) {
      if (!question.applies(gland)) continue;
      ++count.applies;
      if (!question.stated(gland)) ++count.blank;
    }
    if (count.blank > 0) result.push_back(count);
  }
  return result;
}

}  // namespace

Coverage coverage(std::span<const Gland> glands) {
  return {.groups = groups_of(glands),
          .entries = entries_of(glands),
          .not_stated = not_stated_of(glands)};
}

}  // namespace cutback::gland
