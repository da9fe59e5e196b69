#include "io/xlsx_package.hpp"

#include <minizip/unzip.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <utility>

#include "cutback/io/table_kind.hpp"
#include "cutback/text.hpp"

namespace cutback::io {
namespace {

constexpr unsigned long k_locked = 1;
// A part may unpack to this at least, and to this many times its packed size. The longest sheets
// pack 30 to 60 times, a bomb 1,000 times.
constexpr std::uint64_t k_always_allowed = std::uint64_t{64} << 20U;
constexpr std::uint64_t k_most_times = 300;

}  // namespace

std::string plain_part_name(std::string name) {
  for (char& c : name) c = c == '\\' ? '/' : small_letter(c);
  return name;
}

InputError xlsx_fault(ErrorCode code, std::string what, std::string where, std::string given,
                      std::string hint) {
  return InputError(make_fault(code, std::move(what), where, given, {}, std::move(hint)));
}

InputError xlsx_damaged(std::string what, std::string where) {
  return xlsx_fault(ErrorCode::bad_syntax, "the workbook is damaged: " + std::move(what),
                    std::move(where), "",
                    "open it in a spreadsheet program and save it again as .xlsx, or as CSV");
}

std::size_t ByteViews::read(char* to, std::size_t size) {
  if (first_.empty()) std::swap(first_, second_);
  const std::size_t count = first_.copy(to, size);
  first_.remove_prefix(count);
  return count;
}

/// What minizip reads as if it were a file.
struct XlsxPackage::Memory {
  std::string_view bytes;
  std::uint64_t position = 0;

  static voidpf open(voidpf opaque, const void*, int) { return opaque; }
  static uLong read(voidpf, voidpf stream, void* buffer, uLong size) {
    auto& self = *static_cast<Memory*>(stream);
    const std::uint64_t count = std::min<std::uint64_t>(size, self.bytes.size() - self.position);
    std::memcpy(buffer, self.bytes.data() + self.position, count);
    self.position += count;
    return count;
  }
  static uLong write(voidpf, voidpf, const void*, uLong) { return 0; }
  static ZPOS64_T tell(voidpf, voidpf stream) { return static_cast<Memory*>(stream)->position; }
  static long seek(voidpf, voidpf stream, ZPOS64_T offset, int origin) {
    auto& self = *static_cast<Memory*>(stream);
    std::uint64_t base = 0;
    if (origin == ZLIB_FILEFUNC_SEEK_CUR) base = self.position;
    if (origin == ZLIB_FILEFUNC_SEEK_END) base = self.bytes.size();
    const std::uint64_t target = base + offset;
    if (target < base || target > self.bytes.size()) return -1;
    self.position = target;
    return 0;
  }
  static int close(voidpf, voidpf) { return 0; }
  static int error(voidpf, voidpf) { return 0; }
};

XlsxPackage::XlsxPackage(std::string_view bytes, std::string name)
    : name_(std::move(name)), memory_(std::make_unique<Memory>()) {
  const TableKind kind = table_kind(bytes.substr(0, k_kind_bytes));
  if (kind != TableKind::xlsx && kind != TableKind::text) refuse_table(kind, name_);
  memory_->bytes = bytes;
  zlib_filefunc64_def functions{};
  functions.zopen64_file = &Memory::open;
  functions.zread_file = &Memory::read;
  functions.zwrite_file = &Memory::write;
  functions.ztell64_file = &Memory::tell;
  functions.zseek64_file = &Memory::seek;
  functions.zclose_file = &Memory::close;
  functions.zerror_file = &Memory::error;
  functions.opaque = memory_.get();
  zip_ = unzOpen2_64("", &functions);
  if (zip_ == nullptr) {
    throw xlsx_damaged("it is no whole ZIP archive; it may have been cut short", name_);
  }
  std::array<char, 4096> entry{};
  for (int more = unzGoToFirstFile(zip_); more == UNZ_OK; more = unzGoToNextFile(zip_)) {
    unz64_file_pos place{};
    if (unzGetCurrentFileInfo64(zip_, nullptr, entry.data(), entry.size() - 1, nullptr, 0, nullptr,
                                0) != UNZ_OK ||
        unzGetFilePos64(zip_, &place) != UNZ_OK) {
      break;
    }
    entries_.emplace(plain_part_name(entry.data()),
                     Entry{place.pos_in_zip_directory, place.num_of_file});
  }
}

XlsxPackage::~XlsxPackage() {
  if (zip_ != nullptr) unzClose(zip_);  // closes the part too
}

bool XlsxPackage::has(const std::string& part) const {
  return entries_.count(plain_part_name(part)) > 0;
}

void XlsxPackage::open(const std::string& part, std::uint64_t most) {
  if (open_) unzCloseCurrentFile(zip_);
  open_ = false;
  part_ = part;
  unz_file_info64 info{};
  const auto found = entries_.find(plain_part_name(part));
  unz64_file_pos place{};
  if (found != entries_.end()) place = {found->second.directory, found->second.number};
  if (found == entries_.end() || unzGoToFilePos64(zip_, &place) != UNZ_OK ||
      unzGetCurrentFileInfo64(zip_, &info, nullptr, 0, nullptr, 0, nullptr, 0) != UNZ_OK) {
    throw xlsx_damaged("it has no part " + part, name_);
  }
  if ((info.flag & k_locked) != 0) {
    throw xlsx_fault(ErrorCode::bad_syntax, "the workbook is locked with a password", name_, "",
                     "save it without a password");
  }
  const std::uint64_t dense =
      std::max(k_always_allowed, k_most_times * std::uint64_t{info.compressed_size});
  if (info.uncompressed_size > std::min(most, dense)) {
    throw xlsx_fault(ErrorCode::out_of_range,
                     "the workbook unpacks to far more than a schedule holds",
                     name_ + ", part " + part, std::to_string(info.uncompressed_size) + " bytes",
                     "save the sheet alone in a workbook of its own, or as CSV");
  }
  if (unzOpenCurrentFile(zip_) != UNZ_OK)
    throw xlsx_damaged("part " + part + " cannot be read", name_);
  open_ = true;
  size_ = info.uncompressed_size;
  read_ = 0;
}

std::size_t XlsxPackage::read(char* to, std::size_t size) {
  if (!open_) return 0;
  // minizip hands out no more than the size that open() has looked at.
  const int count = unzReadCurrentFile(zip_, to, static_cast<unsigned>(size));
  if (count > 0) {
    read_ += static_cast<std::uint64_t>(count);
    return static_cast<std::size_t>(count);
  }
  open_ = false;
  const int closed = unzCloseCurrentFile(zip_);
  if (count < 0 || closed != UNZ_OK) {
    throw xlsx_damaged("part " + part_ + " cannot be unpacked", name_);
  }
  return 0;
}

double XlsxPackage::taken() const {
  return size_ == 0 ? 1.0 : static_cast<double>(read_.load()) / static_cast<double>(size_);
}

void XlsxPackage::finish() {
  std::array<char, 16384> rest;
  while (read(rest.data(), rest.size()) > 0) {
  }
}

}  // namespace cutback::io
