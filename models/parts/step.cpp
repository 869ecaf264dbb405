#include "models/parts/step.h"

namespace gapstrain::models {

Screw wire_as_screw(const TemporaryHold& wire, const Metal& material) {
  Screw screw;
  screw.label = wire.label;
  screw.hole = wire.hole;
  screw.kind = ScrewKind::cortical;
  screw.size = {"wire", wire.diameter, wire.diameter, Length(), "case file"};
  screw.material = material;
  screw.cortices = 2;
  screw.interface = bonded_interface;  // what is known of threads says nothing of a smooth wire
  return screw;
}

}  // namespace gapstrain::models
