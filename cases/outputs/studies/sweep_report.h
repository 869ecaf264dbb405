// What a sweep's table says, in words and numbers.
#pragma once

#include "cases/outputs/studies/row_states.h"
#include "cases/study/study_file.h"

#include <filesystem>
#include <string>

namespace gapstrain::cases {

struct SweepReport {
  std::string text;  // for the terminal and summary.txt
  RowStates states;
};

// Of each finding that the study asks about its spread, the share of rows that miss its limits, how far each
// variable moves it and, from a Saltelli design, Sobol' indices. @throw OutputError
SweepReport report_sweep(const std::filesystem::path& folder, const StudyFile& study);

}  // namespace gapstrain::cases
