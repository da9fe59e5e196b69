#include "cutback/io/profile_file.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"
#include "io/json_strict.hpp"

namespace cutback::io {
namespace {

using nlohmann::ordered_json;

constexpr std::array<std::string_view, 14> k_keys{
    "glands",          "supplier",         "prefer",     "units",
    "step_mm",         "mpe_mm",           "zero_mm",    "rules",
    "slack_mm",        "adaptor",          "adaptor_mm", "adaptor_thread_mm",
    "adaptor_bore_mm", "compound_pack_cm3"};
constexpr std::size_t k_not_fields = 4;  // the first of them
constexpr std::array<std::string_view, 3> k_prefer{"price", "margin", "stock"};
constexpr std::array<std::string_view, 2> k_units{"mm", "in"};

/// The member of a key that is no field of an end; null for one that is.
std::optional<std::string>* word_of(Profile& profile, std::string_view key) {
  if (key == "glands") return &profile.glands;
  if (key == "supplier") return &profile.supplier;
  if (key == "prefer") return &profile.prefer;
  return key == "units" ? &profile.units : nullptr;
}

/// The words of such a key; none where any text may stand.
std::span<const std::string_view> choices_of(std::string_view key) {
  if (key == "prefer") return k_prefer;
  return key == "units" ? std::span<const std::string_view>(k_units)
                        : std::span<const std::string_view>{};
}

}  // namespace

std::span<const std::string_view> profile_keys() { return k_keys; }
std::span<const std::string_view> profile_fields() { return profile_keys().subspan(k_not_fields); }

std::optional<std::string> text_in_profile(const Profile& profile, std::string_view key) {
  if (key == "glands") return profile.glands;
  if (key == "supplier") return profile.supplier;
  if (key == "prefer") return profile.prefer;
  if (key == "units") return profile.units;
  return job::text_of(profile.end, job::field_named(key));
}

void set_in_profile(Profile& profile, std::string_view key, std::string_view value,
                    std::string_view where) {
  if (std::find(k_keys.begin(), k_keys.end(), key) == k_keys.end()) {
    throw InputError(make_fault(ErrorCode::unknown_name, "a profile has no such key", where, key,
                                job::either_of(k_keys), did_you_mean(key, k_keys)));
  }
  if (auto* const word = word_of(profile, key)) {
    const auto choices = choices_of(key);
    const bool known =
        choices.empty() || std::find(choices.begin(), choices.end(), value) != choices.end();
    if (!value.empty() && !known) {
      throw InputError(make_fault(ErrorCode::bad_value, "not a choice", where, value,
                                  job::either_of(choices), did_you_mean(value, choices)));
    }
    *word = value.empty() ? std::nullopt : std::optional(std::string(value));
    return;
  }
  const job::Field& field = job::field_named(key);
  if (value.empty()) {
    job::take_away(profile.end, field);
    return;
  }
  const written::Taken taken = written::take(written::asked_of(field), value, where);
  auto faults = job::set_from_text(profile.end, field, taken.text, where);
  if (!faults.empty()) throw InputError(std::move(faults));
}

Profile read_profile(std::string_view text, const std::string& name) {
  const ordered_json root = parse_json(text, name);
  if (!root.is_object()) {
    throw InputError(make_fault(ErrorCode::bad_value, "a profile is one object", name, "",
                                "{\"glands\": \"stock.csv\", \"step_mm\": 0.02}"));
  }
  Profile profile;
  std::vector<Fault> faults;
  for (const auto& item : root.items()) {
    const std::string where = name + ": " + item.key();
    const std::string value =
        item.value().is_string() ? item.value().get<std::string>() : item.value().dump();
    try {
      set_in_profile(profile, item.key(), value, where);
    } catch (const InputError& error) {
      faults.insert(faults.end(), error.faults().begin(), error.faults().end());
    }
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  return profile;
}

Profile load_profile(const std::string& path) {
  const WholeFile file(path);
  return read_profile(file.text(), path);
}

std::vector<std::string> lists_of(const Profile& profile) {
  std::vector<std::string> paths;
  for (std::string_view rest = profile.glands ? *profile.glands : std::string_view{};
       !rest.empty();) {
    const std::size_t end = std::min(rest.find(';'), rest.size());
    const std::string_view path = trimmed(rest.substr(0, end));
    if (!path.empty()) paths.emplace_back(path);
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return paths;
}

std::string write_profile(const Profile& profile) {
  ordered_json root = ordered_json::object();
  for (const std::string_view key : k_keys) {
    if (auto text = text_in_profile(profile, key)) root[std::string(key)] = *std::move(text);
  }
  return root.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace cutback::io
