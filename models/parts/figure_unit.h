// Units of figures that are known by name rather than by type: of rules, of limits passed, of tables' columns.
#pragma once

#include <string>

namespace gapstrain::models {

// As the library works inside (see units.h), but for angles, which people read in degrees.
enum class FigureUnit {
  ratio,
  length,
  stress,
  force,
  moment,
  axial_stiffness,
  angular_stiffness,
  angle,
  thread_diameters,
  strain,  // a ratio
  lives,   // how many times over something lasts
  count
};

// "mm", "MPa" and so on; empty for ratios, strains and counts.
std::string unit_text(FigureUnit unit);

// What people read a figure in, and the factor to it: strain in %, stiffness by the degree.
struct ShownIn {
  std::string unit;
  double scale = 1.0;
};
ShownIn shown_in(FigureUnit unit);

}  // namespace gapstrain::models
