#include "run/tag_register.hpp"

#include <sys/mman.h>
#include <algorithm>
#include <bit>
#include <functional>
#include <new>
#include <utility>

#include "cutback/text.hpp"

namespace cutback::run {
namespace {

constexpr std::size_t k_first_slots = 1024;
constexpr std::size_t k_most_slots = std::size_t{1} << 22;  // 64 MB, for two million tags

/// Asks the system to give the memory in large pages: tags fall anywhere into it, and each page of
/// 4 KB would be fetched by itself. It may decline.
void want_large_pages(void* memory, std::size_t size) {
#ifdef MADV_HUGEPAGE
  constexpr std::size_t k_page = 4096;
  constexpr std::size_t k_worth = std::size_t{4} << 20;
  void* at = memory;
  if (size >= k_worth && std::align(k_page, size - k_page, at, size) != nullptr) {
    ::madvise(at, size, MADV_HUGEPAGE);
  }
#else
  static_cast<void>(memory);
  static_cast<void>(size);
#endif
}

}  // namespace

TagRegister::Slot& TagRegister::slot_of(std::uint64_t hash) {
  std::size_t i = hash & (slots_.size() - 1);
  while (slots_[i].row != 0 && slots_[i].hash != hash) i = (i + 1) & (slots_.size() - 1);
  return slots_[i];
}

void TagRegister::grow(std::size_t slots) {
  auto* const memory = static_cast<Slot*>(std::calloc(slots, sizeof(Slot)));
  if (memory == nullptr) throw std::bad_alloc();
  want_large_pages(memory, slots * sizeof(Slot));
  const std::unique_ptr<Slot[], Free> old_memory = std::exchange(memory_, {memory, Free{}});
  const std::span<const Slot> old = std::exchange(slots_, {memory, slots});
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

std::size_t name_hash(const schedule::Layout& layout, schedule::Cells cells, std::string& room) {
  const std::string_view tag = schedule::tag_of(layout, cells);
  if (tag.empty()) return 0;
  room.clear();
  for (const char c : tag) room += small_letter(c);
  if (!layout.two_ends) {
    room += '\n';
    room += schedule::end_name(layout, cells, schedule::Side::both);
  }
  return std::hash<std::string_view>()(room);
}

std::optional<std::size_t> row_above(TagRegister& tags, const schedule::Layout& layout,
                                     schedule::Cells cells, std::size_t hash, std::size_t row) {
  if (hash == 0) return std::nullopt;
  auto above = tags.put(hash, row);
  const bool nameless =
      !layout.two_ends && schedule::end_name(layout, cells, schedule::Side::both).empty();
  if (!above || !nameless) return above;
  constexpr std::size_t k_second = 0x5851F42D4C957F2D;
  return tags.put(hash ^ k_second, row);
}

}  // namespace cutback::run
