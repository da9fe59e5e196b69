#pragma once
// Many ends of one schedule decided, what they share worked out once.

#include <cstdint>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// A decision, and room for what its user makes of it: kept together as long as it is remembered.
struct Decided {
  Decision decision;
  std::string text;  ///< empty at first
  std::string more;  ///< the same
};

/// Decides end after end, each exactly as decide() does. What ends have in common (all but their
/// diameters and routes), single figures and whole ends are remembered, in a memory that does not
/// grow with the schedule. For one thread.
class Decider {
 public:
  /// @param layout    borrowed
  /// @param settings  what it borrows must outlive this object and every decision
  Decider(const Layout& layout, const Settings& settings);
  Decider(const Decider&) = delete;
  Decider& operator=(const Decider&) = delete;
  ~Decider();

  /// @param supply  as decide() takes it; borrowed for the life of this object
  /// @return valid until the next call
  Decided& decide(const Row& row, Side side, const Supply* supply = nullptr);

  /// Every gland whose verdict is `fits` for this end, by their places in the list, ascending. None
  /// where the end cannot be used: decide() says why.
  /// @param defaults  where it is not null: gets those that the end was decided with
  [[nodiscard]] std::vector<std::uint32_t> fitting(const Row& row, Side side,
                                                   std::uint64_t* defaults = nullptr);

  /// Words of the cells that were decided so far, and what they were taken for: `"SWA" for wire`.
  [[nodiscard]] const std::set<std::string>& taken() const;

 private:
  class State;
  std::unique_ptr<State> state_;
};

}  // namespace cutback::schedule
