// Some columns of a comma-separated table (RFC 4180) read back, without keeping the rest in memory.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::cases {

// The numbers of the named columns, one list a column; NaN where a cell is empty or no number.
// @throw OutputError naming the file when it cannot be read or lacks a column
std::vector<std::vector<double>> read_numbers(const std::filesystem::path& table,
                                              const std::vector<std::string>& columns);

// The texts of one column.
std::vector<std::string> read_texts(const std::filesystem::path& table, const std::string& column);

}  // namespace gapstrain::cases
