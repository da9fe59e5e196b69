#include "cutback/io/files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <utility>

#include "cutback/error.hpp"

namespace cutback::io {
namespace {

FileError cannot(ErrorCode code, const std::string& path, const std::string& why) {
  const bool reading = code == ErrorCode::cannot_read;
  return FileError(Fault{.code = code,
                         .what = reading ? "the file cannot be read" : "the file cannot be written",
                         .where = path,
                         .given = {},
                         .allowed = {},
                         .hint = why});
}

void write_all(int descriptor, std::string_view content, const std::string& path) {
  while (!content.empty()) {
    const ssize_t count = ::write(descriptor, content.data(), content.size());
    if (count < 0) {
      if (errno == EINTR) continue;
      throw cannot(ErrorCode::cannot_write, path, std::strerror(errno));
    }
    content.remove_prefix(static_cast<std::size_t>(count));
  }
}

/// A pipe or a device. /dev/stdout may lead to an ordinary file and must not be replaced by one.
bool is_special(const std::string& path) {
  if (path.starts_with("/dev/")) return true;
  struct stat info {};
  return ::stat(path.c_str(), &info) == 0 && !S_ISREG(info.st_mode);
}

/// Where a link leads, also one that leads to no file yet, so that the file behind it is written
/// and the link itself is kept.
std::string behind_links(const std::string& path) {
  constexpr int k_most_links = 40;  // as the kernel follows
  std::filesystem::path place = path;
  std::error_code error;
  for (int i = 0; i < k_most_links && std::filesystem::is_symlink(place, error); ++i) {
    const std::filesystem::path target = std::filesystem::read_symlink(place, error);
    if (error) break;
    place = target.is_absolute() ? target : place.parent_path() / target;
  }
  return place.string();
}

std::string by_descriptor(int descriptor) { return "/proc/self/fd/" + std::to_string(descriptor); }

/// A file in the folder of `target` that has no name, so that nothing is left of it whatever ends
/// the program. @return its descriptor, -1 where the system has no such files
int open_nameless(const std::string& target) {
#ifdef O_TMPFILE
  const std::filesystem::path folder = std::filesystem::path(target).parent_path();
  const int descriptor =
      ::open(folder.empty() ? "." : folder.c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, 0600);
  // It gets its name by way of /proc, which may be missing.
  if (descriptor < 0 || ::access(by_descriptor(descriptor).c_str(), F_OK) == 0) return descriptor;
  ::close(descriptor);
#else
  static_cast<void>(target);
#endif
  return -1;
}

/// Gives it a name that is still free beside `target`. @return blank where that fails; see errno
std::string name_beside(const std::string& target, int descriptor) {
  constexpr unsigned k_attempts = 100;
  const auto first = static_cast<unsigned>(::getpid());
  for (unsigned i = 0; i < k_attempts; ++i) {
    std::string name = target + fmt::format(".{:06x}", (first * k_attempts + i) & 0xffffffU);
    if (::linkat(AT_FDCWD, by_descriptor(descriptor).c_str(), AT_FDCWD, name.c_str(),
                 AT_SYMLINK_FOLLOW) == 0) {
      return name;
    }
    if (errno != EEXIST) break;
  }
  return {};
}

}  // namespace

PieceReader::PieceReader(std::string path)
    : path_(std::move(path)), descriptor_(::open(path_.c_str(), O_RDONLY | O_CLOEXEC)) {
  struct stat info {};
  if (descriptor_ < 0 || ::fstat(descriptor_, &info) != 0) {
    const int error = errno;
    if (descriptor_ >= 0) ::close(descriptor_);
    throw cannot(ErrorCode::cannot_read, path_, std::strerror(error));
  }
  if (S_ISDIR(info.st_mode)) {
    ::close(descriptor_);
    throw cannot(ErrorCode::cannot_read, path_, "it is a folder; give a file");
  }
  is_file_ = S_ISREG(info.st_mode);
  size_ = static_cast<std::size_t>(info.st_size);
}

PieceReader::~PieceReader() { ::close(descriptor_); }

bool PieceReader::read(std::string& into, std::size_t least) {
  const std::size_t start = into.size();
  while (into.size() < start + least) {
    const std::size_t filled = into.size();
    into.resize(start + least);
    const ssize_t count = ::read(descriptor_, into.data() + filled, start + least - filled);
    into.resize(filled + (count > 0 ? static_cast<std::size_t>(count) : 0));
    if (count == 0) return false;
    if (count < 0 && errno != EINTR)
      throw cannot(ErrorCode::cannot_read, path_, std::strerror(errno));
  }
  return true;
}

MappedFile::MappedFile(const std::string& path) {
  PieceReader file(path);
  if (file.is_file() && file.size() > 0) {
    void* address =
        ::mmap(nullptr, file.size(), PROT_READ, MAP_PRIVATE | MAP_POPULATE, file.descriptor(), 0);
    if (address != MAP_FAILED) {
      mapped_ = address;
      mapped_size_ = file.size();
      text_ = {static_cast<const char*>(address), mapped_size_};
      return;
    }
  }
  constexpr std::size_t k_piece = 65536;
  while (file.read(owned_, k_piece)) {
  }
  text_ = owned_;
}

MappedFile::MappedFile(MappedFile&& other) noexcept
    : mapped_(std::exchange(other.mapped_, nullptr)),
      mapped_size_(std::exchange(other.mapped_size_, 0)),
      owned_(std::move(other.owned_)) {
  text_ = mapped_ != nullptr ? other.text_ : std::string_view(owned_);
  other.text_ = {};
}

MappedFile::~MappedFile() {
  if (mapped_ != nullptr) ::munmap(mapped_, mapped_size_);
}

FileWriter::FileWriter(std::string path) : path_(std::move(path)) {
  if (is_special(path_)) {  // a pipe or a device: nothing to keep, nothing to rename
    descriptor_ = ::open(path_.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
  } else {
    target_ = behind_links(path_);
    descriptor_ = open_nameless(target_);
    if (descriptor_ < 0) {
      temporary_ = target_ + ".XXXXXX";
      descriptor_ = ::mkstemp(temporary_.data());
      if (descriptor_ < 0) temporary_.clear();
    }
  }
  if (descriptor_ < 0) throw cannot(ErrorCode::cannot_write, path_, std::strerror(errno));
}

FileWriter::~FileWriter() {
  if (descriptor_ >= 0) ::close(descriptor_);
  if (!temporary_.empty()) ::unlink(temporary_.c_str());
}

void FileWriter::append(std::string_view content) {
  write_all(descriptor_, content, path_);
  written_ += content.size();
  if (!target_.empty()) begin_saving();
}

/// Lets the disk begin, so that commit() has little to wait for. Nothing depends on it.
void FileWriter::begin_saving() {
#ifdef SYNC_FILE_RANGE_WRITE
  constexpr std::size_t k_much = 8 * 1024 * 1024;
  if (written_ - saving_ < k_much) return;
  ::sync_file_range(descriptor_, static_cast<off_t>(saving_),
                    static_cast<off_t>(written_ - saving_), SYNC_FILE_RANGE_WRITE);
  saving_ = written_;
#endif
}

void FileWriter::commit() {
  if (target_.empty()) return;
  // So far only the owner can read it; a result is an ordinary file.
  const mode_t mask = ::umask(0);
  ::umask(mask);
  if (::fchmod(descriptor_, 0666 & ~mask) != 0 || ::fsync(descriptor_) != 0) {
    throw cannot(ErrorCode::cannot_write, path_, std::strerror(errno));
  }
  if (temporary_.empty()) temporary_ = name_beside(target_, descriptor_);
  if (temporary_.empty() || ::rename(temporary_.c_str(), target_.c_str()) != 0) {
    throw cannot(ErrorCode::cannot_write, path_, std::strerror(errno));
  }
  temporary_.clear();
  target_.clear();
}

void write_file(const std::string& path, std::string_view content) {
  FileWriter writer(path);
  writer.append(content);
  writer.commit();
}

}  // namespace cutback::io
