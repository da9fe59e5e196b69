#pragma once
// Cards of types: what many ends have in common stands once, with the list of the ends.

#include <cstddef>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "cutback/print/pages.hpp"
#include "run/card_end.hpp"

namespace cutback::run {

/// Ends of one gland, entry and cable type: everything that a card prints is the same for them but
/// the route, so that a mark is the route and one constant.
class CardTypes {
 public:
  /// @param list_name  of the gland list
  explicit CardTypes(std::string list_name) : list_name_(std::move(list_name)) {}

  /// @param source  of the end, for the card
  /// @return whether its gland fits
  bool add(CardEnd end, const std::string& source);
  /// Cards that there will be.
  [[nodiscard]] std::size_t size() const;
  /// Hands on every card, in the order in which their types came up; last the ends for which there
  /// is none. To be called once.
  void print(const std::function<void(print::Card)>& hand_on);

 private:
  struct Type {
    CardEnd end;  ///< the first of them, without its route
    std::string source;
    strip::Depths depths;  ///< the least of all of them
    fit::Gates gates;      ///< the narrowest
    std::vector<print::ServedEnd> serves;
  };
  std::string list_name_;
  std::vector<Type> types_;
  std::map<std::string, std::size_t> known_;  ///< place in `types_` by all that is the same
  std::vector<print::ServedEnd> not_yet_;
  std::vector<print::ServedEnd> none_;  ///< no gland fits, or the end cannot be used
};

/// What a place needs.
class Takeoff {
 public:
  /// @param fit  of the gland chosen for it; null where there is none
  void add(const CardEnd& end, const fit::GlandFit* fit);
  [[nodiscard]] print::PlacePage page(std::string place) const;

 private:
  std::size_t ends_ = 0;
  std::size_t without_ = 0;
  std::map<std::string, std::size_t> parts_;  ///< glands
  std::map<std::string, std::size_t> beside_;
};

}  // namespace cutback::run
