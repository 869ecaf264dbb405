// A comparison as a text for the screen and as tables. Constructs are called A, B, C in the order given.
#pragma once

#include "models/assessment/comparison.h"
#include "models/assessment/preference.h"
#include "models/words/comparison_words.h"

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

std::vector<std::string> names_of(const std::vector<ComparedCase>& cases);
// Borrowed.
std::vector<models::ComparedConstruct> compared(const std::vector<ComparedCase>& cases);

// Which to prefer and why on the first lines, with each construct's state; then the table of figures (the widest
// difference first, those that are not told apart by themselves), the comparison in full sentences, rules broken,
// cautions.
std::string comparison_text(const std::vector<ComparedCase>& cases, const models::Comparison& comparison,
                            const models::Preference& preference);

// A row a figure: name, unit, a column a construct, ratio, model error, told apart, best; then a row with each
// construct's state.
std::string comparison_csv(const std::vector<ComparedCase>& cases, const models::Comparison& comparison);

}  // namespace gapstrain::cases
