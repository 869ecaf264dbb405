#include "cases/figures/outcome_table.h"

#include "cases/text/csv_cell.h"
#include "models/catalogue/outcome_figures.h"
#include "models/words/state_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

std::string column_name(std::string_view name, models::FigureUnit unit) {
  std::string text = models::unit_text(unit);
  for (char& letter : text)
    if (letter == ' ' || letter == '/') letter = '_';
  return text.empty() ? std::string(name) : fmt::format("{}_{}", name, text);
}

void add(std::string& row, const std::optional<double>& value) {
  row += ',';
  if (value) row += fmt::format("{:.12g}", *value);
}

std::string first_cells(const std::vector<std::string>& inputs) {
  std::string row;
  for (const auto& input : inputs) row += csv_cell(input) + ',';
  return row;
}

}  // namespace

std::string outcome_heading(const std::vector<std::string>& inputs, std::size_t loads) {
  std::string heading = first_cells(inputs) + "state";
  for (const auto& figure : models::construct_figures()) heading += ',' + column_name(figure.name, figure.unit);
  for (const auto& figure : models::load_figures()) heading += ',' + column_name(figure.name, figure.unit);
  for (std::size_t load = 0; load < loads; ++load)
    for (const auto& figure : models::load_figures()) heading += ',' + load_column(load, std::string(figure.name));
  return heading + ",reason";
}

std::string outcome_row(const std::vector<std::string>& inputs, const models::Outcome& outcome) {
  std::string row = first_cells(inputs) + (outcome.doubts.empty() ? "ok" : "doubtful");
  for (const auto& figure : models::construct_figures()) add(row, figure.read(outcome));
  for (const auto& figure : models::load_figures()) add(row, models::figure(outcome, figure.name));
  for (const auto& load : outcome.loads)
    for (const auto& figure : models::load_figures()) add(row, figure.read(load));
  std::vector<std::string> reasons;
  for (const auto& doubt : outcome.doubts) reasons.push_back(models::check_text(doubt));
  return row + ',' + csv_cell(fmt::format("{}", fmt::join(reasons, "; "))) + '\n';
}

std::string failed_row(const std::vector<std::string>& inputs, std::size_t loads, const std::string& reason) {
  const std::size_t figures = models::construct_figures().size() + (1 + loads) * models::load_figures().size();
  return first_cells(inputs) + "failed" + std::string(figures, ',') + ',' + csv_cell(reason) + '\n';
}

std::string figure_column(const std::string& figure) {
  return column_name(figure, models::find_figure(figure)->unit);
}

std::string load_column(std::size_t load, const std::string& figure) {
  return fmt::format("load{}_{}", load + 1, figure_column(figure));
}

std::string describe_outcome_columns() {
  std::string out = "# rows.csv: one row a construct. First what tells constructs apart, then\n\n";
  const auto line = [&](const std::string& column, const std::string& meaning) {
    out += fmt::format("{:<34} {}\n", column, meaning);
  };
  line("state", "ok; doubtful: it fails a check of its own; failed: there is no result");
  for (const auto& name : models::figure_names()) line(figure_column(name), models::find_figure(name)->meaning);
  line("load1_..., load2_...", "the figures of loads in one load each, in the order of the case");
  line("reason", "of a state that is not ok");
  return out;
}

}  // namespace gapstrain::cases
