#pragma once
// Types of cable, which the rows of a schedule name instead of repeating their figures.

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/job/input.hpp"
#include "cutback/measure/estimate.hpp"

namespace cutback::schedule {

struct Layout;

/// One value of a type, as set_from_text takes it.
struct TypeValue {
  const job::Field* field = nullptr;
  std::string text;
};

struct CableType {
  std::string name;               ///< as its file writes it
  std::string place;              ///< where it stands, for messages
  std::vector<TypeValue> values;  ///< of the section `cable`, without the evidence
  measure::Evidence evidence = measure::Evidence::datasheet;
  /// No built-in layer rule covers it: pairs, an earth core of unknown size, another voltage.
  bool no_estimate = false;

  /// Null where the type does not say.
  [[nodiscard]] const TypeValue* find(const job::Field& field) const;
};

/// The types of one file, found by name, whatever its case and spaces.
class CableTypes {
 public:
  /// @param name  of the file, for messages
  explicit CableTypes(std::string name) : name_(std::move(name)) {}

  /// Adds a row of the file.
  /// @return what is wrong with it: a value that its column does not take, figures that are said to
  /// be measured, several readings of one diameter, a name that another type has
  [[nodiscard]] std::vector<Fault> add(const Layout& layout, std::vector<std::string_view> cells,
                                       const std::string& place);

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] std::size_t size() const { return types_.size(); }
  [[nodiscard]] const CableType* find(std::string_view name) const;
  /// The nearest name, for a message; empty where none is near.
  [[nodiscard]] std::string nearest(std::string_view name) const;
  /// The fields that at least one type has a value for.
  [[nodiscard]] const std::vector<const job::Field*>& fields() const { return fields_; }

 private:
  std::string name_;
  std::map<std::string, CableType, std::less<>> types_;
  std::vector<const job::Field*> fields_;
};

}  // namespace cutback::schedule
