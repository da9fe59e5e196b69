#include "core/schedule/fittings.hpp"

#include <optional>
#include <vector>

#include "cutback/entry/parts.hpp"
#include "cutback/job/job.hpp"

namespace cutback::schedule::detail {
namespace {

using entry::EntryPart;

/// Bytes that stand for a thread, for keys: its designation takes longer to write.
void append_key(const entry::Thread& thread, std::string& key) {
  key.append(reinterpret_cast<const char*>(&thread.size), sizeof thread.size);
  key.append(reinterpret_cast<const char*>(&thread.pitch_mm), sizeof thread.pitch_mm);
  key += static_cast<char>('0' + static_cast<int>(thread.kind));
}

}  // namespace

Fittings FittingsMemory::of(const fit::Question& question, const gland::Gland& gland) {
  const fit::MadeOff off = fit::made_off(question, gland);
  const entry::Entry& entry = question.job->entry;
  std::vector<EntryPart> beside;
  if (entry.thread) beside = entry::parts_in_order(gland, entry, off.adaptor.has_value());
  std::erase_if(beside, [](const EntryPart& part) { return !part.beside; });

  key_.clear();
  if (off.adaptor) {
    append_key(off.adaptor->a, key_);
    append_key(off.adaptor->b, key_);
  }
  key_ += ';';
  if (!beside.empty()) append_key(*entry.thread, key_);
  for (const EntryPart& part : beside) (key_ += part.name) += ';';
  if (off.barrier) key_ += gland.part;
  auto& accessories = known_[key_];
  if (!accessories) {
    Accessories list;
    if (off.adaptor) {
      list.push_back(
          {"adaptor", entry::to_text(off.adaptor->a) + " to " + entry::to_text(off.adaptor->b)});
    }
    for (const EntryPart& part : beside) {
      list.push_back({std::string(part.name), entry::to_text(*entry.thread)});
    }
    if (off.barrier) list.push_back({"compound", "for " + gland.part});
    accessories = std::make_shared<const Accessories>(std::move(list));
  }
  return {off.barrier, off.adaptor.has_value(), accessories};
}

}  // namespace cutback::schedule::detail
