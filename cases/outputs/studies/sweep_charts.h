// What a sweep's table says, in charts.
#pragma once

#include "cases/outputs/pictures/picture_frame.h"
#include "cases/study/study_file.h"

#include <filesystem>

namespace gapstrain::cases {

// Into `charts` of the folder: the study's own, and of each finding that it asks about what the design allows: a
// map over two numeric variables of a grid, main effects of lists, swings of samples, Sobol' indices, a histogram
// of a random sample. @throw OutputError
void draw_sweep_charts(const PictureStyle& style, const std::filesystem::path& folder, const StudyFile& study);

}  // namespace gapstrain::cases
