#include "cutback/io/job_file.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <vector>

#include "cutback/bounds.hpp"
#include "cutback/hidden.hpp"
#include "cutback/io/files.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"
#include "io/json_strict.hpp"

namespace cutback::io {
namespace {

using job::CoreInput;
using job::FieldOf;
using job::JobInput;
using nlohmann::ordered_json;

constexpr std::array<std::string_view, 5> k_sections{"cable", "entry", "area", "tails", "fault"};

/// Reads a job and gathers faults, each with the JSON path in the named file.
class Reader {
 public:
  explicit Reader(const std::string& name) : name_(name) {}

  void read(const ordered_json& root, JobInput& job) {
    if (!root.is_object()) {
      wrong_type(root, "the file", "an object with the sections cable, entry, area, tails, fault");
      return;
    }
    for (const auto& item : root.items()) {
      const bool section =
          std::find(k_sections.begin(), k_sections.end(), item.key()) != k_sections.end();
      if (section) {
        read_section(item.key(), item.value(), job);
      } else if (!read_member(job::fields(), "", item.key(), item.value(), item.key(), job)) {
        std::vector<std::string_view> keys = keys_of(job::fields(), "");
        keys.insert(keys.end(), k_sections.begin(), k_sections.end());
        unknown(item.key(), item.key(), keys);
      }
    }
  }

  [[nodiscard]] FaultList& faults() { return faults_; }

 private:
  void read_section(const std::string& section, const ordered_json& value, JobInput& job) {
    if (!value.is_object()) {
      wrong_type(value, section, "an object");
      return;
    }
    for (const auto& item : value.items()) {
      const std::string path = section + "." + item.key();
      if (path == "tails.cores") {
        read_cores(item.value(), job);
      } else if (!read_member(job::fields(), section, item.key(), item.value(), path, job)) {
        std::vector<std::string_view> keys = keys_of(job::fields(), section);
        if (section == "tails") keys.push_back("cores");
        unknown(path, item.key(), keys);
      }
    }
  }

  void read_cores(const ordered_json& value, JobInput& job) {
    if (!value.is_array()) {
      wrong_type(value, "tails.cores", "a list of objects");
      return;
    }
    if (value.size() > bounds::k_cores.most) {
      faults_.add(beyond(bounds::k_cores, name_ + ": tails.cores",
                         std::to_string(value.size()) + " cores"));
      return;
    }
    for (std::size_t i = 0; i < value.size(); ++i) {
      const std::string path = "tails.cores[" + std::to_string(i) + "]";
      if (!value[i].is_object()) {
        wrong_type(value[i], path, "an object");
        continue;
      }
      CoreInput core;
      for (const auto& item : value[i].items()) {
        const std::string key_path = path + "." + item.key();
        if (!read_member(job::core_fields(), "tails.cores", item.key(), item.value(), key_path,
                         core)) {
          unknown(key_path, item.key(), keys_of(job::core_fields(), "tails.cores"));
        }
      }
      job.core_list.push_back(std::move(core));
    }
  }

  /// @return false when the table has no such key
  template <class Record>
  bool read_member(std::span<const FieldOf<Record>> table, std::string_view section,
                   const std::string& key, const ordered_json& value, const std::string& path,
                   Record& record) {
    for (const FieldOf<Record>& field : table) {
      if (field.section != section || field.key != key) continue;
      const std::string where = name_ + ": " + path;
      std::vector<Fault> faults;
      if (value.is_number()) {
        faults = set_from_number(record, field, value.get<double>(), where);
      } else if (value.is_string() && is_number(field)) {
        wrong_type(value, path, allowed_text(field) + ", without quotes");
      } else if (value.is_string()) {
        faults = set_from_text(record, field, value.get<std::string>(), where);
      } else if (value.is_boolean() && field.kind == job::FieldKind::yes_no) {
        faults = set_from_text(record, field, value.get<bool>() ? "yes" : "no", where);
      } else {
        wrong_type(value, path, allowed_text(field));
      }
      faults_.add(faults);
      return true;
    }
    return false;
  }

  template <class Record>
  static bool is_number(const FieldOf<Record>& field) {
    return field.kind == job::FieldKind::number || field.kind == job::FieldKind::whole;
  }

  template <class Record>
  static std::vector<std::string_view> keys_of(std::span<const FieldOf<Record>> table,
                                               std::string_view section) {
    std::vector<std::string_view> keys;
    for (const FieldOf<Record>& field : table) {
      if (field.section == section) keys.push_back(field.key);
    }
    return keys;
  }

  void unknown(const std::string& path, const std::string& key,
               const std::vector<std::string_view>& keys) {
    std::string hint = did_you_mean(key, keys);
    if (hint.empty()) {
      hint = "known here:";
      for (const std::string_view known : keys) hint += " " + std::string(known);
    }
    faults_.add({.code = ErrorCode::unknown_name,
                 .what = "unknown key",
                 .where = name_ + ": " + path,
                 .given = key,
                 .allowed = {},
                 .hint = hint});
  }

  void wrong_type(const ordered_json& value, const std::string& path, const std::string& allowed) {
    faults_.add({.code = ErrorCode::bad_value,
                 .what = "wrong kind of value",
                 .where = name_ + ": " + path,
                 .given = std::string(json_kind(value)),
                 .allowed = allowed,
                 .hint = {}});
  }

  const std::string& name_;
  FaultList faults_;
};

template <class Record>
void write_member(ordered_json& object, const FieldOf<Record>& field, const Record& record) {
  const std::string key(field.key);
  if (const auto* number = std::get_if<std::optional<double> Record::*>(&field.member)) {
    const auto& value = record.**number;
    if (!value) return;
    constexpr double k_exact = 9007199254740992.0;  // integers up to 2^53 are doubles
    if (*value == std::floor(*value) && std::abs(*value) < k_exact) {
      object[key] = static_cast<std::int64_t>(*value);
    } else {
      object[key] = *value;
    }
  } else if (auto text = text_of(record, field)) {
    object[key] = std::move(*text);
  }
}

}  // namespace

JobInput read_job(std::string_view text, const std::string& name) {
  const ordered_json root = parse_json(text, name);
  JobInput job;
  Reader reader(name);
  reader.read(root, job);
  reader.faults().raise(name);
  return job;
}

JobInput load_job(const std::string& path) {
  const WholeFile file(input_place(path), bounds::k_job_bytes);
  return read_job(file.text(), path);
}

std::string write_job(const JobInput& job, int indent) {
  ordered_json root = ordered_json::object();
  for (const job::Field& field : job::fields()) {
    if (field.section.empty()) write_member(root, field, job);
  }
  for (const std::string_view section : k_sections) {
    ordered_json object = ordered_json::object();
    for (const job::Field& field : job::fields()) {
      if (field.section == section) write_member(object, field, job);
    }
    if (section == "tails" && !job.core_list.empty()) {
      ordered_json cores = ordered_json::array();
      for (const CoreInput& core : job.core_list) {
        ordered_json item = ordered_json::object();
        for (const job::CoreField& field : job::core_fields()) write_member(item, field, core);
        cores.push_back(std::move(item));
      }
      object["cores"] = std::move(cores);
    }
    if (!object.empty()) root[std::string(section)] = std::move(object);
  }
  return harmless_json(root.dump(indent, ' ', false, ordered_json::error_handler_t::replace));
}

}  // namespace cutback::io
