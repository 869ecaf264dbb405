#include "cases/files/read_table.h"

#include "cases/files/output_target.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <fstream>
#include <functional>
#include <limits>

namespace gapstrain::cases {

namespace {

// Calls take(place, cell) for each cell of a line.
void visit_cells(const std::string& line,
                 const std::function<void(std::size_t place, const std::string& cell)>& take) {
  std::string cell;
  std::size_t place = 0;
  bool quoted = false;
  for (std::size_t k = 0; k < line.size(); ++k) {
    const char letter = line[k];
    if (letter == '"' && quoted && k + 1 < line.size() && line[k + 1] == '"') {
      cell += '"';
      ++k;
    } else if (letter == '"') {
      quoted = !quoted;
    } else if (letter == ',' && !quoted) {
      take(place++, cell);
      cell.clear();
    } else {
      cell += letter;
    }
  }
  take(place, cell);
}

void read_columns(const std::filesystem::path& table, const std::vector<std::string>& columns,
                  const std::function<void(std::size_t column, const std::string& cell)>& take) {
  std::ifstream stream(table);
  std::string line;
  if (!std::getline(stream, line)) throw OutputError(fmt::format("{} cannot be read", table.string()));
  std::vector<std::size_t> column_at;  // of each place, none: past the end
  visit_cells(line, [&](std::size_t, const std::string& name) {
    column_at.push_back(
        static_cast<std::size_t>(std::find(columns.begin(), columns.end(), name) - columns.begin()));
  });
  for (std::size_t k = 0; k < columns.size(); ++k)
    if (std::find(column_at.begin(), column_at.end(), k) == column_at.end())
      throw OutputError(fmt::format("{} has no column {}", table.string(), columns[k]));
  while (std::getline(stream, line))
    visit_cells(line, [&](std::size_t place, const std::string& cell) {
      if (place < column_at.size() && column_at[place] < columns.size()) take(column_at[place], cell);
    });
}

double number(const std::string& cell) {
  double value = 0.0;
  const auto [end, fault] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  const bool whole = fault == std::errc() && end == cell.data() + cell.size() && !cell.empty();
  return whole ? value : std::numeric_limits<double>::quiet_NaN();
}

}  // namespace

std::vector<std::vector<double>> read_numbers(const std::filesystem::path& table,
                                              const std::vector<std::string>& columns) {
  std::vector<std::vector<double>> numbers(columns.size());
  read_columns(table, columns,
               [&](std::size_t column, const std::string& cell) { numbers[column].push_back(number(cell)); });
  return numbers;
}

std::vector<std::string> read_texts(const std::filesystem::path& table, const std::string& column) {
  std::vector<std::string> texts;
  read_columns(table, {column}, [&](std::size_t, const std::string& cell) { texts.push_back(cell); });
  return texts;
}

}  // namespace gapstrain::cases
