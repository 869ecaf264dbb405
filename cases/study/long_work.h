// A study's missing rows, from the first to the final file: crew, folder and progress together.
#pragma once

#include "cases/progress/progress.h"
#include "cases/study/crew.h"
#include "cases/study/study_folder.h"

namespace gapstrain::cases {

struct LongWork {
  std::function<std::size_t(std::size_t row)> block;  // as in Work
  Hire hire;
  std::size_t threads = 0;  // of each rank; 0: see threads_of_a_rank
};

// Every rank calls it; rank 0 with the folder, the others with none. When no row is missing none is made again.
// @returns the rows this call made, and whether rows.csv is final: else it was interrupted, and goes on when
//   called again
// @param progress counts the rows and is asked whether to go on; on every rank
// @throw as make_rows; OutputError when the rows cannot be written
Outcome make_missing_rows(StudyFolder* folder, const LongWork& work, Ranks& ranks, Progress& progress);

}  // namespace gapstrain::cases
