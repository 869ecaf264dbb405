// Runs the real executable as a user would.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::tests {

struct Run {
  int status = -1;
  std::string out, err;
};

// Without the lines of progress that a log gets once a minute, on a machine that is slow enough.
std::string without_progress(const std::string& err);

// In the given working directory, without a terminal. `err` is without progress.
Run run_program(const std::vector<std::string>& arguments, const std::filesystem::path& directory);

// A fresh empty folder, removed with this object.
class ScratchFolder {
 public:
  ScratchFolder();
  ~ScratchFolder();
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

std::string read_file(const std::filesystem::path& path);
void write_file(const std::filesystem::path& path, const std::string& text);

// Lines of a table, but for its heading.
std::size_t data_rows(const std::filesystem::path& csv);

// All TOML files of a folder, sorted.
std::vector<std::filesystem::path> toml_files(const std::filesystem::path& folder);

}  // namespace gapstrain::tests
