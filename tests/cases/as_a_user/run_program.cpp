#include "tests/cases/as_a_user/run_program.h"

#include <sys/wait.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <regex>
#include <stdexcept>

namespace gapstrain::tests {

namespace fs = std::filesystem;

namespace {

std::string quote(const std::string& argument) {
  std::string quoted(1, '\'');
  for (const char c : argument) {
    if (c == '\'')
      quoted += "'\\''";  // ends the quotation, adds a quoted one, begins again
    else
      quoted += c;
  }
  quoted += '\'';
  return quoted;
}

}  // namespace

std::string without_progress(const std::string& err) {
  static const std::regex line("after [0-9]+ min: [^\n]*\n");
  return std::regex_replace(err, line, "");
}

Run run_program(const std::vector<std::string>& arguments, const fs::path& directory) {
  const ScratchFolder streams;
  const fs::path out = streams.path() / "out", err = streams.path() / "err";
  std::string command = "cd " + quote(directory) + " && " + quote(GAPSTRAIN_PROGRAM);
  for (const auto& argument : arguments) command.append(" ").append(quote(argument));
  const int code = std::system((command + " >" + quote(out) + " 2>" + quote(err) + " </dev/null").c_str());
  return {WIFEXITED(code) ? WEXITSTATUS(code) : -1, read_file(out), without_progress(read_file(err))};
}

ScratchFolder::ScratchFolder() {
  std::string name = (fs::temp_directory_path() / "gapstrain-test-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no scratch folder can be made");
  path_ = name;
}

ScratchFolder::~ScratchFolder() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::string read_file(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

void write_file(const fs::path& path, const std::string& text) { std::ofstream(path, std::ios::binary) << text; }

std::vector<fs::path> toml_files(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ".toml") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

std::size_t data_rows(const std::filesystem::path& csv) {
  const std::string text = read_file(csv);
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) - 1;
}

}  // namespace gapstrain::tests
