// Rows of a study as a page shows them: a cloud of points, each of which may be solved again.
#pragma once

#include "cases/files/json_value.h"

#include <array>
#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

// Beyond, a page holds the front, the best, the case's own, and a sample: its size is what a mail takes.
constexpr std::size_t most_points = 20'000;

struct CloudAxis {
  std::string figure;
  bool most_is_better = false;
};

struct CloudRows {
  std::filesystem::path table;     // rows.csv
  std::string noun;                // "layouts"
  std::vector<std::string> loads;  // names
  struct Input {                   // varied, beside the figures
    std::string column, label, unit;
  };
  std::vector<Input> inputs;
  std::array<CloudAxis, 2> axes;   // shown first
  std::vector<char> keeps;         // of each row: it is to be trusted and keeps the limits
  std::vector<std::size_t> front;  // rows that none is better than in both
  std::vector<std::size_t> best;   // rows, best first
  std::optional<std::size_t> own;  // row of the case as entered
  std::string limits;              // in words; empty: there are none
};

// Rows that a page of this many shows, ascending: all, or those asked for and every so manieth.
std::vector<std::size_t> shown_rows(std::size_t rows, const std::vector<std::size_t>& always,
                                    std::size_t most = most_points);

// A number in five digits that is printed with three as it itself is.
double short_number(double value);

// {noun, rows, shown?, columns, values, constant, state, reasons, front, best, own, axes, limits}: numbers as they
// are shown, by columns; rows by their place among those shown. @throw OutputError
Json cloud_json(const CloudRows& rows, const std::vector<std::size_t>& shown);

// All rows asked for by front, best and own.
std::vector<std::size_t> asked_rows(const CloudRows& rows);

}  // namespace gapstrain::cases
