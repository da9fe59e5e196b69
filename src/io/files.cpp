#include "cutback/io/files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>
#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <utility>

#include "cutback/error.hpp"

namespace cutback::io {
namespace {

constexpr std::size_t k_small_piece = 65536;

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
bool leads_to_device(const std::string& path) {
  if (path.starts_with("/dev/")) return true;
  struct stat info {};
  return ::stat(path.c_str(), &info) == 0 && !S_ISREG(info.st_mode);
}

std::string by_descriptor(int descriptor) { return "/proc/self/fd/" + std::to_string(descriptor); }

/// A file in the folder of `target` that has no name, so that nothing is left of it whatever ends
/// the program. @return its descriptor, -1 where the system has no such files
int open_nameless(const std::string& target) {
#ifdef O_TMPFILE
  const std::filesystem::path folder = std::filesystem::path(target).parent_path();
  const int descriptor =
      ::open(folder.empty() ? "." : folder.c_str(), O_TMPFILE | O_RDWR | O_CLOEXEC, 0600);
  // It gets its name by way of /proc, which may be missing.
  if (descriptor < 0 || ::access(by_descriptor(descriptor).c_str(), F_OK) == 0) return descriptor;
  ::close(descriptor);
#else
  static_cast<void>(target);
#endif
  return -1;
}

/// Gives the file at `path` a further name that is still free beside `target`.
/// @return blank where that fails; see errno
std::string name_beside(const std::string& target, const std::string& path) {
  constexpr unsigned k_attempts = 100;
  const auto first = static_cast<unsigned>(::getpid());
  for (unsigned i = 0; i < k_attempts; ++i) {
    std::string name = target + fmt::format(".{:06x}", (first * k_attempts + i) & 0xffffffU);
    if (::linkat(AT_FDCWD, path.c_str(), AT_FDCWD, name.c_str(), AT_SYMLINK_FOLLOW) == 0) {
      return name;
    }
    if (errno != EEXIST) break;
  }
  return {};
}

/// A file without any permission to write was made so on purpose; even one who may do all is asked
/// to take that back first.
bool is_read_only(const std::string& path) {
  constexpr mode_t k_may_write = 0222;
  struct stat info {};
  if (::stat(path.c_str(), &info) != 0) return false;
  return (info.st_mode & k_may_write) == 0 || ::access(path.c_str(), W_OK) != 0;
}

/// What the file at `path` is like goes on: its permissions, and its owner as far as the system
/// lets this user give a file away. A new one is an ordinary file, as the user's mask has it.
bool take_after(const std::string& path, int descriptor) {
  struct stat old {};
  if (::stat(path.c_str(), &old) == 0) {
    // Another user's file in a folder of several becomes this user's.
    const bool given_away = ::fchown(descriptor, old.st_uid, old.st_gid) == 0 ||
                            ::fchown(descriptor, static_cast<uid_t>(-1), old.st_gid) == 0;
    static_cast<void>(given_away);
    return ::fchmod(descriptor, old.st_mode & 0777U) == 0;
  }
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return ::fchmod(descriptor, 0666U & ~mask) == 0;
}

}  // namespace

// The file behind a link is written, and the link itself is kept.
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
  changed_s_ = info.st_mtim.tv_sec;
  changed_ns_ = info.st_mtim.tv_nsec;
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

void PieceReader::check_unchanged() const {
  if (!is_file_) return;
  struct stat now {};
  struct stat there {};
  const bool same = ::fstat(descriptor_, &now) == 0 &&
                    static_cast<std::size_t>(now.st_size) == size_ &&
                    now.st_mtim.tv_sec == changed_s_ && now.st_mtim.tv_nsec == changed_ns_;
  // One that was deleted is still whole here.
  const bool replaced = ::stat(path_.c_str(), &there) == 0 &&
                        (there.st_dev != now.st_dev || there.st_ino != now.st_ino);
  if (same && !replaced) return;
  throw FileError(Fault{.code = ErrorCode::cannot_read,
                        .what = "the file changed while it was read",
                        .where = path_,
                        .given = {},
                        .allowed = {},
                        .hint = "wait until nothing writes to it any more, then do it again"});
}

WholeFile::WholeFile(const std::string& path, const Bound& most) {
  constexpr std::size_t k_piece = std::size_t{1} << 20U;
  PieceReader file(path);
  // A piece more than the file holds: the last read asks for a whole piece, and must not move all.
  bytes_.reserve(file.is_file() ? file.size() + k_piece : 0);
  while (file.read(bytes_, file.is_file() ? std::min(file.size() + 1, k_piece) : k_small_piece)) {
    if (bytes_.size() > most.most) break;
  }
  if (bytes_.size() > most.most) throw InputError(beyond(most, path));
  file.check_unchanged();
}

FileWriter::FileWriter(std::string path) : path_(std::move(path)) {
  if (leads_to_device(path_)) {  // a pipe or a device: nothing to keep, nothing to rename
    descriptor_ = ::open(path_.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
  } else {
    target_ = behind_links(path_);
    if (is_read_only(target_)) {
      throw cannot(ErrorCode::cannot_write, path_, "it is read-only; give another name");
    }
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

std::string FileWriter::place() const {
  return temporary_.empty() ? by_descriptor(descriptor_) : temporary_;
}

std::string FileWriter::folder() const {
  if (target_.empty()) return {};
  const std::filesystem::path folder = std::filesystem::path(target_).parent_path();
  return folder.empty() ? "." : folder.string();
}

/// All of it is on the disk, under a name beside its place, and closed.
void FileWriter::finish() {
  bool done = true;
  if (!target_.empty()) {
    done = take_after(target_, descriptor_) && ::fsync(descriptor_) == 0;
    if (done && temporary_.empty()) temporary_ = name_beside(target_, by_descriptor(descriptor_));
    done = done && !temporary_.empty();
  }
  const int error = errno;
  const bool closed = ::close(std::exchange(descriptor_, -1)) == 0;
  if (!done || !closed) {
    throw cannot(ErrorCode::cannot_write, path_, std::strerror(done ? errno : error));
  }
}

/// The file that is about to be replaced gets a further name, by which it can come back.
void FileWriter::keep_old() {
  struct stat info {};
  if (target_.empty() || ::lstat(target_.c_str(), &info) != 0) return;
  if (!S_ISREG(info.st_mode)) {
    throw cannot(ErrorCode::cannot_write, path_, "something that is no file lies in its place now");
  }
  old_ = name_beside(target_, target_);
  if (!old_.empty()) return;
  // No further names on this disk: it is moved aside.
  old_ = temporary_ + ".old";
  if (::rename(target_.c_str(), old_.c_str()) == 0) return;
  old_.clear();
  throw cannot(ErrorCode::cannot_write, path_, std::strerror(errno));
}

void FileWriter::put_in_place() {
  if (target_.empty()) return;
  if (::rename(temporary_.c_str(), target_.c_str()) != 0) {
    throw cannot(ErrorCode::cannot_write, path_, std::strerror(errno));
  }
  temporary_.clear();
  is_placed_ = true;
}

/// @return false where the system does not let it
bool FileWriter::put_old_back() {
  if (!old_.empty()) {
    if (::rename(old_.c_str(), target_.c_str()) != 0) return false;
    // Nothing is done by renaming between two names of one file.
    ::unlink(std::exchange(old_, {}).c_str());
    return true;
  }
  return !is_placed_ || ::unlink(target_.c_str()) == 0;
}

void FileWriter::forget_old() {
  if (!old_.empty()) ::unlink(std::exchange(old_, {}).c_str());
}

void FileWriter::commit() {
  finish();
  put_in_place();
}

void FileSet::commit() {
  for (FileWriter& file : files_) file.finish();
  try {
    if (files_.size() > 1) {
      for (FileWriter& file : files_) file.keep_old();
    }
    for (FileWriter& file : files_) file.put_in_place();
  } catch (const FileError& error) {
    Fault fault = error.faults().front();
    for (FileWriter& file : files_) {
      if (file.put_old_back()) continue;
      fault.hint += "; " + file.path_ + " is new all the same" +
                    (file.old_.empty() ? std::string() : ", what it held is in " + file.old_);
    }
    throw FileError(std::move(fault));
  }
  for (FileWriter& file : files_) file.forget_old();
  files_.clear();
}

void write_file(const std::string& path, std::string_view content) {
  FileWriter writer(path);
  writer.append(content);
  writer.commit();
}

}  // namespace cutback::io
