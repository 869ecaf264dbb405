// A step's state with all motion about the fracture magnified, its initial gap with it: a gap that closes is drawn
// closed, and one that gapes gapes as much more.
#pragma once

#include "models/findings/fields.h"
#include "viz/construct/shell_surface.h"

#include <vector>

namespace gapstrain::viz {

// Along x, from the proximal fragment's edge to the distal one's, at rest; 0 without two bones.
double gap_at_rest(const std::vector<models::ShellField>& shells);

struct MagnifiedStep {
  std::vector<FacePoints> faces;           // one a shell
  std::vector<models::ScrewField> screws;  // their axes where they are drawn, no displacements left
  std::vector<models::HoldField> holds;    // likewise
};

// Each fragment is moved by half of what magnifying the gap by `factor` adds. Screws and holds keep their true
// motion against the part they sit on, and share its magnified one.
MagnifiedStep magnify(const models::StepFields& step, double factor);

}  // namespace gapstrain::viz
