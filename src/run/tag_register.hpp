#pragma once
// Which tags have been seen, in a memory with a limit.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "cutback/schedule/layout.hpp"

namespace cutback::run {

/// Remembers the hash of a tag and the row on which it stood; two tags with one hash of 64 bits are
/// taken for the same.
class TagRegister {
 public:
  /// Makes room at once for so many tags, as far as the limit allows.
  void reserve(std::size_t tags);
  /// Says that put() will be called with this hash soon, so that its slot is fetched meanwhile.
  void expect(std::size_t hash) const;
  /// @return the row on which the tag stood before; nothing where it is new, or once full
  std::optional<std::size_t> put(std::size_t hash, std::size_t row);
  /// Whether tags were left out because there are too many.
  [[nodiscard]] bool full() const { return full_; }

 private:
  struct Slot {
    std::uint64_t hash;
    std::uint64_t row;  ///< 0: the slot is free
  };
  struct Free {
    void operator()(Slot* slots) const { std::free(slots); }
  };
  void grow(std::size_t slots);
  Slot& slot_of(std::uint64_t hash);

  std::unique_ptr<Slot[], Free> memory_;
  std::span<Slot> slots_;
  std::size_t used_ = 0;
  bool full_ = false;
};

/// What names a row, whatever the case of its letters: its tag, and the end where a row is one end.
/// @param room  is written over. @return 0 where the tag is blank
[[nodiscard]] std::size_t name_hash(const schedule::Layout& layout, schedule::Cells cells,
                                    std::string& room);
/// The row above that has the same name; nothing where there is none. Where rows are ends without
/// names, two rows of a tag are the two ends of its cable.
/// @param row  that of the hash
[[nodiscard]] std::optional<std::size_t> row_above(TagRegister& tags,
                                                   const schedule::Layout& layout,
                                                   schedule::Cells cells, std::size_t hash,
                                                   std::size_t row);

}  // namespace cutback::run
