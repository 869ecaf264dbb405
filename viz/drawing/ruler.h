// Measures text where nothing is drawn yet.
#pragma once

#include "viz/drawing/canvas.h"
#include "viz/drawing/paper.h"

namespace gapstrain::viz {

class Ruler {
 public:
  Canvas& canvas() { return canvas_; }

 private:
  Surface surface_{cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1)};
  Context context_{cairo_create(surface_.get())};
  Canvas canvas_{*context_, 1.0};
};

}  // namespace gapstrain::viz
