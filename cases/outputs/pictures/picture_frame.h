// What the pictures and field files of a run say of themselves.
#pragma once

#include "viz/drawing/picture_frame.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// How pictures are wanted.
struct PictureStyle {
  viz::PictureFormat format = viz::PictureFormat::png;
  int width_px = viz::picture_width;
};

// With the subject, the case's file, the program's version, the cautions and what must be seen before any figure,
// as from alarms_of.
viz::PictureFrame picture_frame(const PictureStyle& style, const std::string& subject,
                                const std::string& case_file, std::vector<std::string> alarms);

}  // namespace gapstrain::cases
