// What tests of the rules share.
#pragma once

#include "models/rules/rules.h"
#include "models/words/rule_words.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace gapstrain::tests {

inline models::RuleFinding finding_of(const models::Construct& construct, const std::string& rule) {
  const auto findings = models::review(construct);
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [&](const models::RuleFinding& finding) { return finding.rule == rule; });
  if (found == findings.end()) FAIL("no rule is called " << rule);
  return *found;
}

inline models::Verdict verdict_of(const models::Construct& construct, const std::string& rule) {
  return finding_of(construct, rule).verdict;
}

inline bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

// @pre there is one
inline models::Screw& screw_in(models::Construct& construct, int hole) {
  return *std::find_if(construct.screws.begin(), construct.screws.end(),
                       [&](const models::Screw& screw) { return screw.hole == hole; });
}

inline void take_out(models::Construct& construct, int hole) {
  std::erase_if(construct.screws, [&](const models::Screw& screw) { return screw.hole == hole; });
}

using Labels = std::vector<std::string>;
inline models::Step place(Labels labels) { return {std::move(labels), {}, {}, {}, {}}; }
inline models::Step insert(Labels labels, Labels tighten = {}) {
  return {{}, std::move(labels), std::move(tighten), {}, {}};
}
inline models::Step tighten(Labels labels) { return {{}, {}, std::move(labels), {}, {}}; }
inline models::Step remove(Labels labels) { return {{}, {}, {}, std::move(labels), {}}; }

}  // namespace gapstrain::tests
