#include "cutback/io/files.hpp"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>
#include <catch2/catch.hpp>
#include <chrono>
#include <filesystem>
#include <fstream>

#include "cutback/error.hpp"

using namespace cutback;
namespace fs = std::filesystem;

namespace {
struct Folder {
  fs::path path = fs::temp_directory_path() / ("cutback_files_" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  ~Folder() { fs::remove_all(path); }
};
}  // namespace

TEST_CASE("write_file then WholeFile: the same bytes", "[unit][files]") {
  const Folder folder;
  const std::string path = (folder.path / "a.txt").string();
  io::write_file(path, "one");
  io::write_file(path, "two\n");
  CHECK(io::WholeFile(path).text() == "two\n");
  io::write_file(path, "");
  CHECK(io::WholeFile(path).text().empty());
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
}

TEST_CASE("write_file: a failure leaves nothing and names the path", "[unit][files]") {
  const Folder folder;
  CHECK_THROWS_AS(io::write_file((folder.path / "no" / "a.txt").string(), "x"), FileError);
  // A folder of that name stands in the way: the old content stays.
  fs::create_directories(folder.path / "d");
  CHECK_THROWS_AS(io::write_file((folder.path / "d").string(), "x"), FileError);
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
}

TEST_CASE("write_file: through a link the file behind it is written", "[unit][files]") {
  const Folder folder;
  const fs::path real = folder.path / "real.txt";
  const fs::path link = folder.path / "link.txt";
  io::write_file(real.string(), "old");
  fs::create_symlink("real.txt", link);
  io::write_file(link.string(), "new");
  CHECK(fs::is_symlink(link));
  CHECK(io::WholeFile(real.string()).text() == "new");
}

TEST_CASE("WholeFile: what cannot be read says so", "[unit][files]") {
  CHECK_THROWS_WITH(io::WholeFile("/no/such/file"), Catch::Contains("/no/such/file"));
  CHECK_THROWS_WITH(io::WholeFile("/tmp"), Catch::Contains("folder"));
}

TEST_CASE("write_file: a link that leads to no file yet is kept", "[unit][files]") {
  const Folder folder;
  const fs::path link = folder.path / "link";
  fs::create_symlink("target.txt", link);
  io::write_file(link.string(), "through");
  CHECK(fs::is_symlink(link));
  CHECK(io::WholeFile((folder.path / "target.txt").string()).text() == "through");
}

TEST_CASE("FileWriter: nothing is left of it when the program is killed", "[unit][files]") {
  const Folder folder;
  const int nameless = ::open(folder.path.c_str(), O_TMPFILE | O_WRONLY, 0600);
  if (nameless < 0) {
    WARN("this file system has no files without a name");
    return;
  }
  ::close(nameless);
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    io::FileWriter writer((folder.path / "a.txt").string());
    writer.append("half");
    ::_exit(0);  // as if killed: no destructor runs
  }
  int status = -1;
  REQUIRE(::waitpid(child, &status, 0) == child);
  CHECK(status == 0);
  CHECK(fs::is_empty(folder.path));
}

TEST_CASE("FileWriter: the old content stays until it is committed", "[unit][files]") {
  const Folder folder;
  const std::string path = (folder.path / "a.txt").string();
  io::write_file(path, "old");
  io::FileWriter writer(path);
  writer.append("new");
  CHECK(io::WholeFile(path).text() == "old");
  writer.commit();
  CHECK(io::WholeFile(path).text() == "new");
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
}

TEST_CASE("WholeFile: what happens to the file afterwards does not reach it", "[unit][files]") {
  const Folder folder;
  const std::string path = (folder.path / "a.csv").string();
  const std::string content(100000, 'x');
  io::write_file(path, content);
  const io::WholeFile file(path);
  fs::resize_file(path, 10);
  CHECK(file.text() == content);
}

TEST_CASE("PieceReader: a file that changes meanwhile is named", "[unit][files]") {
  const Folder folder;
  const std::string path = (folder.path / "a.csv").string();
  io::write_file(path, "one");
  const std::string changed = "changed while it was read: " + path;
  SECTION("nothing happens to it") {
    const io::PieceReader file(path);
    CHECK_NOTHROW(file.check_unchanged());
  }
  SECTION("it grows") {
    const io::PieceReader file(path);
    std::ofstream(path, std::ios::app) << "more";
    CHECK_THROWS_WITH(file.check_unchanged(), Catch::Contains(changed));
  }
  SECTION("it is written again with as many bytes") {
    const io::PieceReader file(path);
    std::ofstream(path) << "two";
    fs::last_write_time(path, fs::last_write_time(path) + std::chrono::seconds(1));
    CHECK_THROWS_WITH(file.check_unchanged(), Catch::Contains(changed));
  }
  SECTION("another is put in its place") {
    const io::PieceReader file(path);
    io::write_file(path, "one");
    CHECK_THROWS_WITH(file.check_unchanged(), Catch::Contains(changed));
  }
  SECTION("it is deleted: what was opened is whole") {
    const io::PieceReader file(path);
    fs::remove(path);
    CHECK_NOTHROW(file.check_unchanged());
  }
}

TEST_CASE("FileWriter: a file that is replaced keeps its permissions", "[unit][files]") {
  const Folder folder;
  const fs::path path = folder.path / "a.txt";
  io::write_file(path.string(), "old");
  const auto mode = static_cast<fs::perms>(0640);
  fs::permissions(path, mode);
  io::write_file(path.string(), "new");
  CHECK(fs::status(path).permissions() == mode);
  CHECK(io::WholeFile(path.string()).text() == "new");
}

TEST_CASE("FileWriter: a file marked as read-only is not replaced", "[unit][files]") {
  const Folder folder;
  const fs::path path = folder.path / "a.txt";
  io::write_file(path.string(), "old");
  fs::permissions(path, static_cast<fs::perms>(0444));
  CHECK_THROWS_WITH(io::FileWriter(path.string()), Catch::Contains("read-only"));
  CHECK(io::WholeFile(path.string()).text() == "old");
}

TEST_CASE("FileSet: files take their places together or not at all", "[unit][files]") {
  const Folder folder;
  const auto path = [&](const char* name) { return (folder.path / name).string(); };
  io::write_file(path("a"), "old a");
  io::write_file(path("c"), "old c");
  io::FileSet files;
  files.add(path("a")).append("new a");
  files.add(path("b")).append("new b");
  files.add(path("c")).append("new c");
  SECTION("together") {
    CHECK(io::WholeFile(path("a")).text() == "old a");
    files.commit();
    CHECK(io::WholeFile(path("a")).text() == "new a");
    CHECK(io::WholeFile(path("b")).text() == "new b");
    CHECK(io::WholeFile(path("c")).text() == "new c");
    CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 3);
  }
  SECTION("the last cannot be placed: the others are what they were") {
    fs::remove(path("c"));
    fs::create_directory(path("c"));  // no file takes the place of a folder
    CHECK_THROWS_WITH(files.commit(), Catch::Contains(path("c")));
    CHECK(io::WholeFile(path("a")).text() == "old a");
    CHECK_FALSE(fs::exists(path("b")));
    CHECK(fs::is_directory(path("c")));
  }
}
