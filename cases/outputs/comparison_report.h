// A comparison as a text for the screen and as tables. Constructs are called A, B, C in the order given.
#pragma once

#include "models/review/comparison.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

struct ComparedCase {
  std::string file;
  models::Construct construct;
  models::AssessedConstruct assessed;
};

// "A" for the first one.
std::string letter_of(std::size_t index);

// What cannot be trusted first, then verdict, table of figures (the widest difference first, those that are not
// told apart by themselves), rules broken, cautions.
std::string comparison_text(const std::vector<ComparedCase>& cases, const models::Comparison& comparison);

// A row a figure: name, unit, a column a construct, ratio, doubt, told apart, best.
std::string comparison_csv(const models::Comparison& comparison);

}  // namespace gapstrain::cases
