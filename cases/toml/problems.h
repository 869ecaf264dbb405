// What is wrong with a case file, each thing at its place, so that all of it can be reported together.
#pragma once

#include "cases/toml/document.h"

#include <stdexcept>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct CaseProblem {
  Place place;
  std::string key;      // "screw[2].hole", indices from 0; empty when it concerns no key
  std::string message;  // what was found, what is allowed, how to mend it
  bool warning = false;
  bool operator==(const CaseProblem&) const = default;
};

// By rising place. One line each: FILE:LINE:COLUMN: KEY: MESSAGE. Of very many the first hundred.
std::string format_problems(const std::string& file, std::vector<CaseProblem> problems);

// The case file cannot be used. The message is the formatted list.
struct CaseError : std::runtime_error {
  CaseError(const std::string& file, std::vector<CaseProblem> found);
  std::vector<CaseProblem> problems;
};

}  // namespace gapstrain::cases
