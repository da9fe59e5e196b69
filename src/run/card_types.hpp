#pragma once
// Cards of types: what many ends have in common stands once, with the list of the ends.

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
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
  /// @param which   of the ends it is, for print()
  /// @param twice   what must be found out first, where it is there more than once
  /// @return whether its gland fits
  bool add(CardEnd end, const std::string& source, std::size_t which, const std::string& twice);
  /// Cards that there will be.
  [[nodiscard]] std::size_t size() const;
  /// Hands on every card, in the order in which their types came up; last the ends for which there
  /// is none. To be called once.
  /// @param hand_on_end  takes an end that is alone of its type, and which it is: it has a card of
  ///                     its own
  void print(const std::function<void(print::Card)>& hand_on,
             const std::function<void(CardEnd, std::size_t which)>& hand_on_end);

 private:
  struct Type {
    CardEnd end;  ///< the first of them, without its route
    std::string source;
    strip::Depths depths;  ///< the least of all of them
    fit::Gates gates;      ///< the narrowest
    std::vector<print::ServedEnd> serves;
    std::vector<std::string> cautions;  ///< of any of them
    bool cut = true;                    ///< each of them may be cut
    std::optional<CardEnd> alone;       ///< the end itself, while there is no other one
    std::size_t which = 0;
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
