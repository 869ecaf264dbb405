#include "cases/outputs/tables/csv_tables.h"

#include "cases/text/csv_cell.h"

#include <fmt/format.h>

#include <cmath>
#include <type_traits>

namespace gapstrain::cases {

namespace {

std::string cell(const std::string& text) { return csv_cell(text); }
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

std::string steps_csv(const models::Findings& findings) {
  std::string table;
  add_row(table, "number", "step", "force_n", "friction_n", "near_mpa", "far_mpa", "peak_mpa", "touching",
          "largest_slip_mm", "travel_mm", "travel_in_all_mm", "plate_peak_mpa", "friction_use", "by_hand", "bent",
          "bent_deg");
  int number = 0;
  for (const auto& step : findings.compression.steps) {
    const auto& face = step.face;
    const auto worst = std::max_element(step.bent.begin(), step.bent.end(),
                                        [](const auto& one, const auto& other) { return one.turn < other.turn; });
    add_row(table, ++number, step.text, face.force, face.friction, face.near, face.far, face.peak, face.touching,
            face.largest_slip, step.travel, step.travel_in_all, step.plate_peak, step.friction_use,
            step.by_hand ? "yes" : "no", worst == step.bent.end() ? "" : worst->label,
            worst == step.bent.end() ? 0.0 : models::in_degrees(worst->turn));
  }
  return table;
}

std::string face_csv(const models::Findings& findings) {
  std::string table;
  add_row(table, "state", "number", "name", "around_deg", "wall", "pressure_mpa", "opening_mm", "slip_mm");
  const auto add_rows = [&](const char* state, int number, const std::string& name,
                            const models::FaceFindings& face) {
    for (const auto& point : face.points)
      add_row(table, state, number, name, point.around / models::degree, point.outer ? "outer" : "inner",
              point.pressure, point.opening, point.slip);
  };
  int number = 0;
  for (const auto& step : findings.compression.steps) add_rows("after step", ++number, step.text, step.face);
  number = 0;
  for (const auto& load : findings.loads) add_rows("under load", ++number, load.load, load.face);
  return table;
}

std::string prebend_csv(const models::PrebendFindings& prebend) {
  std::string table;
  add_row(table, "height_mm", "force_n", "near_mpa", "far_mpa", "touching", "unevenness");
  for (const auto& point : prebend.curve)
    add_row(table, point.height, point.force, point.near, point.far, point.touching, point.unevenness);
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
