#include "cases/outputs/csv_tables.h"

#include <fmt/format.h>

#include <cmath>
#include <type_traits>

namespace gapstrain::cases {

namespace {

std::string cell(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}
std::string cell(const char* text) { return text; }
std::string cell(int number) { return fmt::format("{}", number); }
// Nine figures: more than the mesh is worth, few enough to read. No number at all is an empty cell.
std::string cell(double number) { return std::isfinite(number) ? fmt::format("{:.9g}", number) : std::string{}; }
template <class Quantity>
requires requires(const Quantity& quantity) { quantity.value(); }
std::string cell(const Quantity& quantity) { return cell(static_cast<double>(quantity.value())); }
template <class T>
std::string cell(const std::optional<T>& value) {
  return value ? cell(*value) : std::string{};
}

template <class... Cells>
void add_row(std::string& table, const Cells&... cells) {
  const char* separator = "";
  ((table += separator + cell(cells), separator = ","), ...);
  table += "\r\n";
}

}  // namespace

std::string gap_strain_csv(const models::Findings& findings) {
  std::string table;
  add_row(table, "load", "around_deg", "axial_motion_mm", "motion_y_mm", "motion_z_mm", "shear_motion_mm",
          "axial_strain", "shear_strain");
  for (const auto& load : findings.loads)
    for (const auto& point : load.gap.edge)
      add_row(table, load.load, point.around / models::degree, point.axial_motion, point.motion_y, point.motion_z,
              point.shear_motion, point.axial_strain, point.shear_strain);
  return table;
}

std::string plate_csv(const models::Findings& findings) {
  std::string table;
  add_row(table, "load", "along_mm", "normal_n", "shear_y_n", "shear_z_n", "bending_flat_n_mm",
          "bending_edge_n_mm", "torsion_n_mm", "surface_top_mpa", "surface_bottom_mpa", "surface_shear_top_mpa",
          "surface_shear_bottom_mpa");
  for (const auto& load : findings.loads)
    for (const auto& at : load.plate.stations)
      add_row(table, load.load, at.along, at.normal, at.shear_y, at.shear_z, at.bending_flat, at.bending_edge,
              at.torsion, at.surface_top, at.surface_bottom, at.surface_shear_top, at.surface_shear_bottom);
  return table;
}

std::string screws_csv(const models::Findings& findings) {
  std::string table;
  add_row(table, "load", "screw", "hole", "axial_n", "shear_x_n", "shear_y_n", "bending_y_n_mm", "bending_x_n_mm",
          "torsion_n_mm", "peak_core_stress_mpa", "factor_to_yield");
  for (const auto& load : findings.loads)
    for (const auto& screw : load.screws)
      add_row(table, load.load, screw.label, screw.hole, screw.axial, screw.shear_x, screw.shear_y,
              screw.bending_y, screw.bending_x, screw.torsion, screw.peak_bending_stress, screw.factor_to_yield);
  return table;
}

std::string screw_shafts_csv(const models::Findings& findings) {
  std::string table;
  add_row(table, "load", "screw", "hole", "depth_mm", "axial_n", "shear_n", "bending_n_mm", "torsion_n_mm");
  for (const auto& load : findings.loads)
    for (const auto& screw : load.screws)
      for (const auto& at : screw.stations)
        add_row(table, load.load, screw.label, screw.hole, at.depth, at.axial, at.shear, at.bending, at.torsion);
  return table;
}

std::string working_length_csv(const models::Findings& findings) {
  std::string table;
  add_row(table, "load", "move", "working_length_mm", "change_of_peak_stress", "change_of_gap_strain",
          "change_of_gap_motion", "change_of_stiffness", "unavailable");
  for (const auto& load : findings.loads)
    for (const auto& variant : load.working_length_effect) {
      const char* move = variant.further_out ? "further_out" : "further_in";
      if (variant.unavailable)
        add_row(table, load.load, move, "", "", "", "", "", *variant.unavailable);
      else
        add_row(table, load.load, move, variant.working_length, variant.peak_stress, variant.gap_strain,
                variant.gap_motion, variant.stiffness, "");
    }
  return table;
}

}  // namespace gapstrain::cases
