// The pictures of a comparison.
#pragma once

#include "cases/outputs/pictures/picture_frame.h"
#include "cases/outputs/sentences/comparison_report.h"

#include <filesystem>
#include <vector>

namespace gapstrain::cases {

// A load: the constructs on one scale, and the strain round their fractures; margins of all side by side; the
// races in one chart.
// @throw viz::DisplayError without a display
void draw_comparison(const PictureStyle& style, const std::vector<ComparedCase>& cases,
                     const models::Comparison& comparison, const std::filesystem::path& folder);

}  // namespace gapstrain::cases
