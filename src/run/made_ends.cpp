#include "run/made_ends.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string_view>
#include <utility>

#include "cutback/nearest.hpp"
#include "cutback/text.hpp"
#include "run/card_end.hpp"

namespace cutback::run {
namespace {

using schedule::MadeEnd;

/// An end of the schedule whose tag stands in the register.
struct Planned {
  std::string end;    ///< as the results call it
  std::string place;  ///< where it lies; may be empty
  std::string words;  ///< as its card calls it
  friend auto operator<=>(const Planned&, const Planned&) = default;
};
using PlannedEnds = std::map<std::string, std::set<Planned>, std::less<>>;  ///< by tag

/// @param tags  of the register, in small letters
PlannedEnds planned_of(const Schedule& schedule, const std::set<std::string>& tags,
                       std::vector<Nearest>& missing) {
  PlannedEnds planned;
  for (const ScheduleTable& table : schedule.tables) {
    const schedule::Layout& layout = table.file->layout();
    io::RowBlock block;
    while (table.file->read(block)) {
      table.file->finish(block);
      for (std::size_t i = 0; i < block.rows; ++i) {
        const auto& cells = block.records[i].fields;
        const std::string_view tag = schedule::tag_of(layout, cells);
        for (Nearest& each : missing) each.offer(tag);
        if (!tags.contains(small_letters(tag))) continue;
        for (const schedule::Side side : layout.ends()) {
          planned[std::string(tag)].insert({std::string(schedule::end_name(layout, cells, side)),
                                            place_of(layout, cells, side),
                                            end_words(layout, cells, side)});
        }
      }
    }
  }
  return planned;
}

bool same(std::string_view a, std::string_view b) { return small_letters(a) == small_letters(b); }

/// The tag of the schedule that a row means: the one that is written so, else the only one that is
/// in another case.
PlannedEnds::const_iterator find_tag(const PlannedEnds& planned, std::string_view tag) {
  if (const auto exact = planned.find(tag); exact != planned.end()) return exact;
  auto found = planned.end();
  for (auto at = planned.begin(); at != planned.end(); ++at) {
    if (!same(at->first, tag)) continue;
    if (found != planned.end()) return planned.end();
    found = at;
  }
  return found;
}

/// The end that a row means; null where none is, or two are.
const Planned* find_end(const std::set<Planned>& ends, std::string_view name) {
  const Planned* found = nullptr;
  for (const Planned& each : ends) {
    if (same(each.end, name) || same(each.words, name)) return &each;
  }
  for (const Planned& each : ends) {
    if (each.place.empty() || !same(each.place, name)) continue;
    if (found != nullptr) return nullptr;
    found = &each;
  }
  return found;
}

struct Layer {
  std::string_view column;
  const char* name;
  std::optional<measure::Readings> MadeEnd::*readings;
};
constexpr std::array<Layer, 3> k_layers{{{"sheath_od_mm", "sheath", &MadeEnd::sheath_od},
                                         {"bedding_mm", "bedding", &MadeEnd::bedding},
                                         {"armour_mm", "wire", &MadeEnd::armour}}};

void put_row(const io::MadeRow& row, MadeEnd& end) {
  for (const Layer& layer : k_layers) {
    const std::string& text = row.cell(layer.column);
    if (!text.empty()) end.*layer.readings = measure::Readings(text, layer.column);
  }
  if (row.cell("part").empty()) return;
  end.part = row.cell("part");
  end.words = "made with " + end.part;
  if (!row.cell("made_at").empty()) end.words += " on " + row.cell("made_at");
  if (!row.cell("by").empty()) end.words += " by " + row.cell("by");
}

/// What the other end of the cable tells of a diameter that was not measured at this one.
void put_elsewhere(const MadeEnd& other, const std::string& other_name, MadeEnd& end) {
  for (const Layer& layer : k_layers) {
    const auto& readings = other.*layer.readings;
    if (!readings || end.*layer.readings) continue;
    if (readings->places.size() > 1) {
      end.*layer.readings = readings;
      end.remarks.push_back(std::string(layer.name) + ": measured towards the other end (" +
                            other_name + "), at " + std::to_string(readings->places.size()) +
                            " places");
    } else {
      end.remarks.push_back(std::string(layer.name) + ": at the other end (" + other_name +
                            ") it reads " + readings->text +
                            "; one place does not show how a cable varies, so measure here");
    }
  }
}

}  // namespace

MadeJob made_of(const io::MadeFile& file, const std::string& name, const std::string& tag,
                const std::string& end) {
  MadeJob job;
  MadeEnd here;
  bool found = false;
  std::map<std::string, MadeEnd> others;
  Nearest nearest(tag);
  for (const io::MadeRow& row : file.rows) {
    nearest.offer(row.cell("tag"));
    if (!same(row.cell("tag"), tag)) continue;
    job.lines.push_back(row.line);
    const bool own = same(row.cell("end"), end);
    found = found || own;
    put_row(row, own ? here : others[row.cell("end")]);
  }
  if (!found) {
    job.says = name + ": it does not say anything of " + tag + (end.empty() ? "" : ", " + end);
    std::string names;
    for (const auto& [other, made] : others) names += (names.empty() ? "" : ", ") + other;
    const std::string near = nearest.best();
    if (!names.empty()) {
      job.says += "; of this cable it has the end " + names;
    } else if (!near.empty()) {
      job.says += "; did you mean \"" + near + "\"?";
    }
  }
  // Of a tag with several other ends nobody knows which of them is of this cable.
  if (others.size() == 1) put_elsewhere(others.begin()->second, others.begin()->first, here);
  if (here.is_finished() || here.is_measured() || !here.remarks.empty()) job.end = std::move(here);
  return job;
}

MadeSchedule match_made(const io::MadeFile& file, const std::string& name,
                        const Schedule& schedule) {
  // Of a long register nothing is guessed.
  constexpr std::size_t k_guessed = 16;
  std::set<std::string> tags;
  std::set<std::string> small;
  for (const io::MadeRow& row : file.rows) {
    tags.insert(row.cell("tag"));
    small.insert(small_letters(row.cell("tag")));
  }
  std::vector<Nearest> nearest;
  if (tags.size() <= k_guessed) {
    for (const std::string& tag : tags) nearest.emplace_back(tag);
  }
  const PlannedEnds planned = planned_of(schedule, small, nearest);
  MadeSchedule made;
  std::map<std::pair<std::string, Planned>, MadeEnd> own;
  for (const io::MadeRow& row : file.rows) {
    const std::string& tag = row.cell("tag");
    const std::string& end = row.cell("end");
    const auto known = find_tag(planned, tag);
    if (known == planned.end()) {
      std::string near;
      const auto at = std::distance(tags.begin(), tags.find(tag));
      if (!nearest.empty()) near = nearest[static_cast<std::size_t>(at)].best();
      made.not_found.push_back(
          {row.line, name + ", line " + std::to_string(row.line) +
                         ": no cable of the schedule has the tag " + tag +
                         (near.empty() ? "" : "; did you mean \"" + near + "\"?")});
      continue;
    }
    const Planned* const found = find_end(known->second, end);
    if (found != nullptr) {
      put_row(row, own[{known->first, *found}]);
      made.ends_of_rows[row.line] = found->end;
      continue;
    }
    std::string names;
    for (const Planned& each : known->second) names += (names.empty() ? "" : ", ") + each.words;
    made.not_found.push_back({row.line, name + ", line " + std::to_string(row.line) +
                                            ": the cable " + tag + " has no end " + end +
                                            (names.empty() ? "" : "; it has " + names)});
  }
  for (const auto& [tag, ends] : planned) {
    for (const Planned& end : ends) {
      MadeEnd here;
      if (const auto at = own.find({tag, end}); at != own.end()) here = at->second;
      // Of a tag that stands on several rows nobody knows which ends are of one cable.
      if (ends.size() == 2) {
        const Planned& other = end == *ends.begin() ? *ends.rbegin() : *ends.begin();
        if (const auto at = own.find({tag, other}); at != own.end()) {
          put_elsewhere(at->second, other.words, here);
        }
      }
      if (here.is_finished() || here.is_measured() || !here.remarks.empty()) {
        made.ends.at(tag, end.end) = std::move(here);
      }
    }
  }
  return made;
}

}  // namespace cutback::run
