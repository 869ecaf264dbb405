#include "cases/files/leftovers.h"

#include <sys/types.h>

#include <cerrno>
#include <charconv>
#include <csignal>
#include <string>
#include <system_error>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view part_ending = ".part";

bool is_process_gone(std::string_view digits) {
  pid_t process = 0;
  const char* const end = digits.data() + digits.size();
  const auto [rest, fault] = std::from_chars(digits.data(), end, process);
  return fault == std::errc{} && rest == end && process > 0 && kill(process, 0) != 0 && errno == ESRCH;
}

bool is_leftover(std::string_view name, std::string_view before, std::string_view after) {
  if (!name.starts_with(before) || !name.ends_with(after) || name.size() <= before.size() + after.size())
    return false;
  std::string_view process = name.substr(before.size(), name.size() - before.size() - after.size());
  if (before.empty()) process = process.substr(process.rfind('.') + 1);
  return is_process_gone(process);
}

void remove_all(const std::vector<fs::path>& leftovers) {
  std::error_code ignored;  // what cannot be removed is in nobody's way
  for (const auto& path : leftovers) fs::remove_all(path, ignored);
}

}  // namespace

std::vector<fs::path> find_leftovers(const fs::path& folder, std::string_view before, std::string_view after) {
  std::vector<fs::path> found;
  std::error_code fault;
  for (fs::directory_iterator entry(folder, fault), end; !fault && entry != end; entry.increment(fault))
    if (is_leftover(entry->path().filename().string(), before, after)) found.push_back(entry->path());
  return found;
}

void clear_leftovers_of_file(const fs::path& file) {
  remove_all(find_leftovers(fs::absolute(file).parent_path(), file.filename().string() + '.', part_ending));
}

void clear_leftovers_in(const fs::path& folder) { remove_all(find_leftovers(folder, "", part_ending)); }

}  // namespace gapstrain::cases
