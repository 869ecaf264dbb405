#include "models/parts/load_parts.h"

#include <cmath>

namespace gapstrain::models {

std::string_view name_of(LoadPart part) {
  switch (part) {
    case LoadPart::axial:
      return "axial force";
    case LoadPart::bending:
      return "bending";
    case LoadPart::torsion:
      break;
  }
  return "torsion";
}

std::string_view key_of_band(LoadPart part) {
  switch (part) {
    case LoadPart::axial:
      return "axial_band";
    case LoadPart::bending:
      return "bending_band";
    case LoadPart::torsion:
      break;
  }
  return "torsion_band";
}

LoadCase with_part(const LoadCase& load, LoadPart part, double factor) {
  LoadCase changed = load;
  if (part == LoadPart::torsion) changed.torsion = factor * load.torsion;
  if (part == LoadPart::axial) changed.axial_compression = factor * load.axial_compression;
  if (part == LoadPart::bending) {
    changed.bending_y = factor * load.bending_y;
    changed.bending_z = factor * load.bending_z;
  }
  const double offset = part == LoadPart::bending ? factor : part == LoadPart::axial ? 1.0 / factor : 1.0;
  changed.ball_offset_y = offset * load.ball_offset_y;
  changed.ball_offset_z = offset * load.ball_offset_z;
  return changed;
}

const PartBand& band_of(const LoadCase& load, LoadPart part) {
  return part == LoadPart::axial     ? load.axial_band
         : part == LoadPart::bending ? load.bending_band
                                     : load.torsion_band;
}

PartBand& band_of(LoadCase& load, LoadPart part) {
  return part == LoadPart::axial     ? load.axial_band
         : part == LoadPart::bending ? load.bending_band
                                     : load.torsion_band;
}

bool has_part(const LoadCase& load, LoadPart part) {
  if (load.four_point) return false;
  const bool is_pressed = load.axial_compression != 0.0 * newton;
  switch (part) {
    case LoadPart::axial:
      return is_pressed && !load.line;
    case LoadPart::bending:
      return !load.line && (load.bending_y != 0.0 * newton_mm || load.bending_z != 0.0 * newton_mm ||
                            (is_pressed && load.supports.proximal.hold == EndHold::ball &&
                             load.supports.distal.hold == EndHold::ball &&
                             (load.ball_offset_y != 0.0 * mm || load.ball_offset_z != 0.0 * mm)));
    case LoadPart::torsion:
      break;
  }
  return load.torsion != 0.0 * newton_mm;
}

double part_factor(const PartBand& band, double probability) {
  const double away = 2.0 * probability - 1.0;  // -1 at the low end, 1 at the high one
  return std::pow(away < 0.0 ? band.low : band.high, std::abs(away));
}

}  // namespace gapstrain::models
