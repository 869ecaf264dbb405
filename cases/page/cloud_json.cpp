#include "cases/page/cloud_json.h"

#include "cases/figures/outcome_table.h"
#include "cases/files/read_table.h"
#include "cases/text/digits.h"
#include "models/catalogue/assessed_figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace gapstrain::cases {

namespace {

constexpr int kept_digits = 5;                        // kept of a number that is shown with three
constexpr std::size_t most_cells_of_loads = 400'000;  // of figures under each load, beyond the worst of all loads

struct Column {
  Json heading;
  std::string name;  // in the table
  double scale = 1.0;
};

Column column_of(const models::FigureEntry& entry, bool is_low_better) {
  const auto [unit, scale] = models::shown_in(entry.unit);
  std::string label = entry.compared.label;
  if (label.empty()) {
    label = entry.name;
    std::replace(label.begin(), label.end(), '_', ' ');
  }
  return {{{"name", entry.name},
           {"label", label},
           {"unit", unit},
           {"meaning", entry.meaning},
           {"low_is_better", is_low_better}},
          figure_column(entry.name),
          scale};
}

std::vector<Column> columns_of(const CloudRows& rows, std::size_t shown) {
  std::vector<Column> columns;
  for (const auto& input : rows.inputs)
    columns.push_back(
        {{{"name", input.column}, {"label", input.label}, {"unit", input.unit}, {"varied", true}}, input.column});
  for (const auto& figure : models::construct_figures())
    columns.push_back(column_of(figure, figure.compared.better != models::Better::high));
  for (const auto& figure : models::load_figures()) columns.push_back(column_of(figure, figure.high_is_worse));
  const bool with_loads =
      rows.loads.size() > 1 && shown * rows.loads.size() * models::load_figures().size() <= most_cells_of_loads;
  for (std::size_t l = 0; with_loads && l < rows.loads.size(); ++l)
    for (const auto& figure : models::load_figures()) {
      columns.push_back(column_of(figure, figure.high_is_worse));
      columns.back().name = load_column(l, figure.name);
      columns.back().heading["load"] = rows.loads[l];
    }
  return columns;
}

char letter_of_state(const std::string& state, bool keeps) {
  return state == "failed" ? 'f' : state == "doubtful" ? 'd' : keeps ? 'k' : 'o';
}

}  // namespace

std::vector<std::size_t> shown_rows(std::size_t rows, const std::vector<std::size_t>& always, std::size_t most) {
  std::set<std::size_t> shown;
  const std::size_t step = (rows + most - 1) / std::max<std::size_t>(most, 1);
  for (std::size_t row = 0; row < rows; row += std::max<std::size_t>(step, 1)) shown.insert(row);
  shown.insert(always.begin(), always.end());
  return {shown.begin(), shown.end()};
}

double short_number(double value) {
  if (!std::isfinite(value) || value == 0.0) return value;
  if (std::abs(value) >= 1e4) return std::round(value);  // whole numbers are printed with all of their digits
  const auto rounded = [](double number) { return std::stod(fmt::format("{:.{}g}", number, kept_digits)); };
  const double near = rounded(value);
  if (three_digits(near) == three_digits(value)) return near;
  // Rounded onto a place half-way between three digits: its neighbour on the value's side is none.
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(near))) - (kept_digits - 1));
  return rounded(near + (value > near ? step : -step));
}

std::vector<std::size_t> asked_rows(const CloudRows& rows) {
  std::vector<std::size_t> asked = rows.front;
  asked.insert(asked.end(), rows.best.begin(), rows.best.end());
  if (rows.own) asked.push_back(*rows.own);
  return asked;
}

Json cloud_json(const CloudRows& rows, const std::vector<std::size_t>& shown) {
  const auto states = read_texts(rows.table, "state");
  std::map<std::size_t, std::size_t> places;
  for (std::size_t place = 0; place < shown.size(); ++place) places[shown[place]] = place;
  const auto places_of = [&](const std::vector<std::size_t>& wanted) {
    Json list = Json::array();
    for (const std::size_t row : wanted) list.push_back(places.at(row));
    return list;
  };

  Json json{{"noun", rows.noun}, {"rows", states.size()}, {"loads", rows.loads}, {"limits", rows.limits}};
  if (shown.size() < states.size()) json["shown"] = shown;
  json["columns"] = json["values"] = json["constant"] = Json::array();
  const auto columns = columns_of(rows, shown.size());
  std::vector<std::string> names;
  for (const auto& column : columns) names.push_back(column.name);
  const auto numbers = read_numbers(rows.table, names);
  for (std::size_t k = 0; k < columns.size(); ++k) {
    Json values = Json::array();
    bool varies = false;
    for (const std::size_t row : shown) {
      const double value = numbers[k][row];
      values.push_back(std::isnan(value) ? Json(nullptr) : Json(short_number(columns[k].scale * value)));
      varies |= values.back() != values.front();
    }
    Json heading = columns[k].heading;
    if (varies) {
      json["columns"].push_back(heading);
      json["values"].push_back(values);
    } else if (!shown.empty() && !values.front().is_null()) {
      heading["value"] = values.front();
      json["constant"].push_back(heading);
    }
  }
  std::string letters;
  for (const std::size_t row : shown) letters += letter_of_state(states[row], rows.keeps[row] != 0);
  json["state"] = letters;
  const auto reasons = read_texts(rows.table, "reason");
  json["reasons"] = Json::object();
  for (std::size_t place = 0; place < shown.size(); ++place)
    if (!reasons[shown[place]].empty()) json["reasons"][std::to_string(place)] = reasons[shown[place]];
  json["front"] = places_of(rows.front);
  json["best"] = places_of(rows.best);
  if (rows.own) json["own"] = places.at(*rows.own);
  json["axes"] = Json::array();
  for (const auto& axis : rows.axes)
    json["axes"].push_back({{"name", axis.figure}, {"low_is_better", !axis.most_is_better}});
  return json;
}

}  // namespace gapstrain::cases
