// A library to be loaded before a program (LD_PRELOAD): one call of a kind fails, as it does on a
// full or broken disk, and what it should have written is lost. Only what writes is failed: files
// opened for reading, and stderr, are left alone.
//
// FAIL_CALL  the kind: write, fsync, fchmod, close, link, rename, open, fwrite, fprintf, fflush,
//            fclose
// FAIL_AT    which of its calls fails, from 1; 0: none
// FAIL_MORE  not empty: all after it fail as well
// FAIL_COUNT a file that takes the number of calls of each kind when the program ends

#include <dlfcn.h>
#include <fcntl.h>
#include <stdio_ext.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>

namespace {

enum Kind {
  k_write,
  k_fsync,
  k_fchmod,
  k_close,
  k_link,
  k_rename,
  k_open,
  k_fwrite,
  k_fprintf,
  k_fflush,
  k_fclose,
  k_kinds
};
constexpr std::array<const char*, k_kinds> k_names{"write",   "fsync",  "fchmod", "close",
                                                   "link",    "rename", "open",   "fwrite",
                                                   "fprintf", "fflush", "fclose"};
std::array<long, k_kinds> calls{};

template <class Function>
Function real(const char* name) {
  return reinterpret_cast<Function>(::dlsym(RTLD_NEXT, name));
}

/// Counts a call. @return whether it is to fail
bool fails(Kind kind) {
  const long number = ++calls[kind];
  const char* wanted = std::getenv("FAIL_CALL");
  const char* at = std::getenv("FAIL_AT");
  if (wanted == nullptr || at == nullptr || std::strcmp(wanted, k_names[kind]) != 0) return false;
  const long first = std::atol(at);
  const char* more = std::getenv("FAIL_MORE");
  const bool all = more != nullptr && *more != '\0';
  if (first == 0 || (all ? number < first : number != first)) return false;
  errno = kind == k_rename || kind == k_link || kind == k_open ? EIO : ENOSPC;
  return true;
}

bool is_written(int descriptor) {
  const int mode = ::fcntl(descriptor, F_GETFL);
  return descriptor != STDERR_FILENO && mode >= 0 && (mode & O_ACCMODE) != O_RDONLY;
}

bool is_written(std::FILE* file) { return is_written(::fileno(file)); }

struct Report {
  ~Report() {
    const char* path = std::getenv("FAIL_COUNT");
    if (path == nullptr) return;
    std::string text;
    for (int i = 0; i < k_kinds; ++i) {
      text += std::string(k_names[static_cast<std::size_t>(i)]) + " " +
              std::to_string(calls[static_cast<std::size_t>(i)]) + "\n";
    }
    const int file = real<int (*)(const char*, int, ...)>("open")(path, O_WRONLY | O_CREAT, 0600);
    if (real<ssize_t (*)(int, const void*, std::size_t)>("write")(file, text.data(), text.size()) <
        0)
      std::abort();
  }
} report;

}  // namespace

extern "C" {

ssize_t write(int descriptor, const void* bytes, std::size_t size) {
  if (is_written(descriptor) && fails(k_write)) return -1;
  return real<ssize_t (*)(int, const void*, std::size_t)>("write")(descriptor, bytes, size);
}

int fsync(int descriptor) { return fails(k_fsync) ? -1 : real<int (*)(int)>("fsync")(descriptor); }

int fchmod(int descriptor, mode_t mode) {
  return fails(k_fchmod) ? -1 : real<int (*)(int, mode_t)>("fchmod")(descriptor, mode);
}

int close(int descriptor) {
  const bool failed = is_written(descriptor) && fails(k_close);
  const int error = errno;
  const int result = real<int (*)(int)>("close")(descriptor);
  if (!failed) return result;
  errno = error;
  return -1;
}

int linkat(int from, const char* old_path, int to, const char* new_path, int flags) {
  if (fails(k_link)) return -1;
  return real<int (*)(int, const char*, int, const char*, int)>("linkat")(from, old_path, to,
                                                                          new_path, flags);
}

int rename(const char* old_path, const char* new_path) {
  return fails(k_rename) ? -1
                         : real<int (*)(const char*, const char*)>("rename")(old_path, new_path);
}

int open(const char* path, int flags, ...) {
  va_list list;
  va_start(list, flags);
  const mode_t mode = va_arg(list, mode_t);
  va_end(list);
  const bool written = (flags & O_ACCMODE) != O_RDONLY && std::strcmp(path, "/dev/null") != 0;
  if (written && fails(k_open)) return -1;
  return real<int (*)(const char*, int, ...)>("open")(path, flags, mode);
}

std::size_t fwrite(const void* bytes, std::size_t size, std::size_t count, std::FILE* file) {
  if (is_written(file) && fails(k_fwrite)) return 0;
  return real<std::size_t (*)(const void*, std::size_t, std::size_t, std::FILE*)>("fwrite")(
      bytes, size, count, file);
}

int __fprintf_chk(std::FILE* file, int flag, const char* format, ...) {
  if (is_written(file) && fails(k_fprintf)) return -1;
  va_list list;
  va_start(list, format);
  const int result = real<int (*)(std::FILE*, int, const char*, va_list)>("__vfprintf_chk")(
      file, flag, format, list);
  va_end(list);
  return result;
}

int fflush(std::FILE* file) {
  if (file == nullptr || !is_written(file) || __fpending(file) == 0 || !fails(k_fflush)) {
    return real<int (*)(std::FILE*)>("fflush")(file);
  }
  const int error = errno;
  __fpurge(file);
  errno = error;
  return EOF;
}

int fclose(std::FILE* file) {
  const bool failed = is_written(file) && __fpending(file) > 0 && fails(k_fclose);
  const int error = errno;
  if (failed) __fpurge(file);
  const int result = real<int (*)(std::FILE*)>("fclose")(file);
  if (!failed) return result;
  errno = error;
  return EOF;
}

}  // extern "C"
