#include "cases/outputs/json/output_key.h"

#include "models/catalogue/assessed_figures.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace gapstrain::cases {

namespace {

using models::FigureUnit;

// Units that keys end with, those that end like others first.
constexpr std::array units_of_keys{FigureUnit::angular_stiffness,
                                   FigureUnit::axial_stiffness,
                                   FigureUnit::moment,
                                   FigureUnit::length,
                                   FigureUnit::stress,
                                   FigureUnit::force,
                                   FigureUnit::angle};

// "_n_mm_per_rad"; empty for what no key ends with.
std::string ending_of(FigureUnit unit) {
  if (std::find(units_of_keys.begin(), units_of_keys.end(), unit) == units_of_keys.end()) return "";
  std::string ending = "_";
  for (const char letter : models::unit_text(unit))
    if (letter == '/')
      ending += "_per_";
    else
      ending += letter == ' ' ? '_' : static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  return ending;
}

}  // namespace

std::string OutputKey::unit() const {
  for (const auto unit : units_of_keys)
    if (path.ends_with(ending_of(unit))) return models::unit_text(unit);
  return figure.empty() ? "" : models::unit_text(models::catalogue_entry(figure).unit);
}

OutputKey figure_key(const std::string& stem, std::string_view figure, const std::string& more) {
  const auto& entry = models::catalogue_entry(figure);
  return {stem + ending_of(entry.unit), more.empty() ? entry.meaning : entry.meaning + "; " + more, entry.name};
}

void append(OutputKeys& keys, const std::string& prefix, const OutputKeys& more) {
  for (const auto& key : more) keys.push_back({prefix + key.path, key.meaning, key.figure});
}

Json keys_json(const OutputKeys& keys) {
  Json json = Json::object();
  for (const auto& key : keys) {
    Json& entry = json[key.path] = Json{{"meaning", key.meaning}};
    if (const auto unit = key.unit(); !unit.empty()) entry["unit"] = unit;
    if (!key.figure.empty()) entry["figure"] = key.figure;
  }
  return json;
}

}  // namespace gapstrain::cases
