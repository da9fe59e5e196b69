#include "cli/file_clash.hpp"

#include <fcntl.h>
#include <unistd.h>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

using Catch::Contains;
using cutback::cli::file_clashes;
using cutback::cli::NamedFile;

namespace fs = std::filesystem;

TEST_CASE("file_clashes: no result lies among the tables that are read", "[unit][cli]") {
  const fs::path folder =
      fs::temp_directory_path() / ("cutback_tables_" + std::to_string(::getpid()));
  fs::create_directories(folder);
  const auto clashes = [&](const fs::path& written) {
    return file_clashes({{"--data", folder.string(), false, true}, {"--output", written, true}});
  };
  REQUIRE(clashes(folder / "new.json").size() == 1);
  CHECK_THAT(clashes(folder / "new.json")[0].what, Contains("among the tables"));
  CHECK(clashes(folder / "new.csv").empty());
  CHECK(clashes(folder.parent_path() / "new.json").empty());
  fs::remove_all(folder);
}

TEST_CASE("file_clashes: a file that is read is not written over", "[unit][cli]") {
  const fs::path folder =
      fs::temp_directory_path() / ("cutback_clash_" + std::to_string(::getpid()));
  fs::create_directories(folder / "sub");
  const std::string read = (folder / "cables.csv").string();
  const std::string link = (folder / "link.csv").string();
  const std::string around = (folder / "sub" / ".." / "cables.csv").string();
  const std::string fresh = (folder / "results.csv").string();
  std::ofstream(read) << "tag\n";
  fs::create_symlink(read, link);
  for (const std::string& written : {read, link, around}) {
    INFO(written);
    const auto faults = file_clashes({{"schedule", read}, {"--output", written, true}});
    REQUIRE(faults.size() == 1);
    CHECK_THAT(faults[0].what, Contains("that is read"));
    CHECK(faults[0].where == "--output and schedule");
    CHECK(faults[0].given == written);
  }
  CHECK(file_clashes({{"schedule", read}, {"--output", fresh, true}}).empty());
  CHECK(file_clashes({{"schedule", read}, {"--glands", read}}).empty());
  fs::remove_all(folder);
}

TEST_CASE("file_clashes: no two results go to one file", "[unit][cli]") {
  const auto faults =
      file_clashes({{"--output", "no_such/a.csv", true}, {"--xlsx", "no_such/./a.csv", true}});
  REQUIRE(faults.size() == 1);
  CHECK_THAT(faults[0].what, Contains("two results"));
  CHECK(file_clashes({{"--output", "a.csv", true}, {"--xlsx", "b.csv", true}}).empty());
  CHECK(file_clashes({{"--output", "/dev/null", true}, {"--xlsx", "/dev/null", true}}).empty());
  CHECK(file_clashes({{"schedule", "-"}, {"--output", "-", true}}).empty());
}

TEST_CASE("file_clashes: two links to one file that is not there yet are that file",
          "[unit][cli]") {
  const fs::path folder =
      fs::temp_directory_path() / ("cutback_links_" + std::to_string(::getpid()));
  fs::create_directories(folder);
  fs::create_symlink("new.csv", folder / "link.csv");
  const auto clashes = [&](const char* a, const char* b) {
    return file_clashes({{"--output", (folder / a).string(), true},
                         {"--takeoff", (folder / b).string(), true}})
        .size();
  };
  CHECK(clashes("new.csv", "link.csv") == 1);
  CHECK(clashes("other.csv", "link.csv") == 0);
  fs::remove_all(folder);
}

TEST_CASE("file_clashes: standard input is the file that it comes from", "[unit][cli]") {
  const fs::path read =
      fs::temp_directory_path() / ("cutback_input_" + std::to_string(::getpid()) + ".csv");
  std::ofstream(read) << "tag\n";
  const int before = ::dup(0);
  const int file = ::open(read.c_str(), O_RDONLY);
  REQUIRE(::dup2(file, 0) == 0);
  const auto faults = file_clashes({{"schedule", "-"}, {"--output", read.string(), true}});
  const auto other = file_clashes({{"schedule", "-"}, {"--output", read.string() + "2", true}});
  REQUIRE(::dup2(before, 0) == 0);
  ::close(before);
  ::close(file);
  fs::remove(read);
  CHECK(faults.size() == 1);
  CHECK(other.empty());
}

TEST_CASE("file_clashes: a job is saved in its own place and in that of no other file",
          "[unit][cli]") {
  const NamedFile save{"--save", "no_such/a.json", true, false, "job"};
  CHECK(file_clashes({{"job", "no_such/a.json"}, save}).empty());
  CHECK(file_clashes({{"--glands", "no_such/a.json"}, save}).size() == 1);
}
