#include "cli/tag_register.hpp"

#include <algorithm>
#include <bit>
#include <utility>

namespace cutback::cli {
namespace {

constexpr std::size_t k_first_slots = 1024;
constexpr std::size_t k_most_slots = std::size_t{1} << 22;  // 64 MB, for two million tags

}  // namespace

TagRegister::Slot& TagRegister::slot_of(std::uint64_t hash) {
  std::size_t i = hash & (slots_.size() - 1);
  while (slots_[i].row != 0 && slots_[i].hash != hash) i = (i + 1) & (slots_.size() - 1);
  return slots_[i];
}

void TagRegister::grow(std::size_t slots) {
  const std::vector<Slot> old = std::exchange(slots_, std::vector<Slot>(slots));
  for (const Slot& slot : old) {
    if (slot.row != 0) slot_of(slot.hash) = slot;
  }
}

void TagRegister::reserve(std::size_t tags) {
  const std::size_t slots = tags < k_most_slots / 2 ? std::bit_ceil(2 * tags + 1) : k_most_slots;
  if (slots > slots_.size()) grow(slots);
}

void TagRegister::expect(std::size_t hash) const {
  if (!slots_.empty()) __builtin_prefetch(&slots_[hash & (slots_.size() - 1)], 1);
}

std::optional<std::size_t> TagRegister::put(std::size_t hash, std::size_t row) {
  if (2 * used_ >= slots_.size() && slots_.size() < k_most_slots) {
    grow(std::max(k_first_slots, 2 * slots_.size()));
  }
  Slot& slot = slot_of(hash);
  if (slot.row != 0) return static_cast<std::size_t>(slot.row);
  if (2 * used_ >= slots_.size()) {
    full_ = true;
  } else {
    slot = {hash, row};
    ++used_;
  }
  return std::nullopt;
}

}  // namespace cutback::cli
