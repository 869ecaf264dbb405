// Figures of outcomes as charts and summaries write them.
#pragma once

#include "cases/figures/limits_and_charts.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// All figures by name.
std::vector<StudyFinding> known_findings();

struct FigureWords {
  std::string axis;    // "peak stress, MPa"
  std::string unit;    // "MPa"; "%" for strains
  double scale = 1.0;  // from the figure's own unit
};

// @pre the figure exists
FigureWords words_of(const std::string& figure);

// "235 MPa"; "-" for NaN.
std::string with_unit(const std::string& figure, double value);

}  // namespace gapstrain::cases
