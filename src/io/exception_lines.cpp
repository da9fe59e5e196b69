#include "cutback/io/exception_lines.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>

#include "cutback/error.hpp"

namespace cutback::io {
namespace {

FileError no_room() {
  return FileError(Fault{.code = ErrorCode::cannot_write,
                         .what = "the exceptions cannot be put into a temporary file",
                         .where = P_tmpdir,
                         .given = {},
                         .allowed = {},
                         .hint = std::strerror(errno)});
}

}  // namespace

void ExceptionLines::add(const std::string& group, std::string_view line) {
  Group& own = groups_[group];
  ++own.count;
  own.last += line;
  held_ += line.size();
  if (held_ > most_) set_aside();
}

void ExceptionLines::set_aside() {
  if (!file_) file_.reset(std::tmpfile());
  if (!file_ || std::fseek(file_.get(), 0, SEEK_END) != 0) throw no_room();
  for (auto& [name, group] : groups_) {
    if (group.last.empty()) continue;
    if (std::fwrite(group.last.data(), 1, group.last.size(), file_.get()) != group.last.size()) {
      throw no_room();
    }
    group.pieces.push_back({size_, group.last.size()});
    size_ += group.last.size();
    group.last = {};
  }
  if (std::fflush(file_.get()) != 0) throw no_room();
  held_ = 0;
}

void ExceptionLines::each(const std::function<void(std::string_view lines)>& take) const {
  std::vector<const Group*> order;
  for (const auto& [name, group] : groups_) order.push_back(&group);
  std::stable_sort(order.begin(), order.end(),
                   [](const Group* a, const Group* b) { return a->count > b->count; });
  std::string text;
  for (const Group* group : order) {
    for (const Piece& piece : group->pieces) {
      text.resize(piece.size);
      if (std::fseek(file_.get(), static_cast<long>(piece.offset), SEEK_SET) != 0 ||
          std::fread(text.data(), 1, text.size(), file_.get()) != text.size()) {
        throw no_room();
      }
      take(text);
    }
    if (!group->last.empty()) take(group->last);
  }
}

}  // namespace cutback::io
