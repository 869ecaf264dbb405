#include "tests/cases/as_a_user/bad_input.h"

#include "tests/cases/as_a_user/expected_messages.h"
#include "tests/cases/as_a_user/run_program.h"

#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <iterator>
#include <stdexcept>

namespace gapstrain::tests {

namespace fs = std::filesystem;

namespace {

const fs::path catalogue = fs::path(GAPSTRAIN_TESTS) / "bad_inputs";

// "@3@ab@@" as "ababab".
std::string expand(const std::string& text) {
  std::string expanded;
  for (std::size_t at = 0; at < text.size();) {
    const auto second = text[at] == '@' ? text.find('@', at + 1) : std::string::npos;
    const std::string count = second == std::string::npos ? "" : text.substr(at + 1, second - at - 1);
    if (count.empty() || count.find_first_not_of("0123456789") != std::string::npos) {
      expanded += text[at++];
      continue;
    }
    const auto behind = text.find("@@", second);
    if (behind == std::string::npos)
      throw std::runtime_error("a repetition without its end: " + text.substr(at, 40));
    for (int k = std::stoi(count); k > 0; --k) expanded += text.substr(second + 1, behind - second - 1);
    at = behind + 2;
  }
  return expanded;
}

std::vector<std::string> files_in(const fs::path& folder) {
  std::vector<std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    files.push_back(fs::relative(entry.path(), folder).string());
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace

std::vector<BadInput> read_catalogue(const fs::path& file, const std::string& command) {
  std::vector<BadInput> inputs;
  for (const auto& line : lines_of(read_file(catalogue / file))) {
    const auto after = [&](const std::string& mark) { return line.substr(mark.size()); };
    if (line.starts_with("=== "))
      inputs.push_back({after("=== "), command, "", {}});
    else if (inputs.empty())
      continue;  // what the catalogue says about itself
    else if (line.starts_with("expect: "))
      inputs.back().expected.push_back(after("expect: "));
    else if (line.starts_with("run: "))
      inputs.back().command = after("run: ");
    else
      inputs.back().text += line + '\n';
  }
  for (auto& input : inputs) {
    if (input.text.ends_with("\n\n")) input.text.pop_back();  // the line before the next entry
    input.text = expand(input.text);
  }
  return inputs;
}

Answer answer(const BadInput& input) {
  const ScratchFolder scratch, streams;
  for (const auto& sound : toml_files(catalogue)) fs::copy(sound, scratch.path());
  if (!input.text.empty()) write_file(scratch.path() / "bad.toml", input.text);
  const auto before = files_in(scratch.path());
  write_file(streams.path() / "run", "gapstrain() { \"" GAPSTRAIN_PROGRAM "\" \"$@\"; }\n" + input.command + '\n');
  const std::string to = " >" + (streams.path() / "out").string() + " 2>" + (streams.path() / "err").string();
  const auto start = std::chrono::steady_clock::now();
  const int code = std::system(
      ("cd " + scratch.path().string() + " && bash " + (streams.path() / "run").string() + to + " </dev/null")
          .c_str());
  const std::chrono::duration<double> passed = std::chrono::steady_clock::now() - start;
  Answer answer{WIFEXITED(code) ? WEXITSTATUS(code) : -1,
                read_file(streams.path() / "out"),
                read_file(streams.path() / "err"),
                {},
                passed.count()};
  const auto after = files_in(scratch.path());
  std::set_difference(after.begin(), after.end(), before.begin(), before.end(), std::back_inserter(answer.left));
  return answer;
}

}  // namespace gapstrain::tests
