// One command of many rows from its start to its end: folder, rows, and what is made of them.
#pragma once

#include "cases/commands/study_options.h"
#include "cases/progress/time_left.h"
#include "cases/status.h"
#include "cases/study/long_work.h"
#include "cases/study/study_folder.h"

#include <functional>
#include <string>
#include <vector>

namespace gapstrain::cases {

// Of studies that draw charts of their rows.
inline const Stage drawing_charts{"drawing charts", 2.0};

struct StudyRun {
  std::string command;      // "sweep"
  std::string fingerprint;  // of all that rows depend on
  std::size_t rows = 0;
  std::vector<std::string> estimated;  // keys of the case that were not measured
  std::string heading;
  std::string default_folder;
  std::function<std::size_t(std::size_t row)> block;
  Hire hire;
  std::function<Status(StudyFolder& folder)> finish;  // once all rows are there; may throw Interrupted
};

// Says that the work in this folder goes on when it is started again.
Status interrupted_work(const std::string& folder);

// On all ranks; the first one speaks, writes and finishes. Goes on where an earlier run stopped.
// @throw OutputError, and what the rows throw
Status run_study(const StudyRun& run, const StudyOptions& options, Ranks& ranks, Progress& progress);

}  // namespace gapstrain::cases
