#include "cases/outputs/read_table.h"

#include "cases/outputs/output_target.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <fstream>
#include <functional>
#include <limits>

namespace gapstrain::cases {

namespace {

std::vector<std::string> split(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (std::size_t k = 0; k < line.size(); ++k) {
    const char letter = line[k];
    if (letter == '"' && quoted && k + 1 < line.size() && line[k + 1] == '"') {
      cells.back() += '"';
      ++k;
    } else if (letter == '"') {
      quoted = !quoted;
    } else if (letter == ',' && !quoted) {
      cells.emplace_back();
    } else {
      cells.back() += letter;
    }
  }
  return cells;
}

void read_columns(const std::filesystem::path& table, const std::vector<std::string>& columns,
                  const std::function<void(std::size_t column, const std::string& cell)>& take) {
  std::ifstream stream(table);
  std::string line;
  if (!std::getline(stream, line)) throw OutputError(fmt::format("{} cannot be read", table.string()));
  const auto heading = split(line);
  std::vector<std::size_t> places;
  for (const auto& column : columns) {
    const auto found = std::find(heading.begin(), heading.end(), column);
    if (found == heading.end()) throw OutputError(fmt::format("{} has no column {}", table.string(), column));
    places.push_back(static_cast<std::size_t>(found - heading.begin()));
  }
  while (std::getline(stream, line)) {
    const auto cells = split(line);
    for (std::size_t k = 0; k < places.size(); ++k)
      take(k, places[k] < cells.size() ? cells[places[k]] : std::string());
  }
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
