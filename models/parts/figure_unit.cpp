#include "models/parts/figure_unit.h"

#include "models/parts/units.h"

namespace gapstrain::models {

std::string unit_text(FigureUnit unit) {
  switch (unit) {
    case FigureUnit::length:
      return "mm";
    case FigureUnit::stress:
      return "MPa";
    case FigureUnit::force:
      return "N";
    case FigureUnit::moment:
      return "N mm";
    case FigureUnit::axial_stiffness:
      return "N/mm";
    case FigureUnit::angular_stiffness:
      return "N mm/rad";
    case FigureUnit::angle:
      return "deg";
    case FigureUnit::thread_diameters:
      return "thread diameters";
    case FigureUnit::lives:
      return "times";
    case FigureUnit::ratio:
    case FigureUnit::strain:
    case FigureUnit::count:
      break;
  }
  return "";
}

ShownIn shown_in(FigureUnit unit) {
  if (unit == FigureUnit::strain) return {"%", 100.0};
  if (unit == FigureUnit::angular_stiffness) return {"N m/degree", degree.value() / 1000.0};
  return {unit_text(unit)};
}

}  // namespace gapstrain::models
