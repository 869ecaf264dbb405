// Outcomes the long way round, as the findings of a single construct come about; and outcomes held against each
// other.
#pragma once

#include "models/findings/findings.h"
#include "models/measures/outcome.h"

#include <string>
#include <vector>

namespace gapstrain::tests {

// Of a construct with `chosen` of the assembly's screws: its steps carried out one after another, loads on top,
// whole fields recovered, findings measured. Doubts are left out.
models::Outcome long_way(const models::Assembly& assembly, const std::vector<int>& chosen);

// From findings of a construct that are there already. Work and doubts are left out.
models::Outcome outcome_of(const models::Findings& findings, const models::Construct& construct);

// Every figure of an outcome, NaN for one that it does not have, and what a difference in it is measured by: the
// figure itself, or the largest of its kind under the load where it may be nothing but the rounding of others.
struct ScaledFigure {
  std::string name;
  double value = 0.0, scale = 0.0;
};
std::vector<ScaledFigure> all_figures(const models::Outcome& outcome);

// The figure that differs most, relative to the scale in `expected`; infinitely where only one has it.
struct Difference {
  double value = 0.0;
  std::string figure;
};
Difference difference(const models::Outcome& outcome, const models::Outcome& expected);

// Whether all figures and doubts are equal to the last bit.
bool same_bits(const models::Outcome& one, const models::Outcome& other);

}  // namespace gapstrain::tests
