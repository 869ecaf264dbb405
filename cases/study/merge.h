// The parts of a study as one.
#pragma once

#include "cases/progress/progress.h"

#include <filesystem>
#include <vector>

namespace gapstrain::cases {

// Writes the rows of all parts, in order, into `out`: bit for bit the rows.csv of the study made in one piece.
// Memory does not grow with the rows. Ended before its end, it goes on when called again.
// @throw OutputError naming the folder, if folders are of different studies, a part is missing, not complete or
//   there twice, or `out` cannot be written; Interrupted
void merge_rows(const std::vector<std::filesystem::path>& folders, const std::filesystem::path& out,
                Progress& progress);

}  // namespace gapstrain::cases
