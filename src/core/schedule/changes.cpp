#include "cutback/schedule/changes.hpp"

#include <algorithm>
#include <deque>
#include <map>
#include <tuple>

namespace cutback::schedule {
namespace {

using Values = std::vector<std::pair<std::string, std::string>>;

const std::string* find(const Values& values, std::string_view key) {
  const auto found = std::find_if(values.begin(), values.end(),
                                  [&](const auto& value) { return value.first == key; });
  return found != values.end() ? &found->second : nullptr;
}

std::string differences(const Values& before, const Values& after) {
  std::string text;
  const auto say = [&](std::string_view key, const std::string* was, const std::string* is) {
    const auto shown = [](const std::string* value) { return value != nullptr ? *value : "none"; };
    text += (text.empty() ? "" : "; ") + std::string(key) + " " + shown(was) + " -> " + shown(is);
  };
  for (const auto& [key, value] : after) {
    const std::string* const was = find(before, key);
    if (was == nullptr || *was != value) say(key, was, &value);
  }
  for (const auto& [key, value] : before) {
    if (find(after, key) == nullptr) say(key, &value, nullptr);
  }
  return text;
}

}  // namespace

std::string_view to_string(EndChange::Kind kind) {
  switch (kind) {
    case EndChange::Kind::added:
      return "added";
    case EndChange::Kind::removed:
      return "removed";
    case EndChange::Kind::changed:
      return "changed";
  }
  return "";
}

std::vector<EndChange> changes_between(std::span<const EndRecord> before,
                                       std::span<const EndRecord> after) {
  std::map<std::pair<std::string_view, std::string_view>, std::deque<const EndRecord*>> old;
  for (const EndRecord& end : before) old[{end.tag, end.end}].push_back(&end);
  std::vector<EndChange> changes;
  for (const EndRecord& end : after) {
    const auto known = old.find({end.tag, end.end});
    if (known == old.end() || known->second.empty()) {
      changes.push_back({EndChange::Kind::added, nullptr, &end, {}});
      continue;
    }
    const EndRecord& was = *known->second.front();
    known->second.pop_front();
    std::string what = differences(was.values, end.values);
    if (what.empty() && was.part == end.part && was.verdict == end.verdict) continue;
    // As when another row is the first to speak of a hazardous place.
    if (what.empty()) what = "nothing of its own";
    changes.push_back({EndChange::Kind::changed, &was, &end, std::move(what)});
  }
  for (const EndRecord& end : before) {
    const auto& left = old[{end.tag, end.end}];
    if (std::find(left.begin(), left.end(), &end) == left.end()) continue;
    changes.push_back({EndChange::Kind::removed, &end, nullptr, {}});
  }
  return changes;
}

void compare_takeoff(Takeoff& takeoff, const Takeoff& before) {
  const auto key = [](const TakeoffLine& line) {
    return std::tie(line.group, line.part, line.description, line.supplier);
  };
  std::vector<const TakeoffLine*> gone;
  for (TakeoffLine& line : takeoff.lines) line.old_quantity = 0;
  for (const TakeoffLine& was : before.lines) {
    const auto same = std::find_if(takeoff.lines.begin(), takeoff.lines.end(),
                                   [&](const TakeoffLine& line) { return key(line) == key(was); });
    if (same != takeoff.lines.end()) {
      same->old_quantity = was.quantity;
    } else {
      gone.push_back(&was);
    }
  }
  for (const TakeoffLine* const was : gone) {
    TakeoffLine& line = takeoff.lines.emplace_back();
    line.group = was->group;
    line.part = was->part;
    line.description = was->description;
    line.supplier = was->supplier;
    line.old_quantity = was->quantity;
  }
}

}  // namespace cutback::schedule
