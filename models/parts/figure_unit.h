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
  axial_stiffness,
  angular_stiffness,
  angle,
  thread_diameters,
  count
};

// "mm", "MPa" and so on; empty for ratios and counts.
std::string unit_text(FigureUnit unit);

}  // namespace gapstrain::models
