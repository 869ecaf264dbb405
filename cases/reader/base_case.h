// A case given as changes to a base case: `base` names it, the other keys are what differs.
#pragma once

#include "cases/toml/document.h"

#include <string>

namespace gapstrain::cases {

struct WholeCase {
  std::string text;  // as written; with a base, the whole case
  Table tree;        // without `base` and `without`
};

// Puts a case together. Tables of the file add to the base's key by key; everything else takes the place of the
// base's. What comes from the base has its place at the key `base`: the base must be a case by itself, so that its
// own faults are reported in its own file.
// @throw CaseError
WholeCase whole_case(const std::string& file, const std::string& text);

}  // namespace gapstrain::cases
