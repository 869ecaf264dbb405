// What a killed run left beside its target, under names that hold its process.
#pragma once

#include <filesystem>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

// Entries of the folder that are named `before`, a process that is no longer there, `after`; an empty `before`
// stands for any beginning. Processes of this machine are meant: two machines must not write one target at a time.
std::vector<std::filesystem::path> find_leftovers(const std::filesystem::path& folder, std::string_view before,
                                                  std::string_view after);

// Removes those of files written whole (viz::replace_file): of one file, or of all in the folder.
void clear_leftovers_of_file(const std::filesystem::path& file);
void clear_leftovers_in(const std::filesystem::path& folder);

}  // namespace gapstrain::cases
