// The stage on which every step of a picture is shown alike, and the bodies on it.
#pragma once

#include "viz/construct/magnified_step.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/window.h"

#include <vector>

namespace gapstrain::viz {

namespace step_ink {
inline constexpr Colour fresh = curve_colours[1];      // what a step is about
inline constexpr Colour temporary = curve_colours[2];  // wires and clamps
inline constexpr Colour standing{0.36, 0.37, 0.40};    // screws of earlier steps
}  // namespace step_ink

struct StepStage {
  double factor = 1.0;  // of motion and gap
  Projection view;
  double scene_height = 0.0;    // pixels
  double largest_stress = 0.0;  // of the plate, MPa; 0 when a step does not know it
};

// Shows the plate's length with a little beyond, `width` pixels wide and as high as all that is shown.
// @throw std::invalid_argument for a step without a plate
StepStage set_stage(const std::vector<models::StepFields>& steps, const std::vector<std::size_t>& shown,
                    double width);

// Into the window's latest scene. `step` is `fields` magnified by the stage's factor.
void add_bodies(Window& window, const models::StepFields& fields, const MagnifiedStep& step,
                const StepStage& stage);

}  // namespace gapstrain::viz
