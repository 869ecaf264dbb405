#include "models/parts/figure_unit.h"

namespace gapstrain::models {

std::string unit_text(FigureUnit unit) {
  switch (unit) {
    case FigureUnit::length:
      return "mm";
    case FigureUnit::stress:
      return "MPa";
    case FigureUnit::force:
      return "N";
    case FigureUnit::axial_stiffness:
      return "N/mm";
    case FigureUnit::angular_stiffness:
      return "N mm/rad";
    case FigureUnit::angle:
      return "deg";
    case FigureUnit::thread_diameters:
      return "thread diameters";
    case FigureUnit::ratio:
    case FigureUnit::count:
      break;
  }
  return "";
}

}  // namespace gapstrain::models
